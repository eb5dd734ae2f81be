namespace Keikocho.Core.Partners;

/// <summary>
/// Judges a matching by its proof, without matching anything itself: duals that no edge undercuts and that add up to the cost, or a
/// barrier that leaves too many odd parts.
/// </summary>
public static class MatchingCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(MatchingCosts costs, MatchingAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(costs);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        if (answer.Mates is null)
            JudgeNone(costs, answer, objections);
        else
            JudgeCheapest(costs, answer, answer.Mates, objections);
        return objections;
    }

    private static void JudgeCheapest(MatchingCosts costs, MatchingAnswer answer, int[] mates, List<string> objections)
    {
        var n = costs.Vertices;
        if (mates.Length != n || Enumerable.Range(0, n).Any(v => mates[v] < 0 || mates[v] >= n || mates[mates[v]] != v || !costs.Has(v, mates[v])))
        {
            objections.Add("It is no perfect matching of edges that are there.");
            return;
        }

        Int128 sum = 0;
        for (var v = 0; v < n; v++)
            sum += v < mates[v] ? costs[v, mates[v]] : 0;
        if (sum != answer.Cost)
            objections.Add($"The edges cost {sum}, not {answer.Cost}.");
        if (answer.Certificate is not { } proof || proof.Vertices.Count != n)
        {
            objections.Add("There is no proof that it is the cheapest.");
            return;
        }

        Int128 bound = 0;
        foreach (var dual in proof.Vertices)
            bound += dual;
        var discount = new Int128[n * n];
        foreach (var set in proof.OddSets)
        {
            if (set.Dual <= 0)
                objections.Add("An odd set has no dual.");
            if (set.Vertices.Count < 3 || set.Vertices.Count % 2 == 0 || set.Vertices.Distinct().Count() != set.Vertices.Count || set.Vertices.Any(v => v < 0 || v >= n))
            {
                objections.Add("An odd set is not an odd set of at least 3 vertices.");
                return;
            }

            bound -= (Int128)set.Dual * (set.Vertices.Count / 2);
            foreach (var u in set.Vertices)
            {
                foreach (var v in set.Vertices)
                    discount[u * n + v] += set.Dual;
            }
        }

        for (var u = 0; u < n; u++)
        {
            for (var v = u + 1; v < n; v++)
            {
                if (costs.Has(u, v) && proof.Vertices[u] + (Int128)proof.Vertices[v] - discount[u * n + v] > 2 * (Int128)costs[u, v])
                    objections.Add($"The duals of {u} and {v} are more than their edge costs.");
            }
        }

        if (bound != 2 * sum)
            objections.Add($"The duals come to {bound}, not to twice the cost {2 * sum}.");
    }

    private static void JudgeNone(MatchingCosts costs, MatchingAnswer answer, List<string> objections)
    {
        var n = costs.Vertices;
        if (answer.WhyNone is not { } proof)
        {
            objections.Add("There is no proof that nobody can be matched.");
            return;
        }

        // The parts are found anew: a vertex' part is the smallest vertex that it reaches without the barrier.
        var part = Enumerable.Range(0, n).ToArray();
        var barrier = proof.Barrier.ToHashSet();
        for (var changed = true; changed;)
        {
            changed = false;
            for (var u = 0; u < n; u++)
            {
                for (var v = 0; v < n; v++)
                {
                    if (barrier.Contains(u) || barrier.Contains(v) || !costs.Has(u, v) || part[v] <= part[u])
                        continue;
                    part[v] = part[u];
                    changed = true;
                }
            }
        }

        var odd = Enumerable.Range(0, n).Where(v => !barrier.Contains(v)).GroupBy(v => part[v]).Where(g => g.Count() % 2 == 1).ToArray();
        if (odd.Length - barrier.Count != proof.LeftOver || proof.LeftOver <= 0)
            objections.Add($"Without the barrier there are {odd.Length} odd parts and the barrier has {barrier.Count} vertices: that does not leave {proof.LeftOver} over.");
        if (odd.Length != proof.OddParts.Count || !odd.Zip(proof.OddParts).All(p => p.First.SequenceEqual(p.Second)))
            objections.Add("The odd parts are not those that are left without the barrier.");
    }
}
