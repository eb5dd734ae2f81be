using Keikocho.Core.Evening;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Marks;

/// <summary>One tap.</summary>
/// <param name="Id">Made where it was tapped; the same id again changes nothing.</param>
/// <param name="Device">Where.</param>
/// <param name="Sequence">The device's own count; null lets the server count for it.</param>
/// <param name="LessonId">Which lesson.</param>
/// <param name="PersonId">Whom it speaks of.</param>
/// <param name="By">The acting adult.</param>
/// <param name="MadeAt">By the device's clock.</param>
/// <param name="Kind">Present, left, absent, excused.</param>
/// <param name="At">Local time; null when nobody noted it.</param>
public sealed record Tap(
    Guid Id, Guid Device, int? Sequence, Guid LessonId, Guid PersonId, Guid By, DateTimeOffset MadeAt, MarkKind Kind, TimeOnly? At);

/// <summary>What came of a tap.</summary>
public enum TapOutcome
{
    /// <summary>Stored, and on disk.</summary>
    Stored,
    /// <summary>This id is stored already; nothing was changed.</summary>
    AlreadyStored,
    /// <summary>There is no such lesson or person.</summary>
    Unknown,
}

/// <summary>Marks from the mat.</summary>
public sealed partial class MarksStore(WriterQueue writer)
{
    /// <summary>Stores a tap and the state that follows from it.</summary>
    public Task<TapOutcome> TapAsync(Tap tap, DateOnly today, AttendanceRules rules, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (TapStatements.Lesson(session, tap.LessonId) is not { } lesson || !TapStatements.Knows(session, tap.PersonId)) return TapOutcome.Unknown;
        if (!Append(session, lesson, tap, rules)) return TapOutcome.AlreadyStored;
        if (lesson.Date < today) Revise.Past(session);
        return TapOutcome.Stored;
    }, cancel);

    /// <summary>Marks everybody of <paramref name="untouched"/> absent whom nobody has marked; one undo takes all of them back.</summary>
    /// <returns>How many were marked.</returns>
    public Task<int> RestAbsentAsync(Guid lessonId, IReadOnlyList<Guid> untouched, DateOnly today, AttendanceRules rules, Guid by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            var db = session.Db;
            var lesson = db.Lessons.AsNoTracking().FirstOrDefault(l => l.Id == lessonId);
            if (lesson is null) return 0;
            var touched = db.Attendances.Where(a => a.LessonId == lessonId && a.Word != AttendanceWord.Untouched).Select(a => a.PersonId).ToHashSet();
            var marked = 0;
            foreach (var person in untouched.Where(p => !touched.Contains(p)))
            {
                Append(session, lesson, new Tap(session.NewId(), device, null, lessonId, person, by, session.Now, MarkKind.Absent, null), rules);
                marked++;
            }

            if (marked == 0) return 0;
            if (lesson.Date < today) Revise.Past(session);
            session.Note(TrailKind.RestAbsent, lessonId, by, device);
            return marked;
        }, cancel);

    /// <summary>
    /// Takes back what this device last marked at this lesson: the newest mark that still stands, and those made in the same moment. The
    /// same <paramref name="id"/> again takes back nothing more.
    /// </summary>
    /// <param name="id">Made where it was tapped.</param>
    /// <returns>The people whose marks were taken back; empty when there was nothing.</returns>
    public Task<IReadOnlyList<Guid>> UndoAsync(Guid id, Guid lessonId, DateOnly today, AttendanceRules rules, Guid by, Guid device, CancellationToken cancel) =>
        writer.RunAsync<IReadOnlyList<Guid>>(session =>
        {
            var db = session.Db;
            var lesson = db.Lessons.AsNoTracking().FirstOrDefault(l => l.Id == lessonId);
            if (lesson is null) return [];
            if (db.Marks.AsNoTracking().FirstOrDefault(m => m.Id == id) is { } done)
                return db.Marks.Where(m => m.LessonId == lessonId && m.Kind == MarkKind.Cleared && m.MadeAt == done.MadeAt && m.DeviceId == device)
                    .Select(m => m.PersonId).Distinct().AsEnumerable().Order().ToList();
            var people = db.Marks.Where(m => m.LessonId == lessonId && m.DeviceId == device).Select(m => m.PersonId).Distinct().ToList();
            var own = people.SelectMany(p => Standing(db, lesson, p, rules)).Where(m => m.DeviceId == device).ToList();
            var last = own.MaxBy(m => m.Sequence);
            if (last is null) return [];
            var group = own.Where(m => m.MadeAt == last.MadeAt).OrderBy(m => m.Sequence).ToList();
            foreach (var mark in group)
            {
                TapStatements.Insert(session, new MarkRow
                {
                    Club = session.Club,
                    Id = mark.Id == group[0].Id ? id : session.NewId(),
                    DeviceId = device,
                    LessonId = lessonId,
                    PersonId = mark.PersonId,
                    ById = by,
                    MadeAt = session.Now,
                    ReceivedAt = session.Now,
                    Kind = MarkKind.Cleared,
                    Replaces = mark.Id,
                }, null);
                TapStatements.StoreState(session, lesson, mark.PersonId, rules);
            }

            if (lesson.Date < today) Revise.Past(session);
            return group.Select(m => m.PersonId).ToList();
        }, cancel);

    /// <summary>
    /// Corrects where a person stood at a lesson, with trace: every standing word of every device is replaced, the first marks stay
    /// to be seen. A leaving keeps the arrival that is known, so that nobody is made to have been there from the bow by it.
    /// </summary>
    /// <param name="to">Present, left, absent, excused, or cleared for "nothing was to be marked".</param>
    /// <param name="at">Local time; null when not known or not needed.</param>
    public Task<bool> CorrectAsync(Guid id, Guid lessonId, Guid person, MarkKind to, TimeOnly? at, DateOnly today, AttendanceRules rules, Guid by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            var db = session.Db;
            if (db.Marks.Any(m => m.Id == id)) return true;
            var lesson = db.Lessons.AsNoTracking().FirstOrDefault(l => l.Id == lessonId);
            if (lesson is null || !db.People.Any(p => p.Id == person && p.ErasedAt == null)) return false;
            var standing = Standing(db, lesson, person, rules);
            if (to == MarkKind.Left)
            {
                Leave(session, lesson, new Tap(id, device, null, lessonId, person, by, session.Now, to, at), rules);
            }
            else if (standing.Count == 0)
            {
                if (to != MarkKind.Cleared) Append(session, lesson, new Tap(id, device, null, lessonId, person, by, session.Now, to, at), rules);
            }
            else
            {
                // The newest word of each device carries the new truth; older words under it are taken back.
                foreach (var group in standing.GroupBy(m => m.DeviceId).OrderBy(g => g.Key))
                {
                    var newest = group.MaxBy(m => m.Sequence)!;
                    foreach (var mark in group.OrderBy(m => m.Sequence))
                    {
                        var isNewest = mark.Id == newest.Id;
                        TapStatements.Insert(session, new MarkRow
                        {
                            Club = session.Club,
                            Id = isNewest && group.Key == standing.Select(m => m.DeviceId).Min() ? id : session.NewId(),
                            DeviceId = device,
                            LessonId = lessonId,
                            PersonId = person,
                            ById = by,
                            MadeAt = session.Now,
                            ReceivedAt = session.Now,
                            Kind = isNewest && to != MarkKind.Cleared ? MarkKind.Corrected : MarkKind.Cleared,
                            At = isNewest ? at : null,
                            Code = isNewest && to != MarkKind.Cleared ? (int)to : 0,
                            Replaces = mark.Id,
                        }, null);
                    }
                }

                TapStatements.StoreState(session, lesson, person, rules);
            }

            if (lesson.Date < today) Revise.Past(session);
            session.Note(TrailKind.MarkCorrected, person, by, device);
            return true;
        }, cancel);

    /// <summary>The marks of one person whose word still holds good on their device: neither taken back nor replaced.</summary>
    private static List<MarkRow> Standing(KeikochoDb db, LessonRow lesson, Guid person, AttendanceRules rules)
    {
        var rows = db.Marks.AsNoTracking().Where(m => m.LessonId == lesson.Id && m.PersonId == person && m.ItemId == null).AsEnumerable()
            .Where(m => FoldMarks.SpeaksOfPresence(m.Kind)).ToDictionary(m => m.Id);
        if (rows.Count == 0) return [];
        return FoldAttendance.Explain([.. rows.Values.Select(FoldMarks.AsMark)], FoldMarks.TimesOf(lesson), rules).Trail
            .Where(t => t.Fate == MarkFate.Speaks && t.Mark.Kind != MarkKind.Cleared)
            .Select(t => rows[t.Mark.Id.Value]).ToList();
    }

    /// <summary>Puts a mark in and folds again; false when its id is there already, and then nothing is changed.</summary>
    internal static bool Append(WriteSession session, LessonRow lesson, Tap tap, AttendanceRules rules)
    {
        var row = new MarkRow
        {
            Club = session.Club,
            Id = tap.Id,
            DeviceId = tap.Device,
            LessonId = tap.LessonId,
            PersonId = tap.PersonId,
            ById = tap.By,
            MadeAt = tap.MadeAt,
            ReceivedAt = session.Now,
            Kind = tap.Kind,
            At = tap.At,
        };
        if (!TapStatements.Insert(session, row, tap.Sequence)) return false;
        TapStatements.StoreState(session, lesson, tap.PersonId, rules);
        return true;
    }
}
