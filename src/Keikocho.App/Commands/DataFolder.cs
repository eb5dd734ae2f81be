namespace Keikocho.App.Commands;

/// <summary>
/// Where this machine keeps what belongs to Keikocho: the demo club, the keys that protect cookies, the copies made before an
/// upgrade. Never the source tree: by default the user's own local data folder (on Linux <c>~/.local/share/Keikocho</c>).
/// </summary>
public static class DataFolder
{
    /// <summary>The environment variable that names another folder.</summary>
    public const string Variable = "KEIKOCHO_DATA";

    /// <summary>The folder, made if it is not there, readable by its owner only where the system knows owners.</summary>
    /// <exception cref="RefusalException">There is no such place, or it cannot be made.</exception>
    public static string Open() => Open(Environment.GetEnvironmentVariable(Variable));

    /// <summary>The same, for a wanted path; null or empty takes the default.</summary>
    /// <exception cref="RefusalException">There is no such place, or it cannot be made.</exception>
    public static string Open(string? wanted)
    {
        var folder = string.IsNullOrWhiteSpace(wanted) ? Default() : Path.GetFullPath(wanted);
        try
        {
            if (OperatingSystem.IsWindows())
                Directory.CreateDirectory(folder);
            else
                Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new RefusalException($"The data folder {folder} cannot be made ({e.Message.TrimEnd('.')}); name another one with {Variable}.");
        }
        return folder;
    }

    private static string Default()
    {
        var local = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
        return local.Length == 0
            ? throw new RefusalException($"This user has no folder for data of programs; name one with {Variable}.")
            : Path.Combine(local, "Keikocho");
    }
}
