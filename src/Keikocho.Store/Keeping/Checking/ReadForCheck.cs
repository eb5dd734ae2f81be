using Keikocho.Store.Calendar;

namespace Keikocho.Store.Keeping.Checking;

/// <summary>What a check holds in memory of the smaller tables.</summary>
internal static class ReadForCheck
{
    private const string LessonLines =
        "SELECT \"Id\", \"ProgrammeId\", \"Date\", \"Start\", \"End\", \"UkemiFrom\", \"UkemiTo\", \"HalfTime\", \"ClosureId\" FROM \"Lessons\" WHERE \"Club\" = @club";

    private const string MiddleLesson =
        "SELECT \"Id\" FROM \"Lessons\" WHERE \"Club\" = @club ORDER BY \"Id\" LIMIT 1 OFFSET (SELECT count(*) / 2 FROM \"Lessons\" WHERE \"Club\" = @club)";

    /// <summary>What the fold needs of every lesson.</summary>
    public static Dictionary<Guid, LessonRow> Lessons(ReadSnapshot view, int lane, int club)
    {
        var found = new Dictionary<Guid, LessonRow>();
        using var lines = LineReading.Of(view, lane, LessonLines, club);
        TimeOnly Time(int at) => new(lines.Whole(at) / 60, lines.Whole(at) % 60);
        while (lines.Next())
        {
            var row = new LessonRow
            {
                Club = club,
                Id = lines.Id(0),
                ProgrammeId = lines.Id(1),
                Date = lines.Day(2),
                Start = Time(3),
                End = Time(4),
                UkemiFrom = Time(5),
                UkemiTo = Time(6),
                HalfTime = Time(7),
                ClosureId = lines.IdIfAny(8),
            };
            found[row.Id] = row;
        }

        return found;
    }

    /// <summary>The ids of one table.</summary>
    public static HashSet<Guid> Ids(ReadSnapshot view, int lane, int club, string table)
    {
        var found = new HashSet<Guid>();
        using var lines = LineReading.Of(view, lane, $"SELECT \"Id\" FROM \"{table}\" WHERE \"Club\" = @club", club);
        while (lines.Next()) found.Add(lines.Id(0));
        return found;
    }

    /// <summary>The lesson in the middle by id; the nil id where there is none.</summary>
    public static Guid Middle(ReadSnapshot view, int lane, int club)
    {
        using var lines = LineReading.Of(view, lane, MiddleLesson, club);
        return lines.Next() ? lines.Id(0) : Guid.Empty;
    }
}
