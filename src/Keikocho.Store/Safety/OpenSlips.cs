using Keikocho.Core.Safety;
using Keikocho.Store.Engines;

namespace Keikocho.Store.Safety;

/// <summary>A slip that waits to be handed over.</summary>
/// <param name="KnockId">The knock.</param>
/// <param name="PersonId">The child.</param>
/// <param name="LessonId">The lesson.</param>
/// <param name="On">The day.</param>
/// <param name="Activity">What was going on.</param>
public sealed record OpenSlip(Guid KnockId, Guid PersonId, Guid LessonId, DateOnly On, KnockActivity Activity);

/// <summary>Which knocks of an evening have a slip that was neither handed over nor told by phone: the evening is not closed over them.</summary>
public static class OpenSlips
{
    /// <summary>Those of these lessons, oldest first; give all lessons of an evening. One statement.</summary>
    public static IReadOnlyList<OpenSlip> Of(ReadSession reading, IReadOnlyCollection<Guid> lessons)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(lessons);
        if (lessons.Count == 0) return [];
        var ids = new IdList([.. lessons.Distinct()]);
        return
        [
            .. reading.Rows(
                $"""
                SELECT k."Id", k."PersonId", k."LessonId", k."On", k."Activity", k."MadeAt" FROM "Knocks" AS k
                WHERE k."Club" = @club AND k."LessonId" IN ({ids.Names}) AND NOT k."NearMiss" AND NOT EXISTS
                    (SELECT 1 FROM "KnockLines" AS l WHERE l."Club" = k."Club" AND l."KnockId" = k."Id" AND l."Kind" IN (10, 11, 30))
                """,
                row => (Slip: new OpenSlip(row.Id(), row.Id(), row.Id(), row.Day(), (KnockActivity)row.Whole()), MadeAt: row.Instant()),
                [.. ids.Values]).OrderBy(s => s.MadeAt).ThenBy(s => s.Slip.KnockId).Select(s => s.Slip),
        ];
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
}
