using System.Collections.Frozen;

namespace Keikocho.Core.Intake;

/// <summary>Takes a whole name apart.</summary>
public static class NameParts
{
    // Words that begin a family name and belong to it; common practice, no source.
    private static readonly FrozenSet<string> Particles =
        new[] { "van", "von", "der", "den", "de", "del", "della", "di", "da", "dos", "du", "la", "le", "ter", "ten", "zu", "al", "el", "bin", "ibn", "st", "o", "mac", "mc" }.ToFrozenSet(StringComparer.Ordinal);

    /// <summary>The parts of a name when its own writing shows which is which; null when that has to be asked.</summary>
    /// <remarks>"Surname, Given" by the comma; a word in capitals is the family name; with kanji, kana or hangul the family name comes first.</remarks>
    public static (string Given, string Family)? Evident(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var comma = text.IndexOf(',', StringComparison.Ordinal);
        if (comma >= 0) return (Tidy(text[(comma + 1)..]), Tidy(text[..comma]));
        var words = Words(text);
        if (words.Length == 1) return (words[0], "");
        if (words.Length == 0) return ("", "");
        if (words[0].Any(IsEastAsian)) return (string.Join(' ', words[1..]), words[0]);
        var capitals = words.Where(IsCapitals).ToArray();
        if (capitals.Length > 0 && capitals.Length < words.Length)
            return (string.Join(' ', words.Where(word => !IsCapitals(word))), string.Join(' ', capitals));
        return null;
    }

    /// <summary>The parts of a name of two or more words under an order; particles (van, de la) stay with the family name.</summary>
    public static (string Given, string Family) Under(string text, bool givenFirst)
    {
        ArgumentNullException.ThrowIfNull(text);
        var words = Words(text);
        if (words.Length < 2) return (words.Length == 0 ? "" : words[0], "");
        if (!givenFirst)
        {
            var end = 1;
            while (end < words.Length - 1 && Particles.Contains(NameFold.Fold(words[end - 1]))) end++;
            return (string.Join(' ', words[end..]), string.Join(' ', words[..end]));
        }
        var from = words.Length - 1;
        for (var i = 1; i < words.Length - 1; i++)
            if (Particles.Contains(NameFold.Fold(words[i])))
            {
                from = i;
                break;
            }
        return (string.Join(' ', words[..from]), string.Join(' ', words[from..]));
    }

    private static string[] Words(string text) => text.Split([' ', '\t', '\u00A0', '\u3000'], StringSplitOptions.RemoveEmptyEntries);

    private static string Tidy(string text) => string.Join(' ', Words(text));

    private static bool IsCapitals(string word) => word.Count(char.IsLetter) >= 2 && !word.Any(char.IsLower) && word.Any(char.IsUpper);

    private static bool IsEastAsian(char letter) => letter is >= '\u3040' and <= '\u30FF' or >= '\u3400' and <= '\u9FFF' or >= '\uAC00' and <= '\uD7AF';
}
