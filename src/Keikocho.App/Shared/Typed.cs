using System.Globalization;

namespace Keikocho.App.Shared;

/// <summary>Reads what a form's date, time and number fields send; null where it is none.</summary>
public static class Typed
{
    /// <summary>A date as HTML sends it, 2026-03-03.</summary>
    public static DateOnly? Date(string? text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null;

    /// <summary>A time as HTML sends it, 17:30.</summary>
    public static TimeOnly? Time(string? text) =>
        TimeOnly.TryParseExact(text, ["HH:mm", "HH:mm:ss", "H:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)
            ? new TimeOnly(time.Hour, time.Minute)
            : null;

    /// <summary>A whole number without a sign.</summary>
    public static int? Whole(string? text) =>
        int.TryParse(text?.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    /// <summary>Metres with a point or a comma, as centimetres.</summary>
    public static int? MetresAsCm(string? text) =>
        decimal.TryParse(text?.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var metres) && metres < 1000
            ? (int)Math.Round(metres * 100, MidpointRounding.AwayFromZero)
            : null;

    /// <summary>Feet with a point or a comma, as centimetres; a foot is 30.48 cm.</summary>
    public static int? FeetAsCm(string? text) =>
        decimal.TryParse(text?.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var feet) && feet < 3000
            ? (int)Math.Round(feet * 30.48m, MidpointRounding.AwayFromZero)
            : null;
}
