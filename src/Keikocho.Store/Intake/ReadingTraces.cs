using System.Text.Json;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Intake;

/// <summary>One value that a reading changed.</summary>
/// <param name="Field">Name of the column.</param>
/// <param name="Was">As it was; null where nothing was.</param>
/// <param name="Now">As the reading left it; null where it left nothing.</param>
internal sealed record ChangedValue(string Field, string? Was, string? Now);

/// <summary>Gathers what a reading makes and changes while it is saved.</summary>
internal sealed class ReadingTraces(WriteSession session, Guid reading)
{
    /// <summary>Stands as the only field where a whole row was taken away; its other fields follow.</summary>
    public const string WholeRow = "row";

    private readonly List<ReadingTraceRow> rows = [];

    public void Made(string table, Guid id) => Add(table, id, null);

    public void Changed(string table, Guid id, params IEnumerable<ChangedValue> values)
    {
        var changed = values.Where(v => v.Was != v.Now).ToDictionary(v => v.Field, v => new[] { v.Was, v.Now });
        if (changed.Count > 0) Add(table, id, JsonSerializer.Serialize(changed));
    }

    public void Write(BulkWriter writer) => writer.Write(rows);

    public static IReadOnlyList<ChangedValue> Values(ReadingTraceRow row)
        => row.Before is not { } before ? []
            : [.. JsonSerializer.Deserialize<Dictionary<string, string?[]>>(Seal.Open(before))!.Select(pair => new ChangedValue(pair.Key, pair.Value[0], pair.Value[1]))];

    private void Add(string table, Guid id, string? before) => rows.Add(new ReadingTraceRow
    {
        Club = session.Club,
        Id = session.NewId(),
        ReadingId = reading,
        Table = table,
        RowId = id,
        Before = before is null ? null : Seal.Close(before),
    });
}
