using System.Collections.Immutable;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;

namespace Keikocho.App.Sightings;

/// <summary>An item of the grid.</summary>
/// <param name="Id">Its id, the same through all editions.</param>
/// <param name="Item">The item.</param>
/// <param name="Critical">Heavy box: never filled for everybody at once.</param>
public sealed record GridItem(Guid Id, Item Item, bool Critical);

/// <summary>A part of the syllabus that items are chosen from.</summary>
/// <param name="Value">As the form writes it.</param>
/// <param name="Name">In words.</param>
/// <param name="Items">Its items, falls left out.</param>
public sealed record ItemGroup(string Value, string Name, ImmutableArray<GridItem> Items);

/// <summary>Which items stand across the evening's grid: at most eight, so that a hand finds them.</summary>
/// <param name="Groups">Every part to choose from.</param>
/// <param name="From">The part that is chosen; null for the items of the ranks that most of the children are going for.</param>
/// <param name="Shown">The items across.</param>
/// <param name="All">Every item that may be marked, in the order of the edition.</param>
public sealed record ItemChoice(ImmutableArray<ItemGroup> Groups, ItemGroup? From, ImmutableArray<GridItem> Shown, ImmutableArray<GridItem> All)
{
    /// <summary>So many items stand across.</summary>
    public const int Most = 8;

    private const int MostCells = 900;

    /// <summary>Chooses them; null while the club has no syllabus.</summary>
    /// <param name="book">The club.</param>
    /// <param name="programme">The programme.</param>
    /// <param name="day">The evening.</param>
    /// <param name="children">The children of the grid.</param>
    /// <param name="from">Part that was asked for.</param>
    /// <param name="keys">Items that were asked for, by key.</param>
    public static ItemChoice? Of(ClubBook book, ProgrammeRow programme, DateOnly day, IReadOnlyCollection<Guid> children, string? from, IReadOnlyCollection<string> keys)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(programme);
        ArgumentNullException.ThrowIfNull(children);
        ArgumentNullException.ThrowIfNull(keys);
        if (EditionOf(book, programme, day) is not { } edition) return null;
        var all = ItemsOf(book, edition);
        var byKey = all.ToDictionary(i => i.Item.Key, StringComparer.Ordinal);
        ImmutableArray<GridItem> Find(IEnumerable<string> asked) => [.. asked.Distinct().Where(byKey.ContainsKey).Select(k => byKey[k])];
        ImmutableArray<ItemGroup> groups =
        [
            .. new[] { new ItemGroup("first-course", "First course", Find(edition.FirstCourse)) }
                .Concat(edition.Units.Select(u => new ItemGroup($"unit/{u.Key}", $"Unit: {u.Name}", Find(u.Items))))
                .Concat(edition.Ranks.Select(r => new ItemGroup($"rank/{r.Key}", $"For {r.Name}", Find(r.Requirements.SelectMany(q => Named(q.Ask))))))
                .Where(g => g.Items.Length > 0),
        ];
        var most = Math.Clamp(MostCells / Math.Max(1, children.Count), 1, Most);
        var group = groups.FirstOrDefault(g => g.Value == from);
        var chosen = Find(keys);
        var shown = chosen.Length > 0 ? chosen : group?.Items ?? GoingFor(book, programme, edition, all, children);
        return new ItemChoice(groups, group, [.. shown.Take(most)], all);
    }

    /// <summary>The edition that holds on a day; before the first, the one that comes.</summary>
    public static Edition? EditionOf(ClubBook book, ProgrammeRow programme, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(programme);
        return (book.EditionOn(programme.LadderId, day) ?? book.NewestEdition(programme.LadderId))?.Edition;
    }

    /// <summary>Every item of an edition that may be marked; falls are falls and have a grid of their own.</summary>
    public static ImmutableArray<GridItem> ItemsOf(ClubBook book, Edition edition)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(edition);
        var critical = edition.Ranks.SelectMany(r => r.Requirements).Where(q => q.Critical).SelectMany(q => Named(q.Ask)).ToHashSet(StringComparer.Ordinal);
        return [.. edition.Items.Where(i => i.Kind != ItemKind.Fall).DistinctBy(i => i.Key)
            .Select(i => (Item: i, Id: book.ItemId(i.Key))).Where(i => i.Id is not null)
            .Select(i => new GridItem(i.Id!.Value, i.Item, critical.Contains(i.Item.Key) || i.Item.Safety))];
    }

    private static ImmutableArray<GridItem> GoingFor(ClubBook book, ProgrammeRow programme, Edition edition, ImmutableArray<GridItem> all, IReadOnlyCollection<Guid> children)
    {
        var asked = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var child in children)
        {
            var worn = book.RankOf(child, programme.LadderId)?.Key;
            // Who wears none of these belts is going for the first after joining.
            var at = edition.Ranks.TakeWhile(r => r.Key != worn).Count();
            var next = edition.Ranks.Skip(at == edition.Ranks.Count ? 1 : at + 1).FirstOrDefault();
            foreach (var key in next?.Requirements.SelectMany(q => Named(q.Ask)).Distinct() ?? []) asked[key] = asked.GetValueOrDefault(key) + 1;
        }

        var most = all.Where(i => asked.ContainsKey(i.Item.Key)).Select((i, n) => (Item: i, Place: n))
            .OrderByDescending(i => asked[i.Item.Item.Key]).ThenBy(i => i.Place).Take(Most).OrderBy(i => i.Place).Select(i => i.Item);
        ImmutableArray<GridItem> shown = [.. most];
        return shown.Length > 0 ? shown : [.. all.Take(Most)];
    }

    private static IReadOnlyList<string> Named(Ask ask) => ask switch
    {
        Ask.AllOf of => of.Items,
        Ask.AnyOf of => of.Items,
        Ask.FromPool pool => pool.Pool,
        _ => [],
    };
}
