namespace Keikocho.Core.Syllabus;

/// <summary>What one edition changed against another, in words.</summary>
/// <param name="Rank">Name of the rank that it is about; null for the ladder, the units or the items.</param>
/// <param name="Sentence">"Yellow: O-goshi, moving was added."</param>
public sealed record EditionChange(string? Rank, string Sentence);

/// <summary>The difference between two editions.</summary>
public static class CompareEditions
{
    /// <summary>Every change, ladder order; empty when they ask the same.</summary>
    public static IReadOnlyList<EditionChange> Changes(Edition older, Edition newer) => throw new NotImplementedException();
}
