using System.Data;
using System.Data.Common;
using System.Globalization;
using Keikocho.Store.Engines;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace Keikocho.Store.Keeping;

/// <summary>Opens connections to one SQLite file that all see the same moment and can only read: SQLite itself refuses whatever would change the file.</summary>
internal static class SqliteLanes
{
    /// <summary>A commit between two openings is rare, and a thousand in a row do not happen.</summary>
    private const int MostTries = 1000;

    public static async Task<List<ReadSnapshot.Lane>> OpenAsync(
        SqliteEngine file, int readers, int threadsBeside, int readersOfEach, CancellationToken cancel)
    {
        var text = new SqliteConnectionStringBuilder { DataSource = file.File, Mode = SqliteOpenMode.ReadOnly, Pooling = false };
        var connection = new SqliteConnection(text.ToString());
        var beside = new List<sqlite3>(threadsBeside);
        try
        {
            await connection.OpenAsync(cancel).ConfigureAwait(false);
            SqlitePragmas.Set(connection);
            DbTransaction transaction;
            if (threadsBeside == 0)
            {
                // A deferred transaction takes its view at its first read, and one SQLite connection carries any number of readers.
                transaction = connection.BeginTransaction(IsolationLevel.Serializable, deferred: true);
            }
            else
            {
                while (beside.Count < threadsBeside) beside.Add(OpenBare(file.File));
                transaction = await SameMomentAsync(file, text.ToString(), connection, beside, cancel).ConfigureAwait(false);
            }

            return
            [
                .. Enumerable.Repeat(new ReadSnapshot.Lane(connection, transaction), readers),
                .. beside.SelectMany(bare => Enumerable.Repeat(new ReadSnapshot.Lane(null, null, bare), readersOfEach)),
            ];
        }
        catch (SqliteException cause)
        {
            foreach (var bare in beside) bare.Dispose();
            await connection.DisposeAsync().ConfigureAwait(false);
            throw new StoreRefusal($"{file.File} cannot be read: {cause.Message}", cause);
        }
    }

    /// <summary>Begins all views, again and again until one more connection has seen no commit meanwhile.</summary>
    private static async Task<DbTransaction> SameMomentAsync(
        SqliteEngine file, string text, SqliteConnection first, List<sqlite3> beside, CancellationToken cancel)
    {
        using var observer = new SqliteConnection(text);
        await observer.OpenAsync(cancel).ConfigureAwait(false);
        for (var tries = 0; tries < MostTries; tries++)
        {
            cancel.ThrowIfCancellationRequested();
            var before = Number(observer, "PRAGMA data_version");
            var transaction = first.BeginTransaction(IsolationLevel.Serializable, deferred: true);
            Number(first, "SELECT count(*) FROM sqlite_master", transaction);
            foreach (var bare in beside) Run(bare, "BEGIN; SELECT count(*) FROM sqlite_master");
            if (Number(observer, "PRAGMA data_version") == before) return transaction;
            await transaction.DisposeAsync().ConfigureAwait(false);
            foreach (var bare in beside) Run(bare, "COMMIT");
        }

        throw new StoreRefusal($"{file.File} is written to without a pause. Check a copy of it.");
    }

    /// <summary>A connection for one thread alone: SQLite takes no lock of its own at each column, of which there are tens of millions.</summary>
    private static sqlite3 OpenBare(string file)
    {
        var code = raw.sqlite3_open_v2(file, out var bare, raw.SQLITE_OPEN_READONLY | raw.SQLITE_OPEN_NOMUTEX, null);
        try
        {
            SqliteException.ThrowExceptionForRC(code, bare);
            Run(bare, SqlitePragmas.Text);
            return bare;
        }
        catch (SqliteException)
        {
            bare.Dispose();
            throw;
        }
    }

    private static void Run(sqlite3 bare, string text) => SqliteException.ThrowExceptionForRC(raw.sqlite3_exec(bare, text), bare);

    private static long Number(SqliteConnection connection, string question, SqliteTransaction? transaction = null)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
#pragma warning disable CA2100 // Only the questions above.
        command.CommandText = question;
#pragma warning restore CA2100
        return Convert.ToInt64(command.ExecuteScalar(), CultureInfo.InvariantCulture);
    }
}
