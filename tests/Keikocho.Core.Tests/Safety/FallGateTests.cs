using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Testing;
using static Keikocho.Core.Tests.Safety.Gates;

namespace Keikocho.Core.Tests.Safety;

public sealed class FallGateTests
{
    /// <summary>Each ruling is a row: days as "month-day: falls; ...", more days on the mat, tonight, a stage, and what is then so.</summary>
    [Theory]
    // Two evenings open; the latest counts for 21 days.
    [InlineData("3-3:3; 3-10:3", "", "3-12", 3, GateState.Open, "two clean evenings open the stage")]
    [InlineData("3-3:3", "", "3-10", 3, GateState.Shut, "one does not")]
    [InlineData("3-3:3 3 3", "", "3-10", 3, GateState.Shut, "several on one evening are one evening")]
    [InlineData("3-3:5; 3-10:4", "", "3-12", 3, GateState.Open, "a higher stage counts for the lower")]
    [InlineData("3-3:2; 3-10:2", "", "3-12", 3, GateState.Shut, "a lower one does not count for the higher")]
    [InlineData("3-3:3; 3-10:3", "3-17 3-24 3-26", "3-31", 3, GateState.Open, "exactly 21 days old while attending still counts")]
    [InlineData("3-3:3; 3-10:3", "3-17 3-24 3-31", "4-1", 3, GateState.LookAgain, "22 days old while attending is looked at again")]
    [InlineData("1-6:3; 3-10:3", "1-20 2-3 2-17 3-3", "3-12", 3, GateState.Open, "only the latest has an age limit")]
    // The head.
    [InlineData("3-3:3; 3-10:3; 3-17:x3; 3-19:3", "", "3-24", 3, GateState.Shut, "the count restarts at the stage")]
    [InlineData("3-3:4; 3-10:4; 3-17:x3; 3-19:4", "", "3-24", 4, GateState.Shut, "and above")]
    [InlineData("3-3:3; 3-10:3; 3-17:x3; 3-19:3", "", "3-24", 2, GateState.Open, "and not below")]
    [InlineData("3-3:3; 3-10:3; 3-17:x3; 3-19:3; 3-24:3", "", "3-24", 3, GateState.Open, "one clean tonight opens it")]
    [InlineData("3-3:3; 3-10:3 x5", "", "3-12", 3, GateState.Shut, "an evening with a touch higher up is not clean")]
    [InlineData("3-3:3; 3-5:3; 3-10:3 x5", "", "3-12", 3, GateState.Open, "but it does not restart the lower counts")]
    [InlineData("3-3:3; 3-10:3; 3-12:x3", "", "3-12", 1, GateState.Shut, "tonight every stage of the direction is shut")]
    [InlineData("3-3:3; 3-10:3; 3-12:x5", "", "3-12", 3, GateState.Shut, "also below the touch")]
    [InlineData("3-3:3; 3-10:3; 3-12:x5", "", "3-17", 3, GateState.Open, "and the next evening no longer")]
    // Who may confirm.
    [InlineData("3-3:3; 3-10:?3", "", "3-12", 3, GateState.Shut, "an unconfirmed clean fall counts nothing")]
    [InlineData("3-3:3; 3-10:3; 3-17:?x3", "", "3-19", 3, GateState.Shut, "an unconfirmed head touch shuts at once")]
    // Away.
    [InlineData("3-3:3; 3-10:3", "", "3-31", 3, GateState.Shut, "21 days away is shut")]
    [InlineData("3-3:3; 3-10:3", "", "3-30", 3, GateState.Open, "20 days away is not")]
    [InlineData("3-3:3; 3-10:3; 3-31:2 3", "", "3-31", 3, GateState.Open, "one stage lower, then the stage, on one evening")]
    [InlineData("3-3:3; 3-10:3; 3-31:2 4", "", "3-31", 3, GateState.Open, "or higher than the stage")]
    [InlineData("3-3:3; 3-10:3; 3-31:3 3", "", "3-31", 3, GateState.Shut, "the stage shown twice is not enough")]
    [InlineData("3-3:3; 3-10:3; 3-31:1 3", "", "3-31", 3, GateState.Shut, "two stages lower is not one")]
    [InlineData("3-3:3; 3-10:3; 3-31:3 2", "", "3-31", 3, GateState.Shut, "the lower comes first")]
    [InlineData("3-3:3; 3-10:3; 3-31:2 ?3", "", "3-31", 3, GateState.Shut, "both are confirmed")]
    [InlineData("3-3:3; 3-10:3; 3-31:2; 4-2:3", "", "4-2", 3, GateState.Shut, "on one evening, not on two")]
    [InlineData("3-3:3; 3-10:3; 3-31:3; 4-2:3; 4-7:3", "", "4-7", 3, GateState.Shut, "two clean evenings alone do not open it after an absence")]
    [InlineData("3-3:3; 3-10:3", "3-31", "4-2", 3, GateState.Shut, "away is not forgotten two days later")]
    [InlineData("3-3:3; 3-10:3; 4-2:2 3", "3-31", "4-2", 3, GateState.Open, "it may be shown on a later evening")]
    [InlineData("3-3:3; 3-10:3; 3-31:1", "", "3-31", 1, GateState.Open, "stage 1 needs one fall")]
    [InlineData("3-3:3; 3-10:3; 3-31:2 3 x4", "", "3-31", 3, GateState.Shut, "not on an evening when the head touched")]
    [InlineData("3-3:3; 3-10:3; 3-31:2 3; 4-28:2", "", "4-28", 3, GateState.Shut, "the next absence asks again")]
    [InlineData("3-3:3; 3-31:2 3", "", "3-31", 3, GateState.Open, "the showing is the second clean evening")]
    [InlineData("3-31:2 3", "3-3", "3-31", 3, GateState.Shut, "a stage that never opened needs its evenings too")]
    public void Each_rule_of_the_gate_is_so(string falls, string more, string tonight, int stage, GateState state, string rule)
    {
        var answer = Reckon(Child(On(tonight), falls.Split("; ").Select(Evening), more.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(On)));
        Assert.True(state == answer.Of(Back).Stages[stage - 1].State, $"{rule}: {answer.Of(Back).Stages[stage - 1].Because.Sentence}");
        static FallMark[] Evening(string text) => Falls(On(text.Split(':')[0]), text.Split(':')[1]);
    }

    private static DateOnly On(string monthDay) => Day(int.Parse(monthDay.Split('-')[0], null), int.Parse(monthDay.Split('-')[1], null));

    private static FallGateSnapshot Worked => Child(
        Day(3, 24), [Falls(Day(3, 3), "3"), Falls(Day(3, 10), "3"), Falls(Day(3, 17), "x3"), Falls(Day(3, 19), "3")]);

    // Worked by hand: clean on the 3rd and 10th, head touched on the 17th, clean on the 19th; asked on the 24th.
    [Fact]
    public void After_a_head_touch_one_clean_evening_of_two_is_shut_and_the_squat_stays_open()
    {
        var back = Reckon(Worked).Of(Back);
        Assert.Equal(new[] { GateState.Open, GateState.Open, GateState.Shut, GateState.Shut, GateState.Shut, GateState.Shut }, back.Stages.Select(s => s.State));
        Assert.Equal(2, back.OpenTo);
        var standing = back.Stages[2];
        Assert.Equal((1, Day(3, 19), true), (standing.CleanEvenings, standing.LatestClean!.Value, standing.MayBeTried));
        Assert.Equal("one more clean evening opens it", standing.OpensWith);
        Assert.Equal("Backward, stage 3 (standing): shut; 1 of 2 clean evenings (19 March 2026) since the head touched on 17 March 2026.", standing.Because.Sentence);
        Assert.Equal("Backward, stage 2 (squat): open; 3 clean evenings (3 March 2026, 10 March 2026 and 19 March 2026), the latest 5 days ago.", back.Stages[1].Because.Sentence);
        Assert.Equal("tori only", Reckon(Worked).Role);
    }

    [Fact, Statement(13)]
    public void One_clean_evening_does_not_open_a_stage_and_it_is_tried_only_from_an_open_stage_below()
    {
        PlannedThrow[] drill = [new("O-soto-otoshi", [Back], 3)];
        var child = Child(Day(3, 12), [Falls(Day(3, 3), "2"), Falls(Day(3, 10), "3")]) with { Planned = drill };
        var answer = Reckon(child);
        Assert.False(Assert.Single(answer.Throws).MayBeThrown);
        Assert.Equal("tori only", answer.Role);
        Assert.True(answer.Of(Back).Stages[2].MayBeTried);
        Assert.False(answer.Of(Back).Stages[3].MayBeTried);

        // Without the second evening from the squat, standing is not even tried; sitting always is.
        var less = Reckon(child with { Falls = Falls(Day(3, 10), "3") });
        Assert.Equal(new[] { true, false, false, false, false, false }, less.Of(Back).Stages.Select(s => s.MayBeTried));
    }

    [Fact, Statement(14)]
    public void After_a_head_touch_tonight_there_is_no_fall_that_way_tonight_whoever_pairs_again()
    {
        var before = Child(Day(3, 17), [Falls(Day(3, 3), "6"), Falls(Day(3, 10), "6"), Falls(Day(3, 3), "6", Left), Falls(Day(3, 10), "6", Left)]) with
        {
            Planned = [new("O-soto-gari", [Back], 6), new("Uki-goshi", [Left], 6), new("Tani-otoshi", [Back, Left], 4)],
        };
        Assert.All(Reckon(before).Throws, t => Assert.True(t.MayBeThrown));
        var touched = before with { Falls = [.. before.Falls, .. Falls(Day(3, 17), "6 x4", device: 2)] };
        var after = Reckon(touched);
        Assert.Equal(new[] { false, true, false }, after.Throws.Select(t => t.MayBeThrown));
        Assert.All(after.Of(Back).Stages, s => Assert.False(s.MayBeTried || s.State != GateState.Shut));
        Assert.Equal("throws; is thrown with Uki-goshi only", after.Role);
        Assert.Equal("O-soto-gari: is not thrown; not open at stage 6 (thrown by a child): backward.", after.Throws[0].Because.Sentence);
        Assert.Equal("Backward, stage 1 (lying or sitting): shut; the head touched tonight at stage 4 (from a partner, low and slow), so no fall that way tonight.", after.Of(Back).Stages[0].Because.Sentence);
    }

    [Fact, Statement(15)]
    public void Two_clean_falls_on_one_evening_are_one_evening_also_from_two_tablets()
    {
        var answer = Reckon(Child(Day(3, 12), [Falls(Day(3, 10), "3 3"), Falls(Day(3, 10), "3", device: 2)]));
        Assert.Equal((1, GateState.Shut), (answer.Of(Back).Stages[2].CleanEvenings, answer.Of(Back).Stages[2].State));
    }

    [Fact, Statement(16)]
    public void Twenty_one_days_away_shut_every_gate_until_each_is_shown_again()
    {
        var seen = FallWay.All.SelectMany(w => new[] { Falls(Day(3, 3), "3", w), Falls(Day(3, 10), "3", w) }).ToArray();
        var answer = Reckon(Child(Day(3, 31), seen));
        Assert.All(answer.Ways, w => Assert.Equal(0, w.OpenTo));
        Assert.Equal("21 days off the mat, 10 March 2026 to 31 March 2026: the falls are shown again first, an instructor watching.", answer.Reasons[0].Sentence);
        Assert.Equal("one clean fall at stage 2, then one at stage 3 or higher, on one evening and one device", answer.Of(Back).Stages[2].OpensWith);

        Assert.Equal("Backward, stage 4 (from a partner, low and slow): shut; 0 of 2 clean evenings.", answer.Of(Back).Stages[3].Because.Sentence);
        Assert.Equal("stage 4 comes first", answer.Of(Back).Stages[4].OpensWith);

        // What was complete before may be shown with an instructor, what never was may not.
        Assert.Equal(new[] { true, true, true, false, false, false }, answer.Of(Back).Stages.Select(s => s.MayBeTried));
        var shown = Reckon(Child(Day(3, 31), [.. seen, Falls(Day(3, 31), "1 2 3")]));
        Assert.Equal(new[] { 3, 0, 0, 0, 0, 0 }, shown.Ways.Select(w => w.OpenTo));
    }

    [Fact]
    public void Across_two_tablets_nobody_knows_which_fall_came_first()
    {
        FallMark[][] before = [Falls(Day(3, 3), "3"), Falls(Day(3, 10), "3")];
        var two = Child(Day(3, 31), [.. before, Falls(Day(3, 31), "2"), Falls(Day(3, 31), "1 3", device: 2)]);
        Assert.Equal(GateState.Shut, Reckon(two).Of(Back).Stages[2].State);
    }

    [Fact, Statement(17)]
    public void Open_backward_only_is_not_thrown_forward()
    {
        var child = Child(Day(3, 12), [Falls(Day(3, 3), "6"), Falls(Day(3, 10), "6")]) with
        {
            Planned = [new("Ippon-seoi-nage", [new(FallDirection.Rolling, FallSide.Right)], 6), new("O-soto-gari", [Back], 6)],
        };
        var answer = Reckon(child);
        Assert.Equal(new[] { false, true }, answer.Throws.Select(t => t.MayBeThrown));
        Assert.Equal(new[] { 6, 0, 0, 0, 0, 0 }, answer.Ways.Select(w => w.OpenTo));
    }

    // Without a plan nobody knows what will be thrown: a card that says "is thrown" says which way. Forward nobody is thrown.
    [Fact, Statement(17)]
    public void Open_one_way_only_is_not_thrown_and_is_thrown_without_a_word()
    {
        FallMark[][] Both(FallWay way) => [Falls(Day(3, 3), "4", way), Falls(Day(3, 10), "4", way)];
        Assert.Equal("throws; is thrown backward only", Reckon(Child(Day(3, 12), Both(Back))).Role);
        Assert.Equal("throws; is thrown backward and to the left side only", Reckon(Child(Day(3, 12), [.. Both(Back), .. Both(Left)])).Role);
        var all = FallWay.All.Where(w => w != Front).SelectMany(Both);
        Assert.Equal("throws and is thrown", Reckon(Child(Day(3, 12), all)).Role);
        Assert.Equal("tori only", Reckon(Child(Day(3, 12), Both(Front))).Role);
    }

    [Fact, Statement(18)]
    public void No_falls_is_tori_only_without_a_reason()
    {
        var child = Child(
            Day(3, 12), [Falls(Day(3, 3), "6"), Falls(Day(3, 10), "6")], null,
            new StandDown(StandDownScope.NoFalls, Day(3, 11), null, "the family doctor")) with
        { Planned = [new("O-soto-gari", [Back], 6)] };
        var answer = Reckon(child);
        Assert.Equal("tori only", answer.Role);
        Assert.False(answer.Throws[0].MayBeThrown);
        Assert.All(answer.Ways.SelectMany(w => w.Stages), s => Assert.False(s.MayBeTried));
        Assert.DoesNotContain("doctor", string.Join(' ', answer.Reasons.Select(r => r.Sentence)), StringComparison.Ordinal);
    }

    [Fact]
    public void After_a_stand_down_is_lifted_the_falls_are_shown_again_first()
    {
        var lifted = new StandDown(StandDownScope.NoFalls, Day(3, 11), null, null, Day(3, 12), "Anna", "wrist is well");
        FallMark[][] before = [Falls(Day(3, 3), "3"), Falls(Day(3, 10), "3")];
        Assert.Equal(GateState.Shut, Reckon(Child(Day(3, 12), before, null, lifted)).Of(Back).Stages[2].State);
        Assert.Equal(GateState.Open, Reckon(Child(Day(3, 12), [.. before, Falls(Day(3, 12), "2 3")], null, lifted)).Of(Back).Stages[2].State);
        Assert.Equal(GateState.Shut, Reckon(Child(Day(3, 17), [.. before, Falls(Day(3, 12), "3"), Falls(Day(3, 17), "3")], null, lifted)).Of(Back).Stages[2].State);
    }

    [Fact]
    public void What_is_shut_for_the_same_reason_both_ways_is_said_once_with_one_and()
    {
        FallWay rollLeft = new(FallDirection.Rolling, FallSide.Left), rollRight = new(FallDirection.Rolling, FallSide.Right);
        static TooFewCleanEvenings Few(FallWay way, int stage = 3) => new(way, stage, [], 2, null);
        Assert.Equal(
            ["Rolling falls left and right, stage 3 (standing): shut; 0 of 2 clean evenings.", "Rolling, left, stage 4 (from a partner, low and slow): shut; 0 of 2 clean evenings."],
            SameReason.Together([Few(rollLeft), Few(rollRight), Few(rollLeft, 4)]).Select(r => r.Sentence));
        Assert.Equal(
            ["Backward, to both sides and rolling to the left, stage 3 (standing): shut; 0 of 2 clean evenings."],
            SameReason.Together([Few(Back), Few(Left), Few(Right), Few(rollLeft)]).Select(r => r.Sentence));
        Reason[] open = [new StageIsOpen(Left, 1, [Day(3, 3)], Day(3, 3)), new StageIsOpen(Right, 1, [Day(3, 3)], Day(3, 3)), new NoFallSeen()];
        Assert.Equal(open, SameReason.Together(open));
        Assert.Equal("to the left side or rolling to both sides", FallWords.Together([rollRight, Left, rollLeft], "or"));
        Assert.Equal("rolling, right", FallWords.Together([rollRight]));
    }

    [Fact]
    public void Falls_done_before_a_lifting_was_entered_are_not_shown_again_by_it()
    {
        var lifted = new StandDown(StandDownScope.NoFalls, Day(3, 11), null, null, Day(3, 11), "Anna", "wrist is well");
        var backdated = lifted with { LiftEnteredOn = Day(3, 17) };
        FallMark[][] falls = [Falls(Day(3, 3), "3"), Falls(Day(3, 10), "3"), Falls(Day(3, 12), "2 3")];
        Assert.Equal(GateState.Open, Reckon(Child(Day(3, 17), falls, null, lifted)).Of(Back).Stages[2].State);
        var shut = Reckon(Child(Day(3, 17), falls, null, backdated));
        Assert.Equal(GateState.Shut, shut.Of(Back).Stages[2].State);
        Assert.Contains(
            "A stand-down was lifted on 11 March 2026, which was entered on 17 March 2026: falls count from 17 March 2026 on, the later of the two days, and are shown again first, an instructor watching.",
            shut.Reasons.Select(r => r.Sentence));
        Assert.Equal(GateState.Open, Reckon(Child(Day(3, 17), [.. falls, Falls(Day(3, 17), "2 3")], null, backdated)).Of(Back).Stages[2].State);
    }

    [Fact]
    public void A_lifting_that_was_entered_early_counts_from_the_day_of_lifting()
    {
        var lifted = new StandDown(StandDownScope.NoContact, Day(3, 5), null, null, Day(3, 12), "Anna", "wrist is well", Day(3, 10));
        FallMark[][] falls = [Falls(Day(3, 3), "3"), Falls(Day(3, 10), "2 3")];
        var shut = Reckon(Child(Day(3, 12), falls, null, lifted));
        Assert.Equal(GateState.Shut, shut.Of(Back).Stages[2].State);
        Assert.Contains("A stand-down was lifted on 12 March 2026: the falls are shown again first, an instructor watching.", shut.Reasons.Select(r => r.Sentence));
    }

    [Fact, Statement(20)]
    public void A_leaders_clean_fall_opens_nothing_and_waits_to_be_confirmed()
    {
        var child = Child(Day(3, 12), [Falls(Day(3, 3), "3"), Falls(Day(3, 10), "?3")]);
        var waiting = Reckon(child);
        Assert.Equal((GateState.Shut, 1), (waiting.Of(Back).Stages[2].State, waiting.Suggestions));
        Assert.Contains("1 fall waits to be confirmed: clean ones count nothing before, a head touch shuts at once.", waiting.Reasons.Select(r => r.Sentence));
        var confirmed = Reckon(child with { Falls = [.. child.Falls.Select(f => f with { Confirmed = true })] });
        Assert.Equal((GateState.Open, 0), (confirmed.Of(Back).Stages[2].State, confirmed.Suggestions));
    }

    [Fact, Statement(23)]
    public void A_child_who_will_not_fall_throws_and_nothing_says_that_it_failed()
    {
        var child = Child(Day(3, 12), [], [Day(3, 3), Day(3, 10)]) with { Planned = [new("Uki-goshi", [Left], 4)] };
        var answer = Reckon(child);
        Assert.Equal("tori only", answer.Role);
        Assert.True(answer.Of(Back).Stages[0].MayBeTried);
        var words = string.Join(' ', answer.Reasons.Select(r => r.Sentence).Append(answer.Role).Concat(answer.Ways.SelectMany(w => w.Stages).Select(s => s.Because.Sentence + s.OpensWith)));
        foreach (var word in new[] { "fail", "refus", "bad", "poor", "weak" })
            Assert.DoesNotContain(word, words, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Left_and_right_are_two_gates()
    {
        var answer = Reckon(Child(Day(3, 12), [Falls(Day(3, 3), "3", Left), Falls(Day(3, 10), "3", Left), Falls(Day(3, 12), "x3", Right)]));
        Assert.Equal((3, 0), (answer.Of(Left).OpenTo, answer.Of(Right).OpenTo));
    }

    [Fact]
    public void Falls_without_any_day_on_the_mat_are_shown_again_first()
    {
        var child = Child(Day(3, 12), [Falls(Day(3, 3), "3"), Falls(Day(3, 10), "3")]) with { OnTheMat = [] };
        Assert.Equal(GateState.Shut, Reckon(child).Of(Back).Stages[2].State);
        Assert.StartsWith("No day on the mat is known", Reckon(child).Reasons[0].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_throw_without_a_way_of_falling_is_not_thrown() =>
        Assert.False(Reckon(Worked with { Planned = [new("Own throw", [], 1)] }).Throws[0].MayBeThrown);

    [Theory]
    [InlineData(FallDirection.Back, FallSide.Left, 3)]
    [InlineData(FallDirection.Side, FallSide.None, 3)]
    [InlineData(FallDirection.Back, FallSide.None, 0)]
    [InlineData(FallDirection.Back, FallSide.None, 7)]
    [InlineData((FallDirection)9, FallSide.None, 3)]
    public void A_fall_that_does_not_exist_is_refused(FallDirection direction, FallSide side, int stage) =>
        Assert.Throws<ArgumentException>(() => FallGate.Reckon(Worked with { Falls = [new(Day(3, 3), direction, side, stage, true)] }));
}
