using Keikocho.Core.Evening;
using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;
using Keikocho.Store.Syllabus;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Intake;

/// <summary>What a reading is held against: the people, ranks, hours, lessons and marks of one programme as they are now.</summary>
/// <param name="Programme">The programme.</param>
/// <param name="Ranks">Its ladder, lowest first; empty while it has none.</param>
/// <param name="Known">Everybody the club has and has not erased.</param>
/// <param name="Erased">Those erased.</param>
/// <param name="Hours">The programme's weekly hours.</param>
/// <param name="Lessons">Its lessons by date; of several on one date the first.</param>
/// <param name="Held">Its marks by person and day; only for a register.</param>
/// <param name="SignOffs">The syllabus and what was seen; only for a sign-off grid.</param>
public sealed record ClubFacts(
    ProgrammeRow Programme,
    IReadOnlyList<RankRow> Ranks,
    IReadOnlyList<KnownPerson> Known,
    ErasedPersons Erased,
    IReadOnlyList<WeeklyHourRow> Hours,
    IReadOnlyDictionary<DateOnly, LessonRow> Lessons,
    IReadOnlyDictionary<(PersonId Person, DateOnly Day), RegisterSays> Held,
    SignOffFacts? SignOffs = null)
{
    /// <summary>Reads them; null when there is no such programme.</summary>
    /// <param name="db">The file.</param>
    /// <param name="programmeId">The programme.</param>
    /// <param name="kind">What is read against them.</param>
    /// <param name="today">The club's date today: the edition that holds is that of today.</param>
    public static ClubFacts? Load(KeikochoDb db, Guid programmeId, ReadingKind kind, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(db);
        var programme = db.Programmes.AsNoTracking().FirstOrDefault(p => p.Id == programmeId);
        if (programme is null) return null;
        var ranks = programme.LadderId is { } ladder ? db.Ranks.AsNoTracking().Where(r => r.LadderId == ladder).OrderBy(r => r.Position).ThenBy(r => r.Id).ToList() : [];
        var lessons = db.Lessons.AsNoTracking().Where(l => l.ProgrammeId == programmeId).AsEnumerable()
            .GroupBy(l => l.Date).ToDictionary(g => g.Key, g => g.OrderBy(l => l.Start).ThenBy(l => l.Id).First());
        return new ClubFacts(
            programme,
            ranks,
            KnownPeople.Read(db, programme, ranks),
            KnownPeople.Erased(db),
            [.. db.WeeklyHours.AsNoTracking().Where(h => h.ProgrammeId == programmeId).AsEnumerable().OrderBy(h => h.From).ThenBy(h => h.Start).ThenBy(h => h.Id)],
            lessons,
            kind == ReadingKind.Register ? Marks(db, programmeId, lessons) : new Dictionary<(PersonId, DateOnly), RegisterSays>(),
            kind == ReadingKind.SignOffs ? SignOffFacts.Load(db, programme, lessons, today) : null);
    }

    /// <summary>The weekly hour that gives a date its times: the one that holds on that day, else any of that day of the week.</summary>
    public WeeklyHourRow? HourOn(DateOnly day) =>
        Hours.FirstOrDefault(h => h.Weekday == day.DayOfWeek && h.From <= day && (h.To is null || h.To >= day)) ?? Hours.FirstOrDefault(h => h.Weekday == day.DayOfWeek);

    private static Dictionary<(PersonId, DateOnly), RegisterSays> Marks(KeikochoDb db, Guid programme, Dictionary<DateOnly, LessonRow> lessons)
    {
        var first = lessons.Values.Select(l => l.Id).ToHashSet();
        var held = new Dictionary<(PersonId, DateOnly), RegisterSays>();
        var states = db.Lessons.Where(l => l.ProgrammeId == programme)
            .Join(db.Attendances.Where(a => a.Word != AttendanceWord.Untouched), l => l.Id, a => a.LessonId, (l, a) => new { a.LessonId, a.PersonId, a.Date, a.Word, a.Late, a.Arrived });
        foreach (var state in states)
        {
            if (!first.Contains(state.LessonId)) continue;
            held[(new PersonId(state.PersonId), state.Date)] = state.Word switch
            {
                AttendanceWord.Absent => new RegisterSays(RegisterWord.Absent, null),
                AttendanceWord.Excused => new RegisterSays(RegisterWord.Excused, null),
                _ => new RegisterSays(state.Late ? RegisterWord.Late : RegisterWord.Present, state.Arrived),
            };
        }

        return held;
    }
}
