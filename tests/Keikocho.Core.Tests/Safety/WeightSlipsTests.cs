using CsCheck;
using Keikocho.Core.Safety;
using MathNet.Numerics.Distributions;

namespace Keikocho.Core.Tests.Safety;

public sealed class WeightSlipsTests
{
    private static readonly DateOnly Today = new(2026, 3, 3);

    private static WeightAnswer Judge(WeightSnapshot snapshot)
    {
        var answer = WeightSlips.Judge(snapshot);
        Assert.Empty(WeightSlipsCheck.Objections(snapshot, answer));
        return answer;
    }

    // The row of boys at 120.5 months with its percentiles as the CDC prints them (read).
    [Theory]
    [InlineData(0.03, 24.19264433)]
    [InlineData(0.05, 24.94392079)]
    [InlineData(0.10, 26.20745012)]
    [InlineData(0.25, 28.66893932)]
    [InlineData(0.50, 32.08799062)]
    [InlineData(0.75, 36.55850564)]
    [InlineData(0.90, 41.96894158)]
    [InlineData(0.95, 46.15753154)]
    [InlineData(0.97, 49.41515104)]
    public void The_percentiles_that_the_table_prints_have_their_scores(double share, double kilograms) =>
        Assert.Equal(Normal.InvCDF(0, 1, share), WeightSlips.Z(kilograms, 120.5, GrowthTable.Boys)!.Value, 1e-6);

    // Published cases of a test set for the CDC table (read); straight lines between the rows reproduce them.
    [Theory]
    [InlineData(GrowthTable.Boys, 109.1745, 32.01, 0.5783)]
    [InlineData(GrowthTable.Boys, 81.5113, 26.46, 0.9990)]
    [InlineData(GrowthTable.Girls, 96.7556, 26.21, 0.0853)]
    [InlineData(GrowthTable.Girls, 120.4435, 39.53, 0.8487)]
    [InlineData(GrowthTable.Boys, 146.1684, 54.81, 1.2771)]
    public void Published_cases_have_their_scores(GrowthTable table, double months, double kilograms, double z) =>
        Assert.Equal(z, WeightSlips.Z(kilograms, months, table)!.Value, 1e-4);

    // A ten-year-old of 32 to 36 kg, typed in four wrong ways and in the right one.
    [Theory]
    [InlineData("32", false, null)]
    [InlineData("80", true, WeightSlip.PoundsAsKilograms)]
    // Growth is skewed: the median weight typed in pounds stays just inside the bound of 3.
    [InlineData("70.5", false, null)]
    [InlineData("14.5", true, WeightSlip.KilogramsAsPounds)]
    [InlineData("320", true, WeightSlip.DigitTooMany)]
    [InlineData("3.2", true, WeightSlip.DigitTooFew)]
    public void A_slip_is_asked_about_and_the_likely_reading_named(string kilograms, bool ask, WeightSlip? slip)
    {
        var answer = Judge(new WeightSnapshot(Today.AddDays(-3653), Today, decimal.Parse(kilograms, null), GrowthTable.Boys));
        Assert.Equal(ask, answer.Ask);
        Assert.Equal(slip is { } s ? [s] : [], answer.Readings.Select(r => r.Slip));
        Assert.All(answer.Readings, r => Assert.InRange(r.Kilograms, 31.9m, 36.4m));
    }

    [Fact]
    public void The_sentence_gives_the_figures_and_where_the_table_comes_from() =>
        Assert.Equal(
            "320 kg at 120.0 months has the score 4.3; the bound is 3 either way (CDC growth charts 2000, weight for age (US government, public domain)): please look again, perhaps 32.0 kg (a digit too many).",
            Assert.Single(Judge(new WeightSnapshot(Today.AddDays(-3653), Today, 320, GrowthTable.Boys)).Reasons).Sentence);

    [Theory]
    [InlineData(1_800)]
    [InlineData(5_200)]
    public void Outside_the_ages_of_the_table_nothing_is_asked(int days)
    {
        var answer = Judge(new WeightSnapshot(Today.AddDays(-days), Today, 200, GrowthTable.Girls));
        Assert.False(answer.Ask);
        Assert.Null(answer.Z);
    }

    [Fact]
    public void A_weight_that_no_scale_shows_and_a_day_before_the_birth_are_refused()
    {
        Assert.Throws<ArgumentException>(() => WeightSlips.Judge(new WeightSnapshot(Today.AddDays(-3653), Today, 0)));
        Assert.Throws<ArgumentException>(() => WeightSlips.Judge(new WeightSnapshot(Today.AddDays(-3653), Today, 2_001)));
        Assert.Throws<ArgumentException>(() => WeightSlips.Judge(new WeightSnapshot(Today.AddDays(1), Today, 30)));
        Assert.Throws<ArgumentOutOfRangeException>(() => WeightSlips.Judge(new WeightSnapshot(Today.AddDays(-3653), Today, 30, null, new WeightRule(9))));
    }

    private static readonly Gen<WeightSnapshot> Any =
        Gen.Select(Gen.Int[1_700, 5_300], Gen.Int[10, 20_000], Gen.Int[0, 2], Gen.Int[2, 6], Gen.Int[1, 3]).Select(t => new WeightSnapshot(
            Today.AddDays(-t.Item1), Today, t.Item2 / 10m, t.Item3 == 0 ? null : (GrowthTable)t.Item3, new WeightRule(t.Item4, t.Item5)));

    [Fact]
    public void Every_answer_stands_before_the_check() =>
        Any.Sample(s => WeightSlipsCheck.Objections(s, WeightSlips.Judge(s)).Count == 0, iter: 5_000);

    [Fact]
    public void More_weight_never_has_a_lower_score() =>
        Any.Where(s => s.Table is not null).Sample(s =>
            WeightSlips.Judge(s with { Kilograms = Math.Min(2_000, s.Kilograms + 1) }).Z is not { } more || more >= WeightSlips.Judge(s).Z);

    [Fact]
    public void An_answer_that_is_wrong_is_objected_to() =>
        Any.Sample(s =>
        {
            var a = WeightSlips.Judge(s);
            WeightAnswer[] wrong = [a with { Ask = !a.Ask }, a with { Z = (a.Z ?? 0) + 0.5 }, a with { Readings = [.. a.Readings, new WeightReading(WeightSlip.DigitTooFew, 1)] }];
            return wrong.All(w => WeightSlipsCheck.Objections(s, w).Count > 0);
        });
}
