using Keikocho.Store.Engines;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Keeping;

/// <summary>What a copy became.</summary>
/// <param name="File">Full path of the copy.</param>
/// <param name="Bytes">Its size in bytes.</param>
/// <param name="MadeAt">When it was made, as the club's trail has it.</param>
public sealed record CopyMade(string File, long Bytes, DateTimeOffset MadeAt);

/// <summary>A complete copy of the club, checked, made while others go on working.</summary>
public static class ClubCopy
{
    /// <summary>Copies the club to a new file and notes in the club's trail that it was done.</summary>
    /// <exception cref="StoreRefusal">
    /// The target exists or cannot be written; or the club is on PostgreSQL, whose own tool makes copies: the sentence says how.
    /// </exception>
    public static async Task<CopyMade> MakeAsync(Engine engine, string target, DateTimeOffset now, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentException.ThrowIfNullOrWhiteSpace(target);
        var path = Path.GetFullPath(target);
        if (engine is PostgresEngine postgres)
        {
            throw new StoreRefusal(
                $"{engine.Place} is copied by PostgreSQL's own tool, as a role that row-level security does not hold to one club: "
                + $"pg_dump --format=custom --file=\"{path}\" {postgres.DumpArguments}   One club alone goes into an open archive: keikocho archive.");
        }

        var file = ((SqliteEngine)engine).File;
        if (!File.Exists(file)) throw new StoreRefusal($"{file} does not exist. There is nothing to copy.");
        await Task.Run(() => SqliteCopy.Make(file, path), cancel).ConfigureAwait(false);
        var at = TrailNote.Add(engine, TrailKind.CopyMade, now);
        return new CopyMade(path, new FileInfo(path).Length, at);
    }

    /// <summary>When the last copy was made; null when there was none yet.</summary>
    public static async Task<DateTimeOffset?> LastAsync(KeikochoDb db, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(db);
        return await db.Trail.Where(t => t.Kind == TrailKind.CopyMade).OrderByDescending(t => t.Number)
            .Select(t => (DateTimeOffset?)t.At).FirstOrDefaultAsync(cancel).ConfigureAwait(false);
    }
}
