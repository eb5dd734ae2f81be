namespace Keikocho.Core.Partners;

/// <summary>Who works with whom, by places in the register: links, of which the middle of a three has two.</summary>
/// <param name="Kind">How everybody is placed.</param>
/// <param name="Links">Smaller place first, in order.</param>
/// <param name="Middle">The middle of the three; -1 for none.</param>
/// <param name="WithAdult">The child with the adult; -1 for none.</param>
/// <param name="Left">Who is left over, in order.</param>
/// <param name="Worst">The dearest link.</param>
/// <param name="Total">All links.</param>
/// <param name="Since">How long ago the two of each link worked together, the latest first.</param>
internal sealed record Seating(
    OfferKind Kind, IReadOnlyList<(int First, int Second)> Links, int Middle, int WithAdult, IReadOnlyList<int> Left, int Worst, int Total, IReadOnlyList<int> Since)
{
    public static Seating Of(OfferKind kind, LinkTable table, IEnumerable<(int, int)> links, int middle = -1, int withAdult = -1, IReadOnlyList<int>? left = null)
    {
        (int First, int Second)[] sorted = [.. links.Select(l => l.Item1 < l.Item2 ? l : (l.Item2, l.Item1)).Order()];
        var costs = sorted.Select(l => table.Cost(l.First, l.Second)).ToArray();
        return new Seating(
            kind, sorted, middle, withAdult, left ?? [], costs.Length == 0 ? 0 : costs.Max(), costs.Sum(),
            [.. sorted.Select(l => table.Since(l.First, l.Second)).Order()]);
    }

    /// <summary>Less than 0 where this one is to be preferred.</summary>
    public int Compare(Seating other, bool worstFirst)
    {
        if (Left.Count != other.Left.Count)
            return Left.Count - other.Left.Count;
        if (worstFirst && Worst != other.Worst)
            return Worst - other.Worst;
        if (Total != other.Total)
            return Total - other.Total;
        for (var i = 0; i < Math.Min(Since.Count, other.Since.Count); i++)
        {
            if (Since[i] != other.Since[i])
                return Since[i] > other.Since[i] ? -1 : 1;
        }

        for (var i = 0; i < Math.Min(Links.Count, other.Links.Count); i++)
        {
            var links = Links[i].CompareTo(other.Links[i]);
            if (links != 0)
                return links;
        }

        return Middle.CompareTo(other.Middle);
    }
}
