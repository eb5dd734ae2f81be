using System.Globalization;

namespace Keikocho.Core.Kernel;

/// <summary>Counts in plain words: "1 lesson", "4 lessons", "1 is", "4 are".</summary>
internal static class Words
{
    /// <summary>The number with its noun, in the plural where it is not one.</summary>
    public static string Count(int number, string one, string? many = null) =>
        $"{number.ToString(CultureInfo.InvariantCulture)} {(number == 1 ? one : many ?? one + "s")}";

    /// <summary>"is" for one, "are" otherwise.</summary>
    public static string Is(int number) => number == 1 ? "is" : "are";

    /// <summary>"was" for one, "were" otherwise.</summary>
    public static string Was(int number) => number == 1 ? "was" : "were";

    /// <summary>"a", "a and b", "a, b and c".</summary>
    public static string List(IReadOnlyList<string> parts) => parts.Count switch
    {
        0 => "",
        1 => parts[0],
        _ => string.Join(", ", parts.Take(parts.Count - 1)) + " and " + parts[^1],
    };

    /// <summary>A decimal with one digit behind the point: "2.8".</summary>
    public static string OneDigit(decimal value) => value.ToString("0.0", CultureInfo.InvariantCulture);
}
