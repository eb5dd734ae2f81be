using System.Numerics;
using CsCheck;
using Keikocho.Core.Attendance;
using Keikocho.Core.Calendar;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Tests.Kernel;

public sealed class SettingTests
{
    private static readonly (IReadOnlyList<Setting> Settings, IReadOnlyList<SettingUsed> Used)[] Sums =
    [
        (AttendanceRules.Settings, new AttendanceRules().Used()),
        (ClockRule.Settings, new ClockRule().Used()),
        (AgeOutRule.Settings, new AgeOutRule().Used()),
        (ReturnRule.Settings, new ReturnRule().Used()),
        (PriorRule.Settings, new PriorRule().Used()),
        (AdultRules.Settings, new AdultRules().Used()),
    ];

    [Fact]
    public void What_a_sum_proposes_is_what_it_uses_when_nothing_is_set() =>
        Assert.All(Sums, s => Assert.Equal(s.Settings.Select(x => (x.Key, x.Proposed)), s.Used.Select(x => (x.Key, x.Value))));

    [Fact]
    public void Every_proposed_value_is_allowed_and_has_a_source()
    {
        Assert.All(Sums.SelectMany(s => s.Settings), s => Assert.Null(s.Refusal(s.Proposed)));
        Assert.All(Sums.SelectMany(s => s.Settings), s => Assert.NotEmpty(s.Source));
    }

    [Fact]
    public void No_two_settings_share_a_key()
    {
        var keys = Sums.SelectMany(s => s.Settings).Select(s => s.Key).ToArray();
        Assert.Equal(keys.Length, keys.Distinct().Count());
    }

    [Theory]
    [InlineData("5", true)]
    [InlineData("0", true)]
    [InlineData("30", true)]
    [InlineData("31", false)]
    [InlineData("-1", false)]
    [InlineData("five", false)]
    [InlineData("5.5", false)]
    [InlineData("", false)]
    public void A_value_outside_the_range_gets_a_sentence(string text, bool good)
    {
        var refusal = AttendanceRules.Settings[0].Refusal(text);
        Assert.Equal(good ? null : "Late is later than this after the bow: give a whole number from 0 to 30.", refusal);
    }

    [Fact]
    public void A_sum_refuses_a_rule_outside_the_range()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => FoldAttendance.Fold([], Evening.Marks.Times, new AttendanceRules(31)));
        Assert.Throws<ArgumentOutOfRangeException>(() => BetaPrior.Fit([], new PriorRule(LikelyPercent: 100)));
        Assert.Throws<ArgumentException>(() => ReturnAfterAbsence.Reckon(new(2026, 3, 3), new(2026, 3, 1), new ReturnRule(42, 21)));
    }

    [Fact]
    public void Fractions_add_and_round_up_as_whole_numbers_do() =>
        Gen.Select(Gen.Int[0, 1000], Gen.Int[1, 60], Gen.Int[0, 1000], Gen.Int[1, 60]).Sample((a, b, c, d) =>
        {
            var sum = new Fraction(a, b) + new Fraction(c, d);
            var (top, bottom) = (((BigInteger)a * d) + ((BigInteger)c * b), (BigInteger)b * d);
            return sum.Numerator * bottom == top * sum.Denominator
                && sum.Ceiling * bottom >= top && (sum.Ceiling - 1) * bottom < top
                && BigInteger.GreatestCommonDivisor(sum.Numerator, sum.Denominator) == 1;
        });
}
