using System.Data.Common;
using Keikocho.Core.Evening;
using Keikocho.Store.Marks;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace Keikocho.Store.Keeping.Checking;

/// <summary>What a check needs of one mark, without an object of its own: there are millions.</summary>
internal struct MarkLine
{
    public Guid LessonId, PersonId, Id, DeviceId;
    public Guid? Replaces;
    public int Sequence, Code;
    public short At;
    public MarkKind Kind;
    public bool HasNoItem;

    /// <summary>Where no time is noted.</summary>
    public const short NoTime = -1;

    public readonly MarkRow ToRow(int club) => new()
    {
        Club = club,
        Id = Id,
        DeviceId = DeviceId,
        Sequence = Sequence,
        LessonId = LessonId,
        PersonId = PersonId,
        Kind = Kind,
        At = At == NoTime ? null : new TimeOnly(At / 60, At % 60),
        Code = Code,
        Replaces = Replaces,
    };
}

/// <summary>The state of one person and lesson as it is stored or as it should be.</summary>
internal record struct StateLine(
    Guid ProgrammeId, DateOnly Date, AttendanceWord Word, short Arrived, short LeftAt, bool Late, bool Counts, bool Ukemi, bool LeftEarly, AttendanceClash Clash)
{
    public static StateLine Of(AttendanceRow row) => new(
        row.ProgrammeId, row.Date, row.Word, Minutes(row.Arrived), Minutes(row.LeftAt), row.Late, row.Counts, row.Ukemi, row.LeftEarly, row.Clash);

    private static short Minutes(TimeOnly? time) => time is { } some ? (short)(some.Hour * 60 + some.Minute) : MarkLine.NoTime;
}

/// <summary>Rows in the order of lesson and person, read as fast as the engine gives them.</summary>
internal abstract class LineReading : IDisposable
{
    /// <summary>The way of this view's engine.</summary>
    public static LineReading Of(ReadSnapshot view, int lane, string question, int club) => view.IsSqlite
        ? new RawSqlite((SqliteConnection)view.Connection(lane), question, club)
        : new ThroughReader(view.Ask(question, lane), club);

    /// <summary>Goes to the next row; false at the end.</summary>
    public abstract bool Next();
    public abstract Guid Id(int at);
    public abstract int Whole(int at);
    public abstract bool IsNull(int at);
    public abstract DateOnly Day(int at);
    public abstract string Text(int at);
    public abstract void Dispose();

    public bool Flag(int at) => Whole(at) != 0;
    public short Time(int at) => IsNull(at) ? MarkLine.NoTime : (short)Whole(at);

    /// <summary>SQLite's own calls: the usual reader makes an array for every id, and there are eight million of them.</summary>
    private sealed class RawSqlite : LineReading
    {
        private readonly SqliteConnection connection;
        private readonly sqlite3_stmt statement;

        public RawSqlite(SqliteConnection connection, string question, int club)
        {
            this.connection = connection;
            SqliteException.ThrowExceptionForRC(raw.sqlite3_prepare_v2(connection.Handle, question, out statement), connection.Handle);
            SqliteException.ThrowExceptionForRC(raw.sqlite3_bind_int(statement, 1, club), connection.Handle);
        }

        public override bool Next()
        {
            var code = raw.sqlite3_step(statement);
            if (code == raw.SQLITE_ROW) return true;
            if (code != raw.SQLITE_DONE) SqliteException.ThrowExceptionForRC(code, connection.Handle);
            return false;
        }

        public override Guid Id(int at)
        {
            var bytes = raw.sqlite3_column_blob(statement, at);
            return bytes.Length == 16 ? new Guid(bytes, bigEndian: true) : throw new InvalidDataException("an id that has not 16 bytes");
        }

        public override int Whole(int at) => raw.sqlite3_column_int(statement, at);
        public override bool IsNull(int at) => raw.sqlite3_column_type(statement, at) == raw.SQLITE_NULL;

        public override DateOnly Day(int at)
        {
            var text = raw.sqlite3_column_text(statement, at).utf8_to_string();
            return DateOnly.TryParseExact(text, "yyyy-MM-dd", out var day) ? day : throw new InvalidDataException("a date that is none");
        }

        public override string Text(int at) => raw.sqlite3_column_text(statement, at).utf8_to_string();

        public override void Dispose() => statement.Dispose();
    }

    private sealed class ThroughReader : LineReading
    {
        private readonly DbCommand command;
        private readonly DbDataReader reader;

        public ThroughReader(DbCommand command, int club)
        {
            this.command = command;
            var parameter = command.CreateParameter();
            parameter.ParameterName = "club";
            parameter.Value = club;
            command.Parameters.Add(parameter);
            reader = command.ExecuteReader();
        }

        public override bool Next() => reader.Read();
        public override Guid Id(int at) => reader.GetGuid(at);
        public override int Whole(int at) => reader.GetValue(at) switch { bool flag => flag ? 1 : 0, short small => small, var other => (int)other };
        public override bool IsNull(int at) => reader.IsDBNull(at);
        public override DateOnly Day(int at) => reader.GetFieldValue<DateOnly>(at);
        public override string Text(int at) => reader.GetString(at);

        public override void Dispose()
        {
            reader.Dispose();
            command.Dispose();
        }
    }
}
