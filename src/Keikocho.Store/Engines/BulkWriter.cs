using System.Data.Common;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace Keikocho.Store.Engines;

/// <summary>Writes many rows of one kind after another inside one transaction.</summary>
internal abstract class BulkWriter : IDisposable
{
    /// <summary>Writes the rows in their order.</summary>
    public abstract void Write<TRow>(IReadOnlyCollection<TRow> rows);

    /// <inheritdoc/>
    public abstract void Dispose();

    /// <summary>The writer of this connection's engine.</summary>
    public static BulkWriter For(KeikochoDb db, DbConnection connection, DbTransaction transaction) => connection switch
    {
        SqliteConnection sqlite => new SqliteBulkWriter(db, sqlite, (SqliteTransaction)transaction),
        NpgsqlConnection postgres => new PostgresBulkWriter(db, postgres),
        _ => throw new ArgumentException($"{connection.GetType().Name} is no engine of this store.", nameof(connection)),
    };
}

/// <summary>SQLite: one prepared statement a table, kept for the whole transaction. Foreign keys are checked row by row.</summary>
internal sealed class SqliteBulkWriter : BulkWriter
{
    private readonly KeikochoDb db;
    private readonly SqliteConnection connection;
    private readonly SqliteTransaction transaction;
    private readonly Dictionary<Type, (object Columns, SqliteCommand Command)> statements = [];

    public SqliteBulkWriter(KeikochoDb db, SqliteConnection connection, SqliteTransaction transaction)
    {
        this.db = db;
        this.connection = connection;
        this.transaction = transaction;
    }

    public override void Write<TRow>(IReadOnlyCollection<TRow> rows)
    {
        if (!statements.TryGetValue(typeof(TRow), out var statement))
        {
            statement = Prepare(BulkColumns<TRow>.From(db));
            statements.Add(typeof(TRow), statement);
        }

        var columns = ((BulkColumns<TRow>)statement.Columns).Columns;
        var parameters = statement.Command.Parameters;
        foreach (var row in rows)
        {
            for (var i = 0; i < columns.Count; i++) parameters[i].Value = columns[i].ValueOf(row) ?? DBNull.Value;
            statement.Command.ExecuteNonQuery();
        }
    }

    private (object, SqliteCommand) Prepare<TRow>(BulkColumns<TRow> columns)
    {
        var command = connection.CreateCommand();
        command.Transaction = transaction;
        for (var i = 0; i < columns.Columns.Count; i++) command.Parameters.Add(new SqliteParameter { ParameterName = $"@p{i}" });
        // Table and columns are the model's own names; every value is a parameter.
#pragma warning disable CA2100
        command.CommandText = $"INSERT INTO \"{columns.Table}\" ({columns.QuotedNames}) VALUES ({string.Join(", ", columns.Columns.Select((_, i) => $"@p{i}"))})";
#pragma warning restore CA2100
        // A parameter needs a value before it can be prepared.
        foreach (SqliteParameter parameter in command.Parameters) parameter.Value = DBNull.Value;
        command.Prepare();
        return (columns, command);
    }

    public override void Dispose()
    {
        foreach (var (_, command) in statements.Values) command.Dispose();
    }
}

/// <summary>
/// PostgreSQL: binary COPY into a table that ends with the transaction, then one INSERT. COPY straight into a table is refused where
/// row-level security is forced ("COPY FROM not supported with row-level security").
/// </summary>
internal sealed class PostgresBulkWriter : BulkWriter
{
    private readonly KeikochoDb db;
    private readonly NpgsqlConnection connection;
    private readonly Dictionary<Type, object> columnsOf = [];

    public PostgresBulkWriter(KeikochoDb db, NpgsqlConnection connection)
    {
        this.db = db;
        this.connection = connection;
    }

    public override void Write<TRow>(IReadOnlyCollection<TRow> rows)
    {
        BulkColumns<TRow> columns;
        if (columnsOf.TryGetValue(typeof(TRow), out var known))
            columns = (BulkColumns<TRow>)known;
        else
        {
            columns = BulkColumns<TRow>.From(db);
            columnsOf.Add(typeof(TRow), columns);
            Do($"CREATE TEMPORARY TABLE IF NOT EXISTS \"Bulk{columns.Table}\" (LIKE \"{columns.Table}\") ON COMMIT DROP");
        }

        using (var copy = connection.BeginBinaryImport($"COPY \"Bulk{columns.Table}\" ({columns.QuotedNames}) FROM STDIN (FORMAT BINARY)"))
        {
            foreach (var row in rows)
            {
                copy.StartRow();
                foreach (var column in columns.Columns)
                {
                    if (column.ValueOf(row) is { } value) copy.Write(value, column.StoreType);
                    else copy.WriteNull();
                }
            }

            copy.Complete();
        }

        Do($"INSERT INTO \"{columns.Table}\" ({columns.QuotedNames}) SELECT {columns.QuotedNames} FROM \"Bulk{columns.Table}\"");
        Do($"TRUNCATE \"Bulk{columns.Table}\"");
    }

    /// <summary>Its tables end with the transaction.</summary>
    public override void Dispose() => columnsOf.Clear();

    private void Do(string statement)
    {
        // Only the model's own names are in it.
#pragma warning disable CA2100
        using var command = new NpgsqlCommand(statement, connection) { CommandTimeout = 0 };
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}
