using Microsoft.Data.Sqlite;
using Npgsql;

namespace Keikocho.Store.Engines;

/// <summary>Tells a full disk from anything else that goes wrong: nothing was stored, and there is something to do about it.</summary>
public static class FullDisk
{
    private const int SqliteFull = 13;

    /// <summary>What to say and do.</summary>
    public const string Sentence = "There is no room left on the disk, so nothing was stored. Make room and do it once more; what tablets hold arrives by itself.";

    /// <summary>Whether a failure, or what it came from, is a full disk.</summary>
    public static bool Is(Exception? thrown)
    {
        for (var cause = thrown; cause is not null; cause = cause.InnerException)
        {
            if (cause is SqliteException { SqliteErrorCode: SqliteFull } or PostgresException { SqlState: PostgresErrorCodes.DiskFull }) return true;
        }

        return false;
    }
}
