using CsCheck;
using Keikocho.Core.Calendar;
using static Keikocho.Core.Tests.Calendar.Clocks;

namespace Keikocho.Core.Tests.Calendar;

/// <summary>What a rank may ask beside lessons and weeks: months, two ranks, a least length, a share taken off.</summary>
public sealed class ClockOfARankTests
{
    // Worked beside the worked case: 12 of 17 attended by 14 May, test 30 May, joined 3 March.
    [Theory]
    [InlineData(14, 10, 2, 0, "2 of the 4 lessons left")]         // two months are full on 3 May
    [InlineData(14, 10, 3, 0, "not this time; next test 25 July 2026")] // three only on 3 June
    [InlineData(14, 10, 3, 20, "not this time; next test 25 July 2026")] // 2.4 months are 3 all the same
    [InlineData(14, 10, 3, 34, "enough lessons")]                 // 34 % less is 9.24, so 10 lessons, and 1.98, so 2 months
    [InlineData(15, 13, 0, 0, "not this time; next test 25 July 2026")] // 13 weeks are full on 2 June
    [InlineData(15, 13, 0, 10, "2 of the 4 lessons left")]        // 13.5 lessons are 14, 11.7 weeks are 12: 26 May
    public void Months_and_what_is_taken_off_are_worked_by_hand(int lessons, int weeks, int months, int off, string words)
    {
        var answer = Reckon(Worked with
        {
            Rule = new ClockRule(lessons, weeks, MinimumMonths: months),
            Off = off == 0 ? null : new TimeOff(off, "the child trained for a year elsewhere"),
        });
        Assert.Equal(words, answer.Words);
    }

    [Fact]
    public void Every_figure_of_a_rank_is_said()
    {
        var answer = Reckon(Worked with
        {
            StartOn = Day(4, 21),
            Start = ClockStart.Promotion,
            LessonsFrom = Day(3, 3),
            Rule = new ClockRule(20, 4, 1, 1, 60),
            Lessons = [.. Worked.Lessons.Select(l => l.Date == Day(3, 5) || l.Date == Day(3, 10) ? l with { Minutes = 45 } : l with { Minutes = 75 })],
            Off = new TimeOff(20, "there was a summer school.", 25, "Ruth Aldersey", Day(5, 1)),
        });
        // 17 held less the two that were short; both were attended but for the third, which was away: 11 of 15.
        Assert.Equal((15, 11), (answer.Held, answer.Attended));
        Assert.Equal(
            [
                "Counted from the promotion on Tuesday 21 April 2026; a lesson on that day does not count.",
                "By the rule of this rank lessons count over two ranks: those from Tuesday 3 March 2026 on.",
                "Attended 11 of the 15 lessons held by 14 May 2026, which is 73 %; there for the falls on 11 evenings.",
                "Spring break took out 4 lessons (7 Apr, 9 Apr, 14 Apr and 16 Apr): in neither count.",
                "Hall lost took out 1 lesson (7 May): in neither count.",
                "At most 1 lesson of one day counts by the club's rule.",
                "Lessons shorter than 60 minutes do not count for this rank: in neither count are 5 Mar and 10 Mar.",
                "25 % was decided and this rank allows 20 %: 20 % of the least time is taken off, because there was a summer school, decided by Ruth Aldersey on 1 May 2026: 16 lessons instead of 20, 4 weeks instead of 4 and 1 month instead of 1.",
                "4 weeks from 21 April 2026 are full on 19 May 2026, in time for the test on Saturday 30 May 2026.",
                "1 month from 21 April 2026 is full on 21 May 2026, in time for the test on Saturday 30 May 2026.",
                "The rule asks for 16 lessons, 11 attended: 5 more are needed and 4 are left before the test on Saturday 30 May 2026.",
                "Not this time: the next test is on Saturday 25 July 2026.",
            ],
            answer.Reasons.Select(r => r.Sentence));
    }

    [Fact]
    public void A_rank_that_allows_nothing_says_so_and_takes_nothing_off()
    {
        var answer = Reckon(Worked with { Off = new TimeOff(0, "there was a summer school", 10) });
        Assert.Equal(2, answer.Needed);
        Assert.Contains(answer.Reasons, r => r.Sentence == "10 % of the least time was to be taken off, because there was a summer school; this rank allows none of it.");
    }

    [Fact]
    public void A_finger_along_the_register_finds_the_same() =>
        OfARank.Sample(s => Assert.Empty(ClockCheck.Objections(s, Clock.Reckon(s))));

    [Fact]
    public void More_taken_off_never_needs_more_and_a_longer_lesson_asked_never_attends_more() =>
        OfARank.Sample(s =>
        {
            var answer = Clock.Reckon(s);
            Assert.True(Clock.Reckon(s with { Off = new TimeOff(100, "all of it") }).Needed <= answer.Needed);
            Assert.True(Clock.Reckon(s with { Rule = s.Rule with { ShortestLessonMinutes = 90 } }).Attended <= answer.Attended);
        });

    [Fact]
    public void Bad_input_is_refused_in_a_sentence()
    {
        foreach (var bad in new[]
        {
            Worked with { Off = new TimeOff(10, " ") },
            Worked with { Off = new TimeOff(101, "much") },
            Worked with { Off = new TimeOff(20, "more than was decided", 10) },
            Worked with { LessonsFrom = Day(3, 4) },
            Worked with { Rule = new ClockRule(MinimumMonths: 121) },
            Worked with { Rule = new ClockRule(ShortestLessonMinutes: -1) },
        })
            Assert.Contains('.', Assert.Throws<ArgumentException>(() => Clock.Reckon(bad)).Message);
    }
}
