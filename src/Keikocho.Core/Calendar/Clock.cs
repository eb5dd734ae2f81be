using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Calendar;

/// <summary>
/// The child's own clock: lessons that the club held for this child, attended, still needed, and left before the test.
/// Only what was truly held counts, from the child's own first lesson or promotion; no child loses a lesson to a closure.
/// </summary>
public static class Clock
{
    /// <summary>Reckons the clock of one child.</summary>
    /// <exception cref="ArgumentException">A figure out of range, a test before the evening asked about, a closure without a name, or marks that contradict themselves.</exception>
    public static ClockAnswer Reckon(ClockSnapshot snapshot)
    {
        Guard(snapshot);
        var rule = snapshot.Rule;
        var off = snapshot.Off?.Percent ?? 0;
        var (minimum, weeks, months) = (TimeOff.Less(rule.MinimumLessons, off), TimeOff.Less(rule.MinimumWeeks, off), TimeOff.Less(rule.MinimumMonths, off));
        var first = snapshot.LessonsFrom ?? (snapshot.Start == ClockStart.Promotion ? snapshot.StartOn.AddDays(1) : snapshot.StartOn);

        // On the day of the test itself nothing counts any more: what is left means before the test.
        var lastHeld = snapshot.TestOn is { } t && t == snapshot.AsOf ? t.AddDays(-1) : snapshot.AsOf;
        // A lesson that is too short for this rank is no lesson of this clock, whoever was there.
        var tooShort = snapshot.Lessons.Where(l => l.Date >= first && TooShort(l, rule)).ToArray();
        var own = snapshot.Lessons.Where(l => l.Date >= first && !TooShort(l, rule)).ToArray();
        var past = own.Where(l => l.Date <= lastHeld).ToArray();
        var open = past.Where(l => l.Closure is null && !l.RegisterMissing).GroupBy(l => l.Date).ToArray();

        var held = open.Sum(day => Capped(day.Count(), rule));
        var attended = open.Sum(day => Capped(day.Count(l => l.State is { Counts: true }), rule));
        var ukemi = open.Count(day => day.Any(l => l.State is { Ukemi: true }));
        var needed = Math.Max(0, minimum - attended);
        int? left = snapshot.TestOn is { } test
            ? own.Where(l => l.Date > lastHeld && l.Date < test && l.Closure is null).GroupBy(l => l.Date).Sum(day => Capped(day.Count(), rule))
            : null;
        var weeksFullOn = snapshot.StartOn.AddDays(7 * weeks);
        DateOnly? monthsFullOn = months > 0 ? snapshot.StartOn.AddMonths(months) : null;
        var takenOut = own
            .Where(l => l.Closure is not null && l.Date <= lastHeld || l.Closure is not null && l.Date < snapshot.TestOn)
            .Select(l => new TakenOut(l.Date, l.Closure!, l.State is { Word: not AttendanceWord.Untouched }, l.Lesson))
            .OrderBy(o => o.Date).ThenBy(o => o.Closure, StringComparer.Ordinal).ThenBy(o => o.Lesson?.Value)
            .ToArray();
        var missing = past.Where(l => l.Closure is null && l.RegisterMissing).Select(l => l.Date).Distinct().Order().ToArray();
        var verdict = Judge(snapshot, needed, left, monthsFullOn > weeksFullOn ? monthsFullOn.Value : weeksFullOn);
        int? rate = held == 0 ? null : (200 * attended + held) / (2 * held);
        decimal? expected = held == 0 || left is null ? null : Math.Round((decimal)left.Value * attended / held, 1, MidpointRounding.AwayFromZero);

        return new ClockAnswer(
            verdict, verdict.Words, held, attended, rate, needed, left, expected, weeksFullOn, ukemi, past.Length, missing, takenOut,
            ClockReasons.For(
                snapshot, verdict, held, attended, rate, needed, left, expected, weeksFullOn, ukemi, missing, takenOut,
                new LeastTime(minimum, weeks, months, monthsFullOn, [.. tooShort.Where(l => l.Date <= lastHeld && l.Closure is null && !l.RegisterMissing).Select(l => l.Date).Distinct().Order()])),
            rule.Used(),
            monthsFullOn);
    }

    private static bool TooShort(ClockLesson lesson, ClockRule rule) => lesson.Minutes < rule.ShortestLessonMinutes;

    private static ClockVerdict Judge(ClockSnapshot snapshot, int needed, int? left, DateOnly timeFullOn)
    {
        if (snapshot.TestOn is not { } test || left is not { } some)
            return new ClockVerdict.NoTestSet(needed);
        if (timeFullOn > test || needed > some)
            return new ClockVerdict.NotThisTime(snapshot.NextTestOn);
        return needed == 0 ? new ClockVerdict.Enough() : new ClockVerdict.If(needed, some);
    }

    private static int Capped(int lessons, ClockRule rule) => rule.LessonsADay == 0 ? lessons : Math.Min(lessons, rule.LessonsADay);

    private static void Guard(ClockSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        NoGaps.In(snapshot.Lessons, "lessons");
        snapshot.Rule.Guard();
        if (!Enum.IsDefined(snapshot.Start))
            throw new ArgumentException("A clock starts at the first lesson, at a promotion or on the day of joining; choose one.", nameof(snapshot));
        snapshot.Off?.Guard();
        if (snapshot.LessonsFrom > snapshot.StartOn.AddDays(snapshot.Start == ClockStart.Promotion ? 1 : 0))
            throw new ArgumentException($"Lessons count from {snapshot.LessonsFrom.Value.Full()}, after the clock's own start on {snapshot.StartOn.Full()}.", nameof(snapshot));
        if (snapshot.TestOn < snapshot.AsOf)
            throw new ArgumentException($"The test on {snapshot.TestOn.Value.Full()} is before {snapshot.AsOf.Full()}: ask about the next test.", nameof(snapshot));
        if (snapshot.NextTestOn <= (snapshot.TestOn ?? snapshot.AsOf))
            throw new ArgumentException($"The next test on {snapshot.NextTestOn.Value.Full()} is not after the test.", nameof(snapshot));
        foreach (var lesson in snapshot.Lessons)
        {
            if (lesson.Closure is not null && string.IsNullOrWhiteSpace(lesson.Closure))
                throw new ArgumentException($"The closure of {lesson.Date.Full()} has no name.", nameof(snapshot));
            if (lesson.State is { } state && (state.Counts || state.Ukemi) && state.Word is not (AttendanceWord.Present or AttendanceWord.Left))
                throw new ArgumentException($"On {lesson.Date.Full()} the lesson counts, but the child was not there.", nameof(snapshot));
        }
    }
}
