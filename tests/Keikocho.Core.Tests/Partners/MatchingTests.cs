using Keikocho.Core.Partners;

namespace Keikocho.Core.Tests.Partners;

public sealed class MatchingTests
{
    private static MatchingAnswer Solve(MatchingCosts costs)
    {
        var answer = MinimumMatching.Solve(costs);
        Assert.Empty(MatchingCheck.Objections(costs, answer));
        return answer;
    }

    private static MatchingCosts Table(int vertices, string edges)
    {
        var costs = new MatchingCosts(vertices);
        foreach (var edge in edges.Split(' '))
        {
            var parts = edge.Split(':');
            costs[parts[0][0] - '1', parts[0][1] - '1'] = long.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture);
        }

        return costs;
    }

    // The published test suite of van Rantwijk's maximum-weight matching; every answer was also found by trying all matchings.
    [Theory]
    [InlineData("12:5 23:11 34:5", 4, false, "23", 11)]
    [InlineData("12:5 23:11 34:5", 4, true, "12 34", 10)]
    [InlineData("12:2 13:-2 23:1 24:-1 34:-6", 4, false, "12", 2)]
    [InlineData("12:2 13:-2 23:1 24:-1 34:-6", 4, true, "13 24", -3)]
    [InlineData("12:8 13:9 23:10 34:7", 4, false, "12 34", 15)]
    [InlineData("12:8 13:9 23:10 34:7 16:5 45:6", 6, false, "16 23 45", 21)]
    [InlineData("12:9 13:9 23:10 24:8 35:8 45:10 56:6", 6, false, "13 24 56", 23)]
    [InlineData("12:19 13:20 18:8 23:25 24:18 35:18 45:13 47:7 56:7", 8, false, "18 23 47 56", 47)]
    [InlineData("12:5 13:6 14:2 23:4 24:1 34:3", 4, false, "12 34", 8)]
    public void The_published_cases_of_the_heaviest_matching_come_out(string edges, int vertices, bool mostPairs, string pairs, long weight)
    {
        var (mates, heaviest) = MaximumWeightMatching.Solve(Table(vertices, edges), mostPairs);
        Assert.Equal(weight, heaviest);
        Assert.Equal(pairs, string.Join(' ', mates.Select((m, v) => (v, m)).Where(p => p.v < p.m).Select(p => $"{p.v + 1}{p.m + 1}")));
    }

    // Ours, all 15 matchings written out: six children in whole and half kilograms, cost in halves; and the same squared.
    [Fact]
    public void Six_in_a_row_are_matched_with_their_neighbours()
    {
        int[] halves = [48, 51, 54, 62, 65, 80];
        var plain = new MatchingCosts(6);
        var squared = new MatchingCosts(6);
        for (var u = 0; u < 6; u++)
        {
            for (var v = u + 1; v < 6; v++)
            {
                plain[u, v] = halves[v] - halves[u];
                squared[u, v] = (halves[v] - halves[u]) * (halves[v] - halves[u]);
            }
        }

        Assert.Equal(26, Solve(plain).Cost);
        Assert.Equal(298, Solve(squared).Cost);
        Assert.Equal([(0, 1), (2, 3), (4, 5)], Solve(squared).Pairs);
    }

    [Fact]
    public void The_cheapest_pair_first_is_a_trap()
    {
        var answer = Solve(Table(4, "12:1 23:0 34:1 14:10 13:5 24:5"));
        Assert.Equal(2, answer.Cost);
        Assert.Equal([(0, 1), (2, 3)], answer.Pairs);
    }

    [Theory]
    [InlineData(4, 3UL, 0)]
    [InlineData(6, 5UL, 20)]
    [InlineData(6, 1_000UL, 40)]
    [InlineData(8, 4UL, 10)]
    [InlineData(8, 40UL, 50)]
    [InlineData(8, 1UL, 60)]
    [InlineData(10, 10UL, 0)]
    [InlineData(10, 100UL, 30)]
    [InlineData(10, 6UL, 60)]
    [InlineData(10, 1_000_000_000_000UL, 20)]
    public void Up_to_ten_it_is_what_trying_all_finds(int vertices, ulong range, int absent)
    {
        for (var seed = 1UL; seed <= 600; seed++)
        {
            var costs = MatchingTables.Random(seed, vertices, range, absent);
            var wanted = MatchingTables.ByTrying(costs);
            var answer = Solve(costs);
            Assert.True(wanted == (answer.Mates is null ? null : answer.Cost), $"seed {seed}: {wanted} by trying, {answer.Cost} found");
            var worst = MatchingTables.ByTrying(costs, true);
            Assert.True(worst == BottleneckMatching.Threshold(costs), $"seed {seed}: worst {worst} by trying");
        }
    }

    [Theory]
    [InlineData(20, 8UL, 0)]
    [InlineData(20, 30UL, 70)]
    [InlineData(40, 3UL, 50)]
    [InlineData(40, 100UL, 85)]
    [InlineData(60, 100UL, 90)]
    [InlineData(60, 50UL, 94)]
    [InlineData(100, 1_000UL, 10)]
    public void Larger_ones_are_proved_by_their_duals_or_their_barrier(int vertices, ulong range, int absent)
    {
        for (var seed = 1UL; seed <= 60; seed++)
        {
            var costs = MatchingTables.Random(seed, vertices, range, absent);
            var answer = Solve(costs);
            Assert.Equal(answer.Mates, Solve(costs).Mates);
            var bottleneck = BottleneckMatching.Threshold(costs);
            Assert.Equal(answer.Mates is null, bottleneck is null);
            if (bottleneck is not { } most)
                continue;
            Solve(costs.UpTo(most));
            Assert.NotNull(MinimumMatching.Solve(costs.UpTo(most - 1)).WhyNone);
            Assert.Empty(MatchingCheck.Objections(costs.UpTo(most - 1), MinimumMatching.Solve(costs.UpTo(most - 1))));
        }
    }

    [Fact]
    public void Children_of_every_number_are_proved()
    {
        for (var n = 2; n <= 200; n += n < 40 ? 2 : 20)
        {
            for (var seed = 1UL; seed <= 5; seed++)
                Solve(MatchingTables.Children(seed, n));
        }
    }

    [Fact]
    public void Narrow_and_wide_numbers_give_the_same_cost()
    {
        for (var seed = 1UL; seed <= 200; seed++)
        {
            var costs = MatchingTables.Random(seed, 24, 50, 40);
            var wide = new MatchingCosts(24);
            for (var u = 0; u < 24; u++)
            {
                for (var v = u + 1; v < 24; v++)
                {
                    if (costs.Has(u, v))
                        wide[u, v] = costs[u, v] * 1_000_000_000_000;
                }
            }

            Assert.Equal(Solve(costs).Cost * 1_000_000_000_000, Solve(wide).Cost);
        }
    }

    [Fact]
    public void Nobody_is_a_perfect_matching_and_one_alone_is_not()
    {
        Assert.Empty(Solve(new MatchingCosts(0)).Mates!);
        var alone = Solve(new MatchingCosts(1));
        Assert.Null(alone.Mates);
        Assert.Equal(1, alone.WhyNone!.LeftOver);
    }

    // A star: three leaves and one middle.
    [Fact]
    public void Who_depends_on_one_alone_is_named()
    {
        var none = Solve(Table(4, "12:1 13:1 14:1"));
        Assert.Null(none.Mates);
        Assert.Equal([0], none.WhyNone!.Barrier);
        Assert.Equal(2, none.WhyNone.LeftOver);
        Assert.Equal([1, 2, 3], none.WhyNone.OddParts.SelectMany(p => p));
    }

    [Fact]
    public void A_proof_that_was_tampered_with_is_objected_to()
    {
        for (var seed = 1UL; seed <= 100; seed++)
        {
            var costs = MatchingTables.Random(seed, 12, 30, 20);
            var answer = Solve(costs);
            if (answer.Certificate is not { } proof)
                continue;
            long[] raised = [.. proof.Vertices];
            raised[3] += 2;
            Assert.NotEmpty(MatchingCheck.Objections(costs, answer with { Cost = answer.Cost - 1 }));
            Assert.NotEmpty(MatchingCheck.Objections(costs, answer with { Certificate = proof with { Vertices = raised } }));
            Assert.NotEmpty(MatchingCheck.Objections(costs, answer with { Certificate = null }));
            Assert.NotEmpty(MatchingCheck.Objections(costs, answer with { Mates = null }));
        }
    }

    [Fact]
    public void Costs_that_do_not_fit_are_refused()
    {
        var costs = new MatchingCosts(2) { [0, 1] = 1L << 60 };
        Assert.Throws<ArgumentException>(() => MinimumMatching.Solve(costs));
    }

    [Fact]
    public void The_heaviest_matching_is_what_trying_all_finds()
    {
        for (var seed = 1UL; seed <= 500; seed++)
        {
            var weights = MatchingTables.Random(seed, 7, 30, 40);
            for (var u = 0; u < 7; u++)
            {
                for (var v = u + 1; v < 7; v++)
                {
                    if (weights.Has(u, v))
                        weights[u, v] -= 10;
                }
            }

            var (all, most) = Tried(weights, 0);
            Assert.Equal(all, MaximumWeightMatching.Solve(weights).Weight);
            var (mates, weight) = MaximumWeightMatching.Solve(weights, mostPairs: true);
            Assert.Equal(most, (mates.Count(m => m >= 0) / 2, weight));
        }
    }

    private static (long Heaviest, (int Pairs, long Weight) Most) Tried(MatchingCosts weights, int used)
    {
        var first = 0;
        while (first < weights.Vertices && (used >> first & 1) == 1)
            first++;
        if (first == weights.Vertices)
            return (0, (0, 0));
        var (heaviest, most) = Tried(weights, used | 1 << first);
        for (var v = first + 1; v < weights.Vertices; v++)
        {
            if ((used >> v & 1) == 1 || !weights.Has(first, v))
                continue;
            var (h, m) = Tried(weights, used | 1 << first | 1 << v);
            heaviest = Math.Max(heaviest, h + weights[first, v]);
            var here = (m.Pairs + 1, m.Weight + weights[first, v]);
            if (here.CompareTo(most) > 0)
                most = here;
        }

        return (heaviest, most);
    }
}
