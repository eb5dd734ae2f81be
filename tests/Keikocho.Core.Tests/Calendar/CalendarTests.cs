using CsCheck;
using Keikocho.Core.Calendar;
using Keikocho.Core.Kernel;
using Keikocho.Core.Tests.Evening;

namespace Keikocho.Core.Tests.Calendar;

public sealed class CalendarTests
{
    private static readonly WeeklyLesson Tuesday = new(DayOfWeek.Tuesday, "juniors", Marks.Times);

    private static readonly WeeklyLesson Thursday = new(DayOfWeek.Thursday, "juniors", Marks.Times);

    [Fact]
    public void The_lessons_of_the_worked_case_are_26_of_which_closures_take_5()
    {
        var lessons = LayLessons.Over(
            new(2026, 3, 3), new(2026, 5, 29), [Thursday, Tuesday],
            [new Closure(new(2026, 4, 4), new(2026, 4, 18), "Spring break"), new Closure(new(2026, 5, 7), new(2026, 5, 7), "Hall lost")]);
        Assert.Equal(26, lessons.Count);
        Assert.Equal(
            ["7 Apr", "9 Apr", "14 Apr", "16 Apr", "7 May"],
            lessons.Where(l => l.Closure is not null).Select(l => l.Date.Brief()));
    }

    [Fact]
    public void A_closure_of_one_programme_leaves_the_others() =>
        Assert.Equal(
            [("teens", null), ("juniors", "Outing")],
            LayLessons.Over(
                new(2026, 3, 3), new(2026, 3, 3),
                [Tuesday, new WeeklyLesson(DayOfWeek.Tuesday, "teens", Marks.Times with { Start = Marks.At("17:00") })],
                [new Closure(new(2026, 3, 1), new(2026, 3, 7), "Outing", "juniors")]).Select(l => (l.Programme, l.Closure)));

    [Fact]
    public void Every_day_of_the_week_of_a_lesson_is_laid_once_in_order() =>
        Gen.Select(Gen.Int[0, 400], Gen.Int[0, 200], Gen.Int[0, 6].Array[0, 4], Gen.Int[0, 250], Gen.Int[0, 20]).Sample((start, length, days, closedFrom, closedFor) =>
        {
            var from = new DateOnly(2026, 1, 1).AddDays(start);
            var to = from.AddDays(length);
            var weekly = days.Distinct().Select(d => new WeeklyLesson((DayOfWeek)d, "juniors", Marks.Times)).ToArray();
            var closure = new Closure(from.AddDays(closedFrom), from.AddDays(closedFrom + closedFor), "Holiday");
            var laid = LayLessons.Over(from, to, weekly, [closure]);
            Assert.Empty(LayLessonsCheck.Objections(from, to, weekly, [closure], laid));
            var expected = Enumerable.Range(0, length + 1).Select(from.AddDays).Where(d => weekly.Any(w => w.Weekday == d.DayOfWeek)).ToArray();
            Assert.Equal(expected, laid.Select(l => l.Date));
            if (laid.Count > 0)
            {
                Assert.NotEmpty(LayLessonsCheck.Objections(from, to, weekly, [closure], [.. laid.Skip(1)]));
                Assert.NotEmpty(LayLessonsCheck.Objections(from, to, weekly, [closure], [laid[0] with { Closure = laid[0].Closure is null ? "Other" : null }, .. laid.Skip(1)]));
            }
        });

    [Fact]
    public void A_term_that_ends_before_it_starts_is_refused() =>
        Assert.Throws<ArgumentException>(() => LayLessons.Over(new(2026, 3, 3), new(2026, 3, 2), [Tuesday], []));

    // The worked case of a return: away 35 days, falls again. At 42 days the longer list.
    [Theory]
    [InlineData(20, 0)]
    [InlineData(21, 1)]
    [InlineData(35, 1)]
    [InlineData(41, 1)]
    [InlineData(42, 4)]
    public void After_days_away_this_much_is_seen_again(int days, int things)
    {
        var last = new DateOnly(2026, 3, 3);
        var answer = ReturnAfterAbsence.Reckon(last.AddDays(days), last, new ReturnRule());
        Assert.Equal(things, answer.SeeAgain.Count);
        Assert.Equal(things > 0, answer.SeenBeforeTheBreak);
        Assert.Equal(days, answer.DaysAway);
        Assert.Empty(ReturnAfterAbsenceCheck.Objections(last.AddDays(days), last, new ReturnRule(), answer));
        Assert.NotEmpty(ReturnAfterAbsenceCheck.Objections(last.AddDays(days), last, new ReturnRule(), answer with { SeeAgain = [.. answer.SeeAgain, SeeAgain.Falls] }));
        Assert.Contains($"{days} days ago", answer.Reasons[0].Sentence, StringComparison.Ordinal);
    }
}
