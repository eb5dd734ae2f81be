using System.Security.Cryptography;

namespace Keikocho.App.Tests.Commands;

/// <summary>Every file of a folder with the hash of its content, to see that nothing changed.</summary>
public static class FolderPicture
{
    /// <summary>
    /// Takes it. SQLite's own empty log and its index beside a file that was read are left out: they hold nothing of the club, which the
    /// file's hash shows.
    /// </summary>
    public static IReadOnlyList<string> Of(string folder) =>
    [
        .. Directory.GetFileSystemEntries(folder, "*", SearchOption.AllDirectories)
            .Where(path => !(path.EndsWith("-wal", StringComparison.Ordinal) && new FileInfo(path).Length == 0) && !path.EndsWith("-shm", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(path => File.Exists(path) ? $"{path} {Hash(path)}" : path),
    ];

    private static string Hash(string path)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        return Convert.ToHexString(SHA256.HashData(stream));
    }
}
