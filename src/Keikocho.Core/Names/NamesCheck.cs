using Keikocho.Core.Intake;

namespace Keikocho.Core.Names;

/// <summary>
/// Judges an answer about names by comparing each spelling with each name, letter by letter, on the bare letters that stand on the paper:
/// without keys, kana rules or tables of the sum.
/// </summary>
public static class NamesCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(NamesSnapshot snapshot, NamesAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        var names = snapshot.Names ?? [];
        if (!answer.Resolved.Select(r => r.Written).SequenceEqual(snapshot.Written))
            objections.Add("The answers are the spellings of the question, each once and in its order.");
        if (answer.One + answer.Several + answer.None != answer.Resolved.Count
            || answer.One != answer.Resolved.Count(r => r.Outcome is NameOutcome.One)
            || answer.None != answer.Resolved.Count(r => r.Outcome is NameOutcome.None))
            objections.Add("The three counts are those of the answers.");
        if (answer.Reasons.Count != answer.Resolved.Count + 1 || !answer.Reasons.All(r => r.Sentence.EndsWith('.')))
            objections.Add("Each spelling has its sentence, and the counts have one.");
        var bare = names.Select(n => (Target: Target(n), Spellings: Spellings(n).Distinct().ToArray())).ToArray();
        foreach (var resolved in answer.Resolved)
            objections.AddRange(OfOne(resolved, names, bare).Select(o => $"\"{resolved.Written}\": {o}"));
        return objections;
    }

    private static IEnumerable<string> OfOne(NameResolved resolved, IReadOnlyList<KnownName> names, (string Target, string[] Spellings)[] bare)
    {
        var letters = Bare(resolved.Written);
        var same = letters.Length == 0
            ? []
            : names.Zip(bare).Where(p => Bare(p.First.Name) == letters || Bare(p.First.Kana ?? "") == letters || Bare(p.First.Kanji ?? "") == letters)
                .Select(p => p.Second.Target).Distinct(StringComparer.OrdinalIgnoreCase).ToArray();
        var literal = names.Where(n => string.Equals(n.Name.Trim(), resolved.Written.Trim(), StringComparison.OrdinalIgnoreCase)).ToArray();
        switch (resolved.Outcome)
        {
            case NameOutcome.None:
                if (same.Length > 0)
                    yield return $"it is a listed name, {same[0]}.";
                break;
            case NameOutcome.One one:
                if (!names.Any(n => n.Name == one.Name && n.CountedAs is null))
                    yield return $"{one.Name} is not a listed name.";
                if (string.IsNullOrWhiteSpace(one.How))
                    yield return "it does not say how the name was found.";
                if (same.Length > 0 && !same.Contains(one.Name, StringComparer.OrdinalIgnoreCase))
                    yield return $"it is {same[0]}, letter for letter, and not {one.Name}.";
                if (literal.Select(n => (n.Kanji, n.Meaning, Target(n))).Distinct().Count() > 1)
                    yield return "two words are spelt so, and one was chosen.";
                var byMeaning = names.Any(n => n.Name == one.Name && Bare(n.Meaning ?? "").Contains(letters, StringComparison.Ordinal));
                if (letters.Length > 0 && same.Length == 0 && !byMeaning && Rival(letters, one.Name, bare) is { } rival)
                    yield return $"{rival} is nearer than {one.Name} and was passed over.";
                break;
            case NameOutcome.Several several:
                if (several.Names.Count == 0 || several.Names.Distinct().Count() != several.Names.Count)
                    yield return "the few names are at least one, and each is there once.";
                if (several.Names.Any(c => !names.Any(n => n.Name == c.Name && n.CountedAs is null) || string.IsNullOrWhiteSpace(c.Apart)))
                    yield return "each of the few is a listed name and says what tells it apart.";
                if (literal.Length > 0 && !literal.All(n => several.Names.Any(c => string.Equals(c.Name, Target(n), StringComparison.OrdinalIgnoreCase))))
                    yield return "a name that is spelt so is missing among the few.";
                break;
        }
    }

    /// <summary>A name whose letters are nearer than those of the chosen one.</summary>
    private static string? Rival(string letters, string chosen, (string Target, string[] Spellings)[] bare)
    {
        int Nearest(IEnumerable<(string Target, string[] Spellings)> among) =>
            among.SelectMany(b => b.Spellings).Select(s => NameFold.Distance(letters, s, 3)).DefaultIfEmpty(4).Min();

        bool IsChosen((string Target, string[] Spellings) b) => string.Equals(b.Target, chosen, StringComparison.OrdinalIgnoreCase);
        var own = Nearest(bare.Where(IsChosen));
        if (own == 0)
            return null;
        var other = bare.Where(b => !IsChosen(b)).Select(b => (b.Target, Distance: Nearest([b]))).OrderBy(b => b.Distance).FirstOrDefault();

        // A chosen name far from the letters was found by its meaning or in kanji, unless another one is almost what is written.
        return other.Target is not null && (own <= 2 ? other.Distance < own : other.Distance <= 1) ? other.Target : null;
    }

    private static string Target(KnownName name) => name.CountedAs ?? name.Name;

    private static IEnumerable<string> Spellings(KnownName name)
    {
        foreach (var spelling in name.Spellings.Append(name.Name))
            yield return Bare(spelling);
        if (name.Kana is { } kana)
            yield return Bare(Romanise.Of(kana, RomajiSystem.Letters));
    }

    private static string Bare(string text) => NameFold.Fold(text).Replace(" ", "", StringComparison.Ordinal);
}
