using Keikocho.Core.Evening;
using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Marks;

/// <summary>One state as the clocks need it.</summary>
public sealed record PastState(Guid PersonId, Guid LessonId, DateOnly Date, AttendanceWord Word, bool Counts, bool Ukemi);

/// <summary>Reads the states of earlier lessons for the sums over a term and a year.</summary>
public static class PastStates
{
    /// <summary>The states of these people in one programme between two days, inclusive; in no order.</summary>
    public static List<PastState> Read(KeikochoDb db, Guid programme, IReadOnlyCollection<Guid> people, DateOnly from, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.Attendances
            .Where(a => people.Contains(a.PersonId) && a.ProgrammeId == programme && a.Date >= from && a.Date <= to)
            .Select(a => new PastState(a.PersonId, a.LessonId, a.Date, a.Word, a.Counts, a.Ukemi))
            .ToList();
    }

    /// <summary>The lessons of a programme from a day on and before another, by date and start.</summary>
    public static List<LessonRow> LessonsBefore(KeikochoDb db, Guid programme, DateOnly from, DateOnly before)
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.Lessons.AsNoTracking().Where(l => l.ProgrammeId == programme && l.Date >= from && l.Date < before)
            .OrderBy(l => l.Date).ThenBy(l => l.Start).ToList();
    }

    /// <summary>Lessons that these people have attended in all programmes up to a day; who has none is missing.</summary>
    public static Dictionary<Guid, int> LessonsEver(KeikochoDb db, IReadOnlyCollection<Guid> people, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.Attendances
            .Where(a => people.Contains(a.PersonId) && a.Counts && a.Date <= to)
            .GroupBy(a => a.PersonId).Select(g => new { g.Key, Count = g.Count() })
            .ToDictionary(g => g.Key, g => g.Count);
    }

    /// <summary>The lessons of a programme between two days at which nobody at all has a state.</summary>
    public static HashSet<Guid> WithoutRegister(KeikochoDb db, Guid programme, DateOnly from, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.Lessons
            .Where(l => l.ProgrammeId == programme && l.Date >= from && l.Date <= to
                && (l.RegisterMissing || !db.Attendances.Any(a => a.LessonId == l.Id && a.Word != AttendanceWord.Untouched)))
            .Select(l => l.Id).ToHashSet();
    }

    /// <summary>How many marks these lessons have; marks are only ever added, so the number tells whether there are new ones.</summary>
    public static int MarksAt(KeikochoDb db, IReadOnlyCollection<Guid> lessons)
    {
        ArgumentNullException.ThrowIfNull(db);
        return lessons.Count == 0 ? 0 : db.Marks.Count(m => lessons.Contains(m.LessonId));
    }
}
