using Keikocho.Core.Evening;
using Keikocho.Store.Engines;
using Keikocho.Store.Marks;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Calendar;

/// <summary>Lays lessons and evenings into the terms from the weekly hours. A lesson that is there stays as it is.</summary>
internal static class LayLessons
{
    /// <summary>Lays what is missing in every term; returns how many.</summary>
    public static int Lay(WriteSession session)
    {
        var db = session.Db;
        var hours = db.WeeklyHours.AsNoTracking().ToList();
        var laid = 0;
        foreach (var term in db.Terms.AsNoTracking().OrderBy(t => t.From).ToList())
        {
            var there = db.Lessons.Where(l => l.Date >= term.From && l.Date <= term.To).Select(l => new { l.ProgrammeId, l.Date, l.Start }).AsEnumerable()
                .Select(l => (l.ProgrammeId, l.Date, l.Start)).ToHashSet();
            foreach (var hour in hours)
            {
                var first = Later(term.From, hour.From);
                var last = hour.To is { } to && to < term.To ? to : term.To;
                first = first.AddDays(((int)hour.Weekday - (int)first.DayOfWeek + 7) % 7);
                for (var date = first; date <= last; date = date.AddDays(7))
                {
                    if (!there.Add((hour.ProgrammeId, date, hour.Start))) continue;
                    Put(session, hour.ProgrammeId, hour.HallId, date, TimesOf(hour));
                    laid++;
                }
            }
        }

        db.SaveChanges();
        return laid;
    }

    /// <summary>Puts one lesson on a date, in its evening, closed where a closure covers it.</summary>
    public static LessonRow Put(WriteSession session, Guid programme, Guid hall, DateOnly date, LessonTimes times)
    {
        var db = session.Db;
        var evening = db.Evenings.Local.FirstOrDefault(e => e.Date == date && e.HallId == hall)
            ?? db.Evenings.FirstOrDefault(e => e.Date == date && e.HallId == hall);
        if (evening is null)
        {
            evening = new EveningRow { Club = session.Club, Id = session.NewId(), Date = date, HallId = hall };
            db.Evenings.Add(evening);
        }

        var lesson = new LessonRow
        {
            Club = session.Club,
            Id = session.NewId(),
            ProgrammeId = programme,
            EveningId = evening.Id,
            Date = date,
            Start = times.Start,
            End = times.End,
            UkemiFrom = times.UkemiFrom,
            UkemiTo = times.UkemiTo,
            HalfTime = times.HalfTime,
        };
        db.Lessons.Add(lesson);
        lesson.ClosureId = ClosureOver(db, lesson, hall)?.Id;
        return lesson;
    }

    /// <summary>Takes up the lessons of an hour after a day, where nobody has marked anything.</summary>
    public static void TakeUp(WriteSession session, WeeklyHourRow hour, DateOnly last)
    {
        var db = session.Db;
        db.Lessons.RemoveRange(Unmarked(db, hour, last.AddDays(1)));
        db.SaveChanges();
    }

    /// <summary>The lessons of an hour from a day on, where nobody has marked anything.</summary>
    public static List<LessonRow> Unmarked(KeikochoDb db, WeeklyHourRow hour, DateOnly first) =>
    [
        .. db.Lessons.Where(l => l.ProgrammeId == hour.ProgrammeId && l.Start == hour.Start && l.Date >= first && !db.Marks.Any(m => m.LessonId == l.Id))
            .AsEnumerable().Where(l => l.Date.DayOfWeek == hour.Weekday),
    ];

    /// <summary>The lessons that a closure with these bounds covers.</summary>
    public static IQueryable<LessonRow> Covered(KeikochoDb db, DateOnly from, DateOnly to, Guid? programme, Guid? hall) =>
        db.Lessons.Where(l => l.Date >= from && l.Date <= to
            && (programme == null || l.ProgrammeId == programme)
            && (hall == null || db.Evenings.Any(e => e.Id == l.EveningId && e.HallId == hall)));

    /// <summary>A closure that covers this lesson, the one entered first; null when none does.</summary>
    public static ClosureRow? ClosureOver(KeikochoDb db, LessonRow lesson) =>
        ClosureOver(db, lesson, db.Evenings.Where(e => e.Id == lesson.EveningId).Select(e => e.HallId).Single());

    /// <summary>Takes the lessons of a closure that was just removed back into the counts, with the marks that were there all along.</summary>
    public static void Reopen(WriteSession session, Guid closure, AttendanceRules rules)
    {
        var db = session.Db;
        foreach (var lesson in db.Lessons.Where(l => l.ClosureId == closure).ToList())
        {
            // Another closure may cover the same day.
            lesson.ClosureId = ClosureOver(db, lesson)?.Id;
            db.SaveChanges();
            FoldMarks.StoreAll(session, lesson, rules);
        }
    }

    private static ClosureRow? ClosureOver(KeikochoDb db, LessonRow lesson, Guid hall) =>
        db.Closures.AsNoTracking().Where(c => c.From <= lesson.Date && c.To >= lesson.Date
            && (c.ProgrammeId == null || c.ProgrammeId == lesson.ProgrammeId)
            && (c.HallId == null || c.HallId == hall)).OrderBy(c => c.MadeAt).FirstOrDefault();

    /// <summary>The hours of the lessons that are laid from a weekly hour.</summary>
    public static LessonTimes TimesOf(WeeklyHourRow hour) => new(hour.Start, hour.End, hour.UkemiFrom, hour.UkemiTo, hour.HalfTime);

    private static DateOnly Later(DateOnly a, DateOnly b) => a > b ? a : b;
}
