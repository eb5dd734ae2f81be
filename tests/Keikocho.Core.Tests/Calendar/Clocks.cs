using CsCheck;
using Keikocho.Core.Calendar;
using Keikocho.Core.Evening;

namespace Keikocho.Core.Tests.Calendar;

/// <summary>The worked case of the child's own clock: Tuesdays and Thursdays in 2026, joined Tuesday 3 March.</summary>
internal static class Clocks
{
    public static AttendanceState There { get; } = new(AttendanceWord.Present, Counts: true, Ukemi: true);

    public static AttendanceState Away { get; } = new(AttendanceWord.Absent);

    private static readonly DateOnly[] SpringBreak = [Day(4, 7), Day(4, 9), Day(4, 14), Day(4, 16)];

    public static DateOnly Day(int month, int day) => new(2026, month, day);

    /// <summary>Away on five of the lessons held by 14 May: attended 12 of 17.</summary>
    public static ClockSnapshot Worked { get; } = new(
        Day(5, 14), Day(3, 3), ClockStart.FirstLesson, new ClockRule(14, 10), Lessons(Day(3, 3), Day(5, 29), [3, 6, 9, 12, 15]),
        Day(5, 30), Day(7, 25));

    public static ClockLesson[] Lessons(DateOnly from, DateOnly to, int[] away)
    {
        var lessons = new List<ClockLesson>();
        var held = 0;
        for (var day = from; day <= to; day = day.AddDays(1))
        {
            if (day.DayOfWeek is not (DayOfWeek.Tuesday or DayOfWeek.Thursday))
                continue;
            var closure = SpringBreak.Contains(day) ? "Spring break" : day == Day(5, 7) ? "Hall lost" : null;
            var state = closure is not null || day > Day(5, 14) ? null : away.Contains(++held) ? Away : There;
            lessons.Add(new ClockLesson(day, state, closure));
        }

        return [.. lessons];
    }

    public static ClockAnswer Reckon(ClockSnapshot snapshot)
    {
        var answer = Clock.Reckon(snapshot);
        Assert.Empty(ClockCheck.Objections(snapshot, answer));
        return answer;
    }

    public static Gen<ClockSnapshot> Any { get; } =
        Gen.Select(
            Gen.Int[0, 90], Gen.Int[-10, 60], Gen.Bool, Gen.Select(Gen.Int[0, 12], Gen.Int[0, 12], Gen.Int[0, 2]), Gen.Int[-1, 60],
            Gen.Select(Gen.Int[0, 140], Gen.Int[0, 9]).Array[0, 40],
            (asOf, start, promotion, rule, test, lessons) => new ClockSnapshot(
                Day(3, 1).AddDays(asOf), Day(3, 1).AddDays(start), promotion ? ClockStart.Promotion : start % 3 == 0 ? ClockStart.Joined : ClockStart.FirstLesson,
                new ClockRule(rule.Item1, rule.Item2, rule.Item3),
                [.. lessons.Select(l => new ClockLesson(
                    Day(2, 20).AddDays(l.Item1),
                    l.Item2 switch
                    {
                        < 5 => There,
                        5 => There with { Ukemi = false },
                        6 => new AttendanceState(AttendanceWord.Present),
                        7 => Away,
                        _ => null,
                    },
                    l.Item2 is 4 or 8 ? "Holiday" : null,
                    l.Item2 == 9))],
                test < 0 ? null : Day(3, 1).AddDays(asOf + test),
                test < 30 ? null : Day(9, 1)));

    /// <summary>The same with what a rank may ask beside it: months, two ranks, lessons of some length, time taken off.</summary>
    public static Gen<ClockSnapshot> OfARank { get; } =
        Gen.Select(Any, Gen.Int[0, 3], Gen.Int[0, 40], Gen.Select(Gen.Int[0, 2], Gen.Int[0, 100], Gen.Int[-1, 100]), Gen.Int[0, 99].Array[40]).Select((s, months, back, rule, minutes) => s with
        {
            Rule = s.Rule with { MinimumMonths = months, ShortestLessonMinutes = 30 * rule.Item1 },
            Lessons = [.. s.Lessons.Select((l, i) => l with { Minutes = minutes[i] < 10 ? null : minutes[i] })],
            LessonsFrom = rule.Item2 < 50 ? s.StartOn.AddDays(-back) : null,
            Off = rule.Item3 < 0 ? null : new TimeOff(rule.Item3, "the child trained elsewhere", 100),
        });
}
