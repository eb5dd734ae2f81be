namespace Keikocho.Core.Names;

/// <summary>Every spelling that one name may have under the rules of its kana: long vowels drawn together or written out, joints voiced or not.</summary>
internal static class NameKeys
{
    private const int MostSpellings = 64;

    /// <summary>The ways to write one element: short first, then ou, oo, oh and so on for each long vowel.</summary>
    public static IReadOnlyList<string> OfElement(string kana)
    {
        var ways = new List<string> { "" };
        var beats = Moras.Read(kana);
        for (var i = 0; i < beats.Count; i++)
        {
            var beat = beats[i];
            var next = i + 1 < beats.Count ? beats[i + 1].Hepburn : "";
            if (beat.IsN)
                ways = Extend(ways, ["n"]);
            else if (beat.IsDoubling)
                ways = Extend(ways, next.StartsWith("ch", StringComparison.Ordinal) ? ["t", ""] : [next.Length > 0 && !Moras.IsVowel(next[0]) ? next[..1] : ""]);
            else if (!beat.IsLong)
                ways = Extend(ways, [beat.Hepburn]);
            else
                ways = Extend(ways, beat.Vowel == 'o' ? [beat.Hepburn, beat.Hepburn + "u", beat.Hepburn + "o", beat.Hepburn + "h"] : [beat.Hepburn, beat.Hepburn + beat.Vowel]);
        }

        return ways;
    }

    /// <summary>Each element followed by each way of the next, in order, as far as there is room.</summary>
    public static List<string> Joined(IEnumerable<IReadOnlyList<string>> elements) =>
        elements.Aggregate(new List<string> { "" }, Extend);

    /// <summary>The ways of each element with one joint or more voiced the other way; none where no joint can be.</summary>
    public static IEnumerable<IReadOnlyList<string>[]> VoicedOtherwise(IReadOnlyList<IReadOnlyList<string>> elements)
    {
        // A word by itself stands in both ways; at the head of a name no sound is voiced.
        var first = elements.Count == 1 ? 0 : 1;
        var joints = Enumerable.Range(first, elements.Count - first).Where(i => elements[i].Any(way => Voicing.OtherWay(way) is not null)).Take(4).ToArray();
        for (var choice = 1; choice < 1 << joints.Length; choice++)
        {
            var turned = elements.ToArray();
            for (var j = 0; j < joints.Length; j++)
            {
                if ((choice >> j & 1) == 1)
                    turned[joints[j]] = [.. elements[joints[j]].Select(way => Voicing.OtherWay(way) ?? way)];
            }

            yield return turned;
        }
    }

    private static List<string> Extend(List<string> ways, IReadOnlyList<string> ends)
    {
        var longer = new List<string>(ways.Count * ends.Count);
        foreach (var end in ends)
        {
            foreach (var way in ways)
            {
                if (longer.Count < MostSpellings)
                    longer.Add(way + end);
            }
        }

        return longer;
    }
}
