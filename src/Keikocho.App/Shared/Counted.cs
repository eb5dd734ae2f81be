using System.Globalization;

namespace Keikocho.App.Shared;

/// <summary>Counts as a page says them: "1 lesson", "4 lessons".</summary>
public static class Counted
{
    /// <summary>The number with its noun, in the plural where it is not one.</summary>
    public static string Of(int number, string one, string? many = null) =>
        $"{number.ToString(CultureInfo.InvariantCulture)} {(number == 1 ? one : many ?? one + "s")}";

    /// <summary>"a", "a and b", "a, b and c".</summary>
    public static string List(IReadOnlyList<string> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        return parts.Count switch
        {
            0 => "",
            1 => parts[0],
            _ => $"{string.Join(", ", parts.Take(parts.Count - 1))} and {parts[^1]}",
        };
    }
}
