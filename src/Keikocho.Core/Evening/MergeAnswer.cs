using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Evening;

/// <summary>One child at one lesson.</summary>
/// <param name="On">The day.</param>
/// <param name="Lesson">The lesson.</param>
/// <param name="Person">The child.</param>
/// <param name="State">Where the child stands.</param>
/// <param name="Reasons">Why.</param>
public sealed record MergedAttendance(DateOnly On, LessonId Lesson, PersonId Person, AttendanceState State, IReadOnlyList<Reason> Reasons);

/// <summary>One child and one item.</summary>
/// <param name="Person">The child.</param>
/// <param name="Item">The item.</param>
/// <param name="Evenings">What each evening says, oldest first.</param>
public sealed record MergedSightings(PersonId Person, ItemId Item, IReadOnlyList<SeenEvening> Evenings);

/// <summary>One child's falls one way on one evening.</summary>
/// <param name="Person">The child.</param>
/// <param name="On">The evening.</param>
/// <param name="Direction">Which way.</param>
/// <param name="Side">The side.</param>
/// <param name="IsClean">A clean fall was seen and no touched head: the worse stands.</param>
/// <param name="Seen">Every fall that stands, by tablet and its own count.</param>
public sealed record MergedFalls(PersonId Person, DateOnly On, FallDirection Direction, FallSide Side, bool IsClean, IReadOnlyList<FallMark> Seen);

/// <summary>A knock. Knocks are never merged: each is shown.</summary>
/// <param name="Person">The child.</param>
/// <param name="On">The evening.</param>
/// <param name="Mark">The mark.</param>
public sealed record MergedKnock(PersonId Person, DateOnly On, MarkId Mark);

/// <summary>About what tablets differ.</summary>
public enum MergeClashKind
{
    /// <summary>Present on one, absent or excused on another: present stands.</summary>
    PresentAndAbsent = 0,
    /// <summary>On time on one, late on another: late stands.</summary>
    OnTimeAndLate = 1,
    /// <summary>Good on one, another word on another: the evening counts as nothing until somebody who may sign off settles it.</summary>
    SeenDifferently = 2,
    /// <summary>Clean on one, head touched on another: head touched stands.</summary>
    FallSeenDifferently = 3,
}

/// <summary>What two tablets say differently. Both are kept.</summary>
/// <param name="Kind">About what.</param>
/// <param name="Person">The child.</param>
/// <param name="On">The evening.</param>
/// <param name="Item">The item of a sighting; null otherwise.</param>
/// <param name="Both">Every word, each with who said it where.</param>
/// <param name="Because">What stands, and why.</param>
public sealed record MergeClash(MergeClashKind Kind, PersonId Person, DateOnly On, ItemId? Item, IReadOnlyList<string> Both, Reason Because);

/// <summary>What all tablets together say. It is the same for every order of arrival.</summary>
/// <param name="Headline">The top line.</param>
/// <param name="Kept">Different marks: all of them are kept.</param>
/// <param name="Repeats">Marks that came more than once; each counts once.</param>
/// <param name="Register">By day, lesson and register order.</param>
/// <param name="Sightings">In register order.</param>
/// <param name="Falls">In register order.</param>
/// <param name="Knocks">In register order.</param>
/// <param name="Clashes">What tablets say differently, in register order.</param>
/// <param name="Reasons">Why.</param>
/// <param name="Settings">The settings used.</param>
public sealed record MergeResult(
    string Headline,
    int Kept,
    int Repeats,
    IReadOnlyList<MergedAttendance> Register,
    IReadOnlyList<MergedSightings> Sightings,
    IReadOnlyList<MergedFalls> Falls,
    IReadOnlyList<MergedKnock> Knocks,
    IReadOnlyList<MergeClash> Clashes,
    IReadOnlyList<Reason> Reasons,
    IReadOnlyList<SettingUsed> Settings);
