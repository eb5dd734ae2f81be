using Keikocho.Core.Attendance;
using Keikocho.Core.Calendar;

namespace Keikocho.App.Club;

/// <summary>What the sums say of one child on one programme's register, as of the evening just closed.</summary>
/// <param name="PersonId">The child.</param>
/// <param name="Clock">The child's own clock.</param>
/// <param name="Chance">Rate and chance of enough lessons; for the instructor only.</param>
/// <param name="LessonsEver">Lessons attended in all.</param>
/// <param name="LastLesson">Day of the last lesson attended; null when there is none in the last eighteen months.</param>
/// <param name="Started">First day that counts: the first lesson, or the day of the promotion.</param>
/// <param name="FromPromotion">Whether the clock started at a promotion.</param>
/// <param name="Time">What the clock asks and from where it counts.</param>
/// <param name="ByOlder">The same by the edition before, with the clock, while a child may still be tested by that; null otherwise.</param>
/// <param name="FromJoining">Whether it started on the day of joining by a list, the first lesson being unknown.</param>
public sealed record ChildReckoning(
    Guid PersonId, ClockAnswer Clock, ChildChance Chance, int LessonsEver, DateOnly? LastLesson, DateOnly Started, bool FromPromotion, ChildTime Time, OlderClock? ByOlder = null, bool FromJoining = false)
{
    /// <summary>Fewer lessons than this make a newcomer (proposed 6; ours, no source).</summary>
    public const int NewcomerBelow = 6;

    /// <summary>A newcomer.</summary>
    public bool IsNewcomer => LessonsEver < NewcomerBelow;
}

/// <summary>A child's clock by the edition before the one that holds.</summary>
/// <param name="Time">What it asks and from where it counts.</param>
/// <param name="Clock">The clock.</param>
public sealed record OlderClock(ChildTime Time, ClockAnswer Clock);

/// <summary>What the sums say of everybody on one programme's register.</summary>
/// <param name="AsOf">The evening just closed.</param>
/// <param name="TestOn">The next test; null when none is set.</param>
/// <param name="Children">By person.</param>
/// <param name="Attendance">The common rate and each child's.</param>
/// <param name="NextTestOn">The test after it; null when none is set.</param>
public sealed record ProgrammeReckoning(
    DateOnly AsOf, DateOnly? TestOn, IReadOnlyDictionary<Guid, ChildReckoning> Children, AttendanceAnswer Attendance, DateOnly? NextTestOn = null);
