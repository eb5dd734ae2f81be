namespace Keikocho.App.Tests.Commands;

/// <summary>A fenced block of a page.</summary>
/// <param name="Mark">What stands behind the opening fence.</param>
/// <param name="Text">What stands in it.</param>
/// <param name="Line">Number of its first line on the page, from 1.</param>
public sealed record Fence(string Mark, string Text, int Line);

/// <summary>Reads the fenced blocks of a page.</summary>
public static class Fences
{
    /// <summary>All of them, in the order of the page.</summary>
    public static IReadOnlyList<Fence> Of(string page)
    {
        ArgumentNullException.ThrowIfNull(page);
        var fences = new List<Fence>();
        var lines = page.ReplaceLineEndings("\n").Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            if (!lines[i].StartsWith("```", StringComparison.Ordinal))
                continue;
            var end = Array.IndexOf(lines, "```", i + 1);
            if (end < 0)
                throw new FormatException($"The block that begins in line {i + 1} has no end.");
            fences.Add(new Fence(lines[i][3..].Trim(), string.Join('\n', lines[(i + 1)..end]), i + 2));
            i = end;
        }
        return fences;
    }
}
