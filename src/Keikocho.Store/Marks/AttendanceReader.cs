using Keikocho.Core.Evening;
using Keikocho.Store.Engines;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Marks;

/// <summary>How often a person has been there.</summary>
/// <param name="PersonId">The person.</param>
/// <param name="Attended">Lessons that count since the given day.</param>
public sealed record AttendedSince(Guid PersonId, int Attended);

/// <summary>Reads states and marks.</summary>
public static class AttendanceReader
{
    /// <summary>Everybody's state at one lesson; those who were never marked have none.</summary>
    public static Dictionary<Guid, AttendanceRow> OfLesson(ReadSession reading, Guid lesson) =>
        OfLessons(reading, [lesson]).ToDictionary(a => a.PersonId);

    /// <summary>Everybody's states at several lessons.</summary>
    public static List<AttendanceRow> OfLessons(ReadSession reading, IReadOnlyCollection<Guid> lessons)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(lessons);
        return ReadStates.OfLessons(reading, lessons);
    }

    /// <summary>Lessons attended since each child's count began, for everybody on a programme's register; one query.</summary>
    public static Dictionary<Guid, int> AttendedSinceStart(KeikochoDb db, Guid programme, DateOnly asOf) =>
        AskSinceStart(db, programme, asOf).ToDictionary(a => a.PersonId, a => a.Attended);

    private static readonly Func<KeikochoDb, Guid, DateOnly, IEnumerable<AttendedSince>> AskSinceStart =
        EF.CompileQuery((KeikochoDb db, Guid programme, DateOnly asOf) => db.Enrolments
            .Where(e => e.ProgrammeId == programme && (e.To == null || e.To >= asOf))
            .Select(e => new AttendedSince(
                e.PersonId,
                db.Attendances.Count(a => a.PersonId == e.PersonId && a.ProgrammeId == programme && a.Date >= e.CountsFrom && a.Date <= asOf && a.Counts))));

    /// <summary>Lessons attended between two days, inclusive, by everybody of a programme.</summary>
    public static Dictionary<Guid, int> AttendedBetween(KeikochoDb db, Guid programme, DateOnly from, DateOnly to) =>
        db.Attendances.Where(a => a.ProgrammeId == programme && a.Date >= from && a.Date <= to && a.Counts)
            .GroupBy(a => a.PersonId).Select(g => new { g.Key, Count = g.Count() }).ToDictionary(g => g.Key, g => g.Count);

    /// <summary>All marks of one person at one lesson, as made; for the head instructor's eyes.</summary>
    public static List<MarkRow> MarksOf(KeikochoDb db, Guid lesson, Guid person) =>
        db.Marks.AsNoTracking().Where(m => m.LessonId == lesson && m.PersonId == person).ToList();

    /// <summary>All marks about presence at one lesson that a person made, as made; those of a file have no hand and are left out.</summary>
    public static List<MarkRow> MarksByHand(KeikochoDb db, Guid lesson) =>
        [.. db.Marks.AsNoTracking().Where(m => m.LessonId == lesson && m.ById != null && m.ItemId == null).AsEnumerable().Where(m => FoldMarks.SpeaksOfPresence(m.Kind))];

    /// <summary>How many people were there at each of several lessons; a lesson without any is not in it.</summary>
    public static Dictionary<Guid, int> HereAt(KeikochoDb db, IReadOnlyCollection<Guid> lessons) =>
        db.Attendances.Where(a => lessons.Contains(a.LessonId) && (a.Word == AttendanceWord.Present || a.Word == AttendanceWord.Left))
            .GroupBy(a => a.LessonId).Select(g => new { g.Key, Count = g.Count() }).ToDictionary(g => g.Key, g => g.Count);
}
