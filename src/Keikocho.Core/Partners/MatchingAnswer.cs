namespace Keikocho.Core.Partners;

/// <summary>An odd set of vertices with a dual, part of the proof that a matching is the cheapest.</summary>
/// <param name="Vertices">At least 3, an odd number, in order.</param>
/// <param name="Dual">More than 0, in halves of a cost.</param>
public sealed record OddSetDual(IReadOnlyList<int> Vertices, long Dual);

/// <summary>
/// The proof that a perfect matching is the cheapest: duals in halves of a cost, so that all are whole. For each edge the duals of its
/// two ends, less the duals of the odd sets that hold both, are at most twice its cost; and the duals of all vertices, less each odd
/// set's dual times the most pairs that fit inside it, come to twice the cost of the matching.
/// </summary>
/// <param name="Vertices">The dual of each vertex, in halves of a cost.</param>
/// <param name="OddSets">Odd sets with a dual; any two are apart or one lies within the other.</param>
public sealed record MatchingCertificate(IReadOnlyList<long> Vertices, IReadOnlyList<OddSetDual> OddSets);

/// <summary>
/// The proof that no matching covers more: without the vertices of <paramref name="Barrier"/> the others fall apart, and each odd
/// part needs one vertex of the barrier for itself (Tutte, Berge).
/// </summary>
/// <param name="Barrier">The vertices that the others depend on.</param>
/// <param name="OddParts">The odd parts that are left when the barrier is taken out, by their smallest vertex.</param>
/// <param name="LeftOver">How many vertices stay without a partner at the least: odd parts less barrier.</param>
public sealed record TutteBerge(IReadOnlyList<int> Barrier, IReadOnlyList<IReadOnlyList<int>> OddParts, int LeftOver);

/// <summary>What came of a search for a perfect matching.</summary>
/// <param name="Mates">Each vertex' partner; null where there is no perfect matching.</param>
/// <param name="Cost">The sum of the costs; 0 where there is none.</param>
/// <param name="Certificate">The proof that it is the cheapest; null where there is none.</param>
/// <param name="WhyNone">The proof that there is none; null where there is one.</param>
public sealed record MatchingAnswer(int[]? Mates, long Cost, MatchingCertificate? Certificate, TutteBerge? WhyNone)
{
    /// <summary>The pairs, smaller vertex first, in order.</summary>
    public IEnumerable<(int First, int Second)> Pairs =>
        Mates is null ? [] : Mates.Select((mate, vertex) => (vertex, mate)).Where(p => p.vertex < p.mate);
}
