using System.Numerics;

namespace Keikocho.Core.Names;

/// <summary>The last step: names whose letters are almost those that are written.</summary>
internal sealed class NearNames
{
    /// <summary>A spelling shorter than this is never taken for a slip: obe may be obi, ude or uke.</summary>
    public const int ShortestForOne = 5;

    /// <summary>From this length on two slips are allowed.</summary>
    public const int LongEnoughForTwo = 9;

    private readonly (string Key, uint Letters, int Name)[] keys;
    private readonly PartingLetters parting;
    private readonly WholeWords words;
    private readonly int names;

    public NearNames(IEnumerable<(string Key, int Name)> keys, PartingLetters parting, WholeWords words, int names)
    {
        this.keys = [.. keys.Distinct().Select(k => (k.Key, Mask(k.Key), k.Name))];
        this.parting = parting;
        this.words = words;
        this.names = names;
    }

    /// <summary>What the search found.</summary>
    /// <param name="Names">The names, nearest first, and in the order of the list where they are as near.</param>
    /// <param name="Distance">Letters that the first one is away.</param>
    /// <param name="Sure">True when the first is the only one that it can be.</param>
    public readonly record struct Found(IReadOnlyList<int> Names, int Distance, bool Sure);

    /// <summary>Searches; null when nothing is near.</summary>
    /// <param name="written">The key of what is written.</param>
    /// <param name="bare">Its letters as they stand: a letter too many may have made "si" of "i", which the key reads as "shi".</param>
    public Found? Search(ReadOnlySpan<char> written, ReadOnlySpan<char> bare)
    {
        var most = written.Length < LongEnoughForTwo ? 1 : 2;
        if (written.Length < 2 || written.Length > LetterKey.MostLetters)
            return null;

        Span<int> best = names <= 1024 ? stackalloc int[names] : new int[names];
        best.Fill(int.MaxValue);
        var differs = !written.SequenceEqual(bare);
        var first = Measure(written, bare, differs, most, best);
        if (first > most)
            return null;

        // One slip is sure when no other name is as near. Two slips are sure only when no other name is three away either.
        var farthest = first == 1 ? 1 : first + 1;
        if (farthest > most)
            Measure(written, bare, differs, farthest, best);
        var found = new List<int>();
        for (var distance = first; distance <= farthest; distance++)
        {
            for (var name = 0; name < names; name++)
            {
                if (best[name] == distance)
                    found.Add(name);
            }
        }

        var sure = found.Count == 1 && written.Length >= ShortestForOne && !words.Make(written) && !Parted(written, found[0], first)
            && !(differs && (words.Make(bare) || Parted(bare, found[0], first)));
        return new Found(found, first, sure);
    }

    private int Measure(ReadOnlySpan<char> written, ReadOnlySpan<char> bare, bool differs, int reach, Span<int> best)
    {
        Measure(written, reach, best);
        if (differs)
            Measure(bare, reach, best);
        var first = int.MaxValue;
        foreach (var distance in best)
            first = Math.Min(first, distance);
        return first;
    }

    private void Measure(ReadOnlySpan<char> written, int reach, Span<int> best)
    {
        var mask = Mask(written);
        foreach (var (key, letters, name) in keys)
        {
            // A slip changes at most two of the letters that occur at all.
            if (Math.Abs(key.Length - written.Length) > reach || BitOperations.PopCount(letters ^ mask) > 2 * reach)
                continue;
            var distance = LetterDistance.Between(written, key, Math.Min(reach, best[name]));
            if (distance <= reach && distance < best[name])
                best[name] = distance;
        }
    }

    private bool Parted(ReadOnlySpan<char> written, int name, int distance)
    {
        foreach (var (key, _, owner) in keys)
        {
            if (owner == name && LetterDistance.Between(written, key, distance) == distance && parting.Part(written, key, distance))
                return true;
        }

        return false;
    }

    private static uint Mask(ReadOnlySpan<char> key)
    {
        var mask = 0u;
        foreach (var letter in key)
            mask |= 1u << (letter is >= 'a' and <= 'z' ? letter - 'a' : 26 + (letter & 3));
        return mask;
    }
}
