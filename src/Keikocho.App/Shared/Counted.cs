using System.Globalization;

namespace Keikocho.App.Shared;

/// <summary>Counts as a page says them: "1 lesson", "4 lessons".</summary>
public static class Counted
{
    /// <summary>The number with its noun, in the plural where it is not one.</summary>
    public static string Of(int number, string one, string? many = null) =>
        $"{number.ToString(CultureInfo.InvariantCulture)} {(number == 1 ? one : many ?? one + "s")}";
}
