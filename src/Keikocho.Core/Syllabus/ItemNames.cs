using Keikocho.Core.Intake;
using Keikocho.Core.Names;

namespace Keikocho.Core.Syllabus;

/// <summary>Which techniques an item names, so that a rule finds them in another spelling.</summary>
internal sealed class ItemNames
{
    // "Ude-hishigi-juji-gatame" has four words, and a few names of clubs are longer.
    private const int MostWords = 6;
    private readonly NameIndex? index;
    private readonly Dictionary<string, string> countedAs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HashSet<string>> known = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> own = new(StringComparer.Ordinal);

    public ItemNames(Edition edition, NameIndex? index)
    {
        this.index = index;
        foreach (var own in edition.Techniques ?? [])
        {
            if (own.CountedAs is { } listed)
                countedAs[Bare(own.Name)] = listed;
        }

        foreach (var name in edition.Items.OfType<Item>().Where(i => i.Kind is not (ItemKind.Word or ItemKind.Question)).SelectMany(Techniques).Concat((edition.Techniques ?? []).Select(t => t.Name)))
        {
            if (!string.IsNullOrWhiteSpace(name))
                own.TryAdd(Bare(name), name);
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

    /// <summary>Whether a rule that says <paramref name="said"/> means the technique: the same one, or one of the class that the rule says.</summary>
    public bool Means(string said, string technique) =>
        Alike(said, technique) || Listed(technique).Any(name => TechniqueClasses.IsSaidBy(Bare(said), name.Class));

    /// <summary>The kinds that a technique may be, by the name library or, where that has none of the name, by how it ends.</summary>
    public IReadOnlyList<ItemKind> Kinds(string technique)
    {
        ItemKind[] kinds = [.. Listed(technique).Select(name => TechniqueClasses.KindOf(name.Class)).OfType<ItemKind>().Distinct()];
        return kinds.Length > 0 ? kinds
            : countedAs.TryGetValue(Bare(technique), out var listed) && listed != technique ? Kinds(listed)
            : TechniqueClasses.ByEnding(Bare(technique));
    }

    /// <summary>
    /// Techniques that a text names, in its order, the longest name first where one is part of another. Names are looked for among the
    /// library, the edition and <paramref name="also"/>; nothing is guessed from slips of letters.
    /// </summary>
    public IReadOnlyList<string> In(string text, IReadOnlyList<string> also)
    {
        var words = NameFold.Fold(text).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var found = new List<string>();
        for (var i = 0; i < words.Length;)
        {
            var (name, length) = At(words, i, also);
            i += length;
            if (name is not null && !found.Contains(name))
                found.Add(name);
        }

        return found;
    }

    private (string? Name, int Length) At(string[] words, int at, IReadOnlyList<string> also)
    {
        for (var length = Math.Min(MostWords, words.Length - at); length > 0; length--)
        {
            var written = string.Join(' ', words, at, length);
            var bare = written.Replace(" ", "", StringComparison.Ordinal);
            if (own.TryGetValue(bare, out var name) || (name = also.FirstOrDefault(a => Bare(a) == bare)) is not null)
                return (name, length);
            if (index?.Surely(written) is [var listed, ..])
                return (listed.Name, length);
        }

        return (null, 1);
    }

    private IEnumerable<KnownName> Listed(string technique) => index is null ? []
        : countedAs.TryGetValue(Bare(technique), out var listed) ? index.Surely(technique).Concat(index.Surely(listed))
        : index.Surely(technique);

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
