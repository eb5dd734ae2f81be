namespace Keikocho.Core.Partners;

/// <summary>Worst pair first, then the sum.</summary>
public static class BottleneckMatching
{
    /// <summary>The least cost up to which edges are needed for a perfect matching; null where there is none.</summary>
    /// <remarks>
    /// Binary search over the distinct costs; every test begins from the last perfect matching that was found, and the search begins where
    /// each vertex has an edge at all.
    /// </remarks>
    public static long? Threshold(MatchingCosts costs)
    {
        ArgumentNullException.ThrowIfNull(costs);
        if (costs.Vertices % 2 != 0)
            return null;
        if (costs.Vertices == 0)
            return 0;
        var floor = long.MinValue;
        for (var v = 0; v < costs.Vertices; v++)
        {
            var least = MatchingCosts.Absent;
            foreach (var cost in costs.Row(v))
                least = Math.Min(least, cost);
            if (least == MatchingCosts.Absent)
                return null;
            floor = Math.Max(floor, least);
        }

        var search = MaximumCardinality.Find(costs, floor, null, true);
        if (search.LeftOver == 0)
            return floor;
        search = MaximumCardinality.Find(costs, MatchingCosts.Absent - 1, search.Mates, true);
        if (search.LeftOver > 0)
            return null;
        var perfect = search.Mates;
        var values = costs.Distinct();
        var low = Array.BinarySearch(values, floor) + 1;
        var high = Array.BinarySearch(values, Dearest(costs, perfect));
        while (low < high)
        {
            var middle = low + (high - low) / 2;
            search = MaximumCardinality.Find(costs, values[middle], perfect, true);
            if (search.LeftOver > 0)
            {
                low = middle + 1;
                continue;
            }

            perfect = search.Mates;
            high = Array.BinarySearch(values, Dearest(costs, perfect));
        }

        return values[high];
    }

    /// <summary>The cheapest of the perfect matchings whose dearest edge is as cheap as can be.</summary>
    /// <exception cref="ArgumentException">Costs so large that sums of them would not fit into 64 bits.</exception>
    public static MatchingAnswer Solve(MatchingCosts costs)
    {
        ArgumentNullException.ThrowIfNull(costs);
        return Threshold(costs) is { } most ? MinimumMatching.Solve(costs.UpTo(most)) : MinimumMatching.Solve(costs);
    }

    private static long Dearest(MatchingCosts costs, int[] mates)
    {
        var dearest = long.MinValue;
        for (var v = 0; v < mates.Length; v++)
            dearest = Math.Max(dearest, costs[v, mates[v]]);
        return dearest;
    }
}
