using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Testing;
using static Keikocho.Core.Tests.Readiness.Readies;
using static Keikocho.Core.Tests.Readiness.ReadinessTests;

namespace Keikocho.Core.Tests.Readiness;

public sealed class ReadinessSafetyTests
{
    private static readonly Item OGoshi = Throw("o-goshi", "O-goshi");
    private static readonly Item Back = Fall("back-3", "Standing backward breakfall", FallDirection.Back, 3);
    private static readonly Item Rolling = Fall("roll-3", "Rolling breakfall, both sides", FallDirection.Rolling, 3, bothSides: true);
    private static readonly FallMark[] CleanTwice = [Clean(Day(10, 20), FallDirection.Back, FallSide.None, 3), Clean(Day(11, 3), FallDirection.Back, FallSide.None, 4)];

    private static ReadinessParts Falling(params FallMark[] falls) =>
        Parts(10, Sheet(All(Back), All(OGoshi)), Good("o-goshi", Day(9, 29), Day(10, 13))).With(falls);

    [Fact]
    public void A_fall_is_good_when_its_gate_is_open()
    {
        var answer = Reckon(Falling(CleanTwice));
        Assert.Equal(ReadyWord.PutForward, answer.Verdict);
        Assert.Equal("seen clean on 20 October and 3 November", answer.Lines[0].Items[0].Said);
        Assert.Contains(answer.Reasons.Said(), s => s.StartsWith("Backward, stage 3 (standing): open; 2 clean evenings", StringComparison.Ordinal));
    }

    [Fact, Statement(29)]
    public void Whoever_is_ready_but_for_a_knock_has_words_only_or_another_day_and_no_decision_passes_it()
    {
        var after = new WordsOnlyOrMoved(Day(11, 20), TestOn, 18, Day(12, 11), true, NextTestOn);
        var answer = Reckon(Falling(CleanTwice) with { AfterKnock = after });
        Assert.Equal(ReadyWord.If, answer.Verdict);
        Assert.Equal([after.Sentence], answer.Conditions.Said());
        Assert.StartsWith("Words only on 8 December 2026, or another day: the next test is on 23 March 2027", answer.TimeSaid, StringComparison.Ordinal);
        var decided = Reckon(Falling(CleanTwice) with { AfterKnock = after, Overrule = new Overrule(ReadyWord.PutForward, "Anna", AsOf, "He feels fine.") });
        Assert.Equal(ReadyWord.If, decided.Verdict);
        Assert.StartsWith("An overrule never passes a safety gate: words only on 8 December 2026", decided.OverruleRefused, StringComparison.Ordinal);
        // With the stand-down of the knock it is not this time, and the day and the next test are named all the same.
        var standing = Reckon((Falling(CleanTwice) with { AfterKnock = after }).Under(new StandDown(StandDownScope.OffTheMat, Day(11, 3), null, "written advice", null, null, null)));
        Assert.Equal(ReadyWord.NotThisTime, standing.Verdict);
        Assert.Contains(after.Sentence, standing.Conditions.Said());
    }

    [Fact]
    public void One_clean_evening_asks_for_one_more()
    {
        var answer = Reckon(Falling(CleanTwice[1]));
        Assert.Equal((ReadyWord.If, 1), (answer.Verdict, answer.EveningsNeeded));
        Assert.Equal(["Standing backward breakfall: seen clean once more, on 1 of the 4 evenings left."], answer.Conditions.Said());
    }

    [Fact]
    public void A_head_touch_shuts_the_gate_and_the_count_begins_again()
    {
        var answer = Reckon(Falling([.. CleanTwice, Touched(Day(11, 3), FallDirection.Back, FallSide.None, 2)]));
        Assert.Equal((ReadyWord.If, 2, ItemStandingWord.FallShut), (answer.Verdict, answer.EveningsNeeded, answer.Lines[0].Items[0].Word));
        Assert.Equal("the head touched on 3 November; not yet seen clean: two evenings", answer.Lines[0].Items[0].Said);
    }

    [Fact]
    public void Both_sides_lack_what_the_worse_side_lacks()
    {
        FallMark[] falls = [Clean(Day(10, 20), FallDirection.Rolling, FallSide.Left, 3), Clean(Day(11, 3), FallDirection.Rolling, FallSide.Left, 3), Clean(Day(11, 3), FallDirection.Rolling, FallSide.Right, 3)];
        var answer = Reckon(Parts(10, Sheet(All(Rolling))).With(falls));
        Assert.Equal((ReadyWord.If, 1), (answer.Verdict, answer.EveningsNeeded));

        // One side alone is short: it is named, and the figures are its own.
        Assert.Equal("0 of 1 good; Rolling breakfall, both sides: to the right clean once, on 3 November: once more", answer.ItemsSaid);
        Assert.Equal(["Rolling breakfall, both sides, to the right: seen clean once more, on 1 of the 4 evenings left."], answer.Conditions.Said());
        Assert.Contains(answer.Reasons.Said(), s => s.StartsWith("Rolling breakfall, both sides: to the right seen clean on 3 November 2026; 2 clean evenings at stage 3 or higher are asked", StringComparison.Ordinal));
        var touched = Reckon(Parts(10, Sheet(All(Rolling))).With([.. falls, Clean(Day(10, 13), FallDirection.Rolling, FallSide.Right, 3), Touched(Day(11, 3), FallDirection.Rolling, FallSide.Left, 3)]));
        Assert.Equal("to the left the head touched on 3 November; not yet seen clean: two evenings", touched.Lines[0].Items[0].Said);
        var both = Reckon(Parts(10, Sheet(All(Rolling))).With(falls[1..]));
        Assert.Equal("0 of 1 good; Rolling breakfall, both sides clean once, on 3 November: once more", both.ItemsSaid);
        Assert.Equal(ReadyWord.PutForward, Reckon(Parts(10, Sheet(All(Rolling))).With([.. falls, Clean(Day(10, 13), FallDirection.Rolling, FallSide.Right, 3)])).Verdict);
    }

    [Fact]
    public void A_fall_seen_43_days_before_the_test_is_seen_once_more()
    {
        FallMark[] old = [Clean(Day(10, 13), FallDirection.Back, FallSide.None, 3), Clean(Day(10, 20), FallDirection.Back, FallSide.None, 3)];
        var answer = Reckon(Falling(old));
        Assert.Equal((ReadyWord.If, 1, ItemStandingWord.GoodNotFresh), (answer.Verdict, answer.EveningsNeeded, answer.Lines[0].Items[0].Word));
    }

    [Fact]
    public void A_clean_fall_that_a_leader_marked_counts_nothing_and_a_head_touch_shuts_at_once()
    {
        var answer = Reckon(Falling(CleanTwice[0], CleanTwice[1] with { Confirmed = false }));
        Assert.Equal((ReadyWord.If, 1), (answer.Verdict, answer.EveningsNeeded));
        Assert.Contains("1 fall marked by a leader waits for an instructor and counts nothing yet.", answer.Reasons.Said());
    }

    [Fact]
    public void After_21_days_away_falls_are_shown_again_first()
    {
        var parts = Falling(CleanTwice);
        var answer = Reckon(parts with { Evidence = parts.Evidence with { OnTheMat = [Day(9, 8), Day(10, 13)], Falls = [Clean(Day(10, 6), FallDirection.Back, FallSide.None, 3), Clean(Day(10, 13), FallDirection.Back, FallSide.None, 3)] } });
        Assert.Equal((ReadyWord.If, 1), (answer.Verdict, answer.EveningsNeeded));
        Assert.Equal("seen clean before the break; to be shown again first: one evening", answer.Lines[0].Items[0].Said);
    }

    // The instructor's page of the club: no falls, reviewed on 24 November, lessons left on 10, 17, 24 November and 1 December.
    [Fact]
    public void No_falls_reviewed_too_late_for_two_clean_evenings_is_not_this_time()
    {
        var answer = Reckon(Falling(CleanTwice).Under(new StandDown(StandDownScope.NoFalls, Day(10, 27), Day(11, 24), "the doctor")));
        Assert.Equal(ReadyWord.NotThisTime, answer.Verdict);
        Assert.Equal("No falls, reviewed on 24 November; 1 lesson is left after that, and falls need 2 clean evenings", answer.TimeSaid);
        Assert.Equal("1 of 2 good, and it stays; Standing backward breakfall: no falls for now; to be shown again first: two evenings", answer.ItemsSaid);
        Assert.Equal("No falls, reviewed on 24 November; 1 lesson is left after that, and falls need 2 clean evenings.", answer.Gates[0].Sentence);
    }

    [Fact]
    public void No_falls_reviewed_in_time_is_if()
    {
        var answer = Reckon(Falling(CleanTwice).Under(new StandDown(StandDownScope.NoFalls, Day(10, 27), Day(11, 17), "the doctor")));
        Assert.Equal(ReadyWord.If, answer.Verdict);
        Assert.Equal(
            [
                "No falls, reviewed on 17 November; 2 lessons are left after that, and falls need 2 clean evenings; it stands until the doctor lifts it.",
                "Standing backward breakfall: seen clean on both evenings left after 17 November.",
            ],
            answer.Conditions.Said());
    }

    [Theory]
    [InlineData(StandDownScope.NoFalls)]
    [InlineData(StandDownScope.NoContact)]
    [InlineData(StandDownScope.OffTheMat)]
    public void A_stand_down_without_a_day_of_review_is_not_this_time(StandDownScope scope)
    {
        var answer = Reckon(Falling(CleanTwice).Under(new StandDown(scope, Day(10, 27), null, null)));
        Assert.Equal(ReadyWord.NotThisTime, answer.Verdict);
        Assert.Contains("no day of review is set", answer.Gates[0].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_alone_are_tested_under_no_falls_and_no_contact()
    {
        var parts = Parts(10, Sheet(All(Thing(ItemKind.Word, "uke", "uke"))), Good("uke", Day(10, 13)));
        Assert.Equal(ReadyWord.PutForward, Reckon(parts.Under(new StandDown(StandDownScope.NoFalls, Day(10, 27), null, null), new StandDown(StandDownScope.NoContact, Day(10, 27), null, null))).Verdict);
        Assert.Equal(ReadyWord.NotThisTime, Reckon(parts.Under(new StandDown(StandDownScope.OffTheMat, Day(10, 27), null, null))).Verdict);
    }

    [Fact]
    public void A_sheet_that_loads_a_spared_neck_is_never_put_forward()
    {
        var parts = Parts(10, Sheet(All(OGoshi with { LoadsTheNeck = true })), Good("o-goshi", Day(9, 29), Day(10, 13)));
        Assert.Equal(ReadyWord.NotThisTime, Reckon(parts.Under(new StandDown(StandDownScope.SpareTheNeck, Day(1, 1), Day(11, 10), null))).Verdict);
    }

    [Fact]
    public void A_lifted_stand_down_asks_for_the_falls_again()
    {
        var lifted = new StandDown(StandDownScope.NoFalls, Day(10, 21), null, "the doctor", Day(11, 4), "Ada", "letter seen");
        var parts = Falling(CleanTwice);
        var answer = Reckon(parts.Under(lifted with { LiftedOn = Day(11, 3) }));
        Assert.Equal((ReadyWord.If, 1), (answer.Verdict, answer.EveningsNeeded));
    }

    [Fact, Statement(60)]
    public void An_overrule_needs_a_reason_and_never_passes_a_safety_gate()
    {
        var shut = Falling(CleanTwice[1]);
        ReadinessAnswer Set(ReadinessParts parts, ReadyWord to, string why) => Reckon(parts with { Overrule = new Overrule(to, "Ada Brook", Day(11, 4), why) });

        // Short of a lesson: an instructor may put forward, with a reason.
        var late = Falling(CleanTwice) with { Clock = Clocked(9) };
        var put = Set(late, ReadyWord.PutForward, "trained all summer elsewhere");
        Assert.Equal((ReadyWord.PutForward, ReadyWord.If), (put.Verdict, put.Reckoned));
        Assert.Contains("Ada Brook decided on 4 November 2026: put forward, where the sum says if. The reason: trained all summer elsewhere.", put.Reasons.Said());

        var without = Set(late, ReadyWord.PutForward, "  ");
        Assert.Equal((ReadyWord.If, "An overrule needs a reason: write why."), (without.Verdict, without.OverruleRefused));
        Assert.Null(without.Overrule);

        // A shut fall gate, a critical item, a stand-down: never.
        var falls = Set(shut, ReadyWord.PutForward, "falls well enough");
        Assert.Equal(ReadyWord.If, falls.Verdict);
        Assert.Equal("An overrule never passes a safety gate: Standing backward breakfall clean once, on 3 November: once more.", falls.OverruleRefused);
        var critical = Set(Parts(10, Sheet(All(Thing(ItemKind.Word, "stop", "the stop word")) with { Critical = true })), ReadyWord.PutForward, "knows it");
        Assert.Equal(ReadyWord.If, critical.Verdict);
        var stood = Falling(CleanTwice).Under(new StandDown(StandDownScope.NoFalls, Day(10, 27), Day(11, 24), null));
        Assert.Equal(ReadyWord.NotThisTime, Set(stood, ReadyWord.PutForward, "feels fine").Verdict);
        Assert.Equal(ReadyWord.NotThisTime, Set(stood, ReadyWord.If, "feels fine").Verdict);

        // Holding back is always open.
        Assert.Equal(ReadyWord.NotThisTime, Set(Falling(CleanTwice), ReadyWord.NotThisTime, "better in spring").Verdict);
    }

    [Fact]
    public void A_shut_gate_that_can_open_in_time_may_be_put_to_if()
    {
        DateOnly[] left = [Day(11, 24), Day(12, 1)];
        var parts = Falling(CleanTwice[1]) with { Clock = Clocked(7, left: left), LessonsLeft = left, Overrule = new Overrule(ReadyWord.If, "Ada", AsOf, "counts a summer camp") };
        Assert.Equal((ReadyWord.If, ReadyWord.NotThisTime), (Reckon(parts).Verdict, Reckon(parts).Reckoned));
    }
}
