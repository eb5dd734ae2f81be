namespace Keikocho.Core.Names;

/// <summary>
/// The few letters that part two real names: the k of Ko-soto-gari and O-soto-gari, the n of Tani-otoshi and Tai-otoshi. Where a spelling
/// differs from the nearest name by such letters, it may be another name that nobody has listed, and not a slip.
/// </summary>
internal sealed class PartingLetters
{
    private const int Short = 7;
    private readonly List<Parting> partings = [];

    private readonly record struct Parting(string From, string To, char Before, char After, int Distance);

    /// <summary>Finds them among the plain keys of different names.</summary>
    public PartingLetters(IReadOnlyList<(string Key, int Name)> plain)
    {
        var seen = new HashSet<Parting>();
        for (var i = 0; i < plain.Count; i++)
        {
            for (var j = i + 1; j < plain.Count; j++)
            {
                // Short words differ by two letters without being alike.
                var (one, other) = (plain[i].Key, plain[j].Key);
                var most = Math.Min(one.Length, other.Length) < Short ? 1 : 2;
                if (plain[i].Name == plain[j].Name || one.Length == 0 || other.Length == 0)
                    continue;
                var distance = LetterDistance.Between(one, other, most);
                if (distance is 0 || distance > most)
                    continue;
                Add(seen, one, other, distance);
                Add(seen, other, one, distance);
            }
        }
    }

    /// <summary>Whether <paramref name="written"/> differs from <paramref name="key"/>, which is so far away, by parting letters.</summary>
    public bool Part(ReadOnlySpan<char> written, string key, int distance)
    {
        Span<char> turned = stackalloc char[LetterKey.Room + 8];
        foreach (var parting in partings)
        {
            if (parting.Distance > distance)
                continue;
            for (var at = 0; at + parting.From.Length <= written.Length; at++)
            {
                if (!Fits(parting, written, at))
                    continue;
                written[..at].CopyTo(turned);
                parting.To.CopyTo(turned[at..]);
                var rest = written[(at + parting.From.Length)..];
                rest.CopyTo(turned[(at + parting.To.Length)..]);
                var nearer = distance - parting.Distance;
                if (LetterDistance.Between(turned[..(at + parting.To.Length + rest.Length)], key, nearer) <= nearer)
                    return true;
            }
        }

        return false;
    }

    private static bool Fits(Parting parting, ReadOnlySpan<char> written, int at)
    {
        var end = at + parting.From.Length;
        return written[at..].StartsWith(parting.From, StringComparison.Ordinal)
            && parting.Before == (at == 0 ? '^' : written[at - 1])
            && parting.After == (end == written.Length ? '$' : written[end]);
    }

    private void Add(HashSet<Parting> seen, string one, string other, int distance)
    {
        var head = 0;
        while (head < one.Length && head < other.Length && one[head] == other[head])
            head++;
        var tail = 0;
        while (tail < one.Length - head && tail < other.Length - head && one[^(tail + 1)] == other[^(tail + 1)])
            tail++;
        var parting = new Parting(
            one[head..^tail], other[head..^tail], head == 0 ? '^' : one[head - 1], tail == 0 ? '$' : one[^tail], distance);
        if (seen.Add(parting))
            partings.Add(parting);
    }
}
