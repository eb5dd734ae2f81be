namespace Keikocho.Core.Calendar;

/// <summary>Judges a clock by running a finger along the register: one day after the other, without the sum's code.</summary>
public static class ClockCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(ClockSnapshot snapshot, ClockAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(answer);
        int held = 0, attended = 0, ukemi = 0, left = 0, calendar = 0, closed = 0, missing = 0;
        var limit = snapshot.Rule.LessonsADay == 0 ? int.MaxValue : snapshot.Rule.LessonsADay;
        var lastDay = snapshot.TestOn ?? snapshot.AsOf.AddDays(1);
        // What is taken off leaves at least the rest: the least whole number that is not below it.
        int Rest(int figure) => snapshot.Off is { } off ? (int)Math.Ceiling(figure * (100m - off.Percent) / 100m) : figure;
        var minimum = Rest(snapshot.Rule.MinimumLessons);
        for (var day = snapshot.LessonsFrom ?? snapshot.StartOn; day < lastDay; day = day.AddDays(1))
        {
            if (day == snapshot.StartOn && snapshot.LessonsFrom is null && snapshot.Start == ClockStart.Promotion)
                continue;
            int heldToday = 0, attendedToday = 0, leftToday = 0;
            var falls = false;
            var gap = false;
            foreach (var lesson in snapshot.Lessons)
            {
                if (lesson.Date != day || lesson.Minutes is { } length && length < snapshot.Rule.ShortestLessonMinutes)
                    continue;
                var past = day <= snapshot.AsOf;
                calendar += past ? 1 : 0;
                if (lesson.Closure is not null)
                    closed++;
                else if (!past)
                    leftToday++;
                else if (lesson.RegisterMissing)
                    gap = true;
                else
                {
                    heldToday++;
                    attendedToday += lesson.State?.Counts == true ? 1 : 0;
                    falls |= lesson.State?.Ukemi == true;
                }
            }

            held += Math.Min(heldToday, limit);
            attended += Math.Min(attendedToday, limit);
            left += Math.Min(leftToday, limit);
            ukemi += falls ? 1 : 0;
            missing += gap ? 1 : 0;
        }

        var objections = new List<string>();
        void Expect(bool holds, string what)
        {
            if (!holds)
                objections.Add(what);
        }

        Expect(answer.Held == held, $"Held {held}, not {answer.Held}.");
        Expect(answer.Attended == attended, $"Attended {attended}, not {answer.Attended}.");
        Expect(answer.UkemiEvenings == ukemi, $"Ukemi evenings {ukemi}, not {answer.UkemiEvenings}.");
        Expect(answer.OnCalendar == calendar, $"On the calendar {calendar}, not {answer.OnCalendar}.");
        Expect(answer.TakenOut.Count == closed, $"Closures took out {closed}, not {answer.TakenOut.Count}.");
        Expect(answer.RegisterMissing.Count == missing, $"{missing} registers are missing, not {answer.RegisterMissing.Count}.");
        Expect(answer.Left == (snapshot.TestOn is null ? null : left), $"Left {left}, not {answer.Left}.");
        Expect(answer.WeeksFullOn.DayNumber - snapshot.StartOn.DayNumber == 7 * Rest(snapshot.Rule.MinimumWeeks), "The weeks are full seven days a week after the start.");
        Expect(answer.Needed >= 0 && (answer.Needed == 0 ? attended >= minimum : attended + answer.Needed == minimum), "Needed fills what is attended up to the minimum.");
        Expect(
            held == 0 ? answer.RatePercent is null : answer.RatePercent is { } r && Math.Abs(200L * attended - 2L * r * held) <= held,
            "The rate is attended of held to the nearest whole percent.");
        Expect(
            held == 0 || snapshot.TestOn is null
                ? answer.ExpectedAtOwnRate is null
                : answer.ExpectedAtOwnRate is { } e && Math.Abs((e * held) - ((decimal)left * attended)) <= 0.05m * held,
            "The expectation is the lessons left at the child's own rate.");
        var months = Rest(snapshot.Rule.MinimumMonths);
        var sameDay = Enumerable.Range(0, months).Aggregate((snapshot.StartOn.Year, snapshot.StartOn.Month), (m, _) => m.Month == 12 ? (m.Year + 1, 1) : (m.Year, m.Month + 1));
        Expect(
            months == 0 ? answer.MonthsFullOn is null : answer.MonthsFullOn is { } full && (full.Year, full.Month) == sameDay
                && full.Day == Math.Min(snapshot.StartOn.Day, DateTime.DaysInMonth(full.Year, full.Month)),
            "The months are full on the day of the start in the month that they lead to.");
        var weeks = snapshot.TestOn is { } test && answer.WeeksFullOn <= test && (answer.MonthsFullOn is not { } on || on <= test);
        Expect(
            answer.Verdict switch
            {
                ClockVerdict.Enough => weeks && attended >= minimum,
                ClockVerdict.If v => weeks && v.PresentAt == answer.Needed && v.OfLeft == left && v.PresentAt > 0 && v.PresentAt <= left,
                ClockVerdict.NotThisTime v => snapshot.TestOn is not null && v.NextTestOn == snapshot.NextTestOn
                    && (!weeks || attended + left < minimum),
                ClockVerdict.NoTestSet v => snapshot.TestOn is null && v.StillNeeded == answer.Needed,
                _ => false,
            },
            $"The verdict does not follow from the figures: {answer.Verdict.Words}.");
        Expect(answer.Reasons.All(s => s.Sentence.EndsWith('.')), "Every reason is a sentence.");
        return objections;
    }
}
