namespace Keikocho.Store.Demo;

/// <summary>
/// Instants of the demo club's hall. The demo is the same on a machine without time-zone data, so the one rule that it needs is here:
/// summer time from the last Sunday in March to the last Sunday in October (The Summer Time Order 2002, S.I. 2002/262).
/// </summary>
internal static class LondonTime
{
    /// <summary>Its name in the public time-zone database.</summary>
    public const string Zone = "Europe/London";

    /// <summary>The instant of a local time of day. The clocks change at night; the demo has no times before 9 in the morning.</summary>
    public static DateTimeOffset At(DateOnly day, int minutes, int seconds = 0)
    {
        var offset = IsSummer(day) ? TimeSpan.FromHours(1) : TimeSpan.Zero;
        return new DateTimeOffset(day.ToDateTime(new TimeOnly(minutes / 60, minutes % 60, seconds)), offset).ToUniversalTime();
    }

    private static bool IsSummer(DateOnly day) => day >= LastSunday(day.Year, 3) && day < LastSunday(day.Year, 10);

    private static DateOnly LastSunday(int year, int month)
    {
        var last = new DateOnly(year, month, DateTime.DaysInMonth(year, month));
        return last.AddDays(-(int)last.DayOfWeek);
    }
}
