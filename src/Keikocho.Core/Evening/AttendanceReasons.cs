using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>Attended, because here before half time.</summary>
/// <param name="Arrived">Arrival; null when nobody noted it.</param>
/// <param name="HalfTime">Half time of the lesson.</param>
public sealed record HereBeforeHalfTime(TimeOnly? Arrived, TimeOnly HalfTime) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Arrived is { } at
        ? $"A lesson: here at {at.Plain()}, before half time at {HalfTime.Plain()}."
        : $"A lesson: here, and nobody noted a time after half time at {HalfTime.Plain()}.";
}

/// <summary>Not a lesson, because the arrival was not before half time.</summary>
/// <param name="Arrived">Arrival.</param>
/// <param name="HalfTime">Half time of the lesson.</param>
public sealed record CameAtHalfTimeOrLater(TimeOnly Arrived, TimeOnly HalfTime) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"Not a lesson: came at {Arrived.Plain()}, which is not before half time at {HalfTime.Plain()}.";
}

/// <summary>Left before half time, and what the club's setting makes of it.</summary>
/// <param name="LeftAt">Leaving.</param>
/// <param name="HalfTime">Half time of the lesson.</param>
/// <param name="Counts">Whether the club counts it.</param>
public sealed record LeftBeforeHalfTime(TimeOnly LeftAt, TimeOnly HalfTime, bool Counts) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"Left at {LeftAt.Plain()}, before half time at {HalfTime.Plain()}; by the club's setting that {(Counts ? "still counts" : "does not count")} as a lesson.";
}

/// <summary>Late, by the clock or by an imported word.</summary>
/// <param name="Arrived">Arrival; null for a "late" without a time.</param>
/// <param name="Start">The bow.</param>
/// <param name="LateAfterMinutes">Minutes after the bow that are still on time.</param>
public sealed record CameLate(TimeOnly? Arrived, TimeOnly Start, int LateAfterMinutes) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Arrived is { } at
        ? $"Late: came at {at.Plain()}, more than {Words.Count(LateAfterMinutes, "minute")} after the bow at {Start.Plain()}."
        : "Late: the register says so without a time.";
}

/// <summary>Here for the falls, or not.</summary>
/// <param name="Counts">True for an ukemi evening.</param>
/// <param name="From">Start of the falls practice.</param>
/// <param name="To">End of the falls practice.</param>
public sealed record UkemiEvening(bool Counts, TimeOnly From, TimeOnly To) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Counts
        ? $"An ukemi evening: here for the falls from {From.Plain()} to {To.Plain()}."
        : $"Not an ukemi evening: not known to be here for all of the falls from {From.Plain()} to {To.Plain()}.";
}

/// <summary>Two devices disagree; both marks are kept.</summary>
/// <param name="Clash">The disagreement.</param>
public sealed record DevicesDisagree(AttendanceClash Clash) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Clash == AttendanceClash.PresentAndAbsent
        ? "One device says here, another says away: here stands, and both are kept."
        : "One device says in time, another says late: late stands, and both are kept.";
}

/// <summary>Away or not marked.</summary>
/// <param name="Word">Untouched, absent or excused.</param>
public sealed record NotHere(AttendanceWord Word) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Word switch
    {
        AttendanceWord.Absent => "Not a lesson: marked absent.",
        AttendanceWord.Excused => "Not a lesson: excused.",
        _ => "Nobody has marked this person yet.",
    };
}

internal static class AttendanceReasons
{
    public static IReadOnlyList<Reason> For(AttendanceState state, LessonTimes times, AttendanceRules rules)
    {
        if (state.Word is not (AttendanceWord.Present or AttendanceWord.Left))
            return [new NotHere(state.Word)];

        var reasons = new List<Reason>();
        if (state.Arrived is { } at && at >= times.HalfTime)
            reasons.Add(new CameAtHalfTimeOrLater(at, times.HalfTime));
        else
            reasons.Add(state.LeftEarly
                ? new LeftBeforeHalfTime(state.LeftAt!.Value, times.HalfTime, rules.LeavingEarlyCounts)
                : new HereBeforeHalfTime(state.Arrived, times.HalfTime));
        if (state.Late)
            reasons.Add(new CameLate(state.Arrived, times.Start, rules.LateAfterMinutes));
        reasons.Add(new UkemiEvening(state.Ukemi, times.UkemiFrom, times.UkemiTo));
        if (state.Clash != AttendanceClash.None)
            reasons.Add(new DevicesDisagree(state.Clash));
        return reasons;
    }
}
