using System.Data;
using System.Data.Common;
using Keikocho.Store.Engines;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Keikocho.Store.Keeping;

/// <summary>
/// One unchanging view of the whole database, read through several readers at once while others go on writing. It never writes.
/// </summary>
internal sealed class ReadSnapshot : IAsyncDisposable
{
    private readonly List<(DbConnection Connection, DbTransaction Transaction)> lanes;

    private readonly Engine engine;

    private ReadSnapshot(Engine engine, List<(DbConnection, DbTransaction)> lanes, bool isSqlite)
    {
        this.engine = engine;
        this.lanes = lanes;
        IsSqlite = isSqlite;
    }

    /// <summary>True on SQLite, false on PostgreSQL.</summary>
    public bool IsSqlite { get; }

    /// <summary>Opens the view.</summary>
    /// <param name="engine">The club.</param>
    /// <param name="readersAtOnce">How many readers may be open at once; each uses a lane of its own.</param>
    /// <param name="cancel">Stops the opening.</param>
    public static async Task<ReadSnapshot> OpenAsync(Engine engine, int readersAtOnce, CancellationToken cancel)
    {
        if (engine is SqliteEngine file)
        {
            // A connection of its own that can only read: SQLite itself refuses whatever would change the file.
            var text = new SqliteConnectionStringBuilder { DataSource = file.File, Mode = SqliteOpenMode.ReadOnly, Pooling = false };
            var sqlite = new SqliteConnection(text.ToString());
            try
            {
                await sqlite.OpenAsync(cancel).ConfigureAwait(false);
                SqlitePragmas.Set(sqlite);
                // A deferred transaction takes its view at its first read, and one SQLite connection carries any number of readers.
                var transaction = sqlite.BeginTransaction(IsolationLevel.Serializable, deferred: true);
                return new ReadSnapshot(engine, [.. Enumerable.Repeat(((DbConnection)sqlite, (DbTransaction)transaction), readersAtOnce)], isSqlite: true);
            }
            catch (SqliteException cause)
            {
                await sqlite.DisposeAsync().ConfigureAwait(false);
                throw new StoreRefusal($"{file.File} cannot be read: {cause.Message}", cause);
            }
        }

        var lanes = new List<(DbConnection, DbTransaction)>(readersAtOnce);
        string? view = null;
        for (var lane = 0; lane < readersAtOnce; lane++)
        {
            var connection = engine.OpenConnection();
            var transaction = await ((NpgsqlConnection)connection).BeginTransactionAsync(IsolationLevel.RepeatableRead, cancel).ConfigureAwait(false);
            lanes.Add((connection, transaction));
            using var command = connection.CreateCommand();
            command.Transaction = transaction;
            if (view is null)
            {
                command.CommandText = "SELECT pg_export_snapshot()";
                view = (string)(await command.ExecuteScalarAsync(cancel).ConfigureAwait(false))!;
            }
            else
            {
#pragma warning disable CA2100 // The text comes from the server's own export.
                command.CommandText = $"SET TRANSACTION SNAPSHOT '{view}'";
#pragma warning restore CA2100
                await command.ExecuteNonQueryAsync(cancel).ConfigureAwait(false);
            }
        }

        return new ReadSnapshot(engine, lanes, isSqlite: false);
    }

    /// <summary>A question to one lane. Names in it come from the model, values go in as parameters.</summary>
    public DbCommand Ask(string question, int lane = 0)
    {
        var command = lanes[lane].Connection.CreateCommand();
        command.Transaction = lanes[lane].Transaction;
#pragma warning disable CA2100 // Only names of the model's tables and columns are put into a question.
        command.CommandText = question;
#pragma warning restore CA2100
        command.CommandTimeout = 0;
        return command;
    }

    /// <summary>A context that sees the same view through the first lane; close its readers before another uses that lane.</summary>
    public KeikochoDb OpenDb()
    {
        var db = engine.OpenDb(lanes[0].Connection);
        db.Database.UseTransaction(lanes[0].Transaction);
        return db;
    }

    /// <summary>The connection of one lane, for reading below the base library's reader.</summary>
    public DbConnection Connection(int lane) => lanes[lane].Connection;

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        foreach (var (connection, transaction) in lanes.Distinct())
        {
            await transaction.DisposeAsync().ConfigureAwait(false);
            await connection.DisposeAsync().ConfigureAwait(false);
        }
    }
}
