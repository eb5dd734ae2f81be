using System.Data.Common;
using System.Globalization;
using Microsoft.Data.Sqlite;
using Npgsql;
using NpgsqlTypes;

namespace Keikocho.Store.Keeping.OpenArchive;

/// <summary>Puts rows of one table into the database inside a transaction that somebody else owns.</summary>
internal abstract class RowInserting : IDisposable
{
    /// <summary>The way of this connection's engine.</summary>
    public static RowInserting Into(ArchiveTable table, DbConnection connection, DbTransaction transaction, int club) => connection is SqliteConnection sqlite
        ? new SqliteInserting(table, sqlite, (SqliteTransaction)transaction, club)
        : new PostgresInserting(table, (NpgsqlConnection)connection, (NpgsqlTransaction)transaction, club);

    /// <summary>Adds one row; the values are in the order of the table's columns, null where missing.</summary>
    public abstract void Add(object?[] values);

    /// <summary>Sends what still waits.</summary>
    public abstract void Finish();

    /// <inheritdoc/>
    public abstract void Dispose();

    private static string Names(ArchiveTable table) => $"\"Club\", {string.Join(", ", table.Columns.Select(c => $"\"{c.Name}\""))}";

    private sealed class SqliteInserting : RowInserting
    {
        private readonly SqliteCommand command;

        public SqliteInserting(ArchiveTable table, SqliteConnection connection, SqliteTransaction transaction, int club)
        {
            command = connection.CreateCommand();
            command.Transaction = transaction;
            var places = string.Join(", ", Enumerable.Range(0, table.Columns.Count).Select(at => string.Create(CultureInfo.InvariantCulture, $"$p{at}")));
#pragma warning disable CA2100 // Only names of the model's tables and columns.
            command.CommandText = $"INSERT INTO \"{table.Name}\" ({Names(table)}) VALUES ($club, {places})";
#pragma warning restore CA2100
            for (var at = 0; at < table.Columns.Count; at++)
                command.Parameters.Add(new SqliteParameter { ParameterName = string.Create(CultureInfo.InvariantCulture, $"$p{at}") });
            command.Parameters.AddWithValue("$club", club);
        }

        public override void Add(object?[] values)
        {
            for (var at = 0; at < values.Length; at++) command.Parameters[at].Value = values[at] ?? DBNull.Value;
            command.ExecuteNonQuery();
        }

        public override void Finish()
        {
        }

        public override void Dispose() => command.Dispose();
    }

    /// <summary>Many rows in one INSERT: the faster COPY is refused to everybody whom row-level security holds to one club.</summary>
    private sealed class PostgresInserting : RowInserting
    {
        private const int RowsAtOnce = 2000;
        private const int BytesAtOnce = 4 << 20;

        private readonly NpgsqlCommand command;
        private readonly ArchiveTable table;
        private readonly List<object?>[] waiting;
        private long bytes;

        public PostgresInserting(ArchiveTable table, NpgsqlConnection connection, NpgsqlTransaction transaction, int club)
        {
            this.table = table;
            waiting = [.. table.Columns.Select(_ => new List<object?>())];
            command = connection.CreateCommand();
            command.Transaction = transaction;
            command.CommandTimeout = 0;
            var places = string.Join(", ", table.Columns.Select((c, at) => string.Create(CultureInfo.InvariantCulture, $"@p{at}")));
#pragma warning disable CA2100 // Only names of the model's tables and columns.
            command.CommandText = $"INSERT INTO \"{table.Name}\" ({Names(table)}) SELECT @club, * FROM unnest({places})";
#pragma warning restore CA2100
            foreach (var (column, at) in table.Columns.Select((c, at) => (c, at)))
                command.Parameters.Add(new NpgsqlParameter(string.Create(CultureInfo.InvariantCulture, $"p{at}"), NpgsqlDbType.Array | TypeOf(column)));
            command.Parameters.AddWithValue("club", club);
        }

        public override void Add(object?[] values)
        {
            for (var at = 0; at < values.Length; at++)
            {
                waiting[at].Add(values[at]);
                bytes += values[at] switch { byte[] some => some.Length, string text => text.Length, _ => 16 };
            }

            if (waiting[0].Count >= RowsAtOnce || bytes >= BytesAtOnce) Finish();
        }

        public override void Finish()
        {
            if (waiting[0].Count == 0) return;
            for (var at = 0; at < waiting.Length; at++)
            {
                command.Parameters[at].Value = ArrayOf(table.Columns[at], waiting[at]);
                waiting[at].Clear();
            }

            bytes = 0;
            command.ExecuteNonQuery();
        }

        public override void Dispose() => command.Dispose();

        private static NpgsqlDbType TypeOf(ArchiveColumn column) => column.Kind switch
        {
            CellKind.Id => NpgsqlDbType.Uuid,
            CellKind.Whole => column.Type == typeof(long) ? NpgsqlDbType.Bigint : NpgsqlDbType.Integer,
            CellKind.Flag => NpgsqlDbType.Boolean,
            CellKind.Date => NpgsqlDbType.Date,
            CellKind.Time => NpgsqlDbType.Smallint,
            CellKind.Instant => NpgsqlDbType.Bigint,
            CellKind.Text => NpgsqlDbType.Text,
            _ => NpgsqlDbType.Bytea,
        };

        private static Array ArrayOf(ArchiveColumn column, List<object?> values) => column.Kind switch
        {
            CellKind.Id => values.Select(v => (Guid?)v).ToArray(),
            CellKind.Whole when column.Type == typeof(long) => values.Select(v => (long?)v).ToArray(),
            CellKind.Whole => values.Select(v => (int?)v).ToArray(),
            CellKind.Flag => values.Select(v => (bool?)v).ToArray(),
            CellKind.Date => values.Select(v => (DateOnly?)v).ToArray(),
            CellKind.Time => values.Select(v => (short?)v).ToArray(),
            CellKind.Instant => values.Select(v => (long?)v).ToArray(),
            CellKind.Text => values.Select(v => (string?)v).ToArray(),
            _ => values.Select(v => (byte[]?)v).ToArray(),
        };
    }
}
