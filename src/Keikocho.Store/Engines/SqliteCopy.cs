using Microsoft.Data.Sqlite;

namespace Keikocho.Store.Engines;

/// <summary>
/// A complete copy of an open club's file by SQLite's backup API: copying the file itself would lose what is still in the log beside it.
/// </summary>
public static class SqliteCopy
{
    /// <summary>
    /// Copies to a name beside the target first, checks it, and only then puts it in place: a killed copy never looks like a good one.
    /// </summary>
    /// <exception cref="StoreRefusal">The target exists or cannot be written, or the copy does not pass SQLite's integrity check.</exception>
    public static void Make(string from, string to)
    {
        if (File.Exists(to)) throw new StoreRefusal($"{to} exists already. Name a file that does not exist; nothing was copied.");
        var unfinished = to + ".unfinished";
        try
        {
            File.Delete(unfinished);
            using (var source = new SqliteConnection(Text(from, SqliteOpenMode.ReadOnly)))
            using (var target = new SqliteConnection(Text(unfinished, SqliteOpenMode.ReadWriteCreate)))
            {
                source.Open();
                target.Open();
                source.BackupDatabase(target);
                using var command = target.CreateCommand();
                // The copy is one file: nothing may be left in a log beside it when it is carried away.
                command.CommandText = "PRAGMA journal_mode=DELETE; PRAGMA integrity_check";
                using var reader = command.ExecuteReader();
                do
                {
                    while (reader.Read())
                    {
                        if (reader.GetString(0) is not ("ok" or "delete"))
                            throw new StoreRefusal($"The copy of {from} does not pass SQLite's integrity check: {reader.GetString(0)}");
                    }
                }
                while (reader.NextResult());
            }

            using (var written = new FileStream(unfinished, FileMode.Open, FileAccess.ReadWrite)) written.Flush(flushToDisk: true);
            File.Move(unfinished, to);
        }
        catch (StoreRefusal)
        {
            File.Delete(unfinished);
            throw;
        }
        catch (Exception cause) when (cause is SqliteException or IOException or UnauthorizedAccessException)
        {
            // Deleting in a folder that is not there throws too, and would hide the cause.
            if (File.Exists(unfinished)) File.Delete(unfinished);
            throw new StoreRefusal($"{from} could not be copied to {to}: {cause.Message}", cause);
        }
    }

    private static string Text(string file, SqliteOpenMode mode) =>
        new SqliteConnectionStringBuilder { DataSource = file, Mode = mode, Pooling = false }.ToString();
}
