using System.Globalization;
using Keikocho.Store.Engines;
using Microsoft.Data.Sqlite;

namespace Keikocho.Store.Keeping;

/// <summary>Whether there is a club of this version, asked without changing anything.</summary>
public static class KnownClub
{
    /// <summary>Does nothing when there is one.</summary>
    /// <exception cref="StoreRefusal">There is none, it is another program's file, or it is of another version.</exception>
    public static async Task DemandAsync(Engine engine, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(engine);
        if (engine is SqliteEngine sqlite)
        {
            if (!Path.Exists(sqlite.File)) throw new StoreRefusal($"{sqlite.File} does not exist. Name the club's file.");
            sqlite.RefuseForeignFile();
        }

        var view = await ReadSnapshot.OpenAsync(engine, readersAtOnce: 1, cancel).ConfigureAwait(false);
        await using var disposal = view.ConfigureAwait(false);
        try
        {
            await RefuseOtherVersionAsync(view, engine, cancel).ConfigureAwait(false);
            using var clubs = view.Ask(string.Create(CultureInfo.InvariantCulture, $"SELECT count(*) FROM \"Clubs\" WHERE \"Club\" = {engine.Club}"));
            if (Convert.ToInt64(await clubs.ExecuteScalarAsync(cancel).ConfigureAwait(false), CultureInfo.InvariantCulture) == 0) throw new StoreRefusal($"{engine.Place} holds no club yet. Open it with keikocho serve.");
        }
        catch (SqliteException cause)
        {
            throw new StoreRefusal($"{engine.Place} is so damaged that it cannot be read: {cause.Message} Restore a copy.", cause);
        }
    }

    internal static async Task RefuseOtherVersionAsync(ReadSnapshot view, Engine engine, CancellationToken cancel)
    {
        var known = KnownMigrations.Of(view.IsSqlite ? typeof(SqliteKeikochoDb) : typeof(PostgresKeikochoDb)).ToList();
        var applied = await AppliedAsync(view, cancel).ConfigureAwait(false);
        if (applied.Count == 0) throw new StoreRefusal($"{engine.Place} holds no club.");
        if (applied.Except(known, StringComparer.Ordinal).FirstOrDefault() is { } newer)
            throw new StoreRefusal($"{engine.Place} was written by a newer version ({newer}). Use that version; nothing was changed.");
        if (known.Except(applied, StringComparer.Ordinal).Any())
            throw new StoreRefusal($"{engine.Place} was written by an older version. Open it once with this one, then do this again.");
    }

    /// <summary>What the database has, asked plainly: the context's model takes half a second, and a command that refuses needs none.</summary>
    private static async Task<List<string>> AppliedAsync(ReadSnapshot view, CancellationToken cancel)
    {
        var applied = new List<string>();
        using var exists = view.Ask(view.IsSqlite
            ? "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = '__EFMigrationsHistory'"
            : "SELECT count(*) FROM pg_class WHERE oid = to_regclass('\"__EFMigrationsHistory\"')");
        if (Convert.ToInt64(await exists.ExecuteScalarAsync(cancel).ConfigureAwait(false), CultureInfo.InvariantCulture) == 0) return applied;
        using var names = view.Ask("SELECT \"MigrationId\" FROM \"__EFMigrationsHistory\" ORDER BY \"MigrationId\"");
        using var reader = await names.ExecuteReaderAsync(cancel).ConfigureAwait(false);
        while (await reader.ReadAsync(cancel).ConfigureAwait(false)) applied.Add(reader.GetString(0));
        return applied;
    }
}
