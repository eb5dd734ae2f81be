namespace Keikocho.Testing;

/// <summary>
/// Compares a text with the one committed under <c>tests/PROJECT/Golden</c>. With KEIKOCHO_UPDATE_GOLDEN=1 the file is rewritten
/// instead; look at the difference before committing it.
/// </summary>
public static class Golden
{
    /// <summary>Throws when <paramref name="actual"/> is not the committed text; says the first line that differs.</summary>
    /// <param name="project">The test project's folder ("Keikocho.Paper.Tests").</param>
    /// <param name="name">The file's name, without its end.</param>
    /// <param name="actual">What came out now.</param>
    public static void Check(string project, string name, string actual)
    {
        ArgumentException.ThrowIfNullOrEmpty(project);
        ArgumentException.ThrowIfNullOrEmpty(name);
        ArgumentNullException.ThrowIfNull(actual);
        var path = Path.Combine(RepositoryRoot(), "tests", project, "Golden", name + ".txt");
        var now = actual.ReplaceLineEndings("\n").TrimEnd('\n') + "\n";
        if (Environment.GetEnvironmentVariable("KEIKOCHO_UPDATE_GOLDEN") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, now);
            return;
        }

        if (!File.Exists(path))
            throw new GoldenDifferenceException($"There is no golden file {path}. Run once with KEIKOCHO_UPDATE_GOLDEN=1 and look at it.");
        var then = File.ReadAllText(path).ReplaceLineEndings("\n");
        if (now != then)
            throw new GoldenDifferenceException(Difference(name, then.Split('\n'), now.Split('\n')));
    }

    private static string Difference(string name, string[] then, string[] now)
    {
        var at = 0;
        while (at < then.Length && at < now.Length && then[at] == now[at])
            at++;
        string Line(string[] lines) => at < lines.Length ? lines[at] : "(end)";
        return $"Golden file {name}, line {at + 1}\n  committed: {Line(then)}\n  now:       {Line(now)}\nIf the change is meant, run with KEIKOCHO_UPDATE_GOLDEN=1 and look at the difference.";
    }

    /// <summary>The folder that holds the solution.</summary>
    public static string RepositoryRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Keikocho.slnx")))
                return folder.FullName;
        }

        throw new InvalidOperationException($"No folder above {AppContext.BaseDirectory} holds Keikocho.slnx.");
    }
}

/// <summary>A text is not what was committed.</summary>
public sealed class GoldenDifferenceException(string message) : Exception(message);
