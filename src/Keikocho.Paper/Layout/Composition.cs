using System.Collections.Frozen;
using System.Globalization;

namespace Keikocho.Paper.Layout;

/// <summary>
/// Puts a letter and its loose marks together (é written as e and an accent, as some machines save it), because a font places a loose
/// mark badly. This is Unicode's form C for Latin, Greek, Cyrillic and kana; the base library leaves text as it is when no culture
/// data is there.
/// </summary>
internal static class Composition
{
    private static readonly FrozenDictionary<int, int> Classes;
    private static readonly FrozenDictionary<(int Base, int Mark), int> Composed;
    private static readonly FrozenDictionary<int, (int Base, int Mark)> Parts;

    static Composition()
    {
        var classes = new Dictionary<int, int>();
        var composed = new Dictionary<(int, int), int>();
        foreach (var line in EmbeddedFile.Text("compositions.txt").Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.StartsWith('#'))
                continue;
            var words = line.Split(' ');
            if (words[0] == "class")
                classes.Add(Hex(words[1]), int.Parse(words[2], CultureInfo.InvariantCulture));
            else
                composed.Add((Hex(words[0]), Hex(words[1])), Hex(words[2]));
        }

        Classes = classes.ToFrozenDictionary();
        Composed = composed.ToFrozenDictionary();
        Parts = composed.ToFrozenDictionary(pair => pair.Value, pair => pair.Key);
    }

    /// <summary>The code points of <paramref name="text"/> with every letter and its marks composed where a composed letter exists.</summary>
    public static List<int> Compose(string text)
    {
        var points = new List<int>(text.Length);
        var loose = false;
        foreach (var rune in text.EnumerateRunes())
        {
            points.Add(rune.Value);
            loose |= Classes.ContainsKey(rune.Value);
        }

        return loose ? Join(Reorder(Split(points))) : points;
    }

    private static int Hex(string word) => int.Parse(word, NumberStyles.HexNumber, CultureInfo.InvariantCulture);

    private static int ClassOf(int point) => Classes.GetValueOrDefault(point);

    private static List<int> Split(List<int> points)
    {
        var split = new List<int>(points.Count + 4);
        foreach (var point in points)
            SplitOne(point, split);
        return split;
    }

    private static void SplitOne(int point, List<int> into)
    {
        if (Parts.TryGetValue(point, out var parts))
        {
            SplitOne(parts.Base, into);
            into.Add(parts.Mark);
        }
        else
        {
            into.Add(point);
        }
    }

    private static List<int> Reorder(List<int> points)
    {
        for (var at = 1; at < points.Count; at++)
        {
            // A stable insertion by class; a starter (class 0) never moves and is never passed.
            for (var back = at; back > 0 && ClassOf(points[back]) > 0 && ClassOf(points[back - 1]) > ClassOf(points[back]); back--)
                (points[back - 1], points[back]) = (points[back], points[back - 1]);
        }

        return points;
    }

    private static List<int> Join(List<int> points)
    {
        var joined = new List<int>(points.Count);
        var starter = -1;
        var before = 0;
        foreach (var point in points)
        {
            var kind = ClassOf(point);
            var adjacent = starter == joined.Count - 1;
            if (starter >= 0 && (adjacent || before < kind) && Composed.TryGetValue((joined[starter], point), out var letter))
            {
                joined[starter] = letter;
                continue;
            }

            if (kind == 0)
                starter = joined.Count;
            before = kind;
            joined.Add(point);
        }

        return joined;
    }
}
