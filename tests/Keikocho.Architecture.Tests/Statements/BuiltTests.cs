using Keikocho.Testing;

namespace Keikocho.Architecture.Tests.Statements;

/// <summary>The built assemblies of all test projects, found beside this one.</summary>
internal static class BuiltTests
{
    /// <summary>The names of the test projects of the source tree, in order.</summary>
    public static IReadOnlyList<string> Projects(string testsFolder) =>
    [
        .. Directory.EnumerateDirectories(testsFolder, "Keikocho.*.Tests")
            .Select(folder => Path.GetFileName(folder))
            .Where(name => File.Exists(Path.Combine(testsFolder, name, name + ".csproj")))
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>
    /// Where a project's assembly lies when it was built as this one was (same configuration, framework and system);
    /// throws with what to do when it is not there.
    /// </summary>
    public static string PathOf(string project, string baseDirectory)
    {
        var own = typeof(BuiltTests).Assembly.GetName().Name!;
        var fromTests = Path.GetRelativePath(Repository.PathOf("tests"), baseDirectory);
        var path = Path.Combine(Repository.PathOf("tests"), fromTests.Replace(own, project, StringComparison.Ordinal), project + ".dll");
        return File.Exists(path)
            ? path
            : throw new FileNotFoundException($"The tests of {project} are not built, so nobody knows which statements they hold: {path} is missing. Run ./test architecture.");
    }
}
