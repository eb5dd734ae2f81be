using System.Text;

namespace Keikocho.Store.Starter;

/// <summary>The texts of the starter library, which travel inside the program.</summary>
public static class StarterFile
{
    /// <summary>The names of all files, with forward slashes, in order: "names.csv".</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        .. typeof(StarterFile).Assembly.GetManifestResourceNames()
            .Where(n => n.StartsWith(Root, StringComparison.Ordinal)).Select(n => n[Root.Length..].Replace('\\', '/')).Order(StringComparer.Ordinal),
    ];

    private const string Root = "starter/";

    /// <summary>Opens a file for reading.</summary>
    /// <exception cref="ArgumentException">There is no such file.</exception>
    public static TextReader Open(string name)
    {
        var assembly = typeof(StarterFile).Assembly;
        var stream = assembly.GetManifestResourceStream(Root + name) ?? assembly.GetManifestResourceStream(Root + name.Replace('/', '\\'))
            ?? throw new ArgumentException($"The starter library has no file {name}; it has {string.Join(", ", All)}.", nameof(name));
        return new StreamReader(stream, Encoding.UTF8);
    }
}
