namespace Keikocho.Core.Names;

/// <summary>Letters to add, leave out, change or swap with a neighbour to make one key the other.</summary>
internal static class LetterDistance
{
    /// <summary>The distance; more than <paramref name="most"/> is said as <paramref name="most"/> + 1.</summary>
    public static int Between(ReadOnlySpan<char> one, ReadOnlySpan<char> other, int most)
    {
        if (Math.Abs(one.Length - other.Length) > most)
            return most + 1;

        // What both begin and end with costs nothing, and is most of two spellings that are near.
        var head = one.CommonPrefixLength(other);
        one = one[head..];
        other = other[head..];
        while (one.Length > 0 && other.Length > 0 && one[^1] == other[^1])
        {
            one = one[..^1];
            other = other[..^1];
        }

        if (one.Length == 0 || other.Length == 0)
            return Math.Max(one.Length, other.Length);
        var width = other.Length + 1;
        if (width > LetterKey.Room)
            return most + 1;
        Span<int> rows = stackalloc int[3 * width];
        var twoBefore = rows[..width];
        var before = rows.Slice(width, width);
        var now = rows[(2 * width)..];
        for (var j = 0; j <= other.Length; j++)
            before[j] = j;
        for (var i = 1; i <= one.Length; i++)
        {
            now[0] = i;
            var least = i;
            for (var j = 1; j <= other.Length; j++)
            {
                var steps = Math.Min(Math.Min(before[j], now[j - 1]) + 1, before[j - 1] + (one[i - 1] == other[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && one[i - 1] == other[j - 2] && one[i - 2] == other[j - 1])
                    steps = Math.Min(steps, twoBefore[j - 2] + 1);
                now[j] = steps;
                least = Math.Min(least, steps);
            }

            if (least > most)
                return most + 1;
            var spare = twoBefore;
            twoBefore = before;
            before = now;
            now = spare;
        }

        return Math.Min(before[other.Length], most + 1);
    }
}
