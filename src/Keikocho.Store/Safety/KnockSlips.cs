using Keikocho.Core.Safety;
using Keikocho.Store.Engines;

namespace Keikocho.Store.Safety;

/// <summary>A knock that counts, and whether its slip has gone home.</summary>
/// <param name="KnockId">The knock.</param>
/// <param name="PersonId">The child.</param>
/// <param name="LessonId">The lesson.</param>
/// <param name="On">The day.</param>
/// <param name="Activity">What was going on.</param>
/// <param name="NearMiss">Nobody was hurt: no slip is due.</param>
/// <param name="HasGoneHome">The slip was handed over, or the family was told by phone.</param>
public sealed record KnockSlip(Guid KnockId, Guid PersonId, Guid LessonId, DateOnly On, KnockActivity Activity, bool NearMiss, bool HasGoneHome)
{
    /// <summary>Whether the slip waits to be handed over: collection of this child, and the evening, are not closed over it.</summary>
    public bool IsOpen => !NearMiss && !HasGoneHome;
}

/// <summary>Reads knocks with their slips; a knock that was entered for the wrong child counts no more and has none.</summary>
public static class KnockSlips
{
    /// <summary>What a line says after which nothing waits to be handed over.</summary>
    internal static readonly KnockLine[] Settling = [KnockLine.HandedOver, KnockLine.ToldByPhone, KnockLine.WrongChild];

    /// <summary>The knocks of the days from one to another, by day and as they came.</summary>
    public static IReadOnlyList<KnockSlip> Between(ReadSession reading, DateOnly from, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return Where(reading, """k."On" >= @from AND k."On" <= @to""", ("@from", from), ("@to", to));
    }

    /// <summary>The slips of these lessons that wait to be handed over, as the knocks came; give all lessons of an evening.</summary>
    public static IReadOnlyList<KnockSlip> OpenOf(ReadSession reading, IReadOnlyCollection<Guid> lessons)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(lessons);
        if (lessons.Count == 0) return [];
        var ids = new IdList([.. lessons.Distinct()]);
        return [.. Where(reading, $"""k."LessonId" IN ({ids.Names})""", [.. ids.Values]).Where(s => s.IsOpen)];
    }

    /// <summary>In words: "A slip for Finn waits to be handed over."; empty where none waits.</summary>
    /// <param name="names">The children's names, as called.</param>
    public static string Words(IReadOnlyList<string> names)
    {
        ArgumentNullException.ThrowIfNull(names);
        return names.Count switch
        {
            0 => "",
            1 => $"A slip for {names[0]} waits to be handed over.",
            _ => $"Slips for {string.Join(", ", names.Take(names.Count - 1))} and {names[^1]} wait to be handed over.",
        };
    }

    private static List<KnockSlip> Where(ReadSession reading, string which, params ReadOnlySpan<(string Name, object? Value)> values) => reading.Rows(
        $"""
        SELECT k."Id", k."PersonId", k."LessonId", k."On", k."Activity", k."NearMiss",
            EXISTS (SELECT 1 FROM "KnockLines" AS l WHERE l."Club" = k."Club" AND l."KnockId" = k."Id" AND (l."Kind" = @handed OR l."Kind" = @told))
        FROM "Knocks" AS k WHERE k."Club" = @club AND {which} AND NOT EXISTS
            (SELECT 1 FROM "KnockLines" AS l WHERE l."Club" = k."Club" AND l."KnockId" = k."Id" AND l."Kind" = @wrong)
        ORDER BY k."On", k."MadeAt", k."Id"
        """,
        row => new KnockSlip(row.Id(), row.Id(), row.Id(), row.Day(), (KnockActivity)row.Whole(), row.Yes(), row.Yes()),
        [.. values, ("@handed", (int)KnockLine.HandedOver), ("@told", (int)KnockLine.ToldByPhone), ("@wrong", (int)KnockLine.WrongChild)]);
}
