using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>How tonight's card weighs what the children need.</summary>
/// <param name="UrgentLessons">A child with at most so many lessons left before a test counts double. Proposed 4 (ours, no source).</param>
/// <param name="ServeBoth">The last slot goes to a newcomer or a child near a test whom no other slot would serve. Proposed yes (ours, no source).</param>
public sealed record CardRule(int UrgentLessons = 4, bool ServeBoth = true)
{
    private static readonly WholeNumberSetting Urgent = new("card.urgentLessons", "A child with at most so many lessons left before a test counts double", 4, "lessons", 0, 20, Setting.Ours);
    private static readonly YesNoSetting Both = new("card.serveBoth", "The last slot serves a newcomer or a child near a test whom no other slot serves", true, Setting.Ours);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Urgent, Both];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() => [Urgent.Use(UrgentLessons), Both.Use(ServeBoth)];

    internal void Guard() => Urgent.Guard(UrgentLessons, nameof(UrgentLessons));
}
