using System.Data.Common;
using System.Net.Sockets;
using Keikocho.Store.Engines;

namespace Keikocho.App.Commands;

/// <summary>Where a club lies: one club in a file, or one of many in a PostgreSQL database. Whatever it says, it never says a password.</summary>
public static class EngineChoice
{
    /// <summary>What a connection text looks like, for sentences.</summary>
    public const string Example = "\"Host=localhost;Database=club;Username=club\"";

    /// <summary>The club in a file; opens nothing yet.</summary>
    public static SqliteEngine File(string path)
    {
        // Typed in the wrong place it must not be printed again: it may hold a password.
        if (LooksLikeConnectionText(path))
            throw new WrongUsageException("A file is asked for here; the connection text of a PostgreSQL database goes behind --database.");
        return new SqliteEngine(path);
    }

    /// <summary>A club in a PostgreSQL database; opens nothing yet.</summary>
    /// <param name="connectionText">As .NET programs write it: parts "Name=value" with a semicolon between two.</param>
    /// <param name="club">Number of the club, from 1.</param>
    /// <exception cref="WrongUsageException">The text or the number cannot be used.</exception>
    public static PostgresEngine Database(string connectionText, int club)
    {
        if (club < 1)
            throw new WrongUsageException("--club takes the number of a club, from 1.");
        try
        {
            var parts = new DbConnectionStringBuilder { ConnectionString = connectionText };
            if ((!parts.ContainsKey("Host") && !parts.ContainsKey("Server")) || (!parts.ContainsKey("Database") && !parts.ContainsKey("DB")))
                throw new WrongUsageException($"The text behind --database names no host or no database; write it as {Example}.");
            return new PostgresEngine(connectionText, club);
        }
        catch (ArgumentException)
        {
            // The library's own message may repeat a part of the text.
            throw new WrongUsageException($"The text behind --database cannot be read; write it as {Example}.");
        }
    }

    /// <summary>Refuses a database that cannot be reached, before anything is asked of it. A file is not opened.</summary>
    public static async Task DemandReachableAsync(Engine engine, CancellationToken stopping)
    {
        ArgumentNullException.ThrowIfNull(engine);
        if (engine is not PostgresEngine)
            return;
        try
        {
            await Task.Run(() => engine.OpenConnection().Dispose(), stopping);
        }
        catch (Exception e) when (e is DbException or SocketException or TimeoutException)
        {
            throw new RefusalException(
                $"{Refusals.AtStart(engine.Place)} cannot be opened ({e.Message.ReplaceLineEndings(" ").TrimEnd('.')}); see that the server runs and that the text behind --database is right.");
        }
    }

    /// <summary>Whether a text is more likely the connection text of a database than the name of a file.</summary>
    public static bool LooksLikeConnectionText(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Marks.Any(mark => text.Contains(mark, StringComparison.OrdinalIgnoreCase));
    }

    private static readonly string[] Marks = ["Host=", "Server=", "Password=", "Pwd=", "postgres://", "postgresql://"];
}
