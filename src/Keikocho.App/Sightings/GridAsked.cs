using Keikocho.Core.Kernel;

namespace Keikocho.App.Sightings;

/// <summary>What a grid of an evening is to show.</summary>
/// <param name="End">Whose end of the mat; null for the first end that has anybody.</param>
/// <param name="Words">Words and questions, instead of what is shown.</param>
/// <param name="From">A part of the syllabus; null for what the children at that end are going for.</param>
/// <param name="Keys">Items by key, before all else.</param>
public sealed record GridAsked(MatEnd? End = null, bool Words = false, string? From = null, IReadOnlyCollection<string>? Keys = null)
{
    /// <summary>The ends, for a list to choose from.</summary>
    public static IReadOnlyList<(string Value, string Words)> Ends { get; } = [(Value(MatEnd.Beginners), "Beginners’ end"), (Value(MatEnd.Main), "Main group")];

    /// <summary>An end as forms write it.</summary>
    public static string Value(MatEnd end) => end == MatEnd.Beginners ? "beginners" : "main";

    /// <summary>The end of a value; null for none.</summary>
    public static MatEnd? Read(string? value) => value switch { "beginners" => MatEnd.Beginners, "main" => MatEnd.Main, _ => null };
}
