using System.Text;

namespace Keikocho.Core.Names;

/// <summary>Japanese script in a spelling.</summary>
internal static class KanaText
{
    /// <summary>Whether any letter is kana or kanji.</summary>
    public static bool HasJapanese(string text)
    {
        foreach (var letter in text)
        {
            if (letter >= '\u3040' && (Moras.IsKana(letter) || IsKanji(letter)))
                return true;
        }

        return false;
    }

    /// <summary>Whether any letter is a kanji.</summary>
    public static bool HasKanji(string text)
    {
        foreach (var letter in text)
        {
            if (IsKanji(letter))
                return true;
        }

        return false;
    }

    /// <summary>Hiragana for katakana, without blanks, hyphens, dots and whatever else is no letter.</summary>
    public static string Bare(string text)
    {
        var bare = new StringBuilder(text.Length);
        foreach (var letter in text)
        {
            // The marks of voicing may stand as signs of their own.
            if (char.IsLetterOrDigit(letter) || letter is >= '\u3099' and <= '\u309C')
                bare.Append(Moras.Hiragana(letter));
        }

        return bare.ToString();
    }

    /// <summary>The kanji alone.</summary>
    public static string KanjiOnly(string text) => string.Concat(text.Where(IsKanji));

    /// <summary>Whether the kana written between kanji occur in this order in the sound of the name.</summary>
    public static bool IsHeard(string bare, string? kana)
    {
        var at = 0;
        foreach (var letter in bare)
        {
            if (IsKanji(letter))
                continue;
            at = kana is null ? -1 : kana.IndexOf(letter, at);
            if (at < 0)
                return false;
            at++;
        }

        return true;
    }

    private static bool IsKanji(char letter) => letter is >= '\u3400' and <= '\u9FFF' or '々';
}
