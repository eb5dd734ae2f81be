using CsCheck;
using Keikocho.Core.Attendance;

namespace Keikocho.Core.Tests.Attendance;

public sealed class PoissonBinomialTests
{
    private static IReadOnlyList<double> Chances(params double[] comes)
    {
        var chances = PoissonBinomial.Of(comes).Chances;
        Assert.Empty(PoissonBinomialCheck.Objections(comes, chances));
        return chances;
    }

    private static void AssertNear(double[] expected, IEnumerable<double> actual, double tolerance) =>
        Assert.All(expected.Zip(actual, (e, a) => Math.Abs(e - a)), d => Assert.InRange(d, 0, tolerance));

    // Read in the readme of the Python package fast-poibin.
    [Fact]
    public void Three_people_as_in_fast_poibin()
    {
        var numbers = PoissonBinomial.Of([.1, .2, .2]);
        AssertNear([.576, .352, .068, .004], numbers.Chances, 1e-15);
        AssertNear([.576, .928, .996, 1], Enumerable.Range(0, 4).Select(numbers.AtMost), 1e-15);
    }

    // Read in the test file of the Python package poibin.
    [Fact]
    public void Three_people_as_in_poibin()
    {
        AssertNear([.098, .476, .354, .072], Chances(.3, .8, .3), 1e-15);
        AssertNear([.135, .6, .965], Enumerable.Range(0, 3).Select(PoissonBinomial.Of([.1, .5, .7]).AtMost), 1e-15);
    }

    // Values of the R package poibin, read in the same test file; printed to eight digits.
    [Fact]
    public void Three_people_as_in_the_R_package_poibin() =>
        AssertNear([.0120647, .39129134, .46189012, .13475384], Chances(.4163448, .3340270, .9689613), 1e-8);

    // Inputs read in the manual of the R package poibin (Hong 2013), each chance twice; the values are our own calculation.
    [Fact]
    public void Ten_people_as_in_Hong_2013()
    {
        var numbers = PoissonBinomial.Of([.1, .1, .2, .2, .3, .3, .4, .4, .5, .5]);
        AssertNear(
            [.022861, .135173, .372117, .653835, .862130, .961810, .992945, .999183, .999947, .999999, 1],
            Enumerable.Range(0, 11).Select(numbers.AtMost), 1e-6);
    }

    // NIST/SEMATECH handbook 6.2.3.2, P(X <= 3) for 52 trials; the printed .845 and .739 are from memory and differ in the third digit.
    [Theory]
    [InlineData(.01, .998)]
    [InlineData(.02, .980)]
    [InlineData(.03, .930)]
    [InlineData(.04, .845)]
    [InlineData(.05, .739)]
    [InlineData(.06, .620)]
    [InlineData(.07, .502)]
    [InlineData(.08, .394)]
    [InlineData(.09, .300)]
    [InlineData(.10, .223)]
    [InlineData(.11, .162)]
    [InlineData(.12, .115)]
    public void Equal_chances_are_the_binomial_of_the_NIST_table(double p, double atMost3) =>
        Assert.InRange(PoissonBinomial.Of([.. Enumerable.Repeat(p, 52)]).AtMost(3), atMost3 - .001, atMost3 + .001);

    // NIST/SEMATECH handbook 7.2.4.2: exact 90 % interval for 4 of 20; set-up read, the printed ends from memory, ours calculated.
    [Fact]
    public void The_ends_of_the_exact_interval_for_4_of_20_leave_5_percent_each()
    {
        Assert.Equal(.05, 1 - PoissonBinomial.Of([.. Enumerable.Repeat(.0713539, 20)]).AtMost(3), 6);
        Assert.Equal(.05, PoissonBinomial.Of([.. Enumerable.Repeat(.4010281, 20)]).AtMost(4), 6);
    }

    // Our own calculation, in exact fractions: 176/1024 and 8791261184/10^10.
    [Fact]
    public void Ten_equal_chances_give_the_exact_fractions()
    {
        Assert.Equal(.171875, PoissonBinomial.Of([.. Enumerable.Repeat(.5, 10)]).AtMost(3), 14);
        Assert.Equal(.8791261184, 1 - PoissonBinomial.Of([.. Enumerable.Repeat(.8, 10)]).AtMost(6), 13);
    }

    // Evans' candy bars (used in the Boost documentation; problem read, values calculated): the fifth sale at house n, p = .4.
    [Theory]
    [InlineData(5, .01024)]
    [InlineData(6, .03072)]
    [InlineData(7, .055296)]
    [InlineData(8, .0774144)]
    [InlineData(9, .09289728)]
    [InlineData(10, .1003290624)]
    public void The_fifth_sale_at_house_n_is_four_before_and_one_there(int house, double chance) =>
        Assert.Equal(chance, Chances([.. Enumerable.Repeat(.4, house - 1)])[4] * .4, 14);

    [Fact]
    public void Done_by_8_houses_and_not_done_by_30_are_the_same_problem_s_tails()
    {
        Assert.Equal(.1736704, 1 - PoissonBinomial.Of([.. Enumerable.Repeat(.4, 8)]).AtMost(4), 13);
        Assert.Equal(.0015100741, PoissonBinomial.Of([.. Enumerable.Repeat(.4, 30)]).AtMost(4), 10);
        Assert.Equal(.5940864, 1 - PoissonBinomial.Of([.. Enumerable.Repeat(.6, 8)]).AtMost(4), 13);
    }

    [Fact]
    public void Equal_chances_agree_with_the_binomial_of_MathNet() =>
        Gen.Select(Gen.Double[0.001, 0.999], Gen.Int[1, 120]).Sample((p, n) =>
        {
            var chances = PoissonBinomial.Of([.. Enumerable.Repeat(p, n)]).Chances;
            for (var k = 0; k <= n; k++)
                Assert.InRange(Math.Abs(chances[k] - MathNet.Numerics.Distributions.Binomial.PMF(p, n, k)), 0, 1e-11);
        });

    [Fact]
    public void Up_to_ten_people_agree_with_every_subset_counted() =>
        Gen.Double[0, 1].Array[0, 10].Sample(comes =>
        {
            var counted = new double[comes.Length + 1];
            for (var set = 0; set < 1 << comes.Length; set++)
            {
                double chance = 1;
                for (var i = 0; i < comes.Length; i++)
                    chance *= (set >> i & 1) == 1 ? comes[i] : 1 - comes[i];
                counted[int.PopCount(set)] += chance;
            }

            AssertNear(counted, PoissonBinomial.Of(comes).Chances, 1e-14);
        });

    [Fact]
    public void Every_answer_stands_before_the_check() =>
        Gen.Select(Gen.Double[0, 1].Array[0, 60], Gen.Int[50, 99]).Sample((comes, percent) =>
        {
            var numbers = PoissonBinomial.Of(comes);
            Assert.Empty(PoissonBinomialCheck.Objections(comes, numbers.Chances));
            Assert.Empty(PoissonBinomialCheck.Objections(numbers.Chances, percent, numbers.Likely(percent)));
            Assert.Equal(comes.Sum(), numbers.Chances.Select((c, k) => c * k).Sum(), 9);
        });

    [Fact]
    public void Chances_that_are_slightly_off_are_objected_to() =>
        Gen.Double[0.05, 0.95].Array[2, 20].Sample(comes =>
        {
            var chances = PoissonBinomial.Of(comes).Chances.ToArray();
            var most = Array.IndexOf(chances, chances.Max());
            chances[most] -= 1e-9;
            chances[most == 0 ? 1 : most - 1] += 1e-9;
            return PoissonBinomialCheck.Objections(comes, chances).Count > 0;
        });

    [Fact]
    public void Two_thousand_people_lose_no_chance()
    {
        var numbers = PoissonBinomial.Of([.. Enumerable.Range(1, 2000).Select(i => i / 2001.0)]);
        Assert.Equal(1, numbers.Chances.Sum(), 12);
        Assert.Equal(1000, numbers.Mean, 9);
    }

    [Fact]
    public void The_order_of_the_people_never_matters() =>
        Gen.Select(Gen.Double[0, 1].Array[0, 30], Gen.Int[0, int.MaxValue]).Sample((comes, seed) =>
        {
            var shuffled = comes.ToArray();
            new Random(seed).Shuffle(shuffled);
            return PoissonBinomial.Of(comes).Chances.SequenceEqual(PoissonBinomial.Of(shuffled).Chances);
        });

    [Fact]
    public void Nobody_and_certain_people_are_a_range_of_one_number()
    {
        Assert.Equal(new LikelyRange(0, 0, 1), PoissonBinomial.Of([]).Likely(80));
        Assert.Equal(new LikelyRange(2, 2, 1), PoissonBinomial.Of([1, 0, 1]).Likely(80));
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void A_chance_outside_0_to_1_is_refused(double chance) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PoissonBinomial.Of([.5, chance]));
}
