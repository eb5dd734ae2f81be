using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Keikocho.Store.Keeping.OpenArchive;

/// <summary>A column as the archive writes it.</summary>
/// <param name="Name">Its name in the header row and in the database.</param>
/// <param name="Kind">How its values are written.</param>
/// <param name="Type">Type of the row's property, without "may be missing".</param>
/// <param name="MayBeMissing">Whether an empty cell means that there is no value.</param>
internal sealed record ArchiveColumn(string Name, CellKind Kind, Type Type, bool MayBeMissing)
{
    /// <summary>Only text can be taken for a formula.</summary>
    public bool IsText => Kind is CellKind.Text or CellKind.SealedText;
}

/// <summary>A table of the model as the archive writes it: all columns but the club's number, rows in the order of the key.</summary>
/// <param name="Name">Name of the table, of its file and in the manifest.</param>
/// <param name="Columns">Key first, then as the row declares them.</param>
/// <param name="KeyColumns">Names of the key's columns without the club's number.</param>
/// <param name="Needs">Tables that must be read in before this one.</param>
internal sealed record ArchiveTable(string Name, IReadOnlyList<ArchiveColumn> Columns, IReadOnlyList<string> KeyColumns, IReadOnlySet<string> Needs)
{
    /// <summary>Name of its file in the archive.</summary>
    public string FileName => $"tables/{Name}.csv";

    /// <summary>Every table of the model in the order of its name: a table that is added to the model is in the archive at once.</summary>
    public static IReadOnlyList<ArchiveTable> All(KeikochoDb db) =>
        [.. db.Model.GetEntityTypes().Select(Of).OrderBy(t => t.Name, StringComparer.Ordinal)];

    /// <summary>The tables, each after those that it needs.</summary>
    public static IReadOnlyList<ArchiveTable> InReadingOrder(IReadOnlyList<ArchiveTable> tables)
    {
        var ordered = new List<ArchiveTable>(tables.Count);
        var done = new HashSet<string>(StringComparer.Ordinal);
        while (ordered.Count < tables.Count)
        {
            var next = tables.FirstOrDefault(t => !done.Contains(t.Name) && t.Needs.All(done.Contains))
                ?? throw new InvalidOperationException("The model's links go round in a circle.");
            ordered.Add(next);
            done.Add(next.Name);
        }

        return ordered;
    }

    /// <summary>The question for all rows of one club, in the order of the key: the same on both engines.</summary>
    public string Question(IEnumerable<ArchiveColumn> columns, bool isSqlite)
    {
        var order = KeyColumns.Select(k => Columns.First(c => c.Name == k)).Select(c =>
            // PostgreSQL's usual order of text depends on the machine's language; SQLite's never does.
            c.Kind == CellKind.Text && !isSqlite ? $"\"{c.Name}\" COLLATE \"C\"" : $"\"{c.Name}\"");
        var ordered = string.Join(", ", order);
        return $"SELECT {string.Join(", ", columns.Select(c => $"\"{c.Name}\""))} FROM \"{Name}\" WHERE \"Club\" = @club"
            + (ordered.Length == 0 ? "" : $" ORDER BY {ordered}");
    }

    private static ArchiveTable Of(IEntityType type)
    {
        var key = type.FindPrimaryKey()!.Properties.Where(p => p.Name != nameof(IClubRow.Club)).ToList();
        var rest = type.GetProperties().Where(p => p.Name != nameof(IClubRow.Club) && !key.Contains(p))
            .OrderBy(p => p.PropertyInfo!.MetadataToken);
        return new ArchiveTable(
            type.GetTableName()!,
            [.. key.Concat(rest).Select(ColumnOf)],
            [.. key.Select(p => p.GetColumnName())],
            type.GetForeignKeys().Select(f => f.PrincipalEntityType.GetTableName()!).Where(n => n != type.GetTableName()).ToHashSet(StringComparer.Ordinal));
    }

    private static ArchiveColumn ColumnOf(IProperty property)
    {
        var type = Nullable.GetUnderlyingType(property.ClrType) ?? property.ClrType;
        var kind = type switch
        {
            _ when type == typeof(Guid) => CellKind.Id,
            _ when type == typeof(int) || type == typeof(long) || type == typeof(short) || type.IsEnum => CellKind.Whole,
            _ when type == typeof(bool) => CellKind.Flag,
            _ when type == typeof(DateOnly) => CellKind.Date,
            _ when type == typeof(TimeOnly) => CellKind.Time,
            _ when type == typeof(DateTimeOffset) => CellKind.Instant,
            _ when type == typeof(string) => CellKind.Text,
            _ when type == typeof(byte[]) => CellKind.Bytes,
            _ when type == typeof(Sealed<string>) && property.PropertyInfo!.IsDefined(typeof(ClosedByLockAttribute), inherit: false) => CellKind.LockedText,
            _ when type == typeof(Sealed<string>) => CellKind.SealedText,
            _ when type == typeof(Sealed<DateOnly>) => CellKind.SealedDate,
            _ when type == typeof(Sealed<int>) => CellKind.SealedWhole,
            _ when type == typeof(Sealed<byte[]>) => CellKind.SealedFile,
            _ => throw new NotSupportedException($"The archive does not know how to write {property.DeclaringType.ShortName()}.{property.Name} ({type.Name})."),
        };
        return new ArchiveColumn(property.GetColumnName(), kind, type, property.IsNullable);
    }
}
