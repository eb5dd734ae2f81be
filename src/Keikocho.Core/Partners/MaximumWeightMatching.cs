namespace Keikocho.Core.Partners;

/// <summary>
/// The heaviest matching, perfect or not, by way of the cheapest perfect one: each pair that may stay apart costs what it forgoes.
/// </summary>
public static class MaximumWeightMatching
{
    /// <summary>Finds it.</summary>
    /// <param name="weights">Weights; the heaviest sum is wanted. Where no edge is, <see cref="MatchingCosts.Absent"/>.</param>
    /// <param name="mostPairs">True: as many pairs as there can be, and among those the heaviest.</param>
    /// <returns>Each vertex' partner, -1 for none; and the weight.</returns>
    /// <exception cref="ArgumentException">Weights so large that sums of them would not fit into 64 bits.</exception>
    public static (int[] Mates, long Weight) Solve(MatchingCosts weights, bool mostPairs = false)
    {
        ArgumentNullException.ThrowIfNull(weights);
        var n = weights.Vertices;
        var largest = 0L;
        for (var u = 0; u < n; u++)
        {
            foreach (var w in weights.Row(u))
            {
                if (w == MatchingCosts.Absent)
                    continue;
                if (w is > 1L << 40 or < -(1L << 40))
                    throw new ArgumentException("A weight of the matching is too large to reckon with.", nameof(weights));
                largest = Math.Max(largest, Math.Abs(w));
            }
        }

        // One pair more outweighs whatever all the others could gain.
        var bonus = mostPairs ? largest * (n + 1) + 1 : 0;
        var costs = new MatchingCosts(n + n % 2);
        for (var u = 0; u < costs.Vertices; u++)
        {
            for (var v = u + 1; v < costs.Vertices; v++)
                costs[u, v] = Worth(u, v) is > 0 and var worth ? -worth : 0;
        }

        var found = MinimumMatching.Find(costs)!;
        var mates = new int[n];
        var weight = 0L;
        for (var u = 0; u < n; u++)
        {
            var v = found.Mates![u];
            mates[u] = Worth(u, v) > 0 ? v : -1;
            if (u < v && mates[u] == v)
                weight += weights[u, v];
        }

        return (mates, weight);

        long Worth(int u, int v) => u < n && v < n && weights.Has(u, v) ? weights[u, v] + bonus : 0;
    }
}
