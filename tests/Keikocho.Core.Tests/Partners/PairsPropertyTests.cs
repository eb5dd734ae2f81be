using Keikocho.Core.Kernel;
using Keikocho.Core.Partners;

namespace Keikocho.Core.Tests.Partners;

/// <summary>What holds of every evening. The seed of one that fails is in the message.</summary>
public sealed class PairsPropertyTests
{
    [Theory]
    [InlineData(1, 20)]
    [InlineData(2, 100)]
    [InlineData(3, 200)]
    [InlineData(4, 300)]
    [InlineData(5, 400)]
    [InlineData(6, 300)]
    [InlineData(7, 300)]
    [InlineData(8, 100)]
    [InlineData(9, 40)]
    [InlineData(12, 60)]
    [InlineData(21, 40)]
    [InlineData(40, 10)]
    [InlineData(61, 3)]
    public void No_gate_is_ever_broken_and_nothing_better_is_found_by_trying(int children, int seeds)
    {
        for (var seed = 1UL; seed <= (ulong)seeds; seed++)
        {
            var question = AnyMat.Question(seed, children);
            var objections = PartnersCheck.Objections(question, PairsTonight.Make(question));
            Assert.True(objections.Count == 0, $"seed {seed}: {string.Join(' ', objections)}");
        }
    }

    [Fact]
    public void The_order_of_what_is_given_does_not_matter()
    {
        for (var seed = 1UL; seed <= 60; seed++)
        {
            var question = AnyMat.Question(seed, 15);
            var turned = question with
            {
                Children = [.. question.Children.Reverse()],
                KeepApart = [.. question.KeepApart!.Reverse().Select(t => new TwoChildren(t.Other, t.One))],
                KeepTogether = [.. question.KeepTogether!.Reverse()],
                Together = [.. question.Together!.Reverse().Select(t => new WorkedTogether(t.Other, t.One, t.ClassesAgo))],
            };
            Assert.Equal(SumJson.Write(PairsTonight.Make(question)), SumJson.Write(PairsTonight.Make(turned)));
        }
    }

    [Fact]
    public void One_child_more_breaks_no_gate()
    {
        for (var seed = 1UL; seed <= 60; seed++)
        {
            var question = AnyMat.Question(seed, 14);
            for (var here = 1; here <= 14; here++)
                Mats.Make(question with { Children = [.. question.Children.Take(here)] });
        }
    }

    [Fact]
    public void The_worst_pair_is_never_better_and_the_sum_never_worse_than_by_the_other_measure()
    {
        for (var seed = 1UL; seed <= 200; seed++)
        {
            foreach (var offer in PairsTonight.Make(AnyMat.Question(seed, 12 + (int)(seed % 7))).Offers)
                Assert.True(offer.WorstFirst.Worst <= offer.BySum.Worst && offer.BySum.Total <= offer.WorstFirst.Total, $"seed {seed}");
        }
    }
}
