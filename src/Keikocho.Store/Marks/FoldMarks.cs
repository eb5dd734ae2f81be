using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Marks;

/// <summary>Folds the marks of one person at one lesson into its state row; the state is never patched.</summary>
public static class FoldMarks
{
    /// <summary>The kinds that speak of presence.</summary>
    public static bool SpeaksOfPresence(MarkKind kind) => kind is MarkKind.Present or MarkKind.Left or MarkKind.Absent
        or MarkKind.Excused or MarkKind.Cleared or MarkKind.Corrected;

    /// <summary>
    /// The state row that these marks say; null when they say nothing at all. <paramref name="marks"/> are all marks of one person at
    /// <paramref name="lesson"/>, in any order.
    /// </summary>
    public static AttendanceRow? Fold(LessonRow lesson, Guid personId, IReadOnlyCollection<MarkRow> marks, AttendanceRules rules)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        var speaking = Speaking(marks);
        if (speaking.Count == 0) return null;
        var state = FoldAttendance.Fold(speaking, TimesOf(lesson), rules);
        var held = lesson.ClosureId is null;
        return new AttendanceRow
        {
            Club = lesson.Club,
            LessonId = lesson.Id,
            PersonId = personId,
            ProgrammeId = lesson.ProgrammeId,
            Date = lesson.Date,
            Word = state.Word,
            Arrived = state.Arrived,
            LeftAt = state.LeftAt,
            Late = state.Late,
            Counts = state.Counts && held,
            Ukemi = state.Ukemi && held,
            LeftEarly = state.LeftEarly,
            Clash = state.Clash,
        };
    }

    /// <summary>
    /// The marks that speak of presence. An undo or a correction speaks of whatever it takes back: where that is a fall or a sighting,
    /// it says nothing of presence.
    /// </summary>
    private static List<AttendanceMark> Speaking(IReadOnlyCollection<MarkRow> marks)
    {
        var speaking = new List<AttendanceMark>(marks.Count);
        foreach (var mark in marks)
        {
            if (SpeaksOfPresence(mark.Kind) && (mark.Replaces is null || SpeaksOfPresence(RootOf(mark, marks).Kind)))
                speaking.Add(AsMark(mark));
        }

        return speaking;
    }

    private static MarkRow RootOf(MarkRow mark, IReadOnlyCollection<MarkRow> marks)
    {
        var root = mark;
        // No longer than the marks are many: damaged marks may replace each other in a circle.
        for (var steps = 0; steps < marks.Count && root.Replaces is { } replaced; steps++)
        {
            if (marks.FirstOrDefault(m => m.Id == replaced) is not { } under) break;
            root = under;
        }

        return root;
    }

    /// <summary>Folds one person at one lesson again and stores the state, inside the session's transaction.</summary>
    public static void Store(WriteSession session, LessonRow lesson, Guid personId, AttendanceRules rules)
    {
        ArgumentNullException.ThrowIfNull(session);
        var db = session.Db;
        var marks = db.Marks.AsNoTracking().Where(m => m.LessonId == lesson.Id && m.PersonId == personId).ToList();
        var now = Fold(lesson, personId, marks, rules);
        var before = db.Attendances.FirstOrDefault(a => a.LessonId == lesson.Id && a.PersonId == personId);
        if (before is null && now is not null) db.Attendances.Add(now);
        else if (before is not null && now is null) db.Attendances.Remove(before);
        else if (before is not null && now is not null) db.Entry(before).CurrentValues.SetValues(now);
        db.SaveChanges();
    }

    /// <summary>Folds everybody at one lesson again, as when a closure comes or goes.</summary>
    public static void StoreAll(WriteSession session, LessonRow lesson, AttendanceRules rules)
    {
        ArgumentNullException.ThrowIfNull(session);
        var people = session.Db.Marks.Where(m => m.LessonId == lesson.Id).Select(m => m.PersonId).Distinct().ToList();
        foreach (var person in people.Order()) Store(session, lesson, person, rules);
    }

    /// <summary>The hours of a lesson as the fold takes them.</summary>
    public static LessonTimes TimesOf(LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        return new LessonTimes(lesson.Start, lesson.End, lesson.UkemiFrom, lesson.UkemiTo, lesson.HalfTime);
    }

    /// <summary>A stored mark as the fold takes it.</summary>
    public static AttendanceMark AsMark(MarkRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return new AttendanceMark(
            new MarkId(row.Id),
            new DeviceId(row.DeviceId),
            row.Sequence,
            row.Kind,
            row.At,
            (row.Code & MarkCode.LateWithoutTime) != 0,
            row.Replaces is { } replaced ? new MarkId(replaced) : null,
            row.Kind == MarkKind.Corrected ? (MarkKind)(row.Code & MarkCode.CorrectedToMask) : null,
            new PersonId(row.ById ?? Guid.Empty),
            row.MadeAt);
    }
}
