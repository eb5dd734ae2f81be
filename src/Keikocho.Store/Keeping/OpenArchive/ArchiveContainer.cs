using System.IO.Compression;

namespace Keikocho.Store.Keeping.OpenArchive;

/// <summary>Where the files of an archive go, one after the other.</summary>
internal interface IArchiveTarget
{
    /// <summary>Begins a file; the caller closes it before the next.</summary>
    Stream Begin(string name);
}

/// <summary>Where the files of an archive come from.</summary>
internal interface IArchiveSource : IDisposable
{
    /// <summary>Opens a file; null where there is none of this name.</summary>
    Stream? Open(string name);
}

internal sealed class ZipTarget(ZipArchive zip, DateTimeOffset madeAt) : IArchiveTarget
{
    // A zip knows no year before 1980.
    private static readonly DateTimeOffset Earliest = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public Stream Begin(string name)
    {
        var entry = zip.CreateEntry(name);
        entry.LastWriteTime = madeAt < Earliest ? Earliest : madeAt;
        return entry.Open();
    }
}

internal sealed class FolderTarget(string folder) : IArchiveTarget
{
    public Stream Begin(string name)
    {
        var path = Path.Combine(folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        return new FileStream(path, FileMode.CreateNew, FileAccess.Write);
    }
}

internal sealed class ZipSource(ZipArchive zip) : IArchiveSource
{
    public Stream? Open(string name) => zip.GetEntry(name)?.Open();

    public void Dispose() => zip.Dispose();
}

internal sealed class FolderSource(string folder) : IArchiveSource
{
    // Every name that is asked for is one of ours or was checked: none leads out of the folder.
    public Stream? Open(string name) => Path.Combine(folder, name) is var path && File.Exists(path) ? File.OpenRead(path) : null;

    public void Dispose()
    {
    }
}
