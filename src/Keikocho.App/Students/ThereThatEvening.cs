using Keikocho.App.Club;
using Keikocho.App.Sightings;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;

namespace Keikocho.App.Students;

/// <summary>
/// Whether a child can have been seen at a lesson, for what is entered on the laptop. A mark of a tablet is never turned away for it,
/// however late it comes: what was acknowledged on the mat is kept, and the clash is there to be looked at.
/// </summary>
public static class ThereThatEvening
{
    /// <summary>Why nothing seen of the child at that lesson is entered: what, where and what to do; null where it may be.</summary>
    /// <param name="club">The club.</param>
    /// <param name="lesson">The lesson.</param>
    /// <param name="person">The child.</param>
    /// <param name="name">The name as called.</param>
    /// <param name="evidence">What the club holds of the child.</param>
    public static string? WhyNot(OpenClub club, LessonRow lesson, Guid person, string name, ChildEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        var day = lesson.Date.WithWeekday();
        var word = AttendanceReader.OfLesson(club.Reading, lesson.Id).GetValueOrDefault(person)?.Word;
        if (word is AttendanceWord.Absent or AttendanceWord.Excused)
            return $"{name} is marked {(word == AttendanceWord.Absent ? "absent" : "excused")} in the register of {day}: put the register right first, or choose another evening.";
        return ChildGates.Standing(club.Book, evidence, lesson.Date).Standing.FirstOrDefault(s => s.Scope == StandDownScope.OffTheMat) is { } off
            ? $"{name} was off the mat on {day}, by the stand-down of {off.From.Full()}: put the stand-down right first, or choose another evening."
            : null;
    }
}
