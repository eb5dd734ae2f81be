using Google.OrTools.Sat;
using Keikocho.Core.Partners;

namespace Keikocho.Core.Tests.Partners;

/// <summary>Against CP-SAT of Google OR-Tools 9.15.6755, one worker: a Boolean for each edge, exactly one at each vertex.</summary>
public sealed class SolverTests
{
    [Theory]
    [InlineData(12, 12UL, 30)]
    [InlineData(20, 40UL, 60)]
    [InlineData(24, 5UL, 40)]
    [InlineData(30, 200UL, 50)]
    [InlineData(40, 1_000UL, 10)]
    public void Up_to_forty_the_cheapest_is_what_the_solver_proves(int vertices, ulong range, int absent)
    {
        for (var seed = 1UL; seed <= 4; seed++)
        {
            var costs = MatchingTables.Random(seed, vertices, range, absent);
            var model = new CpModel();
            var at = Enumerable.Range(0, vertices).Select(_ => new List<ILiteral>()).ToArray();
            var edges = new List<BoolVar>();
            var weights = new List<long>();
            for (var u = 0; u < vertices; u++)
            {
                for (var v = u + 1; v < vertices; v++)
                {
                    if (!costs.Has(u, v))
                        continue;
                    var edge = model.NewBoolVar("");
                    edges.Add(edge);
                    weights.Add(costs[u, v]);
                    at[u].Add(edge);
                    at[v].Add(edge);
                }
            }

            foreach (var literals in at)
                model.AddExactlyOne(literals);
            model.Minimize(LinearExpr.WeightedSum(edges, weights));
            var solver = new CpSolver { StringParameters = "num_workers:1" };
            var status = solver.Solve(model);
            var answer = MinimumMatching.Solve(costs);
            Assert.Equal(answer.Mates is null ? CpSolverStatus.Infeasible : CpSolverStatus.Optimal, status);
            if (answer.Mates is not null)
                Assert.Equal((long)solver.ObjectiveValue, answer.Cost);
        }
    }
}
