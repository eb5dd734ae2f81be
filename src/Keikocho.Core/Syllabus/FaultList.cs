using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>The faults of one edition while they are found, and what several of the checks look up.</summary>
internal sealed class FaultList
{
    private readonly List<EditionFault> faults = [];
    private readonly Dictionary<string, Item> items = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> ranks = new(StringComparer.Ordinal);
    private readonly HashSet<string> units = new(StringComparer.Ordinal);

    public FaultList(Edition edition)
    {
        Edition = edition;
        foreach (var item in edition.Items)
        {
            if (item is not null)
                items.TryAdd(item.Key, item);
        }

        for (var i = 0; i < edition.Ranks.Count; i++)
        {
            if (edition.Ranks[i] is { } rank)
                ranks.TryAdd(rank.Key, i);
        }

        units.UnionWith(edition.Units.Where(u => u is not null).Select(u => u.Key));
    }

    public Edition Edition { get; }

    public IReadOnlyList<EditionFault> Faults => faults;

    public void Blocks(string path, string sentence) => faults.Add(new(path, sentence, true));

    public void Caution(string path, string sentence) => faults.Add(new(path, sentence, false));

    public void Text(string path, string? text, string sentence)
    {
        if (string.IsNullOrWhiteSpace(text))
            Blocks(path, sentence);
    }

    public void Range(string path, int? number, int least, int most, string what)
    {
        if (number is { } n && (n < least || n > most))
            Blocks(path, $"{what} is from {least} to {most}, not {n}; mend it.");
    }

    /// <summary>A key: there, well formed, and not there before.</summary>
    public void Key(string path, string? key, HashSet<string> seen, string what)
    {
        if (string.IsNullOrWhiteSpace(key))
            Blocks(path, $"{what} has no key; give it one.");
        else if (key.Any(c => !(char.IsLetterOrDigit(c) && !char.IsUpper(c)) && c != '-') || key[0] == '-' || key[^1] == '-')
            Blocks(path, $"The key \"{key}\" is lower-case words joined by hyphens; write it like \"o-goshi-moving\".");
        else if (!seen.Add(key))
            Blocks(path, $"Two have the key \"{key}\"; give one of them another.");
    }

    /// <summary>A list of keys of items: each there, none twice.</summary>
    public void Keys(string path, IReadOnlyList<string> keys, string whose)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < keys.Count; i++)
        {
            var at = $"{path}[{i}]";
            if (keys[i] is null || !items.ContainsKey(keys[i]))
                Blocks(at, $"{whose} names the item \"{keys[i]}\", which is not in the edition; add it or take the name out.");
            else if (!seen.Add(keys[i]))
                Blocks(at, $"{whose} names {Name(keys[i])} twice; take one out.");
        }
    }

    public bool Gap<T>(string path, T? there)
        where T : class
    {
        if (there is null)
            Blocks(path, "Nothing stands here; take the place out.");
        return there is null;
    }

    public Item? Item(string? key) => key is not null && items.TryGetValue(key, out var item) ? item : null;

    public int? Rank(string? key) => key is not null && ranks.TryGetValue(key, out var rank) ? rank : null;

    public bool HasUnit(string key) => units.Contains(key);

    public string Name(string key) => Item(key)?.Name is { Length: > 0 } name ? name : key;

    public IEnumerable<Item> Items(IEnumerable<string> keys) => keys.Select(Item).OfType<Item>();

    public static bool IsThrown(Item item) => item.Kind is ItemKind.Throw or ItemKind.Combination or ItemKind.Counter;

    public static string Places(IEnumerable<string> names) => Words.List([.. names]);
}
