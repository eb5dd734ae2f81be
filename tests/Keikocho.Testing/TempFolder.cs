namespace Keikocho.Testing;

/// <summary>
/// An empty folder of its own, deleted with all it holds at the end. Use it as a class fixture, or with <c>using</c> for one test.
/// A file that is still open at the end makes the deletion fail where the system guards open files: that is a leak to mend.
/// </summary>
public sealed class TempFolder : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("keikocho-test-");

    /// <summary>The full path of the folder.</summary>
    public string Path => folder.FullName;

    /// <summary>The full path of a name inside the folder; nothing is made.</summary>
    public string File(string name) => System.IO.Path.Combine(folder.FullName, name);

    /// <summary>The full path of a new, empty folder inside this one.</summary>
    public string Folder(string name) => folder.CreateSubdirectory(name).FullName;

    /// <inheritdoc />
    public void Dispose()
    {
        folder.Refresh();
        if (folder.Exists)
        {
            folder.Delete(recursive: true);
        }
    }
}
