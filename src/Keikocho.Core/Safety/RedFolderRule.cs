using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>What a club may set about care notes and the red folder.</summary>
/// <param name="AskAgainMonths">The family is asked again after so many months.</param>
/// <param name="ShredAfterDays">A printed red folder is shredded after so many days.</param>
public sealed record RedFolderRule(int AskAgainMonths = 12, int ShredAfterDays = 35)
{
    private static readonly WholeNumberSetting Again = new(
        "care.askAgainMonths", "Months after which the family is asked again about care notes", 12, "months", 1, 36, Setting.Ours);

    private static readonly WholeNumberSetting Shred = new(
        "folder.shredAfterDays", "Days after which a printed red folder is shredded", 35, "days", 1, 120, $"{Setting.Ours}: about as long as a month’s lessons");

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Again, Shred];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() => [Again.Use(AskAgainMonths), Shred.Use(ShredAfterDays)];

    /// <summary>The day from which the family is asked again; at once where nobody was asked yet.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of its range.</exception>
    public DateOnly AskAgainOn(DateOnly? asked, DateOnly today)
    {
        Again.Guard(AskAgainMonths, nameof(AskAgainMonths));
        return asked is { } day ? day.AddMonths(AskAgainMonths) : today;
    }

    /// <summary>The day by which a folder printed today is shredded.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of its range.</exception>
    public DateOnly ShredBy(DateOnly printed)
    {
        Shred.Guard(ShredAfterDays, nameof(ShredAfterDays));
        return printed.AddDays(ShredAfterDays);
    }
}
