using System.Globalization;

namespace Keikocho.App.Students;

/// <summary>A month as a page says it.</summary>
internal static class MonthYear
{
    /// <summary>"September 2024".</summary>
    public static string MonthAndYear(this DateOnly day) => day.ToString("MMMM yyyy", CultureInfo.InvariantCulture);
}
