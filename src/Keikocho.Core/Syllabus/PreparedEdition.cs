using System.Runtime.CompilerServices;
using Keikocho.Core.Kernel;
using Keikocho.Core.Names;

namespace Keikocho.Core.Syllabus;

/// <summary>An edition made ready for finding: made once, used for the sheets of many children, and safe to share.</summary>
public sealed class PreparedEdition
{
    private readonly Dictionary<string, Item> items;
    private readonly Dictionary<string, SheetItem> plain;
    private readonly Dictionary<string, int> ranks;
    private readonly Dictionary<string, int> units;
    private readonly IReadOnlyList<Item>[] named;
    private readonly ItemNames names;

    // A list of sheets has the same rules for every child: their bars are found by the list itself, and go with it.
    private readonly ConditionalWeakTable<IReadOnlyList<AgeRule>, AgeBars> bars = [];

    private PreparedEdition(Edition edition, NameIndex? index)
    {
        Edition = edition;
        items = Keyed(edition.Items, item => item.Key, "items");
        plain = items.ToDictionary(i => i.Key, i => new SheetItem(i.Value), StringComparer.Ordinal);
        ranks = Places(edition.Ranks, rank => rank.Key, "ranks");
        units = Places(edition.Units, unit => unit.Key, "units");
        named = new IReadOnlyList<Item>[edition.Ranks.Count];
        for (var i = 0; i < named.Length; i++)
        {
            NoGaps.In(edition.Ranks[i].Requirements, "requirements");
            named[i] = [.. edition.Ranks[i].Requirements.SelectMany(r => Named(r.Ask)).Distinct(StringComparer.Ordinal).Select(Item)];
        }

        names = new ItemNames(edition, index);
    }

    /// <summary>The edition.</summary>
    public Edition Edition { get; }

    /// <summary>Makes an edition ready.</summary>
    /// <param name="edition">The edition.</param>
    /// <param name="names">Finds techniques of age rules in any spelling; without it only case, hyphens and marks are overlooked.</param>
    /// <exception cref="ArgumentException">Two items, ranks or units have the same key, or a rank names an item that is not there.</exception>
    public static PreparedEdition Of(Edition edition, NameIndex? names = null)
    {
        ArgumentNullException.ThrowIfNull(edition);
        return new PreparedEdition(edition, names);
    }

    internal Item Item(string key) => items.TryGetValue(key, out var item)
        ? item
        : throw new ArgumentException($"The edition names the item \"{key}\" but has no such item; add it or take the name out.");

    /// <summary>An item as most sheets have it; one record for all of them.</summary>
    internal SheetItem Plain(Item item) => plain[item.Key];

    internal bool Has(string key) => items.ContainsKey(key);

    internal int Rank(string key) => ranks.TryGetValue(key, out var place)
        ? place
        : throw new ArgumentException($"The edition has no rank \"{key}\"; name one of its ranks.");

    internal int Unit(string key) => units.TryGetValue(key, out var place)
        ? place
        : throw new ArgumentException($"The edition has no unit \"{key}\"; name one of its units.");

    /// <summary>What the requirements of one rank name by key, in their order, each once.</summary>
    internal IReadOnlyList<Item> NamedAt(int rank) => named[rank];

    internal ItemNames Names => names;

    internal AgeBars Bars(IReadOnlyList<AgeRule> rules) => bars.GetValue(rules, some => new AgeBars(some, Edition.Items, names));

    /// <summary>The keys that a requirement names itself.</summary>
    internal static IReadOnlyList<string> Named(Ask ask) => ask switch
    {
        Ask.AllOf all => all.Items,
        Ask.AnyOf any => any.Items,
        Ask.FromPool pool => pool.Pool,
        _ => [],
    };

    private static Dictionary<string, T> Keyed<T>(IReadOnlyList<T> list, Func<T, string> key, string what)
        where T : class
    {
        NoGaps.In(list, what);
        var found = new Dictionary<string, T>(list.Count, StringComparer.Ordinal);
        foreach (var one in list)
        {
            if (!found.TryAdd(key(one), one))
                throw new ArgumentException($"The edition has two {what} with the key \"{key(one)}\"; give one of them another.");
        }

        return found;
    }

    private static Dictionary<string, int> Places<T>(IReadOnlyList<T> list, Func<T, string> key, string what)
        where T : class
    {
        var keyed = Keyed(list, key, what);
        var places = new Dictionary<string, int>(keyed.Count, StringComparer.Ordinal);
        for (var i = 0; i < list.Count; i++)
            places.Add(key(list[i]), i);
        return places;
    }
}
