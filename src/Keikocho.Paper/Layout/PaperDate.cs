using System.Globalization;

namespace Keikocho.Paper.Layout;

/// <summary>Dates and times as papers write them.</summary>
internal static class PaperDate
{
    /// <summary>Tuesday 10 November 2026.</summary>
    public static string Full(DateOnly date) => date.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>10 November 2026.</summary>
    public static string Day(DateOnly date) => date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>17:30.</summary>
    public static string Clock(TimeOnly time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);
}
