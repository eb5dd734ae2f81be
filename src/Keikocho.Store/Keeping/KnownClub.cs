using Keikocho.Store.Engines;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

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
            using var db = view.OpenDb();
            if (!await db.Clubs.AnyAsync(cancel).ConfigureAwait(false)) throw new StoreRefusal($"{engine.Place} holds no club yet. Open it with keikocho serve.");
        }
        catch (SqliteException cause)
        {
            throw new StoreRefusal($"{engine.Place} is so damaged that it cannot be read: {cause.Message} Restore a copy.", cause);
        }
    }

    internal static async Task RefuseOtherVersionAsync(ReadSnapshot view, Engine engine, CancellationToken cancel)
    {
        using var db = view.OpenDb();
        var known = db.Database.GetMigrations().ToList();
        var applied = (await db.Database.GetAppliedMigrationsAsync(cancel).ConfigureAwait(false)).ToList();
        if (applied.Count == 0) throw new StoreRefusal($"{engine.Place} holds no club.");
        if (applied.Except(known, StringComparer.Ordinal).FirstOrDefault() is { } newer)
            throw new StoreRefusal($"{engine.Place} was written by a newer version ({newer}). Use that version; nothing was changed.");
        if (known.Except(applied, StringComparer.Ordinal).Any())
            throw new StoreRefusal($"{engine.Place} was written by an older version. Open it once with this one, then do this again.");
    }
}
