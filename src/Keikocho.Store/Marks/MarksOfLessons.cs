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
}
