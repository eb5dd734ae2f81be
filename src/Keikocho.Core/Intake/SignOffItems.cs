using Keikocho.Core.Names;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Intake;

/// <summary>What a heading of a sign-off grid may mean.</summary>
/// <param name="Candidates">The items, in the syllabus's order; empty where it is none that is known.</param>
/// <param name="Certain">Exactly this item.</param>
/// <param name="Written">The heading is the item's own name but for case, marks, hyphens and blanks.</param>
/// <param name="Likely">Of several, the one that is the bare technique; null where there is none.</param>
internal sealed record ItemsMeant(IReadOnlyList<Item> Candidates, bool Certain, bool Written = false, Item? Likely = null)
{
    internal static ItemsMeant None { get; } = new([], false);
}

/// <summary>Finds the item that a heading of a sign-off grid means.</summary>
internal sealed class SignOffItems
{
    private const int LongestHeading = 120;
    private const int FewestLetters = 3;
    private const int MostByWords = 8;

    private readonly IReadOnlyList<Item> items;
    private readonly NameIndex techniques;
    private readonly Dictionary<string, List<Item>> byName = new(StringComparer.Ordinal);
    // A technique that is counted as another one (kuzure-yoko-shiho-gatame as yoko-shiho-gatame) is an item of its own all the same.
    private readonly Dictionary<string, List<Item>> byOwnName = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Item>> byTechnique = new(StringComparer.Ordinal);
    private readonly List<(Item Item, string Words)> byWords = [];
    private readonly Dictionary<string, ItemsMeant> found = new(StringComparer.Ordinal);

    internal SignOffItems(IReadOnlyList<Item> items, NameIndex techniques)
    {
        this.items = items;
        this.techniques = techniques;
        foreach (var item in items)
        {
            Add(byName, Joined(item.Name), item);
            if (item.Technique is { } technique)
            {
                var one = techniques.Resolve(technique) as NameOutcome.One;
                Add(byOwnName, NameFold.Fold(one?.CountedFrom ?? one?.Name ?? technique), item);
                Add(byTechnique, Canonical(technique), item);
            }

            byWords.Add((item, $"{Joined(item.Name)} {item.Kind.ToString().ToLowerInvariant()}"));
        }
    }

    /// <summary>The items that a heading may mean.</summary>
    internal ItemsMeant Find(string heading)
    {
        if (found.TryGetValue(heading, out var known)) return known;
        var meant = heading.Length > LongestHeading || heading.Count(char.IsLetter) < FewestLetters && !heading.Any(letter => letter >= '\u3040') ? ItemsMeant.None : Look(heading);
        found.Add(heading, meant);
        return meant;
    }

    private ItemsMeant Look(string heading)
    {
        if (byName.TryGetValue(Joined(heading), out var exact)) return new(exact, exact.Count == 1, Written: true);
        switch (techniques.Resolve(heading))
        {
            case NameOutcome.One own when byOwnName.TryGetValue(NameFold.Fold(own.CountedFrom ?? own.Name), out var forms):
                return Forms(forms);
            case NameOutcome.One one when byTechnique.TryGetValue(Canonical(one.Name), out var counted):
                return Forms(counted);
            case NameOutcome.Several several:
                var any = several.Names.SelectMany(name => byTechnique.GetValueOrDefault(Canonical(name.Name), [])).ToHashSet();
                if (any.Count > 0) return new([.. items.Where(any.Contains)], false);
                break;
        }

        // "Tate shiho escape", "O goshi moving": every word of the heading stands in the item's name, or is its kind.
        var words = NameFold.Fold(heading).Split(' ').Where(word => word.Length > 1).ToList();
        if (words.Count < 2) return ItemsMeant.None;
        var holding = byWords.Where(one => words.TrueForAll(word => one.Words.Contains(word, StringComparison.Ordinal))).Select(one => one.Item).ToList();
        return holding.Count is > 0 and <= MostByWords ? new(holding, false) : ItemsMeant.None;
    }

    private static ItemsMeant Forms(List<Item> forms) => new(forms, forms.Count == 1, Likely: forms.Find(item => Joined(item.Name) == Joined(item.Technique!)));

    private string Canonical(string technique) => techniques.Resolve(technique) is NameOutcome.One one ? NameFold.Fold(one.Name) : NameFold.Fold(technique);

    private static string Joined(string text) => NameFold.Fold(text).Replace(" ", "", StringComparison.Ordinal);

    private static void Add(Dictionary<string, List<Item>> index, string key, Item item)
    {
        if (!index.TryGetValue(key, out var list)) index.Add(key, list = []);
        list.Add(item);
    }
}
