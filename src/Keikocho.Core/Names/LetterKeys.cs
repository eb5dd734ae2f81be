namespace Keikocho.Core.Names;

/// <summary>Gathers every key of letters that the names have.</summary>
internal sealed class LetterKeys
{
    private readonly Dictionary<string, IReadOnlyList<string>> elements = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (NameLevel Level, List<int> Names)> all = new(StringComparer.Ordinal);

    public LetterKeys(IReadOnlyList<KnownName> names)
    {
        var parts = names.Select(ElementsOf).ToArray();

        // The long vowels of 十字 are known from Nami-jūji-jime; a spelling without kana borrows them.
        foreach (var element in parts.SelectMany(p => p))
            elements.TryAdd(LetterKey.Of(element[0]), element);
        for (var i = 0; i < names.Count; i++)
        {
            if (parts[i].Length == 0)
            {
                // A spelling that is not what the kana sounds like, as matte for まて: the kana counts as well, without boundaries.
                parts[i] = Borrowed(names[i].Name);
                if (names[i].Kana is { } kana)
                    AddAll([NameKeys.OfElement(kana)], i, NameLevel.Name);
            }

            Plain.Add((LetterKey.Of(names[i].Name), i));
            Add(names[i].Name, i, NameLevel.Name);
            AddAll(parts[i], i, NameLevel.Name);
            AddBeginnings(parts[i], i);
            foreach (var spelling in names[i].Spellings)
            {
                Add(spelling, i, NameLevel.Spelling);
                AddAll(Borrowed(spelling), i, NameLevel.Spelling);
            }
        }

        for (var i = 0; i < names.Count; i++)
        {
            foreach (var turned in NameKeys.VoicedOtherwise(parts[i]).Concat(names[i].Spellings.SelectMany(s => NameKeys.VoicedOtherwise(Borrowed(s)))))
            {
                AddAll(turned, i, NameLevel.Voiced);
                foreach (var word in turned.SelectMany(t => t))
                    Words.Add(LetterKey.Of(word));
            }

            foreach (var word in parts[i].SelectMany(p => p))
                Words.Add(LetterKey.Of(word));
        }
    }

    /// <summary>The key of each name as it is listed.</summary>
    public List<(string Key, int Name)> Plain { get; } = [];

    /// <summary>The words that the names are made of.</summary>
    public WholeWords Words { get; } = new();

    /// <summary>The first words of names that have more.</summary>
    public Dictionary<string, List<int>> Beginnings { get; } = new(StringComparer.Ordinal);

    /// <summary>Each key with the names that it means at its surest level.</summary>
    public IEnumerable<KeyValuePair<string, NameTables.Hits>> All =>
        all.Select(p => KeyValuePair.Create(p.Key, new NameTables.Hits(p.Value.Level, [.. p.Value.Names])));

    /// <summary>Each key with each of its names.</summary>
    public IEnumerable<(string Key, int Name)> Known => all.SelectMany(p => p.Value.Names.Select(n => (p.Key, n)));

    private static IReadOnlyList<string>[] ElementsOf(KnownName name) =>
        name.Kana is { } kana && KanaElements.Split(name.Name, kana) is { } split ? [.. split.Select(NameKeys.OfElement)] : [];

    private IReadOnlyList<string>[] Borrowed(string spelling) =>
        [.. KanaElements.Parts(spelling).Select(p => elements.GetValueOrDefault(LetterKey.Of(p)) ?? [LetterKey.Of(p)])];

    private void AddBeginnings(IReadOnlyList<string>[] parts, int name)
    {
        for (var count = 1; count < parts.Length; count++)
        {
            foreach (var beginning in NameKeys.Joined(parts.Take(count)).Select(LetterKey.Of).Where(k => k.Length > 0).Distinct())
            {
                if (!Beginnings.TryGetValue(beginning, out var begun))
                    Beginnings.Add(beginning, begun = []);
                if (!begun.Contains(name))
                    begun.Add(name);
            }
        }
    }

    private void AddAll(IReadOnlyList<string>[] parts, int name, NameLevel level)
    {
        foreach (var way in NameKeys.Joined(parts))
            Add(way, name, level);
    }

    private void Add(string way, int name, NameLevel level)
    {
        var key = LetterKey.Of(way);
        if (key.Length == 0)
            return;
        if (!all.TryGetValue(key, out var known) || level < known.Level)
            all[key] = (level, [name]);
        else if (level == known.Level && !known.Names.Contains(name))
            known.Names.Add(name);
    }
}
