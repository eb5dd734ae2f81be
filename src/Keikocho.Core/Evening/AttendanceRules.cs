using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>The settings of the fold.</summary>
/// <param name="LateAfterMinutes">A tap up to this many minutes after the bow is on time: the register takes that long. Proposed 5 (ours, no source), 0 to 30.</param>
/// <param name="LeavingEarlyCounts">A child who came before half time and leaves before half time counts as attended. Proposed true (the rule only asks who was on the mat before half time).</param>
public sealed record AttendanceRules(int LateAfterMinutes = 5, bool LeavingEarlyCounts = true)
{
    private static readonly WholeNumberSetting LateAfter = new(
        "attendance.lateAfterMinutes", "Late is later than this after the bow", 5, "minutes", 0, 30, Setting.Ours);

    private static readonly YesNoSetting LeavingEarly = new(
        "attendance.leavingEarlyCounts", "Leaving before half time still counts as a lesson", true, Setting.Ours);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [LateAfter, LeavingEarly];

    /// <summary>The values in use, for the answer that they led to.</summary>
    public IReadOnlyList<SettingUsed> Used() => [LateAfter.Use(LateAfterMinutes), LeavingEarly.Use(LeavingEarlyCounts)];

    internal void Guard() => LateAfter.Guard(LateAfterMinutes, nameof(LateAfterMinutes));
}
