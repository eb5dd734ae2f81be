using Keikocho.Store.Engines;

namespace Keikocho.Store.Calendar;

/// <summary>The statements that read lessons.</summary>
internal static class ReadLessons
{
    private const string Columns = """
        SELECT "Id", "ProgrammeId", "EveningId", "Date", "Start", "End", "UkemiFrom", "UkemiTo", "HalfTime", "ClosureId", "RegisterMissing"
        FROM "Lessons" WHERE "Club" = @club
        """;

    /// <summary>Those from a day on, in no order.</summary>
    public static List<LessonRow> From(ReadSession reading, DateOnly from) => reading.Rows(
        $"""{Columns} AND "Date" >= @from""", Lesson, ("@from", from));

    /// <summary>Those of a programme from a day on and before another, by date and start.</summary>
    public static List<LessonRow> Between(ReadSession reading, Guid programme, DateOnly from, DateOnly before) => reading.Rows(
        $"""{Columns} AND "ProgrammeId" = @programme AND "Date" >= @from AND "Date" < @before ORDER BY "Date", "Start" """,
        Lesson, ("@programme", programme), ("@from", from), ("@before", before));

    private static LessonRow Lesson(StoredRow row) => new()
    {
        Club = row.Club,
        Id = row.Id(),
        ProgrammeId = row.Id(),
        EveningId = row.Id(),
        Date = row.Day(),
        Start = row.Time(),
        End = row.Time(),
        UkemiFrom = row.Time(),
        UkemiTo = row.Time(),
        HalfTime = row.Time(),
        ClosureId = row.IdIfAny(),
        RegisterMissing = row.Yes(),
    };
}
