using System.Text.RegularExpressions;
using CsCheck;
using Keikocho.Core.Kernel;
using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Testing;
using static Keikocho.Core.Tests.Readiness.Readies;

namespace Keikocho.Core.Tests.Readiness;

public sealed partial class ParentsPageTests
{
    private static readonly Item Back = Fall("back-3", "Standing backward breakfall", FallDirection.Back, 3);

    private static ParentsPageAnswer Write(ParentsPageSnapshot question)
    {
        var page = ParentsPage.Write(question);
        Assert.Empty(ParentsPageCheck.Objections(question, page));
        return page;
    }

    private static ParentsPageSnapshot Page(ReadinessParts parts) =>
        new("Bram", ReckonReadiness.Reckon(parts), parts.Sheet, parts.AsOf, 7, 8, null, [], "Ada Brook");

    private static string[] Section(ParentsPageAnswer page, string heading) => [.. page.Sections.Where(s => s.Heading == heading).SelectMany(s => s.Sentences)];

    /// <summary>The days of the trade's own example: 15 of 20 attended, the head touched on 17 March, the fall secure on 24 March, the list closed on 22 March, the test on 28 March.</summary>
    private static ParentsPageSnapshot Spring()
    {
        DateOnly test = Day(3, 28), asOf = Day(3, 24), next = Day(7, 25);
        DateOnly[] twice = [Day(3, 3), Day(3, 10)];
        var others = Enumerable.Range(1, 6).Select(i => Throw($"t{i}", $"Throw {i}")).ToArray();
        var sheet = Sheet([All(Back), .. others.Select(i => All(i))]) with { TestOn = test, Minima = new Minima(Lessons: 10) };
        var lessons = Enumerable.Range(0, 12).Select(i => new Core.Calendar.ClockLesson(
            Day(2, 1).AddDays(i), Core.Evening.AttendanceState.Untouched with { Word = Core.Evening.AttendanceWord.Present, Counts = true }));
        var clock = Core.Calendar.Clock.Reckon(new Core.Calendar.ClockSnapshot(
            asOf, Day(1, 31), Core.Calendar.ClockStart.Promotion, new Core.Calendar.ClockRule(0, 0), [.. lessons, new Core.Calendar.ClockLesson(Day(3, 26))], test, next));
        FallMark[] falls = [Touched(Day(3, 17), FallDirection.Back, FallSide.None, 3), Clean(Day(3, 19), FallDirection.Back, FallSide.None, 3), Clean(Day(3, 24), FallDirection.Back, FallSide.None, 3)];
        var parts = new ReadinessParts(
            asOf, test, next, clock, sheet, new Evidence([.. others.Select(o => Good(o.Key, twice))], falls, [Day(3, 3), Day(3, 10), Day(3, 17), Day(3, 19), Day(3, 24)], [], Day(1, 31)),
            [], new TestPapers(new DateOnly(2016, 5, 14), false, null), null, [Day(3, 26)], null, new FallGateRule(), new ReadinessRule());
        return new ParentsPageSnapshot("Bram", ReckonReadiness.Reckon(parts), sheet, asOf, 15, 20, Day(3, 22), [], "Ada Brook");
    }

    [Fact]
    public void A_kept_fall_whose_gate_is_shut_is_not_yet_and_the_short_side_is_named()
    {
        var fall = Fall("roll-3", "Rolling breakfall, both sides", FallDirection.Rolling, 3, bothSides: true);
        FallMark[] falls =
        [
            .. new[] { Day(10, 20), AsOf }.Select(d => Clean(d, FallDirection.Rolling, FallSide.Left, 3)),
            Clean(AsOf, FallDirection.Rolling, FallSide.Right, 3),
        ];
        var parts = Parts(10, Sheet(All(fall) with { Items = [new SheetItem(fall, KeptUntil: TestOn)] })).With(falls);
        var page = Write(Page(parts));
        Assert.Equal(["Rolling breakfall, both sides: kept from an earlier test; to the right seen clean on 3 November; to be seen clean once more."], Section(page, "What is not yet"));
    }

    [Fact, Statement(62)]
    public void Who_is_ready_after_the_list_was_closed_is_a_late_addition_that_the_instructor_decides()
    {
        var question = Spring();
        var page = Write(question);
        Assert.Equal(
            [
                "Bram attended 15 of the 20 lessons held this term by 24 March 2026.",
                "7 of the 7 things asked for Yellow, two red tips are secure.",
                "The list was closed on Sunday 22 March 2026, two days before everything was secure; whether to add Bram late for the test on Saturday 28 March 2026 is for the instructor to decide.",
            ],
            page.Opening);
        Assert.Equal("Standing backward breakfall: the head touched on 17 March; seen clean on 19 and 24 March.", Section(page, "What is secure")[0]);
        Assert.Equal(["The test is on Saturday 28 March 2026.", "If not at this one, the next date is Saturday 25 July 2026."], Section(page, "When"));

        var added = Write(question with { LateAddition = true });
        Assert.EndsWith("Bram was added late for the test on Saturday 28 March 2026.", added.Opening[2], StringComparison.Ordinal);
        var not = Write(question with { LateAddition = false });
        Assert.EndsWith("Bram is not added for the test on Saturday 28 March 2026.", not.Opening[2], StringComparison.Ordinal);
        Assert.Equal(["The next date is Saturday 25 July 2026."], Section(not, "When"));

        Assert.Equal(ListStanding.LateAdditionToDecide, PutForwardList.Of(question.Answer.Verdict, true, false));
        Assert.Equal(ListStanding.OnIt, PutForwardList.Of(question.Answer.Verdict, false, false));
        Assert.Equal(ListStanding.OnIt, PutForwardList.Of(question.Answer.Verdict, true, true));
        Assert.Equal(ListStanding.NotOnIt, PutForwardList.Of(ReadyWord.If, true, false));
        Assert.Equal(ListStanding.NoLongerReadyToDecide, PutForwardList.Of(ReadyWord.If, true, true));
    }

    [Fact]
    public void Who_was_on_the_list_is_put_forward_without_another_word()
    {
        Assert.Equal("Bram is put forward for the test on Saturday 28 March 2026.", Write(Spring() with { OnTheList = true }).Opening[2]);
        Assert.Equal("Bram is put forward for the test on Saturday 28 March 2026.", Write(Spring() with { ListClosedOn = Day(3, 24) }).Opening[2]);
    }

    [Fact, Statement(52)]
    public void A_unit_of_a_term_that_was_missed_is_named_with_the_term_in_which_it_comes_back()
    {
        var page = Write(Spring() with { UnitsMissed = [new MissedUnit("Hip throws", "Autumn 2025", "Autumn 2027"), new MissedUnit("Turnovers", "Spring 2025", null)] });
        Assert.Equal(
            ["Hip throws, taught in Autumn 2025: not met yet; it comes back in Autumn 2027.", "Turnovers, taught in Spring 2025: not met yet; the term in which it comes back is not set."],
            Section(page, "Taught while away"));
    }

    [Fact]
    public void What_is_not_yet_is_said_with_its_dates_and_what_would_change_it()
    {
        var oGoshi = Throw("o-goshi", "O-goshi");
        var deAshi = Throw("de-ashi", "De-ashi-barai");
        var parts = Parts(7, Sheet(All(Throw("tai", "Tai-otoshi")), All(Throw("seoi", "Seoi-nage")), All(deAshi), All(oGoshi)), Good("tai", Day(9, 29), Day(10, 13)), Good("seoi", Day(9, 29), Day(10, 20)), Good("o-goshi", Day(11, 3)));
        var page = Write(Page(parts));
        Assert.Equal("Bram: Yellow, two red tips", page.Title);
        Assert.Equal(["Seoi-nage: seen good on 29 September and 20 October.", "Tai-otoshi: seen good on 29 September and 13 October."], Section(page, "What is secure"));
        Assert.Equal(["O-goshi: seen good on 3 November; once more.", "De-ashi-barai: not yet seen good; to be seen good on two evenings."], Section(page, "What is not yet"));
        Assert.Equal("Come to 3 of the 4 lessons left: 10, 17 and 24 November, 1 December.", Section(page, "What would change it")[0]);
        Assert.Equal(["The test is on Tuesday 8 December 2026.", "If not at this one, the next date is Tuesday 23 March 2027."], Section(page, "When"));
        Assert.Equal(["Ada Brook will gladly talk about it, before or after a lesson."], Section(page, "Whom to ask"));
        Assert.Equal("parents-page 1", page.SumVersion);
    }

    [Fact]
    public void Why_an_instructor_decided_and_what_a_leader_suggested_stay_out()
    {
        var parts = Parts(10, Sheet(All(Throw("tai", "Tai-otoshi"))), new Core.Evening.ItemSeen("tai", [SeenOn(Day(10, 6), Core.Evening.SeenWord.Good, confirmed: false), SeenOn(Day(10, 13), null)]));
        var page = Write(Page(parts with { Overrule = new Overrule(ReadyWord.NotThisTime, "Ada Brook", AsOf, "too rough with the small ones") }));
        var said = SumJson.Write(page);
        Assert.DoesNotContain("rough", said, StringComparison.Ordinal);
        Assert.DoesNotContain("leader", said, StringComparison.Ordinal);
        Assert.DoesNotContain("disagree", said, StringComparison.Ordinal);
        Assert.Contains("An instructor decided this; Ada Brook will explain it.", said, StringComparison.Ordinal);
    }

    [Fact]
    public void No_page_ever_has_a_chance_a_score_an_average_or_a_hard_word() =>
        Gen.Select(ReadinessProperties.Any, Gen.Int[0, 5]).Sample((parts, which) =>
        {
            var question = Page(parts) with
            {
                ListClosedOn = which > 2 ? Day(10, 30) : null,
                OnTheList = which == 4 ? false : null,
                LateAddition = which == 5 ? true : null,
                UnitsMissed = [new MissedUnit("Hip throws", "Autumn 2025", null)],
            };
            var page = ParentsPage.Write(question);
            Assert.Empty(ParentsPageCheck.Objections(question, page));
            Assert.DoesNotMatch(Hard(), SumJson.Write(page));
            Assert.DoesNotMatch(Gendered(), SumJson.Write(page));
            Assert.DoesNotMatch(Gendered(), SumJson.Write(question.Answer));
        }, iter: 2_000);

    [GeneratedRegex(@"\b(fail\w*|score\w*|average|chance|likely|in 10|certain|percent|%|rank(ed|ing)|better|worse|best|worst|than|points?|weigh\w*|kg|doctor|concussion|other child\w*|unconfirmed|suggest\w*)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Hard();

    [GeneratedRegex(@"\b(he|she|him|her|his|hers)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Gendered();
}
