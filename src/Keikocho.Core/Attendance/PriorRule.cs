using Keikocho.Core.Kernel;

namespace Keikocho.Core.Attendance;

/// <summary>How the club's common rate of attendance is found before a child's own lessons are added.</summary>
/// <param name="LeastLessons">A child counts toward the fit from so many lessons held in the last 12 months. Proposed 8, 2 to 100.</param>
/// <param name="LeastChildren">With fewer such children the proposed prior is taken. Proposed 10, 2 to 200.</param>
/// <param name="ProposedA">Lessons attended that the proposed prior is worth. Proposed 7, 1 to 100.</param>
/// <param name="ProposedB">Lessons missed that the proposed prior is worth. Proposed 3, 1 to 100.</param>
/// <param name="MostStrength">A fitted prior is worth at most so many lessons. Proposed 100, 10 to 1000.</param>
/// <param name="LikelyPercent">Tonight's range holds at least this. Proposed 80 percent, 50 to 99.</param>
public sealed record PriorRule(
    int LeastLessons = 8, int LeastChildren = 10, int ProposedA = 7, int ProposedB = 3, int MostStrength = 100, int LikelyPercent = 80)
{
    /// <summary>A fitted prior is worth at least so many lessons: less would call every child all or nothing.</summary>
    internal const int LeastStrength = 2;

    private static readonly WholeNumberSetting Lessons = new(
        "attendance.leastLessons", "A child counts toward the common rate from so many lessons held in 12 months", 8, "lessons", 2, 100, Setting.Ours);

    private static readonly WholeNumberSetting Children = new(
        "attendance.leastChildren", "The common rate is fitted from so many such children", 10, "children", 2, 200, Setting.Ours);

    private static readonly WholeNumberSetting A = new(
        "attendance.proposedAttended", "Without a fit: attended", 7, "lessons", 1, 100, Setting.Ours);

    private static readonly WholeNumberSetting B = new(
        "attendance.proposedMissed", "Without a fit: missed", 3, "lessons", 1, 100, Setting.Ours);

    private static readonly WholeNumberSetting Strength = new(
        "attendance.mostStrength", "The common rate is worth at most so many lessons of a child", 100, "lessons", 10, 1000, Setting.Ours);

    private static readonly WholeNumberSetting Likely = new(
        "attendance.likelyPercent", "\"Likely\" numbers hold at least", 80, "percent", 50, 99, Setting.Ours);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Lessons, Children, A, B, Strength, Likely];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() =>
    [
        Lessons.Use(LeastLessons), Children.Use(LeastChildren), A.Use(ProposedA), B.Use(ProposedB),
        Strength.Use(MostStrength), Likely.Use(LikelyPercent),
    ];

    internal void Guard()
    {
        Lessons.Guard(LeastLessons, nameof(LeastLessons));
        Children.Guard(LeastChildren, nameof(LeastChildren));
        A.Guard(ProposedA, nameof(ProposedA));
        B.Guard(ProposedB, nameof(ProposedB));
        Strength.Guard(MostStrength, nameof(MostStrength));
        Likely.Guard(LikelyPercent, nameof(LikelyPercent));
    }
}
