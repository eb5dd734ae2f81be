using System.Data.Common;
using System.IO.Compression;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping.OpenArchive;

namespace Keikocho.Store.Keeping;

/// <summary>
/// The open archive: a whole club as plain files with a manifest. It moves a club from one engine to the other, and it is how a club
/// leaves. The personal values are open in it. The format is described in <c>docs/formats/archive.md</c>.
/// </summary>
public static class Archive
{
    /// <summary>Writes the club to a new .zip file, or to a new folder where the name does not end in .zip.</summary>
    /// <param name="engine">The club; others may go on writing, the archive is one moment of it.</param>
    /// <param name="target">Path that does not exist yet.</param>
    /// <param name="now">Stands in the manifest.</param>
    /// <param name="cancel">Stops the writing; nothing is left behind.</param>
    /// <exception cref="StoreRefusal">The target exists or cannot be written, or a value of the club does not open.</exception>
    public static async Task<ArchiveManifest> WriteAsync(Engine engine, string target, DateTimeOffset now, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentException.ThrowIfNullOrWhiteSpace(target);
        var path = Path.GetFullPath(target);
        if (Path.Exists(path)) throw new StoreRefusal($"{path} exists already. Name a file or folder that does not exist; nothing was written.");
        var unfinished = path + ".unfinished";
        var isZip = path.EndsWith(".zip", StringComparison.OrdinalIgnoreCase);
        try
        {
            Remove(unfinished);
            ArchiveManifest manifest;
            if (isZip)
            {
                var stream = new FileStream(unfinished, FileMode.CreateNew, FileAccess.ReadWrite);
                await using var disposal = stream.ConfigureAwait(false);
                manifest = await WriteAsync(engine, stream, now, cancel).ConfigureAwait(false);
                stream.Flush(flushToDisk: true);
            }
            else
            {
                Directory.CreateDirectory(unfinished);
                manifest = await new ArchiveWriting(engine, new FolderTarget(unfinished), now).RunAsync(cancel).ConfigureAwait(false);
            }

            // Put in place only when it is whole: an archive that was cut short never looks like a good one.
            if (isZip) File.Move(unfinished, path);
            else Directory.Move(unfinished, path);
            return manifest;
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException)
        {
            Remove(unfinished);
            throw new StoreRefusal($"The archive could not be written to {path}: {cause.Message}", cause);
        }
        catch
        {
            Remove(unfinished);
            throw;
        }
    }

    /// <summary>Writes the club as a zip to a stream that stays open.</summary>
    /// <inheritdoc cref="WriteAsync(Engine, string, DateTimeOffset, CancellationToken)"/>
    public static async Task<ArchiveManifest> WriteAsync(Engine engine, Stream target, DateTimeOffset now, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(target);
        var zip = new ZipArchive(target, ZipArchiveMode.Create, leaveOpen: true);
        await using var disposal = zip.ConfigureAwait(false);
        return await new ArchiveWriting(engine, new ZipTarget(zip, now), now).RunAsync(cancel).ConfigureAwait(false);
    }

    /// <summary>Reads an archive, a .zip file or a folder, into an empty club; all of it or nothing.</summary>
    /// <param name="engine">A database that is up to date and holds nothing for this club.</param>
    /// <param name="from">Path of the .zip file or the folder.</param>
    /// <param name="noteAt">When the reading is noted in the trail; null leaves the club exactly as it was written.</param>
    /// <param name="cancel">Stops the reading; then nothing was read in.</param>
    /// <exception cref="StoreRefusal">The club is not empty, or the archive is damaged; says which file, line and column.</exception>
    public static Task<ArchiveManifest> ReadAsync(Engine engine, string from, DateTimeOffset? noteAt, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentException.ThrowIfNullOrWhiteSpace(from);
        var path = Path.GetFullPath(from);
        return Task.Run(
            () =>
            {
                try
                {
                    if (Directory.Exists(path)) return Read(engine, new FolderSource(path), path, noteAt, cancel);
                    if (!File.Exists(path)) throw new StoreRefusal($"{path} does not exist.");
                    using var stream = File.OpenRead(path);
                    return Read(engine, Zip(stream, path), path, noteAt, cancel);
                }
                catch (Exception cause) when (cause is IOException or UnauthorizedAccessException)
                {
                    throw new StoreRefusal($"{path} cannot be read: {cause.Message}", cause);
                }
            },
            cancel);
    }

    /// <summary>Reads a zip that lies in a stream which can be read from any place.</summary>
    /// <inheritdoc cref="ReadAsync(Engine, string, DateTimeOffset?, CancellationToken)"/>
    public static Task<ArchiveManifest> ReadAsync(Engine engine, Stream from, DateTimeOffset? noteAt, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(from);
        if (!from.CanSeek) throw new ArgumentException("The stream must be readable from any place: a zip's list of files is at its end.", nameof(from));
        return Task.Run(() => Read(engine, Zip(from, "the archive"), "the archive", noteAt, cancel), cancel);
    }

    /// <summary>The names of the tables that an archive holds: every table of the model.</summary>
    public static IReadOnlyList<string> Tables(KeikochoDb db)
    {
        ArgumentNullException.ThrowIfNull(db);
        return [.. ArchiveTable.All(db).Select(t => t.Name)];
    }

    private static ArchiveManifest Read(Engine engine, IArchiveSource source, string place, DateTimeOffset? noteAt, CancellationToken cancel)
    {
        using (source)
        {
            try
            {
                return new ArchiveReading(engine, source, place).Run(noteAt, cancel);
            }
            catch (InvalidDataException cause)
            {
                throw new StoreRefusal($"{place} is damaged: {cause.Message} Nothing was read in.", cause);
            }
            catch (DbException cause)
            {
                throw new StoreRefusal($"{engine.Place} did not take the archive: {cause.Message} Nothing was read in.", cause);
            }
        }
    }

    private static ZipSource Zip(Stream stream, string place)
    {
        try
        {
            return new ZipSource(new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true));
        }
        catch (InvalidDataException cause)
        {
            throw new StoreRefusal($"{place} is not a zip file, or it was cut short.", cause);
        }
    }

    private static void Remove(string unfinished)
    {
        if (Directory.Exists(unfinished)) Directory.Delete(unfinished, recursive: true);
        else if (File.Exists(unfinished)) File.Delete(unfinished);
    }
}
