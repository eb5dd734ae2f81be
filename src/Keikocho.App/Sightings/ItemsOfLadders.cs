using Keikocho.Core.Evening;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;

namespace Keikocho.App.Sightings;

/// <summary>The items that children of some ladders may have shown, in the order of the newest edition that has them.</summary>
public sealed class ItemsOfLadders
{
    private readonly Dictionary<Guid, (GridItem Item, (int Ladder, int Place) Place)> items = [];
    private readonly ClubBook book;

    /// <summary>Reads them from every edition; the newest has the last word.</summary>
    public ItemsOfLadders(ClubBook book, params IEnumerable<Guid?> ladders)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(ladders);
        this.book = book;
        foreach (var (number, ladder) in ladders.Distinct().Index())
        {
            foreach (var edition in book.EditionsOf(ladder))
            {
                foreach (var (place, item) in ItemChoice.AllOf(book, edition.Edition).Index()) items[item.Id] = (item, (number, place));
            }
        }
    }

    /// <summary>Its name.</summary>
    public string Name(Guid id) => items.TryGetValue(id, out var known) ? known.Item.Item.Name : book.ItemKey(id) ?? "an item that is gone";

    /// <summary>Its kind; a throw where nobody knows.</summary>
    public ItemKind Kind(Guid id) => items.TryGetValue(id, out var known) ? known.Item.Item.Kind : ItemKind.Throw;

    /// <summary>Its place in the list; an item that nobody knows comes last.</summary>
    public (int Ladder, int Place) Place(Guid id) => items.TryGetValue(id, out var known) ? known.Place : (int.MaxValue, int.MaxValue);

    /// <summary>Whether it must be looked at child by child; an item that nobody knows must.</summary>
    public bool IsCritical(Guid id) => !items.TryGetValue(id, out var known) || known.Item.Critical;

    /// <summary>What was seen of it, in the words of its kind.</summary>
    public string Word(Guid id, SeenWord word) => SeenWords.Of(word, Kind(id));
}
