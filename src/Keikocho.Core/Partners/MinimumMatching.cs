namespace Keikocho.Core.Partners;

/// <summary>The cheapest perfect matching of a general graph, with its proof; docs/sums/matching.md explains it.</summary>
public static class MinimumMatching
{
    /// <summary>Finds it. The same table gives the same matching.</summary>
    /// <exception cref="ArgumentException">Costs so large that sums of them would not fit into 64 bits.</exception>
    public static MatchingAnswer Solve(MatchingCosts costs)
    {
        ArgumentNullException.ThrowIfNull(costs);
        return Find(costs) ?? new MatchingAnswer(null, 0, null, MaximumCardinality.Find(costs, MatchingCosts.Absent - 1).Proof(costs));
    }

    /// <summary>The matching alone, or null where there is none; for callers that need no proof that there is none.</summary>
    internal static MatchingAnswer? Find(MatchingCosts costs)
    {
        if (costs.Vertices % 2 != 0)
            return null;
        var largest = Largest(costs);
        if (largest <= BlossomSearch<int>.LargestCost)
        {
            var narrow = new BlossomSearch<int>(costs);
            var outcome = narrow.Run();
            if (outcome != SearchOutcome.TooLarge)
                return outcome == SearchOutcome.Perfect ? narrow.Answer(costs) : null;
        }

        if (largest > BlossomSearch<long>.LargestCost)
            throw new ArgumentException("A cost of the matching is too large to reckon with.", nameof(costs));
        var wide = new BlossomSearch<long>(costs);
        return wide.Run() switch
        {
            SearchOutcome.Perfect => wide.Answer(costs),
            SearchOutcome.None => null,
            _ => throw new ArgumentException("The costs of the matching are too large to reckon with.", nameof(costs)),
        };
    }

    private static long Largest(MatchingCosts costs)
    {
        var largest = 0L;
        for (var u = 0; u < costs.Vertices; u++)
        {
            foreach (var cost in costs.Row(u))
            {
                if (cost != MatchingCosts.Absent)
                    largest = Math.Max(largest, cost == long.MinValue ? long.MaxValue : Math.Abs(cost));
            }
        }

        return largest;
    }
}
