using Keikocho.Core.Safety;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Safety;

public sealed class HeadKnockTests
{
    private static readonly DateOnly Knock = new(2026, 3, 3);
    private static readonly DateOnly Free = new(2026, 3, 9);
    private static readonly DateOnly Test = new(2026, 3, 28);

    private static DateOnly March(int day) => new(2026, 3, day);

    private static KnockAdvice Advice(DateOnly dated) => new(dated, "Dr Hale", "Anna");

    private static HeadKnockSnapshot Ask(DateOnly today) => new(Knock, today, [], [], [], [], null, null, [], [], new KnockRule());

    private static HeadKnockAnswer Reckon(HeadKnockSnapshot snapshot)
    {
        var answer = HeadKnock.Reckon(snapshot);
        Assert.Empty(HeadKnockCheck.Objections(snapshot, answer));
        return answer;
    }

    private static bool IsShut(HeadKnockAnswer answer, KnockStep step) => answer.Steps.Single(s => s.Step == step).IsShut;

    [Fact, Statement(26)]
    public void A_knock_on_3_March_and_free_from_9_March_gives_falls_on_24_March_at_the_earliest()
    {
        var answer = Reckon(Ask(March(12)) with { FreeFrom = [Free], Lessons = [March(17), March(19), March(24), March(26)], Tests = [Test] });
        Assert.Equal(March(24), answer.FallsAndContact);
        Assert.Equal(March(24), answer.TestOrContest);
        Assert.Equal(March(24), answer.FirstLesson);
        var reason = Assert.Single(answer.Reasons.OfType<EarliestDate>(), r => r.Step == KnockStep.FallsAndContact);
        Assert.Equal(
            "Falls and contact: earliest 24 March 2026, the latest of 23 March 2026 (14 days without symptoms from 9 Mar), "
            + "24 March 2026 (day 21, which falls wait for too: the club’s stricter rule) and 13 March 2026 (4 stages of 24 hours from 9 Mar).",
            reason.Sentence);
        Assert.Contains("The first lesson from then on is on Tuesday 24 March 2026.", answer.Reasons.Select(r => r.Sentence));
    }

    [Fact, Statement(27)]
    public void Symptoms_on_20_March_that_are_gone_on_21_March_move_it_to_4_April_and_the_test_of_28_March_is_words_only()
    {
        var before = Ask(March(20)) with { FreeFrom = [Free], SymptomsOn = [March(20)], Tests = [Test] };
        Assert.Null(Reckon(before).FallsAndContact);
        var answer = Reckon(before with { Today = March(21), FreeFrom = [Free, March(21)] });
        Assert.Equal(new DateOnly(2026, 4, 4), answer.FallsAndContact);
        Assert.Equal([new KnockTest(Test, WordsOnly: true)], answer.Tests);
        Assert.Contains("Test on 28 March 2026: words only, no falls, or another day: it is before 4 April 2026.", answer.Reasons.Select(r => r.Sentence));
        Assert.Contains(answer.SeeADoctor, r => r.Sentence.StartsWith("See a doctor: symptoms were there again on 20 March 2026.", StringComparison.Ordinal));
    }

    [Fact, Statement(28)]
    public void The_earliest_day_has_come_and_without_advice_everything_stays_shut()
    {
        var asked = Ask(March(24)) with { FreeFrom = [Free], Lifted = new KnockLifting(March(24), "Anna") };
        var without = Reckon(asked);
        Assert.True(IsShut(without, KnockStep.FallsAndContact));
        Assert.Equal(["No written advice that counts is recorded: falls, contact and tests stay shut whatever the date."], without.Missing.Select(r => r.Sentence));
        var nobody = Reckon(asked with { Advice = [Advice(March(10))], Lifted = null });
        Assert.Empty(nobody.Missing);
        Assert.True(IsShut(nobody, KnockStep.FallsAndContact));
        Assert.Equal("Shut on 24 March 2026: no named adult has lifted the stand-down since.", nobody.Steps[2].Why.Sentence);
        Assert.False(IsShut(Reckon(asked with { Advice = [Advice(March(10))] }), KnockStep.FallsAndContact));
    }

    [Fact, Statement(28)]
    public void A_year_later_it_is_still_shut_without_advice() =>
        Assert.All(Reckon(Ask(new(2027, 3, 24)) with { FreeFrom = [Free] }).Steps, s => Assert.True(s.IsShut));

    [Fact, Statement(27)]
    public void Advice_from_before_a_relapse_does_not_count_after_it()
    {
        var answer = Reckon(Ask(new(2026, 4, 6)) with { FreeFrom = [Free, March(21)], SymptomsOn = [March(20)], Advice = [Advice(March(12))] });
        Assert.Null(answer.Advice);
        Assert.Null(answer.NoContactDrills);
        Assert.Contains("The advice of Dr Hale, dated 12 March 2026, is from before the first day without symptoms, 21 March 2026: it does not count.", answer.Reasons.Select(r => r.Sentence));
    }

    [Fact]
    public void A_lifting_from_before_a_relapse_opens_nothing_after_it() => Assert.All(
        Reckon(Ask(new(2026, 5, 6)) with
        {
            FreeFrom = [Free, new(2026, 4, 3)],
            SymptomsOn = [new(2026, 4, 2)],
            Advice = [Advice(March(12)), Advice(new(2026, 4, 10))],
            Lifted = new KnockLifting(March(24), "Anna"),
        }).Steps,
        s => Assert.True(s.IsShut));

    [Fact]
    public void A_second_knock_is_a_new_day_0()
    {
        var answer = Reckon(Ask(March(20)) with { FreeFrom = [Free, March(13)], FurtherKnocks = [March(12)], Advice = [Advice(March(10))] });
        Assert.Equal((March(12), March(13)), (answer.DayZero, answer.FreeFrom));
        Assert.Equal(new DateOnly(2026, 4, 2), answer.FallsAndContact);
        Assert.Null(answer.Advice);
        Assert.Contains("See a doctor: there was a further knock on 12 March 2026.", answer.SeeADoctor.Select(r => r.Sentence));
    }

    [Fact]
    public void No_symptom_at_all_counts_from_day_0_and_day_21_decides()
    {
        var answer = Reckon(Ask(March(4)) with { FreeFrom = [Knock] });
        Assert.Equal((March(5), March(24)), (answer.LightMovement, answer.FallsAndContact));
    }

    [Fact]
    public void Before_the_child_is_free_of_symptoms_no_date_is_named()
    {
        var answer = Reckon(Ask(March(8)) with { Advice = [Advice(March(6))] });
        Assert.Equal([null, null, null, null], answer.Steps.Select(s => s.Earliest));
        Assert.Contains("Light movement: no date before a first day without any symptom is recorded.", answer.Reasons.Select(r => r.Sentence));
    }

    [Fact]
    public void Drills_without_contact_have_no_date_before_advice_and_then_the_stages()
    {
        Assert.Null(Reckon(Ask(March(12)) with { FreeFrom = [Free] }).NoContactDrills);
        Assert.Equal(March(12), Reckon(Ask(March(12)) with { FreeFrom = [Free], Advice = [Advice(March(10))] }).NoContactDrills);
        Assert.Equal(March(15), Reckon(Ask(March(12)) with { FreeFrom = [Free], Advice = [Advice(March(10))], Rule = new KnockRule(HoursPerStage: 48) }).NoContactDrills);
    }

    [Fact]
    public void No_contact_in_place_of_off_the_mat_opens_drills_and_no_falls()
    {
        var answer = Reckon(Ask(March(13)) with { FreeFrom = [Free], Advice = [Advice(March(10))], Eased = new KnockLifting(March(12), "Anna") });
        Assert.Equal([false, false, true, true], answer.Steps.Select(s => s.IsShut));
        Assert.Contains("That clears nobody", answer.Steps[1].Why.Sentence, StringComparison.Ordinal);
    }

    [Fact, Statement(24)]
    public void On_the_evening_itself_everything_is_shut_whatever_is_recorded() => Assert.All(
        Reckon(Ask(Knock) with { FreeFrom = [Knock], Advice = [Advice(Knock)], Lifted = new KnockLifting(Knock, "Anna"), Eased = new KnockLifting(Knock, "Anna") }).Steps,
        s => Assert.True(s.IsShut));

    [Theory]
    [InlineData(27, false)]
    [InlineData(28, true)]
    [InlineData(40, true)]
    public void Symptoms_on_day_28_send_to_a_doctor(int day, bool isSaid) =>
        Assert.Equal(isSaid, Reckon(Ask(Knock.AddDays(day))).SeeADoctor.OfType<StillSymptoms>().Any());

    [Fact]
    public void On_the_day_and_the_next_a_clinician_is_named()
    {
        Assert.Single(Reckon(Ask(Knock)).SeeADoctor.OfType<SeenWithinADay>());
        Assert.Single(Reckon(Ask(March(4))).SeeADoctor.OfType<SeenWithinADay>());
        Assert.Empty(Reckon(Ask(March(5))).SeeADoctor);
    }

    // UK concussion guidelines for grassroots sport, 2023, updated November 2024: knock on 3 March 2025 (day 0), contest from 24 March 2025;
    // without symptoms from day 4 (7 March): training with a risk of contact from 21 March 2025. Without the club's stricter rule.
    [Fact]
    public void The_published_dates_of_UK_grassroots_sport_hold()
    {
        var answer = Reckon(new HeadKnockSnapshot(
            new(2025, 3, 3), new(2025, 3, 8), [new(2025, 3, 7)], [], [], [], null, null, [], [], new KnockRule(FallsWaitForContestDay: false)));
        Assert.Equal((new DateOnly(2025, 3, 21), new DateOnly(2025, 3, 24)), (answer.FallsAndContact, answer.TestOrContest));
    }

    // Berlin 2016 and CDC HEADS UP: at least 24 hours at each stage, so the fifth is four days after the first at the earliest. The club's own
    // 14 and 21 days always hold beside it.
    [Theory]
    [InlineData("uk-2023", 0)]
    [InlineData("berlin-2016", 0)]
    [InlineData("amsterdam-2022", 0)]
    [InlineData("cdc-heads-up", 1)]
    [InlineData("aap", 0)]
    public void Rest_and_stages_of_each_published_protocol_hold(string protocol, int moreRest)
    {
        var answer = Reckon(Ask(March(4)) with { FreeFrom = [Knock], Advice = [Advice(March(3))], Rule = new KnockRule(protocol) });
        Assert.Equal((March(5 + moreRest), March(6), March(24)), (answer.LightMovement, answer.NoContactDrills, answer.FallsAndContact));
    }

    // Several national bodies, 21 to 23 days for under-19s (from memory).
    [Theory]
    [InlineData("day-23", KnockProtocols.None, 26)]
    [InlineData(KnockProtocols.Uk, "day-23", 26)]
    [InlineData("day-23", "day-21", 26)]
    [InlineData("day-21", KnockProtocols.None, 24)]
    [InlineData(KnockProtocols.None, KnockProtocols.None, 24)]
    public void The_stricter_of_two_protocols_counts(string one, string other, int day)
    {
        var answer = Reckon(Ask(March(12)) with { FreeFrom = [Free], Rule = new KnockRule(one, other) });
        Assert.Equal((March(day), March(day)), (answer.FallsAndContact, answer.TestOrContest));
        if (one == "day-23") Assert.Equal(March(26), Reckon(Ask(March(12)) with { FreeFrom = [Free], Rule = new KnockRule(one, other, FallsWaitForContestDay: false) }).FallsAndContact);
    }

    [Fact]
    public void Every_protocol_names_its_source() => Assert.All(KnockProtocols.All, p => Assert.Contains("(", p.Source, StringComparison.Ordinal));

    [Fact]
    public void The_words_never_say_that_a_child_may()
    {
        var answer = Reckon(Ask(March(24)) with { FreeFrom = [Free], Advice = [Advice(March(10))], Lifted = new KnockLifting(March(24), "Anna"), Tests = [Test, March(10)] });
        Assert.All(
            answer.Reasons.Concat(answer.SeeADoctor).Concat(answer.Missing).Concat(answer.Steps.Select(s => s.Why)),
            r => Assert.DoesNotContain(" may ", r.Sentence, StringComparison.OrdinalIgnoreCase));
        Assert.All(answer.Steps, s => Assert.False(s.IsShut));
    }

    [Fact]
    public void A_question_that_cannot_be_is_refused_in_a_sentence()
    {
        void Refuses(HeadKnockSnapshot asked, string sentence) =>
            Assert.StartsWith(sentence, Assert.ThrowsAny<ArgumentException>(() => HeadKnock.Reckon(asked)).Message, StringComparison.Ordinal);
        Refuses(Ask(March(2)), "The knock of 3 March 2026 is still to come on 2 March 2026");
        Refuses(Ask(March(8)) with { FreeFrom = [Free] }, "A first day without symptoms on 9 March 2026 is not between");
        Refuses(Ask(March(8)) with { SymptomsOn = [March(2)] }, "A day with symptoms on 2 March 2026 is not between");
        Refuses(Ask(March(8)) with { Advice = [new(March(6), " ", "Anna")] }, "The advice of 6 March 2026 needs whose it is");
        Refuses(Ask(March(8)) with { Lifted = new(March(6), "") }, "The lifting of 6 March 2026 needs the name of an adult.");
        Refuses(Ask(March(8)) with { Rule = new KnockRule("mine") }, "There is no protocol \"mine\"");
        Refuses(Ask(March(8)) with { Rule = new KnockRule(SymptomFreeDays: 13) }, "Days without any symptom before falls and contact: 14 to 90 is allowed.");
        Refuses(Ask(March(8)) with { Rule = new KnockRule(ContestDay: 20) }, "First day of a test or contest");
    }

    [Fact]
    public void Activities_have_numbers_that_stay_and_words()
    {
        Assert.Equal(Enum.GetValues<KnockActivity>(), KnockActivities.All.Select(a => a.Activity));
        Assert.Equal("not said", KnockActivities.Words((KnockActivity)63));
    }
}
