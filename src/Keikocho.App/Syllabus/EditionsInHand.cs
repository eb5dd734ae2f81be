using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using Keikocho.Core.Names;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Starter;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Syllabus;

/// <summary>A published edition made ready for the sheets of many children.</summary>
public sealed class EditionInHand
{
    private readonly IReadOnlyList<string>[] upTo;

    internal EditionInHand(PublishedEdition published, NameIndex names)
    {
        Published = published;
        var edition = published.Edition;
        Prepared = PreparedEdition.Of(edition, names);
        HarderForms = [.. edition.Items.Where(i => i.Covers is { Count: > 0 })];
        var falls = edition.Items.Where(i => i.Kind == ItemKind.Fall).Select(i => i.Key).ToHashSet(StringComparer.Ordinal);
        upTo = new IReadOnlyList<string>[edition.Ranks.Count];
        HashSet<string> keys = [];
        for (var i = 0; i < upTo.Length; i++)
        {
            keys.UnionWith(edition.Ranks[i].Requirements.SelectMany(r => Named(r.Ask)).Where(k => !falls.Contains(k)));
            upTo[i] = [.. keys.Order(StringComparer.Ordinal)];
        }
    }

    /// <summary>The edition as it was published.</summary>
    public PublishedEdition Published { get; }

    /// <summary>The edition.</summary>
    public Edition Edition => Prepared.Edition;

    /// <summary>The same, ready for finding.</summary>
    public PreparedEdition Prepared { get; }

    /// <summary>Items that cover easier ones.</summary>
    public IReadOnlyList<Item> HarderForms { get; }

    /// <summary>Place of a rank; -1 when the edition has none of this key.</summary>
    public int PlaceOf(string? key)
    {
        for (var i = 0; i < Edition.Ranks.Count; i++)
            if (Edition.Ranks[i].Key == key) return i;
        return -1;
    }

    /// <summary>Keys of what the ranks up to a place ask by name, falls left out: what a child who came with that rank is credited.</summary>
    public IReadOnlyList<string> AskedUpTo(int place) => place < 0 ? [] : upTo[Math.Min(place, upTo.Length - 1)];

    /// <summary>The keys that a requirement names itself.</summary>
    public static IReadOnlyList<string> Named(Ask ask) => ask switch
    {
        Ask.AllOf all => all.Items,
        Ask.AnyOf any => any.Items,
        Ask.FromPool pool => pool.Pool,
        _ => [],
    };
}

/// <summary>
/// Published editions made ready, once in the life of the program, because they never change; and the age rules of a book as one list,
/// so that their bars are found once for all children.
/// </summary>
public sealed class EditionsInHand
{
    private readonly ConcurrentDictionary<Guid, EditionInHand> editions = new();
    private readonly ConditionalWeakTable<ClubBook, IReadOnlyList<AgeRule>> rules = [];
    private readonly Lazy<NameIndex> names = new(() => NameIndex.Of(StarterNames.Known));

    /// <summary>An edition, ready.</summary>
    public EditionInHand Of(PublishedEdition edition)
    {
        ArgumentNullException.ThrowIfNull(edition);
        return editions.GetOrAdd(edition.Id, static (_, pair) => new EditionInHand(pair.edition, pair.names.Value), (edition, names));
    }

    /// <summary>The club's age rules, the same list for the same book.</summary>
    public IReadOnlyList<AgeRule> AgeRulesOf(ClubBook book)
    {
        ArgumentNullException.ThrowIfNull(book);
        return rules.GetValue(book, static b => [.. b.AgeRules.Select(r => r.Rule)]);
    }
}
