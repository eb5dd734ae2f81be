using System.Globalization;
using CsCheck;
using Keikocho.Core.Calendar;
using Keikocho.Core.Kernel;
using Keikocho.Testing;
using static Keikocho.Core.Tests.Calendar.Clocks;

namespace Keikocho.Core.Tests.Calendar;

public sealed class ClockTests
{
    // The figures of this case were worked by hand, line by line, in the trade's own example of a child's clock.
    [Fact, Statement(4)]
    public void The_worked_case_needs_2_of_the_4_lessons_left()
    {
        var answer = Reckon(Worked);
        Assert.Equal(17, answer.Held);
        Assert.Equal(12, answer.Attended);
        Assert.Equal(71, answer.RatePercent);
        Assert.Equal(4, answer.Left);
        Assert.Equal(2, answer.Needed);
        Assert.Equal(2.8m, answer.ExpectedAtOwnRate);
        Assert.Equal(Day(5, 12), answer.WeeksFullOn);
        Assert.Equal(22, answer.OnCalendar);
        Assert.Equal(new ClockVerdict.If(2, 4), answer.Verdict);
        Assert.Equal("2 of the 4 lessons left", answer.Words);
        Assert.Equal(
            [
                "Counted from this child's first lesson on Tuesday 3 March 2026.",
                "Attended 12 of the 17 lessons held by 14 May 2026, which is 71 %; there for the falls on 12 evenings.",
                "Spring break took out 4 lessons (7 Apr, 9 Apr, 14 Apr and 16 Apr): in neither count.",
                "Hall lost took out 1 lesson (7 May): in neither count.",
                "10 weeks from 3 March 2026 are full on 12 May 2026, in time for the test on Saturday 30 May 2026.",
                "The rule asks for 14 lessons, 12 attended: 2 of the 4 lessons left before the test on Saturday 30 May 2026 are needed.",
                "At the child's own 71 % about 2.8 of the 4 lessons left would be attended.",
            ],
            answer.Reasons.Select(r => r.Sentence));
    }

    [Fact]
    public void By_12_May_the_calendar_had_21_lessons_and_16_were_held()
    {
        var answer = Reckon(Worked with { AsOf = Day(5, 12) });
        Assert.Equal((21, 16), (answer.OnCalendar, answer.Held));
    }

    [Fact, Statement(1)]
    public void A_child_who_joined_three_weeks_late_is_counted_from_its_own_first_lesson()
    {
        var answer = Reckon(Worked with { StartOn = Day(3, 24) });
        Assert.Equal(11, answer.Held);
        Assert.Equal(Day(3, 24).AddDays(70), answer.WeeksFullOn);
        Assert.Equal(new ClockVerdict.NotThisTime(Day(7, 25)), answer.Verdict);
        Assert.StartsWith("Counted from this child's first lesson on Tuesday 24 March", answer.Reasons[0].Sentence, StringComparison.Ordinal);
    }

    [Fact, Statement(2)]
    public void A_closure_entered_afterwards_costs_no_child_a_lesson()
    {
        // 12 May: this child was there, another was not. The hall turns out to have been closed.
        ClockSnapshot Closed(ClockSnapshot s) => s with
        {
            Lessons = [.. s.Lessons.Select(l => l.Date == Day(5, 12) ? l with { Closure = "Entered late" } : l)],
        };
        var away = Worked with { Lessons = [.. Worked.Lessons.Select(l => l.Date == Day(5, 12) ? l with { State = Away } : l)] };

        var before = Reckon(away);
        var after = Reckon(Closed(away));
        Assert.Equal(before.Held - 1, after.Held);
        Assert.Equal(before.Attended, after.Attended);
        Assert.True(after.RatePercent > before.RatePercent);

        // With marks: out of both counts, and the marks are kept and shown.
        var marked = Reckon(Closed(Worked));
        Assert.Equal((16, 11), (marked.Held, marked.Attended));
        Assert.True(marked.TakenOut.Single(o => o.Closure == "Entered late").HadMarks);
        Assert.Contains(
            "Entered late took out 1 lesson (12 May): in neither count. The marks of 12 May are kept and not counted.",
            marked.Reasons.Select(r => r.Sentence));
    }

    [Fact, Statement(5)]
    public void One_lesson_left_and_two_needed_is_not_this_time_with_the_next_date()
    {
        var answer = Reckon(Worked with { TestOn = Day(5, 20) });
        Assert.Equal((1, 2), (answer.Left, answer.Needed));
        Assert.Equal(new ClockVerdict.NotThisTime(Day(7, 25)), answer.Verdict);
        Assert.Contains(
            "The rule asks for 14 lessons, 12 attended: 2 more are needed and 1 is left before the test on Wednesday 20 May 2026.",
            answer.Reasons.Select(r => r.Sentence));
        Assert.Equal("Not this time: the next test is on Saturday 25 July 2026.", answer.Reasons[^1].Sentence);
    }

    // Rulings: the weeks are full on the test day; a lesson on the test day is not left.
    [Theory]
    [InlineData(11, false)]
    [InlineData(12, true)]
    public void Weeks_are_full_on_the_test_day_itself(int testDay, bool inTime)
    {
        var answer = Reckon(Worked with { AsOf = Day(5, 5), TestOn = Day(5, testDay), Rule = new ClockRule(0, 10) });
        Assert.Equal(inTime, answer.Verdict is ClockVerdict.Enough);
    }

    [Fact]
    public void A_lesson_on_the_test_day_is_not_left()
    {
        Assert.Equal(3, Reckon(Worked with { TestOn = Day(5, 28) }).Left);
        Assert.Equal(16, Reckon(Worked with { TestOn = Day(5, 14) }).Held);
    }

    [Fact]
    public void A_lesson_on_the_day_of_the_promotion_does_not_count_but_the_first_lesson_does()
    {
        Assert.Equal(17, Reckon(Worked).Held);
        Assert.Equal(16, Reckon(Worked with { Start = ClockStart.Promotion }).Held);
        var joined = Reckon(Worked with { Start = ClockStart.Joined });
        Assert.Equal(17, joined.Held);
        Assert.Equal(
            "Counted from the day of joining: joined on Tuesday 3 March 2026 by the list that was read in; no mark says which lesson was the first.",
            joined.Reasons[0].Sentence);
    }

    [Fact]
    public void Two_lessons_a_day_count_once_where_the_club_says_so()
    {
        ClockSnapshot twice = Worked with { Lessons = [.. Worked.Lessons, .. Worked.Lessons] };
        Assert.Equal((34, 24, 8), (Reckon(twice).Held, Reckon(twice).Attended, Reckon(twice).Left));
        var once = Reckon(twice with { Rule = Worked.Rule with { LessonsADay = 1 } });
        Assert.Equal((17, 12, 4), (once.Held, once.Attended, once.Left));
        Assert.Equal(12, Reckon(twice).UkemiEvenings);
    }

    [Fact]
    public void A_missing_register_is_in_neither_count_and_asked_about()
    {
        var answer = Reckon(Worked with
        {
            Lessons = [.. Worked.Lessons.Select(l => l.Date == Day(5, 12) ? l with { RegisterMissing = true, State = null } : l)],
        });
        Assert.Equal((16, 11), (answer.Held, answer.Attended));
        Assert.Equal([Day(5, 12)], answer.RegisterMissing);
        Assert.Contains("The register of 12 May is missing: in neither count until the club says whether the lesson was held.", answer.Reasons.Select(r => r.Sentence));
    }

    [Fact]
    public void Late_after_the_falls_counts_as_a_lesson_and_not_as_an_ukemi_evening()
    {
        var answer = Reckon(Worked with
        {
            Lessons = [.. Worked.Lessons.Select(l => l.Date == Day(3, 3) ? l with { State = There with { Ukemi = false } } : l)],
        });
        Assert.Equal((12, 11), (answer.Attended, answer.UkemiEvenings));
    }

    [Fact]
    public void Without_a_test_it_says_what_is_still_needed() =>
        Assert.Equal("2 more lessons needed; no test is set", Reckon(Worked with { TestOn = null }).Words);

    [Fact]
    public void A_test_in_the_past_is_refused() =>
        Assert.Throws<ArgumentException>(() => Clock.Reckon(Worked with { TestOn = Day(5, 13) }));

    [Fact]
    public void Every_clock_stands_before_the_check() =>
        Any.Sample(s => ClockCheck.Objections(s, Clock.Reckon(s)).Count == 0, iter: 5_000);

    [Fact]
    public void A_clock_that_is_one_off_is_objected_to() =>
        Any.Sample(s =>
        {
            var a = Clock.Reckon(s);
            ClockAnswer[] wrong =
            [
                a with { Held = a.Held + 1 }, a with { Attended = a.Attended + 1 }, a with { Needed = a.Needed + 1 }, a with { Left = (a.Left ?? 0) + 1 },
                a with { WeeksFullOn = a.WeeksFullOn.AddDays(1) }, a with { UkemiEvenings = a.UkemiEvenings + 1 }, a with { Verdict = new ClockVerdict.If(99, 99) },
            ];
            return wrong.All(w => ClockCheck.Objections(s, w).Count > 0);
        });

    [Fact]
    public void The_order_of_the_lessons_never_matters() =>
        Gen.Select(Any, Gen.Int[0, int.MaxValue]).Sample((s, seed) =>
        {
            var shuffled = s.Lessons.ToArray();
            new Random(seed).Shuffle(shuffled);
            var a = Clock.Reckon(s);
            var b = Clock.Reckon(s with { Lessons = shuffled });
            return a.Reasons.Select(r => r.Sentence).SequenceEqual(b.Reasons.Select(r => r.Sentence)) && a.Verdict == b.Verdict && a.Held == b.Held;
        });

    [Fact, Statement(100)]
    public void Every_figure_and_date_of_a_verdict_is_in_its_reasons() =>
        Any.Sample(s =>
        {
            var a = Clock.Reckon(s);
            var said = string.Join(' ', a.Reasons.Select(r => r.Sentence));
            bool Has(int n) => System.Text.RegularExpressions.Regex.IsMatch(said, $@"\b{n.ToString(CultureInfo.InvariantCulture)}\b");
            Assert.True(Has(s.Rule.MinimumLessons) && Has(s.Rule.MinimumWeeks) && Has(a.Held) | a.Held == 0);
            Assert.True(a.Held == 0 || (Has(a.Attended) && Has(a.RatePercent!.Value) && Has(a.UkemiEvenings)));
            Assert.True(Has(a.Needed) || a.Needed == 0);
            Assert.True(a.Left is not { } left || Has(left));
            Assert.Contains(s.StartOn.Full(), said, StringComparison.Ordinal);
            Assert.Contains(a.WeeksFullOn.Full(), said, StringComparison.Ordinal);
            Assert.Contains(s.AsOf.Full(), said, StringComparison.Ordinal);
            Assert.True(s.TestOn is not { } t || said.Contains(t.Full(), StringComparison.Ordinal));
            Assert.All(a.TakenOut, o => Assert.Contains(o.Date.Brief(), said, StringComparison.Ordinal));
            Assert.All(a.RegisterMissing, d => Assert.Contains(d.Brief(), said, StringComparison.Ordinal));
            Assert.True(a.Verdict is not ClockVerdict.NotThisTime { NextTestOn: { } next } || said.Contains(next.Full(), StringComparison.Ordinal));
            Assert.DoesNotContain("class", said, StringComparison.Ordinal);
            Assert.Equal(3, a.Settings.Count);
        });
}
