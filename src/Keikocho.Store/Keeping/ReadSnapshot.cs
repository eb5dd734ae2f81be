using System.Data;
using System.Data.Common;
using Keikocho.Store.Engines;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using SQLitePCL;

namespace Keikocho.Store.Keeping;

/// <summary>
/// One unchanging view of the whole database, read through several readers at once while others go on writing. It never writes.
/// </summary>
internal sealed class ReadSnapshot : IAsyncDisposable
{
    private readonly List<Lane> lanes;
    private readonly Engine engine;

    private ReadSnapshot(Engine engine, List<Lane> lanes, bool isSqlite)
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
    /// <param name="threadsBeside">How many other threads read the same moment. Their lanes come after the others; only what reads line by line may use them.</param>
    /// <param name="readersOfEach">How many readers each of these threads may have open at once.</param>
    public static async Task<ReadSnapshot> OpenAsync(
        Engine engine, int readersAtOnce, CancellationToken cancel, int threadsBeside = 0, int readersOfEach = 0)
    {
        if (engine is SqliteEngine file)
        {
            return new ReadSnapshot(engine, await SqliteLanes.OpenAsync(file, readersAtOnce, threadsBeside, readersOfEach, cancel).ConfigureAwait(false), isSqlite: true);
        }

        var all = readersAtOnce + threadsBeside * readersOfEach;
        var lanes = new List<Lane>(all);
        string? view = null;
        for (var lane = 0; lane < all; lane++)
        {
            var connection = engine.OpenConnection();
            var transaction = await ((NpgsqlConnection)connection).BeginTransactionAsync(IsolationLevel.RepeatableRead, cancel).ConfigureAwait(false);
            lanes.Add(new Lane(connection, transaction));
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
        var command = Connection(lane).CreateCommand();
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
        var db = engine.OpenDb(Connection(0));
        db.Database.UseTransaction(lanes[0].Transaction);
        return db;
    }

    /// <summary>An id as it is written in a question.</summary>
    public string Literal(Guid id) => IsSqlite ? $"x'{Convert.ToHexString(id.ToByteArray(bigEndian: true))}'" : $"'{id:D}'";

    /// <summary>SQLite's own handle of one lane, for reading below the base library's reader.</summary>
    public sqlite3 SqliteHandle(int lane) => lanes[lane].Bare ?? ((SqliteConnection)Connection(lane)).Handle!;

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        foreach (var lane in lanes.Distinct()) await lane.DisposeAsync().ConfigureAwait(false);
    }

    private DbConnection Connection(int lane) =>
        lanes[lane].Connection ?? throw new InvalidOperationException("A lane beside the others is read line by line only.");

    /// <summary>What one reader reads through. On SQLite several share one.</summary>
    /// <param name="Connection">The connection; null for a bare one.</param>
    /// <param name="Transaction">Its transaction.</param>
    /// <param name="Bare">SQLite's own connection, in a transaction of its own.</param>
    internal sealed record Lane(DbConnection? Connection, DbTransaction? Transaction, sqlite3? Bare = null) : IAsyncDisposable
    {
        /// <inheritdoc/>
        public async ValueTask DisposeAsync()
        {
            if (Transaction is not null) await Transaction.DisposeAsync().ConfigureAwait(false);
            if (Connection is not null) await Connection.DisposeAsync().ConfigureAwait(false);
            Bare?.Dispose();
        }
    }
}
