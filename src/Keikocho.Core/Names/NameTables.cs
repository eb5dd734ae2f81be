using System.Collections.Frozen;
using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Names;

/// <summary>How sure a key of letters is.</summary>
internal enum NameLevel
{
    /// <summary>The name itself in some way to write it.</summary>
    Name = 0,
    /// <summary>A spelling that is known for it.</summary>
    Spelling = 1,
    /// <summary>A joint voiced the other way.</summary>
    Voiced = 2,
}

/// <summary>The look-up tables behind a <see cref="NameIndex"/>.</summary>
internal sealed class NameTables
{
    /// <summary>What a key of letters means at the surest level that knows it.</summary>
    public sealed record Hits(NameLevel Level, int[] Names);

    public required IReadOnlyList<KnownName> Names { get; init; }

    /// <summary>For each name the listed one that it is counted as; itself where there is none.</summary>
    public required int[] Target { get; init; }

    public required FrozenDictionary<string, int[]> Exact { get; init; }

    public required FrozenDictionary<string, int[]> Kana { get; init; }

    public required FrozenDictionary<string, int[]> Kanji { get; init; }

    public required FrozenDictionary<string, int[]> BareKanji { get; init; }

    public required FrozenDictionary<string, Hits> Letters { get; init; }

    public required FrozenDictionary<string, int[]> Meanings { get; init; }

    public required FrozenDictionary<string, int[]> Beginnings { get; init; }

    public required NearNames Near { get; init; }

    public static NameTables Of(IReadOnlyList<KnownName> given)
    {
        NoGaps.In(given, "names");
        KnownName[] names = [.. given];
        Guard(names);
        var exact = Table(names, n => [n.Name.Trim()], StringComparer.OrdinalIgnoreCase);
        var target = Enumerable.Range(0, names.Length).Select(i => TargetOf(names, exact, i)).ToArray();
        var collected = new LetterKeys(names);
        var parting = new PartingLetters([.. collected.Plain.Where(p => names[p.Name].CountedAs is null)]);
        return new NameTables
        {
            Names = names,
            Target = target,
            Exact = exact,
            Kana = Table(names, n => n.Kana is null ? [] : [KanaText.Bare(n.Kana), .. n.Spellings.Where(s => KanaText.HasJapanese(s) && !KanaText.HasKanji(s)).Select(KanaText.Bare)]),
            Kanji = Table(names, KanjiOf),
            BareKanji = Table(names, n => KanjiOf(n).Select(KanaText.KanjiOnly)),
            Letters = collected.All.ToFrozenDictionary(p => p.Key, p => p.Value, StringComparer.Ordinal),
            Meanings = Table(names, MeaningsOf),
            Beginnings = collected.Beginnings.ToFrozenDictionary(p => p.Key, p => p.Value.ToArray(), StringComparer.Ordinal),
            // A name and those counted as it are one answer, so they are not rivals of each other.
            Near = new NearNames(collected.Known.Select(k => (k.Key, target[k.Name])), parting, collected.Words, names.Length),
        };
    }

    /// <summary>How a meaning is compared: words without case, marks and punctuation.</summary>
    public static string MeaningKey(string meaning) => NameFold.Fold(meaning);

    private static void Guard(KnownName[] names)
    {
        var seen = new HashSet<(string, string)>();
        for (var i = 0; i < names.Length; i++)
        {
            if (string.IsNullOrWhiteSpace(names[i].Name))
                throw new ArgumentException($"Number {i + 1} of the names has no name; write one.", nameof(names));
            NoGaps.In(names[i].Spellings, $"spellings of {names[i].Name}");
            if (!seen.Add((names[i].Name.Trim().ToUpperInvariant(), NameWords.Apart(names[i]))))
                throw new ArgumentException($"{names[i].Name} is among the names twice, and nothing tells the two apart; take one out, or give each its meaning.", nameof(names));
        }
    }

    private static int TargetOf(KnownName[] names, FrozenDictionary<string, int[]> exact, int at)
    {
        if (names[at].CountedAs is not { } listed)
            return at;
        var found = exact.TryGetValue(listed.Trim(), out var all) ? all.Where(i => names[i].CountedAs is null).ToArray() : [];
        return found.Length == 1
            ? found[0]
            : throw new ArgumentException(
                $"{names[at].Name} is counted as {listed}, which is {(found.Length == 0 ? "not among the listed names" : "two names")}; mend it.", nameof(names));
    }

    private static IEnumerable<string> KanjiOf(KnownName name) =>
        new[] { name.Kanji }.Concat(name.Spellings).OfType<string>().Where(KanaText.HasKanji).Select(KanaText.Bare);

    private static IEnumerable<string> MeaningsOf(KnownName name)
    {
        foreach (var part in name.Meaning?.Split(';') ?? [])
        {
            yield return MeaningKey(part);
            var open = part.IndexOf('(', StringComparison.Ordinal);
            var close = part.LastIndexOf(')');
            if (open >= 0 && close > open)
                yield return MeaningKey(part[..open] + part[(close + 1)..]);
        }
    }

    private static FrozenDictionary<string, int[]> Table(
        KnownName[] names, Func<KnownName, IEnumerable<string>> keys, StringComparer? comparer = null) =>
        Enumerable.Range(0, names.Length)
            .SelectMany(i => keys(names[i]).Where(k => k.Length > 0).Distinct(StringComparer.Ordinal).Select(k => (Key: k, Name: i)))
            .GroupBy(p => p.Key, comparer ?? StringComparer.Ordinal)
            .ToFrozenDictionary(g => g.Key, g => g.Select(p => p.Name).Distinct().ToArray(), comparer ?? StringComparer.Ordinal);
}
