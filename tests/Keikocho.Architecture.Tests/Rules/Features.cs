using System.Text.RegularExpressions;

namespace Keikocho.Architecture.Tests.Rules;

/// <summary>The features of App, a folder each, and which of them name one another in their sources.</summary>
internal static partial class Features
{
    private const string Home = "src/Keikocho.App/";

    /// <summary>Pairs of features of which each names the other, in alphabetical order: "Papers and ParentsPages".</summary>
    public static IReadOnlyList<string> NeedingEachOther(IEnumerable<SourceFile> sources)
    {
        var files = sources.Where(f => f.Path.StartsWith(Home, StringComparison.Ordinal) && f.Path[Home.Length..].Contains('/', StringComparison.Ordinal)).ToList();
        var features = files.Select(FeatureOf).Distinct().Order(StringComparer.Ordinal).ToArray();
        var needs = features.ToDictionary(f => f, f => files.Where(file => FeatureOf(file) == f)
            .SelectMany(file => Named().Matches(file.Text).Select(m => m.Groups[1].Value)).Where(other => other != f && features.Contains(other)).ToHashSet());
        return
        [
            .. from one in features
               from other in features
               where string.CompareOrdinal(one, other) < 0 && needs[one].Contains(other) && needs[other].Contains(one)
               select $"{one} and {other}",
        ];
    }

    private static string FeatureOf(SourceFile file) => file.Path[Home.Length..].Split('/')[0];

    [GeneratedRegex(@"Keikocho\.App\.([A-Z][A-Za-z]+)")]
    private static partial Regex Named();
}
