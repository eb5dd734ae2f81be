using System.Globalization;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Kernel;

namespace Keikocho.App.Students;

/// <summary>Time taken off as the form sends it.</summary>
public sealed class TimeOffFields
{
    private const int LongestReason = 200;

    /// <summary>Made with the form.</summary>
    public Guid? Command { get; set; }
    /// <summary>Key of the rank that the page showed.</summary>
    public string? OffRank { get; set; }
    /// <summary>The share.</summary>
    public string? Percent { get; set; }
    /// <summary>The reason.</summary>
    public string? OffWhy { get; set; }
    /// <summary>The day of the decision.</summary>
    public string? OffOn { get; set; }
    /// <summary>The programme whose page it stands on.</summary>
    public Guid? Programme { get; set; }

    /// <summary>Reads them.</summary>
    /// <param name="most">The most that the rank allows.</param>
    /// <param name="today">Today.</param>
    public (int Percent, string Why, DateOnly On, List<FieldError> Errors) Read(int most, DateOnly today)
    {
        var errors = new List<FieldError>();
        if (!int.TryParse(Percent?.Trim().TrimEnd('%').Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var percent) || percent is < 1 or > 100)
            errors.Add(new("percent", $"Write how many percent, a whole number from 1 to {most}."));
        else if (percent > most)
            errors.Add(new("percent", $"This rank allows {most} % at most. Write {most} or less."));
        var why = OffWhy?.Trim() ?? "";
        if (why.Length == 0) errors.Add(new("offWhy", "The reason is missing: it stands with the figures from now on."));
        else if (why.Length > LongestReason) errors.Add(new("offWhy", $"That is longer than {LongestReason} characters. Say it shorter."));
        var on = StandDownForms.Day(OffOn, "offOn", today, errors);
        if (on > today) errors.Add(new("offOn", $"{on.Value.Full()} is still to come. Write the day on which it was decided."));
        return (percent, why, on ?? today, errors);
    }
}
