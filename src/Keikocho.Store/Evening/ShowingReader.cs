using Keikocho.Store.Engines;

namespace Keikocho.Store.Evening;

/// <summary>A showing that stands.</summary>
/// <param name="LessonId">The lesson.</param>
/// <param name="On">Its day.</param>
/// <param name="Start">Its hour; two lessons of one day are two.</param>
/// <param name="End">The end, as the core numbers it.</param>
/// <param name="ItemId">The item.</param>
/// <param name="Slot">The slot.</param>
public sealed record HeldShowing(Guid LessonId, DateOnly On, TimeOnly Start, int End, Guid ItemId, int Slot);

/// <summary>Reads what the ends of a programme worked on: one statement.</summary>
public static class ShowingReader
{
    /// <summary>Every showing that stands of a programme's lessons within some days, oldest first.</summary>
    public static IReadOnlyList<HeldShowing> Of(ReadSession reading, Guid programme, DateOnly from, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Rows(
            """
            SELECT s."LessonId", l."Date", l."Start", s."End", s."ItemId", s."Slot" FROM "Showings" AS s
            JOIN "Lessons" AS l ON l."Club" = s."Club" AND l."Id" = s."LessonId"
            WHERE s."Club" = @club AND s."TakenBackAt" IS NULL AND l."ProgrammeId" = @programme AND l."Date" >= @from AND l."Date" <= @to
            ORDER BY l."Date", l."Start", s."LessonId", s."End", s."Slot"
            """,
            row => new HeldShowing(row.Id(), row.Day(), row.Time(), row.Whole(), row.Id(), row.Whole()),
            ("@programme", programme), ("@from", from), ("@to", to));
    }
}
