using Keikocho.App.Club;
using Keikocho.App.Syllabus.Edits;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Starter;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Syllabus;

/// <summary>Items that a form proposes by name: those of the club's editions first, then those that come with the program.</summary>
public static class KnownItems
{
    private static readonly Lazy<IReadOnlyList<Item>> Kit = new(() => [.. SampleLadders.All.SelectMany(s => s.Edition.Items), .. Techniques(), .. Words(), .. Questions()]);

    /// <summary>Each name once.</summary>
    public static IReadOnlyList<Item> Of(OpenClub club)
    {
        ArgumentNullException.ThrowIfNull(club);
        var own = club.Book.Programmes.Select(p => club.Book.NewestEdition(p.LadderId)).OfType<PublishedEdition>().SelectMany(e => e.Edition.Items);
        return [.. own.Concat(Kit.Value).DistinctBy(i => i.Name, StringComparer.OrdinalIgnoreCase)];
    }

    private static IEnumerable<Item> Techniques() =>
        from note in Whole(StarterKit.Techniques())
        let kind = KindOf(note.Family)
        where kind is not null
        select EditItems.Named(new Item(EditionKeys.Make(note.Name, []), kind.Value, note.Name, Meaning: note.Meaning, LookFor: note.LookFor.Count > 0 ? note.LookFor[0] : null));

    private static IEnumerable<Item> Words() => Whole(StarterKit.Vocabulary()).Select(word =>
        new Item(EditionKeys.Make(word.Romaji, []), ItemKind.Word, Capital(word.Romaji), Kana: word.Kana, Kanji: word.Kanji, Meaning: word.English, Answers: word.Answers, Safety: word.Safety));

    private static IEnumerable<Item> Questions() => Whole(StarterKit.Questions()).Select(question =>
        new Item(question.Key, ItemKind.Question, question.Text, Answers: question.Answers.Count > 0 ? question.Answers : null, Safety: question.Safety));

    private static IReadOnlyList<T> Whole<T>(TextReading<IReadOnlyList<T>> reading) => reading is TextReading<IReadOnlyList<T>>.Read read ? read.Value : [];

    // What needs more than a name (a way out of which hold?) is not proposed.
    private static ItemKind? KindOf(TechniqueFamily family) => family switch
    {
        TechniqueFamily.Hand or TechniqueFamily.Hip or TechniqueFamily.Foot or TechniqueFamily.Sacrifice => ItemKind.Throw,
        TechniqueFamily.Hold => ItemKind.HoldDown,
        TechniqueFamily.Movement => ItemKind.Movement,
        TechniqueFamily.Grip => ItemKind.Grip,
        TechniqueFamily.Bowing => ItemKind.Etiquette,
        _ => null,
    };

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
