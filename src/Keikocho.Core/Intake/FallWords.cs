using System.Collections.Frozen;

namespace Keikocho.Core.Intake;

/// <summary>Words by which a heading of a sign-off grid speaks of falls, in the languages that headers are read in. From common practice, no source.</summary>
public static class FallWords
{
    /// <summary>The words, folded. Printed in docs/formats/import.md.</summary>
    public static IReadOnlyList<string> Table { get; } =
    [
        "ukemi", "breakfall", "breakfalls", "fall", "falls", "falling", "chute", "chutes", "fallschule", "falltechnik", "valbreken", "caida", "caidas",
    ];

    private static readonly FrozenSet<string> Words = Table.ToFrozenSet(StringComparer.Ordinal);

    /// <summary>Whether a heading has one of the words.</summary>
    public static bool Has(string heading) => NameFold.Fold(heading).Split(' ').Any(Words.Contains);
}
