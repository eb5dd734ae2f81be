using System.Data.Common;
using Keikocho.Store.Engines;

namespace Keikocho.App.Commands;

/// <summary>The name of a club's file as typed, and what is refused about it.</summary>
public static class ClubFile
{
    /// <summary>The ending of a club's file.</summary>
    public const string Ending = ".keikocho";

    /// <summary>The full path of a file that a club is to be kept in; it may exist already.</summary>
    /// <exception cref="WrongUsageException">Its name does not end in <see cref="Ending"/>.</exception>
    /// <exception cref="RefusalException">It is a folder, or lies in none.</exception>
    public static string Wanted(string typed)
    {
        var path = EngineChoice.File(typed).File;
        if (!path.EndsWith(Ending, StringComparison.OrdinalIgnoreCase))
            throw new WrongUsageException($"The name of a club's file ends in {Ending}; '{typed}' does not.");
        if (Directory.Exists(path))
            throw new RefusalException($"{path} is a folder; name the club's file inside it.");
        return InAFolder(path);
    }

    /// <summary>The full path of a file of any name that is to be written beside the club's: a copy, an archive.</summary>
    /// <exception cref="RefusalException">It lies in no folder.</exception>
    public static string Target(string typed) => InAFolder(EngineChoice.File(typed).File);

    private static string InAFolder(string path) => Directory.Exists(Path.GetDirectoryName(path))
        ? path
        : throw new RefusalException($"The folder {Path.GetDirectoryName(path)} does not exist; make it first or name another file.");

    /// <summary>
    /// Makes a new club's file. It is made under another name and takes its own only when it is whole: what was stopped or refused leaves
    /// nothing behind.
    /// </summary>
    /// <param name="path">See <see cref="Wanted"/>.</param>
    /// <param name="fill">Brings the empty file to shape and fills it.</param>
    /// <exception cref="RefusalException">It exists already, or it cannot be written.</exception>
    public static async Task<T> MakeAsync<T>(string path, Func<Engine, Task<T>> fill)
    {
        ArgumentNullException.ThrowIfNull(fill);
        if (Path.Exists(path))
            throw new RefusalException($"{path} exists already; name a file that does not. Nothing was changed.");
        var unfinished = path + ".unfinished";
        var engine = new SqliteEngine(unfinished);
        try
        {
            Remove(unfinished);
            var filled = await fill(engine);
            // The last connection takes the log beside the file into it.
            engine.Release();
            File.Move(unfinished, path);
            return filled;
        }
        catch (StoreRefusal refusal)
        {
            // The name that was typed, not the one it had meanwhile.
            throw new RefusalException(refusal.Message.Replace(unfinished, path, StringComparison.Ordinal));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or DbException)
        {
            throw new RefusalException($"{path} could not be written ({e.Message.TrimEnd('.')}); nothing was kept of it.");
        }
        finally
        {
            engine.Release();
            Remove(unfinished);
        }
    }

    private static void Remove(string file)
    {
        foreach (var ending in new[] { "", "-wal", "-shm", "-journal" })
            File.Delete(file + ending);
    }
}
