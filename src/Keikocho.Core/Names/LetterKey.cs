using Keikocho.Core.Intake;

namespace Keikocho.Core.Names;

/// <summary>
/// Makes spellings alike whose difference never means anything: case, hyphens, blanks, apostrophes, marks on vowels, Kunrei letters, m or
/// n before b, m and p. It touches neither length nor voicing: those mean something, and only the kana says what.
/// </summary>
internal static class LetterKey
{
    /// <summary>Longest spelling that is looked at; nothing that is known is half as long.</summary>
    public const int MostLetters = 96;

    /// <summary>Room that a key may need: each letter may become two.</summary>
    public const int Room = 2 * MostLetters;

    /// <summary>The key of a spelling; empty where it has no Latin letter or is too long.</summary>
    public static string Of(string spelling)
    {
        Span<char> room = stackalloc char[Room];
        return new string(room[..Write(spelling, room)]);
    }

    /// <summary>Writes the key into <paramref name="key"/> and says how long it is.</summary>
    public static int Write(string spelling, Span<char> key)
    {
        Span<char> letters = stackalloc char[MostLetters];
        return Alike(letters[..WriteBare(spelling, letters)], key);
    }

    /// <summary>Writes the letters as they stand, without case and marks alone, and says how many there are.</summary>
    public static int WriteBare(string spelling, Span<char> letters)
    {
        if (spelling.Length > MostLetters)
            return 0;
        var length = Letters(spelling, letters);
        if (length < 0)
        {
            // Marked letters are rare, so they may cost a string. A long e is written ei in every system without marks.
            var bare = NameFold.Fold(spelling.Replace("ē", "ei", StringComparison.Ordinal).Replace("ê", "ei", StringComparison.Ordinal)
                .Replace("Ē", "ei", StringComparison.Ordinal).Replace("Ê", "ei", StringComparison.Ordinal));
            if (bare.Length > MostLetters)
                return 0;
            length = Math.Max(0, Letters(bare, letters));
        }

        return length;
    }

    /// <summary>The small letters and digits alone; -1 when a letter has a mark.</summary>
    private static int Letters(string spelling, Span<char> letters)
    {
        var length = 0;
        foreach (var raw in spelling)
        {
            // Full-width letters as a Japanese keyboard makes them.
            var letter = raw is >= '\uFF01' and <= '\uFF5E' ? (char)(raw - 0xFEE0) : raw;
            if (char.IsAsciiLetterOrDigit(letter))
                letters[length++] = char.ToLowerInvariant(letter);
            else if (letter is >= '\u00C0' and <= '\u036F' or >= '\u1E00' and <= '\u1EFF')
                return -1;
        }

        return length;
    }

    private static int Alike(ReadOnlySpan<char> from, Span<char> to)
    {
        var n = 0;
        for (var i = 0; i < from.Length; i++)
        {
            var letter = from[i];
            var next = i + 1 < from.Length ? from[i + 1] : '\0';
            switch (letter)
            {
                case 's' when next is 'i' or 'y':
                    to[n++] = 's';
                    to[n++] = 'h';
                    i += next == 'y' ? 1 : 0;
                    break;
                case 't' when next is 'i' or 'y':
                    to[n++] = 'c';
                    to[n++] = 'h';
                    i += next == 'y' ? 1 : 0;
                    break;
                case 't' when next is 'u':
                    to[n++] = 't';
                    to[n++] = 's';
                    break;
                case 'c' when next is 'c':
                    to[n++] = 't';
                    break;
                case 'z' or 'd' when next is 'i' or 'y':
                    to[n++] = 'j';
                    i += next == 'y' ? 1 : 0;
                    break;
                case 'd' when next is 'z' or 'j':
                    break;
                case 'd' when next is 'u':
                    to[n++] = 'z';
                    break;
                case 'j' when next is 'y':
                    to[n++] = 'j';
                    i++;
                    break;
                case 'h' when next is 'u' && (n == 0 || to[n - 1] is not ('s' or 'c')):
                    to[n++] = 'f';
                    break;
                case 'm' when next is 'b' or 'm' or 'p':
                    to[n++] = 'n';
                    break;
                case 'w' when next is 'o':
                    break;
                default:
                    to[n++] = letter;
                    break;
            }
        }

        return n;
    }
}
