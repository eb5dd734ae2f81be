using System.Reflection;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Keikocho.Store.Tests.Engines;

namespace Keikocho.Store.Tests.Keeping;

/// <summary>Compares two clubs row by row, all tables, all columns; the club's number in its database is not part of it.</summary>
internal static class AllRows
{
    public static void AssertEqual(Engine wanted, Engine found, params Type[] but)
    {
        using var first = wanted.OpenDb();
        using var second = found.OpenDb();
        foreach (var type in first.Model.GetEntityTypes().Select(t => t.ClrType).Except(but))
            Assert.Equal(Said(first, type), Said(second, type));
    }

    private static List<string> Said(KeikochoDb db, Type type)
    {
        var club = type.GetProperty(nameof(IClubRow.Club), BindingFlags.Public | BindingFlags.Instance)!;
        return
        [
            .. RowsSpecification.AllOf(db, type).Select(row =>
            {
                club.SetValue(row, 1);
                return FilledRows.Said(row);
            }).Order(StringComparer.Ordinal),
        ];
    }
}
