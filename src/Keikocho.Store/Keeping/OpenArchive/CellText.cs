using System.Data.Common;
using System.Globalization;
using System.Security.Cryptography;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Keeping.OpenArchive;

/// <summary>The text of one cell: out of a database's reader, and back into what the database takes.</summary>
internal static class CellText
{
    /// <summary>Before the hexadecimal bytes of a value that the club's lock closes.</summary>
    public const string SealedStart = "sealed:";

    private const string InstantForm = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";

    /// <summary>The cell's text; null where there is no value.</summary>
    /// <exception cref="InvalidDataException">A sealed value does not open.</exception>
    public static string? Read(DbDataReader reader, int at, CellKind kind, bool isSqlite)
    {
        if (reader.IsDBNull(at)) return null;
        return kind switch
        {
            CellKind.Id => (isSqlite ? new Guid(reader.GetFieldValue<byte[]>(at), bigEndian: true) : reader.GetGuid(at)).ToString("D"),
            CellKind.Whole => Convert.ToInt64(reader.GetValue(at), CultureInfo.InvariantCulture).ToString(CultureInfo.InvariantCulture),
            CellKind.Flag => reader.GetBoolean(at) ? "true" : "false",
            CellKind.Date => isSqlite ? reader.GetString(at) : reader.GetFieldValue<DateOnly>(at).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            CellKind.Time => TimeOnly.FromTimeSpan(TimeSpan.FromMinutes(reader.GetInt16(at))).ToString("HH:mm", CultureInfo.InvariantCulture),
            CellKind.Instant => DateTimeOffset.FromUnixTimeMilliseconds(reader.GetInt64(at)).ToString(InstantForm, CultureInfo.InvariantCulture),
            CellKind.Text => reader.GetString(at),
            CellKind.Bytes => Convert.ToHexStringLower(reader.GetFieldValue<byte[]>(at)),
            CellKind.SealedText => Seal.Open(new Sealed<string>(reader.GetFieldValue<byte[]>(at))),
            CellKind.LockedText => LockedOf(reader.GetFieldValue<byte[]>(at)),
            CellKind.SealedDate => Seal.Open(new Sealed<DateOnly>(reader.GetFieldValue<byte[]>(at))).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            CellKind.SealedWhole => WholeOf(reader.GetFieldValue<byte[]>(at)),
            CellKind.SealedFile => Convert.ToHexStringLower(SHA256.HashData(OpenFile(reader, at))),
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };
    }

    /// <summary>The opened bytes of a cell that is a file of its own.</summary>
    public static byte[] OpenFile(DbDataReader reader, int at) => Seal.Open(new Sealed<byte[]>(reader.GetFieldValue<byte[]>(at)));

    /// <summary>What the database takes for a cell's text; <paramref name="file"/> gives the bytes of a file by its hash.</summary>
    /// <exception cref="FormatException">The text is not a value of this column; the message says what would be.</exception>
    public static object Parse(string text, ArchiveColumn column, bool isSqlite, Func<string, byte[]> file)
    {
        switch (column.Kind)
        {
            case CellKind.Id:
                if (!Guid.TryParseExact(text, "D", out var id) || text != id.ToString("D")) throw new FormatException("is not an id in lower case");
                return isSqlite ? id.ToByteArray(bigEndian: true) : id;
            case CellKind.Whole:
                return column.Type == typeof(long) ? ParseWhole(text, column) : (object)(int)ParseWhole(text, column);
            case CellKind.Flag:
                return text switch
                {
                    "true" => true,
                    "false" => false,
                    _ => throw new FormatException("is neither true nor false"),
                };
            case CellKind.Date:
                return isSqlite ? ParseDate(text).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : ParseDate(text);
            case CellKind.Time:
                if (!TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
                    throw new FormatException("is not a time such as 17:30");
                return (short)(time.Hour * 60 + time.Minute);
            case CellKind.Instant:
                if (!DateTimeOffset.TryParseExact(text, InstantForm, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var instant))
                    throw new FormatException("is not an instant such as 2026-03-03T17:30:00.000Z");
                return instant.ToUnixTimeMilliseconds();
            case CellKind.Text:
                return Plain(text);
            case CellKind.Bytes:
                return ParseHex(text);
            case CellKind.SealedText:
                return Seal.Close(Plain(text)).Bytes;
            case CellKind.LockedText:
                return text.StartsWith(SealedStart, StringComparison.Ordinal) ? ParseSealed(text) : throw new FormatException("is not a value that the club's lock closed");
            case CellKind.SealedDate:
                return Seal.Close(ParseDate(text)).Bytes;
            case CellKind.SealedWhole:
                return text.StartsWith(SealedStart, StringComparison.Ordinal) ? ParseSealed(text)
                    : int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? Seal.Close(number).Bytes
                    : throw new FormatException("is not a whole number");
            case CellKind.SealedFile:
                return Seal.Close(file(text)).Bytes;
            default:
                throw new ArgumentOutOfRangeException(nameof(column));
        }
    }

    // What the club's lock closes stays closed, and opens again only with it.
    private static string WholeOf(byte[] bytes) => Seal.IsByLock(bytes)
        ? SealedStart + Convert.ToHexStringLower(bytes)
        : Seal.Open(new Sealed<int>(bytes)).ToString(CultureInfo.InvariantCulture);

    private static string LockedOf(byte[] bytes) => Seal.IsByLock(bytes)
        ? SealedStart + Convert.ToHexStringLower(bytes)
        : throw new InvalidDataException("It is not closed by the club's lock, and it has no other form.");

    private static byte[] ParseSealed(string text) => ParseHex(text[SealedStart.Length..]) is var bytes && Seal.IsByLock(bytes)
        ? bytes
        : throw new FormatException("is not a value that the club's lock closed");

    private static long ParseWhole(string text, ArchiveColumn column)
    {
        if (!long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number))
            throw new FormatException("is not a whole number");
        if (column.Type == typeof(long)) return number;
        if (number is < int.MinValue or > int.MaxValue) throw new FormatException("is too large a number");
        if (column.Type.IsEnum && !Enum.IsDefined(column.Type, (int)number))
            throw new FormatException("is not one of the codes in codes.csv that this version knows");
        return number;
    }

    private static DateOnly ParseDate(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? day
            : throw new FormatException("is not a date such as 2026-03-03");

    private static byte[] ParseHex(string text)
    {
        try
        {
            return Convert.FromHexString(text);
        }
        catch (FormatException)
        {
            throw new FormatException("is not hexadecimal");
        }
    }

    /// <summary>PostgreSQL cannot hold the character 0; neither does any text that a person typed.</summary>
    private static string Plain(string text) => text.Contains('\0', StringComparison.Ordinal) ? throw new FormatException("holds a character 0") : text;
}
