using Keikocho.Core.Evening;
using Keikocho.Store.Engines;

namespace Keikocho.Store.Marks;

/// <summary>The statements that read states of person and lesson.</summary>
internal static class ReadStates
{
    public static List<AttendanceRow> OfLessons(ReadSession reading, IReadOnlyCollection<Guid> lessons)
    {
        if (lessons.Count == 0) return [];
        var ids = new IdList(lessons);
        return reading.Rows(
            $"""
            SELECT "LessonId", "PersonId", "ProgrammeId", "Date", "Word", "Arrived", "LeftAt", "Late", "Counts", "Ukemi", "LeftEarly", "Clash"
            FROM "Attendances" WHERE "Club" = @club AND "LessonId" IN ({ids.Names})
            """,
            row => new AttendanceRow
            {
                Club = row.Club,
                LessonId = row.Id(),
                PersonId = row.Id(),
                ProgrammeId = row.Id(),
                Date = row.Day(),
                Word = (AttendanceWord)row.Whole(),
                Arrived = row.TimeIfAny(),
                LeftAt = row.TimeIfAny(),
                Late = row.Yes(),
                Counts = row.Yes(),
                Ukemi = row.Yes(),
                LeftEarly = row.Yes(),
                Clash = (AttendanceClash)row.Whole(),
            },
            [.. ids.Values]);
    }
}
