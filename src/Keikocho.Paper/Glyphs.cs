using Keikocho.Paper.Layout;

namespace Keikocho.Paper;

/// <summary>What the fonts of papers can draw, asked before a paper is made.</summary>
public static class Glyphs
{
    /// <summary>The characters in <paramref name="texts"/> that no font of ours has, each once, by code point. On a paper each stands as 〓.</summary>
    public static IReadOnlyList<string> MissingIn(IEnumerable<string> texts)
    {
        ArgumentNullException.ThrowIfNull(texts);
        var missing = new SortedSet<int>();
        foreach (var text in texts)
            FontSet.Runs(text, true, missing);
        return [.. missing.Select(char.ConvertFromUtf32)];
    }
}
