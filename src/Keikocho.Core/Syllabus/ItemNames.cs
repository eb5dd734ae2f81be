using Keikocho.Core.Intake;
using Keikocho.Core.Names;

namespace Keikocho.Core.Syllabus;

/// <summary>Which techniques an item names, so that a rule finds them in another spelling.</summary>
internal sealed class ItemNames
{
    private readonly NameIndex? index;
    private readonly Dictionary<string, string> countedAs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HashSet<string>> known = new(StringComparer.Ordinal);

    public ItemNames(Edition edition, NameIndex? index)
    {
        this.index = index;
        foreach (var own in edition.Techniques ?? [])
        {
            if (own.CountedAs is { } listed)
                countedAs[Bare(own.Name)] = listed;
        }
    }

    /// <summary>The techniques that an item is a form of or is made from.</summary>
    public static IEnumerable<string> Techniques(Item item)
    {
        if (item.Technique is { } technique)
            yield return technique;
        switch (item.Order)
        {
            case Order.Into into:
                yield return into.First;
                yield return into.Second;
                break;
            case Order.CounteredBy by:
                yield return by.Attack;
                yield return by.Counter;
                break;
            case Order.EscapeFrom escape:
                yield return escape.Hold;
                break;
            case Order.TurnoverInto { Hold: { } hold }:
                yield return hold;
                break;
        }
    }

    /// <summary>Whether two spellings may mean the same technique. Where a spelling may mean several, each of them counts: shut wins.</summary>
    public bool Alike(string one, string other) => Meant(one).Overlaps(Meant(other));

    private HashSet<string> Meant(string written)
    {
        lock (known)
        {
            if (known.TryGetValue(written, out var found))
                return found;
            var bare = Bare(written);
            var meant = new HashSet<string>(StringComparer.Ordinal) { bare };
            if (countedAs.TryGetValue(bare, out var listed))
                Add(meant, listed);
            Add(meant, written);
            known.Add(written, meant);
            return meant;
        }
    }

    private void Add(HashSet<string> meant, string name)
    {
        meant.Add(Bare(name));
        switch (index?.Resolve(name))
        {
            case NameOutcome.One one:
                meant.Add(Bare(one.Name));
                break;
            case NameOutcome.Several several:
                meant.UnionWith(several.Names.Select(candidate => Bare(candidate.Name)));
                break;
        }
    }

    // Without blanks, so that "O-soto-gari", "O soto gari" and "Osotogari" are one.
    private static string Bare(string name) => NameFold.Fold(name).Replace(" ", "", StringComparison.Ordinal);
}
