using System.Globalization;
using Keikocho.Store.Engines;
using Microsoft.Data.Sqlite;

namespace Keikocho.Store.Keeping;

/// <summary>What a restore did.</summary>
/// <param name="File">The club's file.</param>
/// <param name="KeptFile">Where the file that was there before is kept; null where there was none.</param>
public sealed record ClubRestored(string File, string? KeptFile);

/// <summary>Makes a club's file from a copy. What lies at the target is kept beside it first.</summary>
public static class RestoreClub
{
    /// <summary>
    /// The copy is copied, checked, brought to this version's shape and noted in its trail under another name; only then does it take
    /// the target's place. The copy itself is not changed.
    /// </summary>
    /// <param name="copy">A file that <see cref="ClubCopy"/> made.</param>
    /// <param name="target">The club's file from now on.</param>
    /// <param name="now">Stands in the trail and in the name of the file that is kept.</param>
    /// <param name="cancel">Stops it before the target is touched.</param>
    /// <exception cref="StoreRefusal">The copy is damaged or no club, or the target is in use. The target is as it was.</exception>
    public static async Task<ClubRestored> RunAsync(string copy, string target, DateTimeOffset now, CancellationToken cancel = default)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(copy);
        ArgumentException.ThrowIfNullOrWhiteSpace(target);
        var from = Path.GetFullPath(copy);
        var to = Path.GetFullPath(target);
        if (from == to) throw new StoreRefusal($"{from} is the copy and the target. Name another file.");
        if (Directory.Exists(to)) throw new StoreRefusal($"{to} is a folder. Name a file.");
        if (!File.Exists(from)) throw new StoreRefusal($"{from} does not exist.");
        RefuseOtherThanClub(from);

        var made = to + ".restoring";
        RemoveWithLogs(made);
        try
        {
            await MakeAsync(from, made, now, cancel).ConfigureAwait(false);
            var kept = File.Exists(to) ? Keep(to, now) : null;
            File.Move(made, to, overwrite: true);
            SetWriteAhead(to);
            return new ClubRestored(to, kept);
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException or SqliteException)
        {
            throw new StoreRefusal($"{from} could not be restored to {to}: {cause.Message}", cause);
        }
        finally
        {
            RemoveWithLogs(made);
        }
    }

    private static async Task MakeAsync(string from, string made, DateTimeOffset now, CancellationToken cancel)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(made)!);
        await Task.Run(() => SqliteCopy.Make(from, made), cancel).ConfigureAwait(false);
        var engine = new SqliteEngine(made);
        try
        {
            // A copy that an upgrade keeps here is one of a copy: it goes again.
            if (await engine.UpgradeAsync(now, cancel).ConfigureAwait(false) is { } before) File.Delete(before);
            using (var db = engine.OpenDb())
            {
                if (!db.Clubs.Any()) throw new StoreRefusal($"{from} holds no club. Nothing was restored.");
            }

            TrailNote.Add(engine, TrailKind.Restored, now);
        }
        catch (StoreRefusal refusal)
        {
            // The name that the copy has, not the one that it has meanwhile.
            throw new StoreRefusal(refusal.Message.Replace(made, from, StringComparison.Ordinal), refusal);
        }
        finally
        {
            engine.Release();
        }

        // One file with nothing in a log beside it, so that one rename puts it in place.
        CloseLog(made);
    }

    private static void RefuseOtherThanClub(string from)
    {
        try
        {
            using var connection = new SqliteConnection(Text(from, SqliteOpenMode.ReadOnly));
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA application_id";
            if (Convert.ToInt64(command.ExecuteScalar(), CultureInfo.InvariantCulture) != SqliteEngine.ApplicationId)
                throw new StoreRefusal($"{from} is not a copy of a club.");
        }
        catch (SqliteException cause)
        {
            throw new StoreRefusal($"{from} is not a copy of a club, or it is damaged: {cause.Message}", cause);
        }
    }

    /// <summary>Keeps what lies at the target. Afterwards there is no log beside it that could be taken for the new file's.</summary>
    private static string Keep(string target, DateTimeOffset now)
    {
        var kept = SqliteEngine.FreeName($"{target}.before-restore-{now.UtcDateTime.ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture)}");
        new SqliteEngine(target).Release();
        try
        {
            CloseLog(target);
            SqliteCopy.Make(target, kept);
        }
        catch (SqliteException cause) when (cause.SqliteErrorCode is 5 or 6) // SQLITE_BUSY, SQLITE_LOCKED
        {
            throw new StoreRefusal($"{target} is in use. Close Keikocho where it is open, then restore again; nothing was changed.", cause);
        }
        catch (Exception cause) when (cause is SqliteException or StoreRefusal)
        {
            // Too damaged to be copied by SQLite: the files themselves are kept, with the log that may still help.
            foreach (var ending in Endings)
                if (File.Exists(target + ending)) File.Move(target + ending, kept + ending);
        }

        return kept;
    }

    /// <summary>Moves the log into the file. SQLite does this only when nobody else has the file open.</summary>
    private static void CloseLog(string file)
    {
        using var connection = new SqliteConnection(Text(file, SqliteOpenMode.ReadWrite));
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA journal_mode=DELETE";
        if (command.ExecuteScalar() is not "delete") throw new SqliteException($"{file} is in use.", 5);
    }

    private static void SetWriteAhead(string file)
    {
        using var connection = new SqliteConnection(Text(file, SqliteOpenMode.ReadWrite));
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA journal_mode=WAL";
        command.ExecuteNonQuery();
    }

    private static readonly string[] Endings = ["", "-wal", "-shm", "-journal"];

    private static void RemoveWithLogs(string file)
    {
        foreach (var ending in Endings) if (File.Exists(file + ending)) File.Delete(file + ending);
    }

    private static string Text(string file, SqliteOpenMode mode) =>
        new SqliteConnectionStringBuilder { DataSource = file, Mode = mode, Pooling = false, DefaultTimeout = 2 }.ToString();
}
