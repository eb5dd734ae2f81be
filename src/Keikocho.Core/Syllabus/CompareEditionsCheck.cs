using System.Text.Json.Nodes;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>Judges a list of changes by the documents alone: nothing may be said of equal ones, and something of each place that differs.</summary>
public static class CompareEditionsCheck
{
    /// <summary>What is wrong with <paramref name="changes"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(Edition older, Edition newer, IReadOnlyList<EditionChange> changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        var objections = new List<string>();
        var (before, after) = (Document(older), Document(newer));
        if (JsonNode.DeepEquals(before, after) && changes.Count > 0)
            objections.Add("The editions ask the same, but changes are named.");
        foreach (var rank in newer.Ranks)
        {
            var same = JsonNode.DeepEquals(Rank(before, rank.Key), Rank(after, rank.Key));
            if (same == changes.Any(c => c.Rank == rank.Name && !c.Sentence.Contains("another place", StringComparison.Ordinal)))
                objections.Add($"{rank.Name} {(same ? "is the same" : "differs")}, and the list says otherwise.");
        }

        foreach (var part in new[] { "units", "firstCourse", "items", "techniques" })
        {
            if (!JsonNode.DeepEquals(before[part], after[part]) && changes.All(c => c.Rank is not null))
                objections.Add($"The {part} differ, and nothing is said of it.");
        }

        if (changes.Any(c => string.IsNullOrWhiteSpace(c.Sentence) || !c.Sentence.EndsWith('.')) || changes.Distinct().Count() != changes.Count)
            objections.Add("A change is empty or said twice.");
        return objections;
    }

    private static JsonNode Document(Edition edition) =>
        JsonNode.Parse(SumJson.Write(edition with { Name = "", From = null, Source = null, Cautions = null, Techniques = edition.Techniques ?? [] }))!;

    private static JsonNode? Rank(JsonNode edition, string key) => edition["ranks"]!.AsArray().FirstOrDefault(r => (string?)r!["key"] == key);
}
