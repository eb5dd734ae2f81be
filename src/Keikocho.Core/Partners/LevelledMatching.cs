namespace Keikocho.Core.Partners;

/// <summary>
/// The cheapest perfect matching, and of several the one whose edges were used longest ago, and of those the first in the order of the
/// vertices. Exact: each level is searched on the face of the cheapest of the level above.
/// </summary>
/// <remarks>
/// By the proof of a level, its cheapest matchings are just those that use tight edges only and fill each odd set that has a dual. So the
/// level is handed on as a table of the tight edges, each with the cost -(number of such sets that hold both ends): a few bits instead of
/// the whole sum, and every number stays small however many levels there are. docs/sums/matching.md has the argument.
/// </remarks>
public static class LevelledMatching
{
    /// <summary>How long ago an edge was used that never was.</summary>
    public const int Never = int.MaxValue;

    /// <summary>Finds it; null where there is no perfect matching.</summary>
    /// <param name="costs">The first level.</param>
    /// <param name="since">How long ago an edge was used, 1 the latest; <see cref="Never"/> for never.</param>
    /// <returns>Each vertex' partner.</returns>
    /// <exception cref="ArgumentException">Costs so large that sums of them would not fit into 64 bits.</exception>
    public static int[]? Solve(MatchingCosts costs, Func<int, int, int> since)
    {
        ArgumentNullException.ThrowIfNull(costs);
        ArgumentNullException.ThrowIfNull(since);
        if (MinimumMatching.Find(costs) is not { } found)
            return null;
        var (face, alone) = Face(costs, found);
        var told = 0;
        while (!alone && NextLevel(face, since, ref told) is { } table)
        {
            found = MinimumMatching.Find(table)!;
            (face, alone) = Face(table, found);
        }

        return alone ? found.Mates : FirstInOrder(face, found.Mates!);
    }

    /// <summary>The tight edges with the depth of their sets with a dual; whether the matching is the only one.</summary>
    private static (MatchingCosts Face, bool Alone) Face(MatchingCosts costs, MatchingAnswer found)
    {
        var n = costs.Vertices;
        var proof = found.Certificate!;
        var depth = new int[n * n];
        var discount = new long[n * n];
        foreach (var set in proof.OddSets)
        {
            foreach (var u in set.Vertices)
            {
                foreach (var v in set.Vertices)
                {
                    depth[u * n + v]++;
                    discount[u * n + v] += set.Dual;
                }
            }
        }

        var face = new MatchingCosts(n);
        var edges = 0;
        for (var u = 0; u < n; u++)
        {
            for (var v = u + 1; v < n; v++)
            {
                if (!costs.Has(u, v) || proof.Vertices[u] + proof.Vertices[v] - discount[u * n + v] != 2 * costs[u, v])
                    continue;
                face[u, v] = -depth[u * n + v];
                edges++;
            }
        }

        return (face, edges == n / 2);
    }

    /// <summary>
    /// The face with the next few distances of its edges as digits below it, the shortest first; null where all distances were told apart.
    /// </summary>
    /// <param name="face">The face.</param>
    /// <param name="since">Distance of an edge.</param>
    /// <param name="told">The longest distance that was told apart already.</param>
    private static MatchingCosts? NextLevel(MatchingCosts face, Func<int, int, int> since, ref int told)
    {
        var n = face.Vertices;
        var kinds = new SortedSet<int>();
        var lowest = 0L;
        for (var u = 0; u < n; u++)
        {
            for (var v = u + 1; v < n; v++)
            {
                if (!face.Has(u, v))
                    continue;
                if (since(u, v) > told)
                    kinds.Add(since(u, v));
                lowest = Math.Min(lowest, face[u, v]);
            }
        }

        kinds.Remove(Never);
        if (kinds.Count == 0)
            return null;

        // A digit counts edges of one distance, at most one for each pair; the face stands above all digits.
        long digit = n / 2 + 1;
        var weights = new Dictionary<int, long>();
        var scale = 1L;
        var room = (1L << 46) / Math.Max(1, -lowest * digit);
        foreach (var kind in kinds)
        {
            if (scale > room / digit)
                break;
            weights[kind] = scale;
            scale *= digit;
            told = kind;
        }

        var highest = scale / digit;
        var table = new MatchingCosts(n);
        for (var u = 0; u < n; u++)
        {
            for (var v = u + 1; v < n; v++)
            {
                if (!face.Has(u, v))
                    continue;

                // The first kind is the shortest and weighs most.
                var weight = weights.TryGetValue(since(u, v), out var place) ? highest / place : 0;
                table[u, v] = face[u, v] * scale + weight;
            }
        }

        return table;
    }

    /// <summary>
    /// Of all matchings of the face the one whose first vertex has the earliest partner, then the next vertex that is still free, and so on: a
    /// partner is tried before the present one, and kept where the rest can still be matched on the face.
    /// </summary>
    private static int[] FirstInOrder(MatchingCosts face, int[] mates)
    {
        var n = face.Vertices;
        var target = 0L;
        var deep = false;
        for (var v = 0; v < n; v++)
        {
            if (v < mates[v])
                target += face[v, mates[v]];
            foreach (var cost in face.Row(v))
                deep |= cost < 0;
        }

        var done = new bool[n];
        for (var v = 0; v < n; v++)
        {
            if (done[v])
                continue;
            for (var u = v + 1; u < n; u++)
            {
                if (done[u] || !face.Has(v, u))
                    continue;
                if (mates[v] != u)
                {
                    var narrower = Only(face, v, u);
                    if (deep)
                    {
                        if (MinimumMatching.Find(narrower) is not { } other || other.Cost != target)
                            continue;
                        mates = other.Mates!;
                    }
                    else
                    {
                        var other = MaximumCardinality.Find(narrower, MatchingCosts.Absent - 1, mates, true);
                        if (other.LeftOver > 0)
                            continue;
                        mates = other.Mates;
                    }
                }

                face = Only(face, v, u);
                done[v] = done[u] = true;
                break;
            }
        }

        return mates;
    }

    private static MatchingCosts Only(MatchingCosts table, int u, int v)
    {
        var narrower = table.Copy();
        for (var x = 0; x < table.Vertices; x++)
        {
            if (x != u && x != v)
            {
                narrower[u, x] = MatchingCosts.Absent;
                narrower[v, x] = MatchingCosts.Absent;
            }
        }

        return narrower;
    }
}
