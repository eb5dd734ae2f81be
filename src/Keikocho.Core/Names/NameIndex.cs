using System.Collections.Frozen;

namespace Keikocho.Core.Names;

/// <summary>Names made ready for finding; made once, used for many spellings, and safe to share.</summary>
public sealed class NameIndex
{
    private static readonly NameOutcome.None Nothing = new();
    private readonly NameTables tables;
    private readonly FrozenDictionary<string, NameTables.Hits>.AlternateLookup<ReadOnlySpan<char>> letters;
    private readonly FrozenDictionary<string, int[]>.AlternateLookup<ReadOnlySpan<char>> beginnings;

    private NameIndex(NameTables tables)
    {
        this.tables = tables;
        letters = tables.Letters.GetAlternateLookup<ReadOnlySpan<char>>();
        beginnings = tables.Beginnings.GetAlternateLookup<ReadOnlySpan<char>>();
    }

    /// <summary>The names, in the order in which they were given.</summary>
    public IReadOnlyList<KnownName> Names => tables.Names;

    /// <summary>Makes the index.</summary>
    /// <exception cref="ArgumentException">Two names are alike, or one is counted as a name that is not there.</exception>
    public static NameIndex Of(IReadOnlyList<KnownName> names) => new(NameTables.Of(names));

    /// <summary>What <paramref name="written"/> may mean.</summary>
    /// <remarks>
    /// The steps, and the first that finds anything answers: the listed spelling; kana; kanji; the same letters in another way to write
    /// them; a known spelling; a joint voiced the other way; the meaning; the beginning of names; a slip of one or two letters. Beginnings
    /// are never taken for one name, and slips only when no other name is near and the letters do not part two real names.
    /// </remarks>
    public NameOutcome Resolve(string written)
    {
        ArgumentNullException.ThrowIfNull(written);
        var text = written.AsSpan().Trim();
        if (text.Length is 0 or > LetterKey.MostLetters)
            return Nothing;
        if (tables.Exact.TryGetValue(text.Length == written.Length ? written : text.ToString(), out var listed))
            return Outcome(listed, NameWords.AsListed);

        var spelling = written;
        var script = "";
        if (KanaText.HasJapanese(written))
        {
            if (Japanese(written) is { } outcome)
                return outcome;
            if (KanaText.HasKanji(written))
                return Nothing;
            spelling = Romanise.Of(KanaText.Bare(written), RomajiSystem.Letters);
            script = NameWords.Kana + ", ";
        }

        Span<char> room = stackalloc char[LetterKey.Room];
        ReadOnlySpan<char> key = room[..LetterKey.Write(spelling, room)];
        if (key.Length > 0 && letters.TryGetValue(key, out var hits))
            return OfLetters(written, script, hits);
        if (tables.Meanings.TryGetValue(NameTables.MeaningKey(spelling), out var meant))
            return Outcome(meant, NameWords.Meaning);
        if (key.Length == 0)
            return Nothing;
        if (beginnings.TryGetValue(key, out var begun))
            return Several(begun);
        Span<char> bare = stackalloc char[LetterKey.MostLetters];
        if (tables.Near.Search(key, bare[..LetterKey.WriteBare(spelling, bare)]) is not { } near)
            return Nothing;
        return near.Sure ? Outcome(near.Names, script + NameWords.Near(near.Distance)) : Several(near.Names);
    }

    /// <summary>The names that a spelling is, beginnings and slips of letters left out: for words that stand in a text. Each with what it is counted as.</summary>
    internal IReadOnlyList<KnownName> Surely(string written)
    {
        var text = written.Trim();
        if (text.Length is 0 or > LetterKey.MostLetters)
            return [];
        if (tables.Exact.TryGetValue(text, out var listed))
            return Targets(listed);
        if (KanaText.HasJapanese(text))
            return tables.Kana.TryGetValue(KanaText.Bare(text), out var sounded) ? Targets(sounded) : tables.Kanji.TryGetValue(KanaText.Bare(text), out var drawn) ? Targets(drawn) : [];
        Span<char> room = stackalloc char[LetterKey.Room];
        ReadOnlySpan<char> key = room[..LetterKey.Write(text, room)];
        if (key.Length > 0 && letters.TryGetValue(key, out var hits))
            return Targets(hits.Names);
        return tables.Meanings.TryGetValue(NameTables.MeaningKey(text), out var meant) ? Targets(meant) : [];
    }

    private KnownName[] Targets(IReadOnlyList<int> found) => [.. found.Select(i => tables.Target[i]).Distinct().Select(i => tables.Names[i])];

    /// <summary>The name itself, capitals or not; null when it is not one of them, and when two of them are spelt so.</summary>
    public KnownName? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return tables.Exact.TryGetValue(name.Trim(), out var found) && found.Length == 1 ? tables.Names[found[0]] : null;
    }

    private NameOutcome? Japanese(string written)
    {
        var bare = KanaText.Bare(written);
        if (tables.Kana.TryGetValue(bare, out var sounded))
            return Outcome(sounded, NameWords.Kana);
        if (tables.Kanji.TryGetValue(bare, out var drawn))
            return Outcome(drawn, NameWords.Kanji);
        if (!KanaText.HasKanji(bare) || !tables.BareKanji.TryGetValue(KanaText.KanjiOnly(bare), out var among))
            return null;

        // Between the kanji kana may be written or left out, but what is written must be heard in the name.
        var fitting = among.Where(n => KanaText.IsHeard(bare, tables.Names[n].Kana)).ToArray();
        return fitting.Length == 0 ? null : Outcome(fitting, NameWords.KanjiWithKana);
    }

    private NameOutcome OfLetters(string written, string script, NameTables.Hits hits)
    {
        var how = hits.Level switch
        {
            NameLevel.Name when script.Length > 0 => NameWords.Kana,
            NameLevel.Name => NameWords.Letters(written, tables.Names[hits.Names[0]].Name),
            NameLevel.Spelling => script + NameWords.Spelling,
            _ => script + NameWords.Voiced,
        };
        return Outcome(hits.Names, how);
    }

    private NameOutcome Outcome(IReadOnlyList<int> found, string how)
    {
        var target = tables.Target[found[0]];
        for (var i = 1; i < found.Count; i++)
        {
            if (tables.Target[found[i]] != target)
                return Several(found);
        }

        var name = tables.Names[found[0]];
        if (found[0] == target)
            return new NameOutcome.One(name.Name, how);
        var counted = $"{name.Name} is counted as {tables.Names[target].Name}";
        return new NameOutcome.One(tables.Names[target].Name, how == NameWords.AsListed ? counted : $"{how}; {counted}", name.Name);
    }

    private NameOutcome.Several Several(IReadOnlyList<int> found)
    {
        var candidates = new List<Candidate>(found.Count);
        var said = new HashSet<(int, string)>();
        foreach (var at in found)
        {
            var candidate = new Candidate(tables.Names[tables.Target[at]].Name, NameWords.Apart(tables.Names[at]));
            if (said.Add((tables.Target[at], candidate.Apart)))
                candidates.Add(candidate);
        }

        return new NameOutcome.Several(candidates);
    }
}
