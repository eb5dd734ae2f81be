using Keikocho.Core.Partners;

namespace Keikocho.Core.Tests.Partners;

/// <summary>Tables made from a seed, and a search that tries everything.</summary>
internal static class MatchingTables
{
    /// <summary>
    /// The next number of the sequence of xorshift64* (Vigna 2016), the same in the program that makes the kept optima.
    /// </summary>
    public static ulong Next(ref ulong state)
    {
        unchecked
        {
            state ^= state >> 12;
            state ^= state << 25;
            state ^= state >> 27;
            return state * 2685821657736338717UL;
        }
    }

    /// <summary>A table of whole costs from 0 to below <paramref name="range"/>; one edge in a hundred times <paramref name="absent"/> is not there.</summary>
    public static MatchingCosts Random(ulong seed, int vertices, ulong range, int absent)
    {
        var state = unchecked(seed * 0x9E3779B97F4A7C15UL) | 1;
        var costs = new MatchingCosts(vertices);
        for (var u = 0; u < vertices; u++)
        {
            for (var v = u + 1; v < vertices; v++)
            {
                var cost = (long)((Next(ref state) >> 16) % range);
                if ((int)((Next(ref state) >> 16) % 100) >= absent)
                    costs[u, v] = cost;
            }
        }

        return costs;
    }

    /// <summary>
    /// Children as they are: kinds of size, age and rank, a price of a recent pair, a tenth of the pairs barred. The same formula makes the
    /// instances of the kept optima and of the benchmark.
    /// </summary>
    public static MatchingCosts Children(ulong seed, int children)
    {
        var state = unchecked(seed * 0x9E3779B97F4A7C15UL) | 1;
        var size = new long[children];
        var age = new long[children];
        var rank = new long[children];
        for (var c = 0; c < children; c++)
        {
            age[c] = 6 + (long)((Next(ref state) >> 16) % 11);
            size[c] = 160 + (age[c] - 6) * 40 + (long)((Next(ref state) >> 16) % 200);
            rank[c] = (long)((Next(ref state) >> 16) % 6);
        }

        var costs = new MatchingCosts(children);
        for (var u = 0; u < children; u++)
        {
            for (var v = u + 1; v < children; v++)
            {
                var cost = 2 * Math.Abs(size[u] - size[v]) + 40 * Math.Abs(age[u] - age[v]) + 25 * Math.Abs(rank[u] - rank[v]);
                if ((Next(ref state) >> 16) % 5 == 0)
                    cost += 120;
                if ((Next(ref state) >> 16) % 10 != 0)
                    costs[u, v] = cost;
            }
        }

        return costs;
    }

    /// <summary>The cheapest perfect matching by trying every one; null where there is none.</summary>
    public static long? ByTrying(MatchingCosts costs, bool dearest = false)
    {
        return Best(0, 0);

        long? Best(int used, long soFar)
        {
            var first = 0;
            while (first < costs.Vertices && (used >> first & 1) == 1)
                first++;
            if (first == costs.Vertices)
                return soFar;
            long? best = null;
            for (var v = first + 1; v < costs.Vertices; v++)
            {
                if ((used >> v & 1) == 1 || !costs.Has(first, v))
                    continue;
                var here = Best(used | 1 << first | 1 << v, dearest ? Math.Max(soFar, costs[first, v]) : soFar + costs[first, v]);
                if (here is { } cost && !(best <= cost))
                    best = cost;
            }

            return best;
        }
    }
}
