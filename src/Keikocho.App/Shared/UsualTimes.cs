using Keikocho.Core.Evening;

namespace Keikocho.App.Shared;

/// <summary>The hours inside a lesson as they are proposed from its start and end (common practice, no source); a club changes them.</summary>
public static class UsualTimes
{
    /// <summary>Falls from a fifth of the lesson on, for ten minutes; half time in its middle.</summary>
    public static LessonTimes Of(TimeOnly start, TimeOnly end)
    {
        var minutes = (int)(end - start).TotalMinutes;
        var ukemi = start.AddMinutes(minutes / 5);
        return new LessonTimes(start, end, ukemi, Earlier(ukemi.AddMinutes(10), end), start.AddMinutes(minutes / 2));
    }

    private static TimeOnly Earlier(TimeOnly a, TimeOnly b) => a < b ? a : b;
}
