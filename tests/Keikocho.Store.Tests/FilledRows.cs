using System.Buffers.Binary;
using System.Globalization;
using System.Reflection;
using System.Security.Cryptography;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Keikocho.Store.Tests;

/// <summary>Rows filled by reflection, so that a column that is added later is tested without anybody remembering it.</summary>
public static class FilledRows
{
    /// <summary>Texts that a table of text, a database or a spreadsheet may stumble over.</summary>
    private static readonly string[] Hard =
        ["Zoë O’Neil", "a,b", "say \"ippon\"", "two\nlines", "two\r\nlines", "=1+1", "+44 20", "-5", "@x", "'quoted", "\tTab", " blank ", "稽古帳", "🥋", "True", "1e5", "\u0301"];

    /// <summary>A full row and a sparse row of every table, parents before children; the trail's are a sound chain.</summary>
    public static IReadOnlyList<object> Of(KeikochoDb db, int club)
    {
        ArgumentNullException.ThrowIfNull(db);
        var number = 1000;
        var rows = new List<object>();
        foreach (var sparse in new[] { false, true })
        {
            var bySort = new Dictionary<IEntityType, object>();
            foreach (var type in ParentsFirst(db.Model))
            {
                // A club has one row of its own.
                if (sparse && type.ClrType.Name == "ClubRow") continue;
                var row = Fill(type, club, sparse, bySort, ref number);
                bySort.Add(type, row);
                rows.Add(row);
            }
        }

        byte[] before = [];
        long line = 0;
        foreach (var trail in rows.OfType<TrailRow>())
        {
            trail.Number = ++line;
            trail.Hash = before = TrailChain.HashOf(trail, before);
        }

        foreach (var attachment in rows.OfType<AttachmentRow>()) attachment.Hash = SHA256.HashData(Seal.Open(attachment.Content));
        return rows;
    }

    /// <summary>Everything that a row holds, property by property, to compare.</summary>
    public static string Said(object row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return string.Join('\n', Properties(row.GetType()).Select(p => $"{row.GetType().Name}.{p.Name}={Said(p.GetValue(row), p)}"));
    }

    public static IEnumerable<PropertyInfo> Properties(Type row) => row.GetProperties().Where(p => p.CanWrite);

    private static string Said(object? value, PropertyInfo property) => value switch
    {
        null => "(none)",
        byte[] bytes => Convert.ToHexString(bytes),
        DateTimeOffset instant => instant.UtcDateTime.ToString("O", CultureInfo.InvariantCulture),
        TimeOnly time => time.ToString("O", CultureInfo.InvariantCulture),
        IFormattable some => some.ToString(null, CultureInfo.InvariantCulture),
        _ when property.PropertyType.FullName!.Contains("Sealed", StringComparison.Ordinal) =>
            Convert.ToHexString((byte[])value.GetType().GetProperty("Bytes")!.GetValue(value)!),
        _ => value.ToString()!,
    };

    public static IReadOnlyList<IEntityType> ParentsFirst(IModel model)
    {
        var left = model.GetEntityTypes().OrderBy(t => t.Name, StringComparer.Ordinal).ToList();
        var ordered = new List<IEntityType>();
        while (left.Count > 0)
        {
            var next = left.First(t => t.GetForeignKeys().All(f => ordered.Contains(f.PrincipalEntityType)));
            ordered.Add(next);
            left.Remove(next);
        }

        return ordered;
    }

    private static object Fill(IEntityType type, int club, bool sparse, Dictionary<IEntityType, object> parents, ref int number)
    {
        var row = Activator.CreateInstance(type.ClrType)!;
        foreach (var property in type.GetProperties())
        {
            object? value = property.Name == nameof(IClubRow.Club) ? club
                : sparse && property.IsNullable ? null
                : ValueOf(Nullable.GetUnderlyingType(property.ClrType) ?? property.ClrType, ++number);
            // What only the club's lock closes has no other form.
            if (value is not null && property.PropertyInfo!.IsDefined(typeof(ClosedByLockAttribute), inherit: false)) value = new Sealed<string>([1, .. SHA512.HashData(BitConverter.GetBytes(number))]);
            property.PropertyInfo!.SetValue(row, value);
        }

        foreach (var link in type.GetForeignKeys())
        {
            foreach (var (own, theirs) in link.Properties.Zip(link.PrincipalKey.Properties))
            {
                if (own.Name != nameof(IClubRow.Club) && own.PropertyInfo!.GetValue(row) is not null)
                    own.PropertyInfo.SetValue(row, theirs.PropertyInfo!.GetValue(parents[link.PrincipalEntityType]));
            }
        }

        return row;
    }

    private static object ValueOf(Type type, int number)
    {
        if (type == typeof(Guid)) return IdOf(number);
        if (type == typeof(int)) return number;
        if (type == typeof(long)) return number + 5_000_000_000L;
        if (type == typeof(bool)) return true;
        if (type == typeof(string)) return TextOf(number);
        if (type == typeof(DateOnly)) return DayOf(number);
        if (type == typeof(TimeOnly)) return new TimeOnly(17, 0).AddMinutes(number % 200 + 1);
        if (type == typeof(DateTimeOffset)) return new DateTimeOffset(2026, 3, 3, 17, 30, 0, 1, TimeSpan.Zero).AddMilliseconds(number * 7919L);
        if (type == typeof(byte[])) return SHA256.HashData(BitConverter.GetBytes(number));
        if (type.IsEnum) return Enum.GetValues(type).GetValue(Enum.GetValues(type).Length - 1)!;
        if (type == typeof(Sealed<string>)) return Seal.Close(TextOf(number));
        if (type == typeof(Sealed<DateOnly>)) return Seal.Close(DayOf(number));
        if (type == typeof(Sealed<int>)) return Seal.Close(-number);
        if (type == typeof(Sealed<byte[]>)) return Seal.Close(SHA512.HashData(BitConverter.GetBytes(number)));
        throw new NotSupportedException($"Say how to fill a {type.Name}.");
    }

    private static string TextOf(int number) => Hard[number % Hard.Length] + (number % 3 == 0 ? "" : number.ToString(CultureInfo.InvariantCulture));

    private static DateOnly DayOf(int number) => new DateOnly(2020, 2, 29).AddDays(number);

    /// <summary>Version 7 in form, and such that the engines' own orders of bytes would differ.</summary>
    private static Guid IdOf(int number)
    {
        var bytes = SHA256.HashData(BitConverter.GetBytes(number))[..16];
        BinaryPrimitives.WriteInt32BigEndian(bytes.AsSpan(12), number);
        bytes[6] = (byte)(0x70 | bytes[6] & 0x0F);
        bytes[8] = (byte)(0x80 | bytes[8] & 0x3F);
        return new Guid(bytes, bigEndian: true);
    }
}
