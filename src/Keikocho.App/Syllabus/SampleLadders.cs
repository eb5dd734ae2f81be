using Keikocho.Core.Syllabus;

namespace Keikocho.App.Syllabus;

/// <summary>A ladder that comes with the program to begin from.</summary>
/// <param name="Slug">Its name in a form.</param>
/// <param name="Edition">The ladder with its source and cautions.</param>
public sealed record SampleLadder(string Slug, Edition Edition);

/// <summary>The ladders that come with the program.</summary>
public static class SampleLadders
{
    /// <summary>All of them, the samples first.</summary>
    public static IReadOnlyList<SampleLadder> All { get; } = [];
}
