using System.Globalization;

namespace Keikocho.Core.Kernel;

/// <summary>Dates and times as the papers say them: "3 March 2026", "3 Mar", "Tuesday 3 March 2026", "17:30".</summary>
public static class PlainDate
{
    /// <summary>"3 March 2026".</summary>
    public static string Full(this DateOnly day) => day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>"3 Mar".</summary>
    public static string Brief(this DateOnly day) => day.ToString("d MMM", CultureInfo.InvariantCulture);

    /// <summary>"Tuesday 3 March 2026".</summary>
    public static string WithWeekday(this DateOnly day) => day.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>"2026-03-03", for files and addresses.</summary>
    public static string Iso(this DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>"17:30".</summary>
    public static string Plain(this TimeOnly time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);
}
