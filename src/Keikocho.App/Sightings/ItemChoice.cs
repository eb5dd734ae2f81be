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
/// <param name="From">The part that is chosen; null for what the children of the grid are going for.</param>
/// <param name="Shown">The items across.</param>
/// <param name="All">Every item that may be marked in this grid, in the order of the edition.</param>
public sealed record ItemChoice(ImmutableArray<ItemGroup> Groups, ItemGroup? From, ImmutableArray<GridItem> Shown, ImmutableArray<GridItem> All)
{
    /// <summary>So many items stand across.</summary>
    public const int Most = 8;

    private const int MostCells = 900;

    /// <summary>Chooses them.</summary>
    /// <param name="book">The club.</param>
    /// <param name="edition">The edition that holds.</param>
    /// <param name="asked">What was asked for.</param>
    /// <param name="rows">How many children the grid has.</param>
    /// <param name="goingFor">Keys of what these children are going for, the most wanted first.</param>
    public static ItemChoice Of(ClubBook book, Edition edition, GridAsked asked, int rows, IEnumerable<string> goingFor)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(edition);
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(goingFor);
        ImmutableArray<GridItem> all = [.. ItemsOf(book, edition).Where(i => SeenWords.IsAsked(i.Item.Kind) == asked.Words)];
        var byKey = all.ToDictionary(i => i.Item.Key, StringComparer.Ordinal);
        ImmutableArray<GridItem> Find(IEnumerable<string> keys) => [.. keys.Distinct().Where(byKey.ContainsKey).Select(k => byKey[k])];
        ImmutableArray<ItemGroup> groups =
        [
            .. new[] { new ItemGroup("first-course", "First course", Find(edition.FirstCourse)) }
                .Concat(edition.Units.Select(u => new ItemGroup($"unit/{u.Key}", $"Unit: {u.Name}", Find(u.Items))))
                .Concat(edition.Ranks.Select(r => new ItemGroup($"rank/{r.Key}", $"For {r.Name}", Find(r.Requirements.SelectMany(q => Named(q.Ask))))))
                .Where(g => g.Items.Length > 0),
        ];
        var most = Math.Clamp(MostCells / Math.Max(1, rows), 1, Most);
        var group = groups.FirstOrDefault(g => g.Value == asked.From);
        var chosen = Find(asked.Keys ?? []);
        if (chosen.Length == 0) chosen = group?.Items ?? Find(goingFor);
        if (chosen.Length == 0) chosen = all;
        return new ItemChoice(groups, group, [.. chosen.Take(most)], all);
    }

    /// <summary>The edition that holds on a day; before the first, the one that comes.</summary>
    public static Edition? EditionOf(ClubBook book, ProgrammeRow programme, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(programme);
        return (book.EditionOn(programme.LadderId, day) ?? book.NewestEdition(programme.LadderId))?.Edition;
    }

    /// <summary>Every item of an edition that may be marked; falls are falls and have a grid of their own.</summary>
    public static ImmutableArray<GridItem> ItemsOf(ClubBook book, Edition edition) => [.. AllOf(book, edition).Where(i => i.Item.Kind != ItemKind.Fall)];

    /// <summary>Every item of an edition, falls too, in its order.</summary>
    internal static IEnumerable<GridItem> AllOf(ClubBook book, Edition edition)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(edition);
        var critical = edition.Ranks.SelectMany(r => r.Requirements).Where(q => q.Critical).SelectMany(q => Named(q.Ask)).ToHashSet(StringComparer.Ordinal);
        return edition.Items.DistinctBy(i => i.Key)
            .Select(i => (Item: i, Id: book.ItemId(i.Key))).Where(i => i.Id is not null)
            .Select(i => new GridItem(i.Id!.Value, i.Item, critical.Contains(i.Item.Key) || i.Item.Safety));
    }

    private static IReadOnlyList<string> Named(Ask ask) => ask switch
    {
        Ask.AllOf of => of.Items,
        Ask.AnyOf of => of.Items,
        Ask.FromPool pool => pool.Pool,
        _ => [],
    };
}
