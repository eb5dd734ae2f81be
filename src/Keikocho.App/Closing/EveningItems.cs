using Keikocho.App.Sightings;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;

namespace Keikocho.App.Closing;

/// <summary>The items that the programmes of an evening may show, in the order of their editions.</summary>
public sealed class EveningItems
{
    private readonly Dictionary<Guid, (GridItem Item, int Place)> items = [];
    private readonly ClubBook book;

    /// <summary>Reads them from every edition; the newest has the last word.</summary>
    public EveningItems(ClubBook book, IEnumerable<LessonRow> lessons)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(lessons);
        this.book = book;
        foreach (var ladder in lessons.Select(l => book.Programme(l.ProgrammeId)?.LadderId).Distinct())
        {
            foreach (var edition in book.EditionsOf(ladder))
            {
                foreach (var item in ItemChoice.ItemsOf(book, edition.Edition)) items[item.Id] = (item, items.Count);
            }
        }
    }

    /// <summary>Its name.</summary>
    public string Name(Guid id) => items.TryGetValue(id, out var known) ? known.Item.Item.Name : book.ItemKey(id) ?? "an item that is gone";

    /// <summary>Its place in the list.</summary>
    public int Place(Guid id) => items.TryGetValue(id, out var known) ? known.Place : int.MaxValue;

    /// <summary>Whether it must be looked at child by child; an item that nobody knows must.</summary>
    public bool IsCritical(Guid id) => !items.TryGetValue(id, out var known) || known.Item.Critical;

    /// <summary>What was seen of it, in the words of its kind.</summary>
    public string Word(Guid id, Core.Evening.SeenWord word) =>
        SeenWords.Of(word, items.TryGetValue(id, out var known) ? known.Item.Item.Kind : Core.Syllabus.ItemKind.Throw);
}
