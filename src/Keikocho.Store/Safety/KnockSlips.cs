using Keikocho.Store.Engines;

namespace Keikocho.Store.Safety;

/// <summary>A knock, and whether its slip has gone home.</summary>
/// <param name="Id">The knock.</param>
/// <param name="PersonId">The child.</param>
/// <param name="LessonId">The lesson.</param>
/// <param name="On">The day.</param>
/// <param name="Activity">What they were doing, as the core numbers it.</param>
/// <param name="NearMiss">Nobody was hurt: no slip is due.</param>
/// <param name="HasGoneHome">The slip was handed over, or the family was told by phone.</param>
public sealed record KnockSlip(Guid Id, Guid PersonId, Guid LessonId, DateOnly On, int Activity, bool NearMiss, bool HasGoneHome)
{
    /// <summary>Whether collection of this child is not closed yet.</summary>
    public bool IsOpen => !NearMiss && !HasGoneHome;
}

/// <summary>Reads knocks with their slips.</summary>
public static class KnockSlips
{
    /// <summary>The knocks of the days from one to another, by day and as they came.</summary>
    public static IReadOnlyList<KnockSlip> Between(ReadSession reading, DateOnly from, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Rows(
            """
            SELECT k."Id", k."PersonId", k."LessonId", k."On", k."Activity", k."NearMiss",
                EXISTS (SELECT 1 FROM "KnockLines" AS l WHERE l."Club" = k."Club" AND l."KnockId" = k."Id" AND (l."Kind" = @handed OR l."Kind" = @told))
            FROM "Knocks" AS k WHERE k."Club" = @club AND k."On" >= @from AND k."On" <= @to ORDER BY k."On", k."MadeAt", k."Id"
            """,
            row => new KnockSlip(row.Id(), row.Id(), row.Id(), row.Day(), row.Whole(), row.Yes(), row.Yes()),
            ("@from", from), ("@to", to), ("@handed", (int)KnockLine.HandedOver), ("@told", (int)KnockLine.ToldByPhone));
    }
}
