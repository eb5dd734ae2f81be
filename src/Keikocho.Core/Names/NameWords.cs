using Keikocho.Core.Intake;

namespace Keikocho.Core.Names;

/// <summary>How a name was found and what tells two apart, in plain words.</summary>
internal static class NameWords
{
    public const string AsListed = "as it is listed";
    public const string Kana = "written in kana";
    public const string Kanji = "written in kanji";
    public const string KanjiWithKana = "written in kanji with other kana";
    public const string Spelling = "a spelling that is known for it";
    public const string Voiced = "with a joint voiced the other way";
    public const string Meaning = "by its meaning";

    /// <summary>How a spelling with other letters differs from the name.</summary>
    public static string Letters(string written, string name)
    {
        var bare = Squeeze(written);
        var plain = Squeeze(name);
        if (bare == plain)
        {
            if (HasMark(written))
                return "with marks on long vowels";
            if (!written.Contains('-', StringComparison.Ordinal))
                return "written without hyphens";
            return KanaElements.Parts(written).Length < KanaElements.Parts(name).Length ? "written with fewer hyphens" : "with the hyphens elsewhere";
        }

        return LetterKey.Of(written) == LetterKey.Of(name) ? "with other letters for the same sounds" : "with long vowels written out";
    }

    /// <summary>How a slip was forgiven.</summary>
    public static string Near(int distance) =>
        $"{(distance == 1 ? "one letter" : "two letters")} from it, and no other name is as near";

    /// <summary>What tells a name apart: meaning, kanji, class and what it is counted as, as far as they are known.</summary>
    public static string Apart(KnownName name)
    {
        var known = new[] { name.Meaning, name.Kanji ?? name.Kana, name.Class }.Where(p => !string.IsNullOrWhiteSpace(p)).ToArray();
        var apart = known.Length == 0 ? $"written {name.Name}" : string.Join(", ", known);
        return name.CountedAs is { } listed ? $"{apart}; {name.Name} counted as {listed}" : apart;
    }

    private static string Squeeze(string text) => NameFold.Fold(text).Replace(" ", "", StringComparison.Ordinal);

    private static bool HasMark(string text) => text.Any(letter => letter is >= '\u00C0' and <= '\u036F');
}
