using Keikocho.Core.Evening;
using Keikocho.Core.Intake;

namespace Keikocho.Store.Intake;

/// <summary>The hours inside a lesson of which only start and end are known (common practice, no source).</summary>
internal static class UsualHours
{
    /// <summary>Falls from a fifth of the lesson on, for ten minutes; half time in its middle.</summary>
    public static LessonTimes Of(Hours hours)
    {
        var minutes = (int)(hours.End - hours.Start).TotalMinutes;
        var ukemi = hours.Start.AddMinutes(minutes / 5);
        var end = ukemi.AddMinutes(10);
        return new LessonTimes(hours.Start, hours.End, ukemi, end < hours.End ? end : hours.End, hours.Start.AddMinutes(minutes / 2));
    }
}
