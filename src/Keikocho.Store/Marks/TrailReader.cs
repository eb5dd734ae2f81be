using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Marks;

/// <summary>Reads who marked what and where, for the head instructor's eyes.</summary>
public static class TrailReader
{
    /// <summary>Everyone who took the register of a lesson, by id; marks from a file name nobody, and what was seen is no register. One query.</summary>
    public static IReadOnlyList<Guid> MarkedBy(KeikochoDb db, Guid lesson)
    {
        ArgumentNullException.ThrowIfNull(db);
        return [.. db.Marks.Where(m => m.LessonId == lesson && m.ById != null && m.ItemId == null).Select(m => m.ById!.Value).Distinct().AsEnumerable().Order()];
    }

    /// <summary>What the devices are; one that nobody has met is missing. One query.</summary>
    public static Dictionary<Guid, DeviceKind> KindsOf(KeikochoDb db, IReadOnlyCollection<Guid> devices)
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.Devices.Where(d => devices.Contains(d.Id)).Select(d => new { d.Id, d.Kind }).ToDictionary(d => d.Id, d => d.Kind);
    }
}
