using System.Globalization;
using Keikocho.Core.Partners;
using Keikocho.Core.Tests.Command;

namespace Keikocho.Core.Tests.Partners;

/// <summary>Against optima that LEMON 1.3.1 found; the file says with which command.</summary>
public sealed class LemonTests
{
    [Fact]
    public void From_10_to_200_children_the_cheapest_is_what_lemon_found()
    {
        var lines = File.ReadAllLines(Path.Combine(Repository.Root, "tests/Keikocho.Core.Tests/Fixtures/partners/lemon-optima.txt"))
            .Where(l => !l.StartsWith('#')).Select(l => l.Split(' ').Select(f => long.Parse(f, CultureInfo.InvariantCulture)).ToArray()).ToArray();
        Assert.Equal(120, lines.Length);
        foreach (var line in lines)
        {
            var costs = MatchingTables.Children((ulong)line[0], (int)line[1]);
            var present = Enumerable.Range(0, costs.Vertices).SelectMany(u => Enumerable.Range(u + 1, costs.Vertices - u - 1).Where(v => costs.Has(u, v)).Select(v => costs[u, v])).ToArray();
            Assert.Equal((line[2], line[3]), (present.Length, present.Sum()));
            var answer = MinimumMatching.Solve(costs);
            Assert.Equal(line[4], answer.Mates is null ? -1 : answer.Cost);
            Assert.Empty(MatchingCheck.Objections(costs, answer));
        }
    }
}
