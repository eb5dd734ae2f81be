using Keikocho.Core.Evening;
using Keikocho.Store.Engines;

namespace Keikocho.Store.Marks;

/// <summary>Reads the marks of an evening as they were made, of every device.</summary>
public static class MarksOfLessons
{
    /// <summary>All marks of these lessons, in no order.</summary>
    public static IReadOnlyList<MarkRow> Of(ReadSession reading, IReadOnlyCollection<Guid> lessons)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(lessons);
        if (lessons.Count == 0) return [];
        var ids = new IdList(lessons);
        return reading.Rows(
            $"""
            SELECT "Id", "DeviceId", "Sequence", "LessonId", "PersonId", "ById", "MadeAt", "ReceivedAt", "Kind", "At", "ItemId", "Code", "Replaces"
            FROM "Marks" WHERE "Club" = @club AND "LessonId" IN ({ids.Names})
            """,
            row => new MarkRow
            {
                Club = row.Club,
                Id = row.Id(),
                DeviceId = row.Id(),
                Sequence = row.Whole(),
                LessonId = row.Id(),
                PersonId = row.Id(),
                ById = row.IdIfAny(),
                MadeAt = row.Instant(),
                ReceivedAt = row.Instant(),
                Kind = (MarkKind)row.Whole(),
                At = row.TimeIfAny(),
                ItemId = row.IdIfAny(),
                Code = row.Whole(),
                Replaces = row.IdIfAny(),
            },
            [.. ids.Values]);
    }

    /// <summary>Who of these people made marks of somebody else at which lessons between two days, inclusive.</summary>
    public static HashSet<(Guid PersonId, Guid LessonId)> HandsAt(ReadSession reading, IReadOnlyCollection<Guid> people, DateOnly from, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(people);
        if (people.Count == 0) return [];
        var ids = new IdList(people);
        return [.. reading.Rows(
            $"""
            SELECT DISTINCT m."ById", m."LessonId" FROM "Lessons" AS l JOIN "Marks" AS m ON m."Club" = l."Club" AND m."LessonId" = l."Id"
            WHERE l."Club" = @club AND l."Date" >= @from AND l."Date" <= @to AND m."ById" IN ({ids.Names}) AND m."PersonId" <> m."ById"
            """,
            row => (row.Id(), row.Id()),
            [("@from", from), ("@to", to), .. ids.Values])];
    }
}
