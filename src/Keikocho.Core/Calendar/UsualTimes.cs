using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Calendar;

/// <summary>The hours inside a lesson as they are proposed from its start and end (common practice, no source); a club changes them.</summary>
public static class UsualTimes
{
    private static readonly TimeSpan Falls = TimeSpan.FromMinutes(10);

    /// <summary>Falls from a fifth of the lesson on, for ten minutes; half time in its middle, both in whole minutes.</summary>
    /// <param name="start">The bow, local to the hall.</param>
    /// <param name="end">The bow out, of the same day.</param>
    /// <exception cref="ArgumentException"><paramref name="end"/> is not after <paramref name="start"/>.</exception>
    public static LessonTimes Of(TimeOnly start, TimeOnly end)
    {
        if (end <= start) throw new ArgumentException($"A lesson ends after it starts: {start.Plain()} to {end.Plain()}.", nameof(end));
        var minutes = (int)(end - start).TotalMinutes;
        var ukemi = start.AddMinutes(minutes / 5);
        return new LessonTimes(start, end, ukemi, FallsEnd(ukemi, end), start.AddMinutes(minutes / 2));
    }

    /// <summary>Ten minutes after the falls begin, or the end of the lesson where that comes first.</summary>
    /// <param name="from">When they begin; one that is not before <paramref name="end"/> gets its ten minutes, for the caller to refuse.</param>
    /// <param name="end">The bow out.</param>
    public static TimeOnly FallsEnd(TimeOnly from, TimeOnly end) => from < end && end - from < Falls ? end : from.Add(Falls);
}
