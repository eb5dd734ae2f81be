using System.Data.Common;
using System.Runtime.InteropServices;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace Keikocho.Store.Keeping.Checking;

/// <summary>Rows read as fast as the engine gives them, without an object for any of them.</summary>
internal abstract class LineReading : IDisposable
{
    /// <summary>The way of this view's engine.</summary>
    public static LineReading Of(ReadSnapshot view, int lane, string question, int club) => view.IsSqlite
        ? new BelowTheReader(view.SqliteHandle(lane), question, club)
        : new ThroughReader(view.Ask(question, lane), club);

    /// <summary>Goes to the next row; false at the end.</summary>
    public abstract bool Next();
    public abstract Guid Id(int at);
    public abstract int Whole(int at);
    public abstract long Long(int at);
    public abstract bool IsNull(int at);
    public abstract DateOnly Day(int at);
    public abstract string Text(int at);
    public abstract byte[] Bytes(int at);
    public abstract void Dispose();

    public bool Flag(int at) => Whole(at) != 0;
    public Guid? IdIfAny(int at) => IsNull(at) ? null : Id(at);

    /// <summary>Minutes after midnight, or <see cref="MarkLine.NoTime"/>.</summary>
    public short Time(int at) => IsNull(at) ? MarkLine.NoTime : (short)Whole(at);

    /// <summary>
    /// SQLite's own calls, by the statement's address: the usual reader makes an array for every id, and the wrapped calls count the
    /// statement's users up and down, which took as long as the reading.
    /// </summary>
    private sealed class BelowTheReader : LineReading
    {
        private readonly sqlite3 connection;
        private readonly sqlite3_stmt statement;
        private readonly nint address;
        private (long, short) lastWritten;
        private DateOnly lastDay;

        public BelowTheReader(sqlite3 connection, string question, int club)
        {
            this.connection = connection;
            SqliteException.ThrowExceptionForRC(raw.sqlite3_prepare_v2(connection, question, out statement), connection);
            SqliteException.ThrowExceptionForRC(raw.sqlite3_bind_int(statement, 1, club), connection);
            address = statement.DangerousGetHandle();
        }

        public override bool Next()
        {
            var code = raw.sqlite3_step(statement);
            if (code == raw.SQLITE_ROW) return true;
            if (code != raw.SQLITE_DONE) SqliteException.ThrowExceptionForRC(code, connection);
            return false;
        }

        public override Guid Id(int at)
        {
            var id = SqliteColumns.Blob(address, at);
            if (SqliteColumns.Length(address, at) != 16) throw new InvalidDataException("an id that has not 16 bytes");
            Span<long> halves = [Marshal.ReadInt64(id), Marshal.ReadInt64(id, 8)];
            return new Guid(MemoryMarshal.AsBytes(halves), bigEndian: true);
        }

        public override int Whole(int at) => SqliteColumns.Whole(address, at);
        public override long Long(int at) => SqliteColumns.Long(address, at);
        public override bool IsNull(int at) => SqliteColumns.Kind(address, at) == raw.SQLITE_NULL;

        public override DateOnly Day(int at)
        {
            // Ten characters, "2026-03-01", eight and two of them; the same day comes many times in a row.
            var text = SqliteColumns.Text(address, at);
            if (SqliteColumns.Length(address, at) != 10) throw new InvalidDataException("a date that is none");
            (long, short) written = (Marshal.ReadInt64(text), Marshal.ReadInt16(text, 8));
            if (written == lastWritten) return lastDay;
            var day = DateOnly.TryParseExact(Marshal.PtrToStringUTF8(text, 10), "yyyy-MM-dd", out var read)
                ? read
                : throw new InvalidDataException("a date that is none");
            (lastWritten, lastDay) = (written, day);
            return day;
        }

        public override string Text(int at) => Marshal.PtrToStringUTF8(SqliteColumns.Text(address, at)) ?? "";

        public override byte[] Bytes(int at)
        {
            // First the bytes, then how many: the first may change what is counted.
            var from = SqliteColumns.Blob(address, at);
            var bytes = new byte[SqliteColumns.Length(address, at)];
            if (bytes.Length > 0) Marshal.Copy(from, bytes, 0, bytes.Length);
            return bytes;
        }

        public override void Dispose() => statement.Dispose();
    }

    private sealed class ThroughReader : LineReading
    {
        private readonly DbCommand command;
        private readonly DbDataReader reader;
        private readonly Type[] types;

        public ThroughReader(DbCommand command, int club)
        {
            this.command = command;
            var parameter = command.CreateParameter();
            parameter.ParameterName = "club";
            parameter.Value = club;
            command.Parameters.Add(parameter);
            reader = command.ExecuteReader();
            types = [.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetFieldType)];
        }

        public override bool Next() => reader.Read();
        public override Guid Id(int at) => reader.GetGuid(at);

        public override int Whole(int at) =>
            types[at] == typeof(bool) ? reader.GetBoolean(at) ? 1 : 0 : types[at] == typeof(short) ? reader.GetInt16(at) : reader.GetInt32(at);

        public override long Long(int at) => reader.GetInt64(at);
        public override bool IsNull(int at) => reader.IsDBNull(at);
        public override DateOnly Day(int at) => reader.GetFieldValue<DateOnly>(at);
        public override string Text(int at) => reader.GetString(at);
        public override byte[] Bytes(int at) => reader.GetFieldValue<byte[]>(at);

        public override void Dispose()
        {
            reader.Dispose();
            command.Dispose();
        }
    }
}
