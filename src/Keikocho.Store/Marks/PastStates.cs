using Keikocho.Core.Evening;
using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;

namespace Keikocho.Store.Marks;

/// <summary>One state as the clocks need it.</summary>
public sealed record PastState(Guid PersonId, Guid LessonId, DateOnly Date, AttendanceWord Word, bool Counts, bool Ukemi);

/// <summary>Reads the states of earlier lessons for the sums over a term and a year.</summary>
public static class PastStates
{
    /// <summary>The states of these people in one programme between two days, inclusive; in no order.</summary>
    public static List<PastState> Read(ReadSession reading, Guid programme, IReadOnlyCollection<Guid> people, DateOnly from, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(people);
        if (people.Count == 0) return [];
        var ids = new IdList(people);
        return reading.Rows(
            $"""
            SELECT "PersonId", "LessonId", "Date", "Word", "Counts", "Ukemi" FROM "Attendances"
            WHERE "Club" = @club AND "PersonId" IN ({ids.Names}) AND "ProgrammeId" = @programme AND "Date" >= @from AND "Date" <= @to
            """,
            row => new PastState(row.Id(), row.Id(), row.Day(), (AttendanceWord)row.Whole(), row.Yes(), row.Yes()),
            [("@programme", programme), ("@from", from), ("@to", to), .. ids.Values]);
    }

    /// <summary>The lessons of a programme from a day on and before another, by date and start.</summary>
    public static List<LessonRow> LessonsBefore(ReadSession reading, Guid programme, DateOnly from, DateOnly before)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return ReadLessons.Between(reading, programme, from, before);
    }

    /// <summary>Lessons that these people have attended in all programmes up to a day; who has none is missing.</summary>
    public static Dictionary<Guid, int> LessonsEver(ReadSession reading, IReadOnlyCollection<Guid> people, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(people);
        if (people.Count == 0) return [];
        var ids = new IdList(people);
        return reading.Rows(
            $"""
            SELECT "PersonId", COUNT(*) FROM "Attendances"
            WHERE "Club" = @club AND "PersonId" IN ({ids.Names}) AND "Counts" = @yes AND "Date" <= @to GROUP BY "PersonId"
            """,
            row => (Person: row.Id(), Count: checked((int)row.Long())),
            [("@yes", true), ("@to", to), .. ids.Values]).ToDictionary(p => p.Person, p => p.Count);
    }

    /// <summary>The lessons of a programme between two days at which nobody at all has a state.</summary>
    public static HashSet<Guid> WithoutRegister(ReadSession reading, Guid programme, DateOnly from, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return [.. reading.Rows(
            """
            SELECT l."Id" FROM "Lessons" AS l
            WHERE l."Club" = @club AND l."ProgrammeId" = @programme AND l."Date" >= @from AND l."Date" <= @to
                AND (l."RegisterMissing" = @yes OR NOT EXISTS
                    (SELECT 1 FROM "Attendances" AS a WHERE a."Club" = @club AND a."LessonId" = l."Id" AND a."Word" <> @untouched))
            """,
            row => row.Id(),
            ("@programme", programme), ("@from", from), ("@to", to), ("@yes", true), ("@untouched", AttendanceWord.Untouched))];
    }

    /// <summary>The enrolments of a programme that a reading made or moved: their first day is what a list said.</summary>
    public static HashSet<Guid> EnrolledByAList(ReadSession reading, Guid programme)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return [.. reading.Rows(
            """
            SELECT e."Id" FROM "Enrolments" AS e
            WHERE e."Club" = @club AND e."ProgrammeId" = @programme
                AND e."Id" IN (SELECT t."RowId" FROM "ReadingTraces" AS t WHERE t."Club" = @club AND t."Table" = @table)
            """,
            row => row.Id(),
            ("@programme", programme), ("@table", "Enrolments"))];
    }

    /// <summary>How many marks these lessons have; marks are only ever added, so the number tells whether there are new ones.</summary>
    public static int MarksAt(ReadSession reading, IReadOnlyCollection<Guid> lessons)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (lessons.Count == 0) return 0;
        var ids = new IdList(lessons);
        return reading.Rows(
            $"""SELECT CAST(count(*) AS integer) FROM "Marks" WHERE "Club" = @club AND "LessonId" IN ({ids.Names})""", row => row.Whole(), [.. ids.Values])[0];
    }

    /// <summary>Child-evenings between two days, inclusive: a child that was there on an evening counts once for it, adults not at all.</summary>
    public static int ChildEvenings(ReadSession reading, DateOnly from, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Rows(
            """
            SELECT CAST(COUNT(*) AS integer) FROM
                (SELECT DISTINCT a."PersonId", a."Date" FROM "Attendances" AS a
                WHERE a."Club" = @club AND a."Date" >= @from AND a."Date" <= @to AND (a."Word" = @present OR a."Word" = @left)
                    AND EXISTS (SELECT 1 FROM "Enrolments" AS e
                        WHERE e."Club" = a."Club" AND e."PersonId" = a."PersonId" AND e."ProgrammeId" = a."ProgrammeId" AND e."From" <= a."Date")) AS there
            """,
            row => row.Whole(),
            ("@from", from), ("@to", to), ("@present", AttendanceWord.Present), ("@left", AttendanceWord.Left))[0];
    }
}
