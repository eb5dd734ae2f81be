using System.Data.Common;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Engines;

/// <summary>
/// The row that a reader stands on. Each call takes the next column, so that a statement and what is made of its rows name the columns
/// in the same order; each base type is read as <see cref="Engine.Stored"/> writes it.
/// </summary>
internal sealed class StoredRow(Engine engine, DbDataReader reader)
{
    private int column;

    /// <summary>Number of the club.</summary>
    public int Club => engine.Club;

    /// <summary>Steps to the next row; false after the last.</summary>
    public bool Next()
    {
        column = 0;
        return reader.Read();
    }

    public Guid Id() => engine.ReadId(reader, column++);
    public Guid? IdIfAny() => IsNull() ? null : Id();
    public string Text() => reader.GetString(column++);
    public string? TextIfAny() => IsNull() ? null : Text();
    public int Whole() => reader.GetInt32(column++);
    public int? WholeIfAny() => IsNull() ? null : Whole();
    public long Long() => reader.GetInt64(column++);
    public bool Yes() => reader.GetBoolean(column++);
    public DateOnly Day() => reader.GetFieldValue<DateOnly>(column++);
    public DateOnly? DayIfAny() => IsNull() ? null : Day();
    public DateTimeOffset Instant() => DateTimeOffset.FromUnixTimeMilliseconds(Long());
    public DateTimeOffset? InstantIfAny() => IsNull() ? null : Instant();
    public byte[] Bytes() => reader.GetFieldValue<byte[]>(column++);
    public Sealed<T>? SealedIfAny<T>() => IsNull() ? null : new Sealed<T>(Bytes());

    public TimeOnly Time()
    {
        var minutes = reader.GetInt16(column++);
        return new TimeOnly(minutes / 60, minutes % 60);
    }

    public TimeOnly? TimeIfAny() => IsNull() ? null : Time();

    /// <summary>Whether the next column is null; it is passed by then.</summary>
    private bool IsNull()
    {
        if (!reader.IsDBNull(column)) return false;
        column++;
        return true;
    }
}
