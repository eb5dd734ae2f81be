using Keikocho.Core.Partners;

namespace Keikocho.Core.Tests.Partners;

public sealed class LevelledMatchingTests
{
    // Few costs, so that many matchings are equally cheap, also such with odd sets; few distances and many, so that they need more than one level.
    [Theory]
    [InlineData(6, 3UL, 20, 3, 800)]
    [InlineData(8, 3UL, 30, 2, 600)]
    [InlineData(8, 2UL, 50, 40, 600)]
    [InlineData(10, 3UL, 40, 3, 200)]
    [InlineData(10, 2UL, 55, 60, 200)]
    [InlineData(10, 4UL, 60, 4, 200)]
    public void Of_equally_cheap_ones_it_is_the_one_that_trying_all_puts_first(int vertices, ulong range, int absent, int distances, int seeds)
    {
        for (var seed = 1UL; seed <= (ulong)seeds; seed++)
        {
            var costs = MatchingTables.Random(seed, vertices, range, absent);
            var state = seed * 77 + 5;
            var since = new int[vertices * vertices];
            for (var u = 0; u < vertices; u++)
            {
                for (var v = u + 1; v < vertices; v++)
                {
                    var kind = (int)((MatchingTables.Next(ref state) >> 16) % (ulong)(distances + 1));
                    since[u * vertices + v] = since[v * vertices + u] = kind == distances ? LevelledMatching.Never : kind + 1;
                }
            }

            var found = LevelledMatching.Solve(costs, (u, v) => since[u * vertices + v]);
            Assert.True((Tried(costs, since) is { } wanted ? string.Join(' ', wanted) : null) == (found is null ? null : string.Join(' ', found)), $"seed {seed}");
        }
    }

    private static int[]? Tried(MatchingCosts costs, int[] since)
    {
        var n = costs.Vertices;
        (long Cost, int[] Since, int[] Mates)? best = null;
        var mates = new int[n];
        Array.Fill(mates, -1);
        Try();
        return best?.Mates;

        void Try()
        {
            var first = Array.IndexOf(mates, -1);
            if (first < 0)
            {
                var key = (
                    Enumerable.Range(0, n).Where(v => v < mates[v]).Sum(v => costs[v, mates[v]]),
                    Enumerable.Range(0, n).Where(v => v < mates[v]).Select(v => since[v * n + mates[v]]).Order().ToArray(),
                    mates.ToArray());
                if (best is null || IsBetter(key, best.Value))
                    best = key;
                return;
            }

            for (var v = first + 1; v < n; v++)
            {
                if (mates[v] >= 0 || !costs.Has(first, v))
                    continue;
                (mates[first], mates[v]) = (v, first);
                Try();
                mates[first] = mates[v] = -1;
            }
        }
    }

    private static bool IsBetter((long Cost, int[] Since, int[] Mates) a, (long Cost, int[] Since, int[] Mates) b)
    {
        if (a.Cost != b.Cost)
            return a.Cost < b.Cost;
        for (var i = 0; i < a.Since.Length; i++)
        {
            if (a.Since[i] != b.Since[i])
                return a.Since[i] > b.Since[i];
        }

        for (var i = 0; i < a.Mates.Length; i++)
        {
            if (a.Mates[i] != b.Mates[i])
                return a.Mates[i] < b.Mates[i];
        }

        return false;
    }
}
