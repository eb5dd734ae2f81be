using CsCheck;
using Keikocho.Core.Attendance;
using MathNet.Numerics;

namespace Keikocho.Core.Tests.Attendance;

public sealed class BetaBinomialTests
{
    [Fact]
    public void It_agrees_with_the_beta_binomial_of_MathNet() =>
        Gen.Select(Gen.Double[0.2, 80], Gen.Double[0.2, 80], Gen.Int[1, 60]).Sample((a, b, n) =>
        {
            var chances = BetaBinomial.Chances(new ChildRate(a, b), n);
            for (var k = 0; k <= n; k++)
                Assert.InRange(Math.Abs(chances[k] - MathNet.Numerics.Distributions.BetaBinomial.PMF(n, a, b, k)), 0, 1e-10);
        });

    [Fact]
    public void It_agrees_with_its_closed_form_in_the_log_gamma_of_MathNet() =>
        Gen.Select(Gen.Double[0.2, 80], Gen.Double[0.2, 80], Gen.Int[1, 60]).Sample((a, b, n) =>
        {
            var chances = BetaBinomial.Chances(new ChildRate(a, b), n);
            for (var k = 0; k <= n; k++)
            {
                var log = SpecialFunctions.BinomialLn(n, k) + SpecialFunctions.BetaLn(a + k, b + n - k) - SpecialFunctions.BetaLn(a, b);
                Assert.InRange(Math.Abs(chances[k] - Math.Exp(log)), 0, 1e-11);
            }
        });

    // By hand: with a = b = 1 every number of lessons is equally likely.
    [Fact]
    public void With_one_and_one_every_number_is_equally_likely() =>
        Assert.All(BetaBinomial.Chances(new ChildRate(1, 1), 9), c => Assert.Equal(.1, c, 15));

    // By hand: a = 2, b = 1, 2 lessons: 1/3*1/2 = 1/6, 2 * 2/3*1/4 = 1/3, 2/3*3/4 = 1/2.
    [Fact]
    public void Two_lessons_by_hand()
    {
        var chances = BetaBinomial.Chances(new ChildRate(2, 1), 2);
        Assert.Equal(1 / 6.0, chances[0], 15);
        Assert.Equal(1 / 3.0, chances[1], 15);
        Assert.Equal(1 / 2.0, chances[2], 15);
    }

    [Fact]
    public void Up_to_ten_lessons_agree_with_every_order_of_coming_counted() =>
        Gen.Select(Gen.Double[0.2, 20], Gen.Double[0.2, 20], Gen.Int[0, 10]).Sample((a, b, n) =>
        {
            var counted = new double[n + 1];
            for (var order = 0; order < 1 << n; order++)
            {
                double chance = 1;
                var came = 0;
                for (var i = 0; i < n; i++)
                {
                    var comes = (a + came) / (a + b + i);
                    chance *= (order >> i & 1) == 1 ? comes : 1 - comes;
                    came += order >> i & 1;
                }

                counted[came] += chance;
            }

            var chances = BetaBinomial.Chances(new ChildRate(a, b), n);
            for (var k = 0; k <= n; k++)
                Assert.InRange(Math.Abs(chances[k] - counted[k]), 0, 1e-13);
        });

    [Fact]
    public void A_rate_that_is_known_for_certain_gives_the_binomial()
    {
        // Our own calculation, an exact fraction: P(X >= 7), n = 10, p = .8.
        Assert.Equal(.8791261184, BetaBinomial.AtLeast(new ChildRate(8e9, 2e9), 7, 10), 8);
    }

    [Fact]
    public void Every_answer_stands_before_the_check() =>
        Gen.Select(Gen.Double[0.01, 500], Gen.Double[0.01, 500], Gen.Int[0, 300]).Sample((a, b, n) =>
            BetaBinomialCheck.Objections(new ChildRate(a, b), BetaBinomial.Chances(new ChildRate(a, b), n), 1e-11).Count == 0, iter: 200);

    [Fact]
    public void Chances_of_another_rate_are_objected_to() =>
        Assert.NotEmpty(BetaBinomialCheck.Objections(new ChildRate(7, 3), BetaBinomial.Chances(new ChildRate(7, 3.001), 5)));

    [Fact]
    public void More_needed_is_never_likelier_and_more_attended_never_less_likely() =>
        Gen.Select(Gen.Double[0.5, 30], Gen.Double[0.5, 30], Gen.Int[1, 40], Gen.Int[0, 40]).Sample((a, b, left, needed) =>
            BetaBinomial.AtLeast(new ChildRate(a, b), needed + 1, left) <= BetaBinomial.AtLeast(new ChildRate(a, b), needed, left)
            && BetaBinomial.AtLeast(new ChildRate(a + 1, b), needed, left) >= BetaBinomial.AtLeast(new ChildRate(a, b), needed, left) - 1e-14);

    [Fact]
    public void None_needed_is_certain_and_more_than_left_is_no_chance()
    {
        Assert.Equal(1, BetaBinomial.AtLeast(new ChildRate(7, 3), 0, 4));
        Assert.Equal(0, BetaBinomial.AtLeast(new ChildRate(7, 3), 5, 4));
        Assert.Equal(1, BetaBinomial.AtLeast(new ChildRate(7, 3), 0, 0));
    }

    [Theory]
    [InlineData(0, "no chance")]
    [InlineData(1e-300, "hardly any chance")]
    [InlineData(0.0499999, "hardly any chance")]
    [InlineData(0.05, "about 1 in 10")]
    [InlineData(0.1499999, "about 1 in 10")]
    [InlineData(0.5, "about 5 in 10")]
    [InlineData(0.8499999, "about 8 in 10")]
    [InlineData(0.9499999, "about 9 in 10")]
    [InlineData(0.95, "almost certain")]
    [InlineData(1, "certain")]
    public void A_chance_is_said_in_tenths(double chance, string words) => Assert.Equal(words, ChanceWords.Of(chance));
}
