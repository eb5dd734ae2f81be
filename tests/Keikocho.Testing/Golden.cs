using Xunit;

namespace Keikocho.Testing;

/// <summary>
/// Compares an answer with the file that is kept for it. With <c>KEIKOCHO_UPDATE_GOLDEN=1</c> the file is written instead:
/// read the difference before it is committed.
/// </summary>
public static class Golden
{
    /// <summary>The variable that turns comparing into writing.</summary>
    public const string Variable = "KEIKOCHO_UPDATE_GOLDEN";

    /// <summary>Fails at the first line that differs. Line endings do not count.</summary>
    /// <param name="fromRoot">The kept file, named from the root of the sources.</param>
    /// <param name="actual">The answer to compare.</param>
    public static void Check(string fromRoot, string actual)
    {
        ArgumentNullException.ThrowIfNull(actual);
        var path = Repository.PathOf(fromRoot);
        var wanted = actual.ReplaceLineEndings("\n");
        if (Environment.GetEnvironmentVariable(Variable) == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, wanted);
            return;
        }

        Assert.True(File.Exists(path), $"{fromRoot} is missing. Make it with {Variable}=1.");
        var difference = FirstDifference(File.ReadAllText(path).ReplaceLineEndings("\n"), wanted);
        Assert.True(difference is null, $"{fromRoot} is out of date. {difference} Remake it with {Variable}=1 and read what changed.");
    }

    /// <summary>A sentence about the first line in which two texts differ; null when they are the same.</summary>
    public static string? FirstDifference(string kept, string actual)
    {
        ArgumentNullException.ThrowIfNull(kept);
        ArgumentNullException.ThrowIfNull(actual);
        if (kept == actual)
        {
            return null;
        }

        var left = kept.Split('\n');
        var right = actual.Split('\n');
        var line = 0;
        while (line < left.Length && line < right.Length && left[line] == right[line])
        {
            line++;
        }

        return $"Line {line + 1}: kept \"{At(left, line)}\", now \"{At(right, line)}\".";
    }

    private static string At(string[] lines, int line) => line < lines.Length ? lines[line] : "(end of file)";
}
