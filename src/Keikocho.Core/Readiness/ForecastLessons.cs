using Keikocho.Core.Attendance;

namespace Keikocho.Core.Readiness;

/// <summary>
/// The chance of enough lessons by each lesson left: the club's common rate with the child's own lessons added, beta-binomial. It is the
/// chance of attending, never of passing, and says nothing of the items.
/// </summary>
internal static class ForecastLessons
{
    public static Forecast Of(ReadinessFrame frame, int needed)
    {
        var clock = frame.Parts.Clock;
        if (needed == 0)
            return new Forecast(null, frame.Parts.Common is null ? null : 1, "enough lessons already", []);
        if (frame.Parts.Common is not { } common)
            return new Forecast(null, null, "how often the child comes is not known yet", []);
        var rate = common.Of(new LessonCount(clock.Held, clock.Attended));

        // A stand-down from the mat leaves only the lessons after it. Two lessons of a day are one day of the picture.
        var left = frame.LessonsAfter(frame.Blocks.MatUntil);
        if (needed > left)
            return new Forecast(null, 0, "too few lessons are left", []);
        var on = frame.Lessons.Where(d => d > frame.Blocks.MatUntil).ToArray();
        var days = new List<ChanceByDay>(left);
        DateOnly? likely = null;
        for (var i = 0; i < on.Length; i++)
        {
            if (i + 1 < on.Length && on[i + 1] == on[i])
                continue;
            var chance = BetaBinomial.AtLeast(rate, needed, Math.Min(left, i + 1));
            days.Add(new ChanceByDay(on[i], chance));
            if (likely is null && chance * 100 >= frame.Parts.LikelyPercent)
                likely = on[i];
        }

        var byTheTest = BetaBinomial.AtLeast(rate, needed, left);
        return new Forecast(likely, byTheTest, $"{ChanceWords.Of(byTheTest)} to attend enough lessons", days);
    }
}
