using System.Diagnostics;
using System.Globalization;
using Keikocho.Core.Kernel;
using Keikocho.Core.Partners;

namespace Keikocho.Bench;

/// <summary>The cheapest perfect matching, beside LEMON on the same tables in the same run where bench/lemon/run.sh can be run.</summary>
internal static class Matching
{
    private const int Seeds = 25;

    public static void Measure()
    {
        Console.WriteLine("matching: n, ms of a solve with its table read (median of 25 tables, warm), LEMON ms of a solve, LEMON ms with its graph built, how many times LEMON's, worst pair first then the sum ms");
        foreach (var n in (int[])[20, 40, 80, 200, 400])
        {
            var tables = Enumerable.Range(1, Seeds).Select(seed => Children((ulong)seed, n)).ToArray();
            var check = 0L;
            Warm(() => tables.Sum(t => MinimumMatching.Solve(t).Cost));
            var ours = Median(tables, t => check += MinimumMatching.Solve(t).Cost);
            Warm(() => tables.Sum(t => BottleneckMatching.Solve(t).Cost));
            var worst = Median(tables, t => BottleneckMatching.Solve(t));
            var lemon = Lemon(n);
            if (lemon is { } l && l.Check != check)
                Console.WriteLine($"matching: {n}: LEMON's optima come to {l.Check}, ours to {check}");
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"matching: {n} {ours:0.000} {lemon?.Alone:0.000} {lemon?.Whole:0.000} {ours / lemon?.Alone:0.00} {worst:0.000}"));
        }
    }

    /// <summary>A whole question of pairs with its reasons, by both measures; an odd number with an adult and with a three.</summary>
    public static void MeasurePairs()
    {
        foreach (var n in (int[])[20, 21, 40, 41, 60, 61])
        {
            PartnersQuestion[] questions = [.. Enumerable.Range(1, 5).Select(seed => Evening((ulong)seed, n))];
            Warm(() => questions.Sum(q => PairsTonight.Make(q).Offers.Count));
            double[] times = [.. questions.Select(q =>
            {
                var start = Stopwatch.GetTimestamp();
                PairsTonight.Make(q);
                return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            }).Order()];
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"pairs: {n} children, median {times[2]:0.0} ms, longest of 5 {times[4]:0.0} ms"));
        }
    }

    private static PartnersQuestion Evening(ulong seed, int children)
    {
        var state = unchecked(seed * 0x9E3779B97F4A7C15UL) | 1;
        int Next(int below)
        {
            unchecked
            {
                state ^= state >> 12;
                state ^= state << 25;
                state ^= state >> 27;
                return (int)(((state * 2685821657736338717UL) >> 16) % (ulong)below);
            }
        }

        PersonId Id(int i) => new(new Guid(i + 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0));
        var today = new DateOnly(2026, 3, 24);
        var all = new List<PartnersChild>();
        for (var i = 0; i < children; i++)
        {
            var age = 6 + Next(9);
            all.Add(new PartnersChild(Id(i), $"Child {i}", i, age, Next(8) != 0, true, true, 18 + age * 2.5m + Next(100) / 10m, today, Next(8) == 0));
        }

        WorkedTogether[] together = [.. Enumerable.Range(0, children * 4).Select(_ => (Next(children), Next(children))).Where(p => p.Item1 != p.Item2).Select(p => new WorkedTogether(Id(p.Item1), Id(p.Item2), 1 + Next(12)))];
        return new PartnersQuestion(today, new("throwing", true, 25), all, ["Anna"], null, [new(Id(0), Id(1)), new(Id(2), Id(3))], null, together);
    }

    private static void Warm(Func<long> run)
    {
        var watch = Stopwatch.StartNew();
        do
            run();
        while (watch.ElapsedMilliseconds < 1_500);
    }

    private static double Median(MatchingCosts[] tables, Action<MatchingCosts> solve)
    {
        var times = new double[tables.Length];
        for (var i = 0; i < tables.Length; i++)
        {
            var start = Stopwatch.GetTimestamp();
            solve(tables[i]);
            times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        Array.Sort(times);
        return times[times.Length / 2];
    }

    private static (double Alone, double Whole, long Check)? Lemon(int n)
    {
        try
        {
            using var run = Process.Start(new ProcessStartInfo("bench/lemon/run.sh", ["time", $"{n}", $"{Seeds}"]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var words = run.StandardOutput.ReadToEnd().Split(' ', StringSplitOptions.RemoveEmptyEntries);
            run.WaitForExit();
            if (run.ExitCode == 0)
                return (double.Parse(words[0], CultureInfo.InvariantCulture), double.Parse(words[1], CultureInfo.InvariantCulture), long.Parse(words[2], CultureInfo.InvariantCulture));
        }
        catch (System.ComponentModel.Win32Exception)
        {
            // No shell or no compiler here: ours alone is measured.
        }

        Console.WriteLine("matching: LEMON was not run; run from the root of the repository, with g++ and liblemon-dev");
        return null;
    }

    /// <summary>The formula of bench/lemon/matching.cpp and of the tests' MatchingTables.Children.</summary>
    private static MatchingCosts Children(ulong seed, int children)
    {
        var state = unchecked(seed * 0x9E3779B97F4A7C15UL) | 1;
        ulong Next()
        {
            unchecked
            {
                state ^= state >> 12;
                state ^= state << 25;
                state ^= state >> 27;
                return (state * 2685821657736338717UL) >> 16;
            }
        }

        var (size, age, rank) = (new long[children], new long[children], new long[children]);
        for (var c = 0; c < children; c++)
        {
            age[c] = 6 + (long)(Next() % 11);
            size[c] = 160 + (age[c] - 6) * 40 + (long)(Next() % 200);
            rank[c] = (long)(Next() % 6);
        }

        var costs = new MatchingCosts(children);
        for (var u = 0; u < children; u++)
        {
            for (var v = u + 1; v < children; v++)
            {
                var cost = 2 * Math.Abs(size[u] - size[v]) + 40 * Math.Abs(age[u] - age[v]) + 25 * Math.Abs(rank[u] - rank[v]);
                if (Next() % 5 == 0)
                    cost += 120;
                if (Next() % 10 != 0)
                    costs[u, v] = cost;
            }
        }

        return costs;
    }
}
