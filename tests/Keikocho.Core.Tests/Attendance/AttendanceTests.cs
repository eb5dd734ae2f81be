using CsCheck;
using Keikocho.Core.Attendance;

namespace Keikocho.Core.Tests.Attendance;

public sealed class AttendanceTests
{
    private static LessonCount[] Same(int children, int held, int attended) => [.. Enumerable.Repeat(new LessonCount(held, attended), children)];

    private static BetaPrior Fit(params LessonCount[] register) => BetaPrior.Fit(register, new PriorRule());

    [Fact]
    public void Fewer_than_ten_children_with_eight_lessons_take_the_proposed_prior()
    {
        Assert.Equal(new BetaPrior(7, 3, 9, PriorSource.TooFewChildren), Fit([.. Same(9, 20, 15), .. Same(30, 7, 1)]));
        Assert.NotEqual(PriorSource.TooFewChildren, Fit(Same(10, 8, 5)).Source);
    }

    [Fact]
    public void Everybody_always_there_has_no_spread_to_fit() =>
        Assert.Equal(new BetaPrior(7, 3, 12, PriorSource.AllOrNothing), Fit(Same(12, 20, 20)));

    [Fact]
    public void Children_who_do_not_differ_keep_the_club_s_rate_at_the_most_strength()
    {
        var prior = Fit(Same(12, 20, 18));
        Assert.Equal(PriorSource.NoMoreThanChance, prior.Source);
        Assert.Equal((90, 10), (Math.Round(prior.A, 9), Math.Round(prior.B, 9)));
    }

    [Fact]
    public void Half_always_and_half_never_keep_the_club_s_rate_at_the_least_strength()
    {
        var prior = Fit([.. Same(8, 30, 30), .. Same(8, 30, 0)]);
        Assert.Equal(PriorSource.MoreThanAnyBeta, prior.Source);
        Assert.Equal((1, 1), (Math.Round(prior.A, 9), Math.Round(prior.B, 9)));
    }

    // By hand: 5 children 16 of 20, 5 children 8 of 20. p = .6; S = 10 * 20 * .04 = 8; S/(pq) = 33.333; k - 1 = 9; w - sum n^2/w = 200 - 20 = 180;
    // r = (33.333 - 9) / (180 - 9) = .142300; a + b = 1/r - 1 = 6.027397; a = 3.616438, b = 2.410959.
    [Fact]
    public void The_fit_by_hand()
    {
        var prior = Fit([.. Same(5, 20, 16), .. Same(5, 20, 8)]);
        Assert.Equal(PriorSource.Fitted, prior.Source);
        Assert.Equal(3.616438, prior.A, 6);
        Assert.Equal(2.410959, prior.B, 6);
    }

    // A register drawn from a known prior with a fixed seed: the fit must find it again within what 4,000 children allow.
    [Theory]
    [InlineData(7, 3)]
    [InlineData(12, 2)]
    [InlineData(2, 2)]
    public void A_register_drawn_from_a_known_prior_gives_that_prior_back(double a, double b)
    {
        var chance = new Random(20260303);
        var register = Enumerable.Range(0, 4000).Select(_ =>
        {
            var p = MathNet.Numerics.Distributions.Beta.Sample(chance, a, b);
            var held = chance.Next(8, 80);
            return new LessonCount(held, MathNet.Numerics.Distributions.Binomial.Sample(chance, p, held));
        }).ToArray();
        var prior = Fit(register);
        Assert.InRange(prior.Mean, (a / (a + b)) - .01, (a / (a + b)) + .01);
        Assert.InRange(prior.A + prior.B, (a + b) * .9, (a + b) * 1.1);
    }

    [Fact]
    public void A_child_s_own_lessons_are_added_to_the_common_rate()
    {
        var rate = new BetaPrior(7, 3, 0, PriorSource.TooFewChildren).Of(new LessonCount(17, 12));
        Assert.Equal(new ChildRate(19, 8), rate);
    }

    // By hand, with Beta(19, 8) and 4 lessons left: the chances of 0 and of 1 are 8*9*10*11/(27*28*29*30) and 4*19*8*9*10/(27*28*29*30).
    [Fact]
    public void The_worked_child_is_about_9_in_10_to_attend_2_of_the_4_lessons_left()
    {
        var answer = ReckonAttendance.Reckon(new AttendanceSnapshot([new AttendanceChild("A", 17, 12, 2, 4)]));
        var below = (7920.0 + 54720.0) / 657720.0;
        Assert.Equal(1 - below, answer.Children[0].Chance!.Value, 14);
        Assert.Equal("about 9 in 10", answer.Children[0].Words);
        Assert.Equal(
            "Attended 12 of 17 lessons; with the common rate added 70 %; about 9 in 10 to attend 2 or more of the 4 lessons left.",
            answer.Children[0].Because.Sentence);
        Assert.Equal(
            "Common rate: attended 7 and missed 3, as proposed; only 1 child of the 10 needed has 8 lessons or more in 12 months.",
            answer.Reasons[0].Sentence);
        Assert.Equal("likely 1 child", ReckonAttendance.Reckon(new AttendanceSnapshot([new AttendanceChild("A", 200, 190)])).Tonight.Words);
    }

    [Fact]
    public void Who_is_known_not_to_come_is_not_in_tonight_s_numbers()
    {
        var answer = ReckonAttendance.Reckon(new AttendanceSnapshot([new("A", 20, 15), new("B", 20, 15, Tonight: false)]));
        Assert.Equal(1, answer.Tonight.Asked);
    }

    [Fact]
    public void Every_answer_stands_before_the_check() =>
        Gen.Select(
            Gen.Select(Gen.Int[0, 60], Gen.Int[0, 60], Gen.Int[-1, 12], Gen.Int[0, 12], Gen.Bool).Array[0, 25], Gen.Int[0, 3],
            (children, kind) => new AttendanceSnapshot(
                [.. children.Select((c, i) => new AttendanceChild(
                    $"child {i}", c.Item1, kind == 0 ? c.Item1 : kind == 1 && c.Item2 % 2 == 0 ? 0 : kind == 1 ? c.Item1 : Math.Min(c.Item1, c.Item2),
                    c.Item3 < 0 ? null : c.Item3, c.Item3 < 0 ? null : c.Item4, c.Item5))]))
            .Sample(s => Assert.Empty(AttendanceCheck.Objections(s, ReckonAttendance.Reckon(s))), iter: 1_000);

    [Fact]
    public void More_attended_than_held_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ReckonAttendance.Reckon(new AttendanceSnapshot([new("A", 3, 4)])));
}
