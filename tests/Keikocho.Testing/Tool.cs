using Xunit;

namespace Keikocho.Testing;

/// <summary>Programs of the machine that some tests drive: a browser, a PDF reader. Without one, its tests skip by name.</summary>
public static class Tool
{
    /// <summary>The full path of the first of <paramref name="names"/> that is on the PATH; skips the running test when there is none.</summary>
    public static string OrSkip(params string[] names)
    {
        ArgumentNullException.ThrowIfNull(names);
        var path = Find(Environment.GetEnvironmentVariable("PATH") ?? string.Empty, names);
        Assert.SkipWhen(path is null, $"not installed: {string.Join(" or ", names)}");
        return path!;
    }

    /// <summary>A Chromium on the PATH (or where <c>KEIKOCHO_TEST_CHROMIUM</c> says); skips the running test when there is none.</summary>
    public static string ChromiumOrSkip() =>
        Environment.GetEnvironmentVariable("KEIKOCHO_TEST_CHROMIUM") is { Length: > 0 } named
            ? named
            : OrSkip("chromium", "chromium-browser", "google-chrome", "google-chrome-stable");

    /// <summary>The first of <paramref name="names"/>, in their order, that lies in a folder of <paramref name="searchPath"/>; null when none does.</summary>
    public static string? Find(string searchPath, IEnumerable<string> names)
    {
        ArgumentNullException.ThrowIfNull(searchPath);
        ArgumentNullException.ThrowIfNull(names);
        var folders = searchPath.Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        var endings = OperatingSystem.IsWindows() ? new[] { ".exe", ".cmd" } : [string.Empty];
        return (from name in names
                from folder in folders
                from ending in endings
                let path = Path.Combine(folder, name + ending)
                where File.Exists(path)
                select path).FirstOrDefault();
    }
}
