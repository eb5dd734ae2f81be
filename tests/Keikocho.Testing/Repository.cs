namespace Keikocho.Testing;

/// <summary>Where the sources of this build lie.</summary>
public static class Repository
{
    /// <summary>The folder that holds <c>Keikocho.slnx</c>.</summary>
    public static string Root { get; } = FindRoot(AppContext.BaseDirectory);

    /// <summary>The full path of a file or folder named from the root, with forward slashes.</summary>
    public static string PathOf(string fromRoot) => Path.GetFullPath(Path.Combine(Root, fromRoot));

    private static string FindRoot(string start)
    {
        for (var folder = new DirectoryInfo(start); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Keikocho.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException($"No folder above {start} holds Keikocho.slnx. Run the tests from inside the source tree.");
    }
}
