using Keikocho.Core.Names;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Intake;

/// <summary>Finds the item that a heading of a sign-off grid means.</summary>
internal sealed class SignOffItems
{
    private readonly IReadOnlyList<Item> items;
    private readonly NameIndex techniques;
    private readonly Dictionary<string, List<Item>> byName = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Item>> byTechnique = new(StringComparer.Ordinal);

    internal SignOffItems(IReadOnlyList<Item> items, NameIndex techniques)
    {
        this.items = items;
        this.techniques = techniques;
        foreach (var item in items)
        {
            Add(byName, Joined(item.Name), item);
            if (item.Technique is { } technique) Add(byTechnique, Canonical(technique), item);
        }
    }

    /// <summary>The items it may be, in the syllabus's order, and whether it is certain. Empty: it is none that is known.</summary>
    internal (IReadOnlyList<Item> Candidates, bool Certain) Find(string heading)
    {
        if (byName.TryGetValue(Joined(heading), out var exact)) return (exact, exact.Count == 1);
        switch (techniques.Resolve(heading))
        {
            case NameOutcome.One one when byTechnique.TryGetValue(Canonical(one.Name), out var found):
                return (found, found.Count == 1);
            case NameOutcome.Several several:
                var any = several.Names.SelectMany(name => byTechnique.GetValueOrDefault(Canonical(name.Name), [])).ToHashSet();
                if (any.Count > 0) return ([.. items.Where(any.Contains)], false);
                break;
        }

        // "Kesa gatame escape", "O goshi moving": every word of the heading stands in the item's name.
        var words = NameFold.Fold(heading).Split(' ').Where(word => word.Length > 1).ToList();
        if (words.Count < 2) return ([], false);
        var holding = items.Where(item => words.TrueForAll(word => Joined(item.Name).Contains(word, StringComparison.Ordinal))).ToList();
        return holding.Count is > 0 and <= 8 ? (holding, false) : ([], false);
    }

    private string Canonical(string technique) => techniques.Resolve(technique) is NameOutcome.One one ? NameFold.Fold(one.Name) : NameFold.Fold(technique);

    private static string Joined(string text) => NameFold.Fold(text).Replace(" ", "", StringComparison.Ordinal);

    private static void Add(Dictionary<string, List<Item>> index, string key, Item item)
    {
        if (!index.TryGetValue(key, out var list)) index.Add(key, list = []);
        list.Add(item);
    }
}
