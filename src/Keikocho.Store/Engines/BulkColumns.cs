using System.Linq.Expressions;
using Keikocho.Store.Kernel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Keikocho.Store.Engines;

/// <summary>
/// How rows of one kind lie in their table, read from the model, so that writing in bulk and writing through the context store the same.
/// </summary>
internal sealed class BulkColumns<TRow>
{
    private BulkColumns(string table, IReadOnlyList<Column> columns)
    {
        Table = table;
        Columns = columns;
    }

    /// <summary>One column: its name, its type in the engine's words, and its stored value; null is null.</summary>
    public sealed record Column(string Name, string StoreType, Func<TRow, object?> ValueOf);

    /// <summary>The table's name.</summary>
    public string Table { get; }

    /// <summary>Its columns.</summary>
    public IReadOnlyList<Column> Columns { get; }

    /// <summary>Names of all columns, quoted, as both engines take them.</summary>
    public string QuotedNames => string.Join(", ", Columns.Select(c => $"\"{c.Name}\""));

    /// <summary>Reads them from the model. The club's number is the context's, whatever the rows say.</summary>
    public static BulkColumns<TRow> From(KeikochoDb db)
    {
        var entity = db.Model.FindEntityType(typeof(TRow))
            ?? throw new ArgumentException($"{typeof(TRow).Name} is not a row of the model.", nameof(db));
        object club = db.Club;
        var columns = entity.GetProperties()
            .Select(p => new Column(p.GetColumnName(), p.GetColumnType(), p.Name == nameof(IClubRow.Club) ? _ => club : Getter(p)))
            .ToList();
        return new BulkColumns<TRow>(entity.GetTableName()!, columns);
    }

    private static Func<TRow, object?> Getter(IProperty property)
    {
        var row = Expression.Parameter(typeof(TRow), "row");
        Expression value = Expression.Property(row, property.PropertyInfo!);
        var body = property.GetRelationalTypeMapping().Converter?.ConvertToProviderExpression is not { } convert
            ? Expression.Convert(value, typeof(object))
            : Nullable.GetUnderlyingType(value.Type) is { } inner && convert.Parameters[0].Type == inner
                ? Expression.Condition(
                    Expression.Property(value, "HasValue"),
                    Expression.Convert(Expression.Invoke(convert, Expression.Property(value, "Value")), typeof(object)),
                    Expression.Constant(null))
                : (Expression)Expression.Convert(Expression.Invoke(convert, value), typeof(object));
        return Expression.Lambda<Func<TRow, object?>>(body, row).Compile();
    }
}
