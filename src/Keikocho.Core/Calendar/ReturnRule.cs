using Keikocho.Core.Kernel;

namespace Keikocho.Core.Calendar;

/// <summary>From how many days away on what is seen again.</summary>
/// <param name="FallsAfterDays">Falls are seen again. Proposed 21 (ours, no source), 7 to 365.</param>
/// <param name="MoreAfterDays">The longer list. Proposed 42 (ours, no source), 7 to 365.</param>
public sealed record ReturnRule(int FallsAfterDays = 21, int MoreAfterDays = 42)
{
    private static readonly WholeNumberSetting Falls = new(
        "return.fallsAfterDays", "Falls are seen again after so many days away", 21, "days", 7, 365, Setting.Ours);

    private static readonly WholeNumberSetting More = new(
        "return.moreAfterDays", "Stop word, holds first and no free practice after so many days away", 42, "days", 7, 365, Setting.Ours);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Falls, More];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() => [Falls.Use(FallsAfterDays), More.Use(MoreAfterDays)];

    internal void Guard()
    {
        Falls.Guard(FallsAfterDays, nameof(FallsAfterDays));
        More.Guard(MoreAfterDays, nameof(MoreAfterDays));
        if (MoreAfterDays < FallsAfterDays)
            throw new ArgumentException("The longer list does not come before the falls.", nameof(MoreAfterDays));
    }
}
