namespace Keikocho.Core.Syllabus;

/// <summary>Something wrong in an edition.</summary>
/// <param name="Path">Where: "ranks[3].requirements[1].ask.items[0]", in the members of <see cref="Edition"/> with indexes from 0.</param>
/// <param name="Sentence">What is wrong and what to do, in one sentence.</param>
/// <param name="Blocks">False for a caution: it may be published as it is.</param>
public sealed record EditionFault(string Path, string Sentence, bool Blocks);

/// <summary>Whether an edition holds together: keys, counts, links, circles, falls before throws.</summary>
public static class CheckEdition
{
    /// <summary>Everything that is wrong, in the order of the edition; empty when it holds together.</summary>
    public static IReadOnlyList<EditionFault> Faults(Edition edition) => throw new NotImplementedException();
}

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
