using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;

namespace Keikocho.Store.Book;

/// <summary>The statements that read the calendar for the book.</summary>
internal static class ReadCalendar
{
    public static List<ProgrammeRow> Programmes(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "Name", "Position", "LadderId", "FirstCourseLessons", "FirstCourseWeeks", "TrialLessons"
        FROM "Programmes" WHERE "Club" = @club
        """,
        row => new ProgrammeRow
        {
            Club = row.Club,
            Id = row.Id(),
            Name = row.Text(),
            Position = row.Whole(),
            LadderId = row.IdIfAny(),
            FirstCourseLessons = row.WholeIfAny(),
            FirstCourseWeeks = row.WholeIfAny(),
            TrialLessons = row.WholeIfAny(),
        });

    public static List<WeeklyHourRow> Hours(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "ProgrammeId", "HallId", "Weekday", "Start", "End", "UkemiFrom", "UkemiTo", "HalfTime", "From", "To"
        FROM "WeeklyHours" WHERE "Club" = @club
        """,
        row => new WeeklyHourRow
        {
            Club = row.Club,
            Id = row.Id(),
            ProgrammeId = row.Id(),
            HallId = row.Id(),
            Weekday = (DayOfWeek)row.Whole(),
            Start = row.Time(),
            End = row.Time(),
            UkemiFrom = row.Time(),
            UkemiTo = row.Time(),
            HalfTime = row.Time(),
            From = row.Day(),
            To = row.DayIfAny(),
        });

    public static List<TermRow> Terms(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "Name", "From", "To" FROM "Terms" WHERE "Club" = @club
        """,
        row => new TermRow { Club = row.Club, Id = row.Id(), Name = row.Text(), From = row.Day(), To = row.Day() });

    public static List<ClosureRow> Closures(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "Name", "From", "To", "ProgrammeId", "HallId", "MadeAt" FROM "Closures" WHERE "Club" = @club
        """,
        row => new ClosureRow
        {
            Club = row.Club,
            Id = row.Id(),
            Name = row.Text(),
            From = row.Day(),
            To = row.Day(),
            ProgrammeId = row.IdIfAny(),
            HallId = row.IdIfAny(),
            MadeAt = row.Instant(),
        });

    public static List<PromotionTestRow> Tests(ReadSession reading) => reading.Rows(
        """
        SELECT "Id", "ProgrammeId", "Date", "ListClosedAt", "ResultsLockedAt" FROM "PromotionTests" WHERE "Club" = @club
        """,
        row => new PromotionTestRow
        {
            Club = row.Club,
            Id = row.Id(),
            ProgrammeId = row.Id(),
            Date = row.Day(),
            ListClosedAt = row.InstantIfAny(),
            ResultsLockedAt = row.InstantIfAny(),
        });

    public static List<EveningRow> Evenings(ReadSession reading, DateOnly from) => reading.Rows(
        """
        SELECT "Id", "Date", "HallId", "ClosedAt", "ClosedById" FROM "Evenings" WHERE "Club" = @club AND "Date" >= @from
        """,
        row => new EveningRow
        {
            Club = row.Club,
            Id = row.Id(),
            Date = row.Day(),
            HallId = row.Id(),
            ClosedAt = row.InstantIfAny(),
            ClosedById = row.IdIfAny(),
        },
        ("@from", from));
}
