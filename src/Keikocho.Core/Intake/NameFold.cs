using System.Collections.Frozen;
using System.Text;

namespace Keikocho.Core.Intake;

/// <summary>Makes spellings of one name alike: no case, no marks, no hyphens, one blank between words.</summary>
public static class NameFold
{
    private static readonly FrozenDictionary<char, string> Bare =
        BareLetters.Table.SelectMany(line => line.Marked.Select(marked => (marked, line.Bare))).ToFrozenDictionary(pair => pair.marked, pair => pair.Bare);

    /// <summary>
    /// The folded text: "Ó Súilleabháin-Brown" is "o suilleabhain brown", "O'Neill" is "oneill". Letters of scripts without marks or
    /// case (kanji, kana, hangul) pass through. Folding a folded text changes nothing.
    /// </summary>
    public static string Fold(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var folded = new StringBuilder(text.Length);
        var blank = false;
        foreach (var letter in text)
        {
            if (IsMark(letter) || IsApostrophe(letter)) continue;
            string? bare = null;
            if (letter < 0x80 ? !char.IsAsciiLetterOrDigit(letter) : !Bare.TryGetValue(letter, out bare) && !char.IsLetterOrDigit(letter) && !char.IsSurrogate(letter) && !char.IsControl(letter) && letter != 'ー' && letter != '々')
            {
                blank = folded.Length > 0;
                continue;
            }
            if (char.IsControl(letter)) continue;
            if (blank) folded.Append(' ');
            blank = false;
            if (bare is not null) folded.Append(bare);
            else folded.Append(char.ToLowerInvariant(letter));
        }
        return folded.ToString();
    }

    /// <summary>The folded words in alphabetical order, so that "Brook, Ada" and "Ada Brook" are one key.</summary>
    public static string Key(string text)
    {
        var folded = Fold(text);
        if (!folded.Contains(' ', StringComparison.Ordinal)) return folded;
        var words = folded.Split(' ');
        Array.Sort(words, StringComparer.Ordinal);
        return string.Join(' ', words);
    }

    /// <summary>How many letters must be added, left out or changed to make one folded text the other; more than <paramref name="most"/> is said as <paramref name="most"/> + 1.</summary>
    public static int Distance(string one, string other, int most)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        ArgumentOutOfRangeException.ThrowIfNegative(most);
        if (Math.Abs(one.Length - other.Length) > most) return most + 1;
        var before = new int[other.Length + 1];
        var now = new int[other.Length + 1];
        for (var j = 0; j <= other.Length; j++) before[j] = j;
        for (var i = 1; i <= one.Length; i++)
        {
            now[0] = i;
            var least = i;
            for (var j = 1; j <= other.Length; j++)
            {
                now[j] = Math.Min(Math.Min(before[j], now[j - 1]) + 1, before[j - 1] + (one[i - 1] == other[j - 1] ? 0 : 1));
                least = Math.Min(least, now[j]);
            }
            if (least > most) return most + 1;
            (before, now) = (now, before);
        }
        return Math.Min(before[other.Length], most + 1);
    }

    private static bool IsMark(char letter) => letter is >= '\u0300' and <= '\u036F' or >= '\u200B' and <= '\u200F' or '\uFEFF';

    private static bool IsApostrophe(char letter) => letter is '\'' or '\u2018' or '\u2019' or '\u02BC' or '\u02BB' or '`' or '\u00B4';
}
