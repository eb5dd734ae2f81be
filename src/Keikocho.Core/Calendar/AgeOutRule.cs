using Keikocho.Core.Kernel;

namespace Keikocho.Core.Calendar;

/// <summary>When a child leaves a programme for its age.</summary>
public enum LeavingRule
{
    /// <summary>On the birthday.</summary>
    Birthday = 0,
    /// <summary>At the end of the term in which the birthday falls; on the birthday when it falls between terms.</summary>
    EndOfThatTerm = 1,
    /// <summary>At the first end of a school year on or after the birthday.</summary>
    SchoolYearEnd = 2,
}

/// <summary>The rule by which children leave.</summary>
/// <param name="LeavingAge">Age on leaving. Proposed 13 (ours, no source), 5 to 21.</param>
/// <param name="Leaves">Birthday, end of that term, or school-year end. Proposed birthday.</param>
/// <param name="LeapBirthday">Where 29 February falls in a common year. Proposed 28 February.</param>
/// <param name="SchoolYearEndMonth">Month in which the school year ends. Proposed 8 (31 August).</param>
/// <param name="SchoolYearEndDay">Day on which the school year ends. Proposed 31.</param>
/// <param name="TellTermsAhead">The family is told so many terms ahead. Proposed 2 (common practice), 0 to 6.</param>
public sealed record AgeOutRule(
    int LeavingAge = 13,
    LeavingRule Leaves = LeavingRule.Birthday,
    LeapBirthday LeapBirthday = LeapBirthday.TwentyEighthFebruary,
    int SchoolYearEndMonth = 8,
    int SchoolYearEndDay = 31,
    int TellTermsAhead = 2)
{
    private static readonly WholeNumberSetting AgeSetting = new(
        "ageOut.leavingAge", "Age on leaving the programme", 13, "years", 5, 21, Setting.Ours);

    private static readonly ChoiceSetting LeavesSetting = new(
        "ageOut.leaves", "Leaves on", "birthday", ["birthday", "endOfThatTerm", "schoolYearEnd"], Setting.Ours);

    private static readonly ChoiceSetting LeapSetting = new(
        "ageOut.leapBirthday", "A birthday on 29 February is in other years on", "28 February", ["28 February", "1 March"], "ours; laws differ by country");

    private static readonly WholeNumberSetting MonthSetting = new(
        "ageOut.schoolYearEndMonth", "Month in which the school year ends", 8, "", 1, 12, Setting.Ours);

    private static readonly WholeNumberSetting DaySetting = new(
        "ageOut.schoolYearEndDay", "Day on which the school year ends", 31, "", 1, 31, Setting.Ours);

    private static readonly WholeNumberSetting TellSetting = new(
        "ageOut.tellTermsAhead", "The family is told so many terms ahead", 2, "terms", 0, 6, "common practice, no source");

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } =
        [AgeSetting, LeavesSetting, LeapSetting, MonthSetting, DaySetting, TellSetting];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() =>
    [
        AgeSetting.Use(LeavingAge),
        LeavesSetting.Use(LeavesSetting.Choices[(int)Leaves]),
        LeapSetting.Use(LeapSetting.Choices[(int)LeapBirthday]),
        MonthSetting.Use(SchoolYearEndMonth),
        DaySetting.Use(SchoolYearEndDay),
        TellSetting.Use(TellTermsAhead),
    ];

    internal void Guard()
    {
        AgeSetting.Guard(LeavingAge, nameof(LeavingAge));
        MonthSetting.Guard(SchoolYearEndMonth, nameof(SchoolYearEndMonth));
        DaySetting.Guard(SchoolYearEndDay, nameof(SchoolYearEndDay));
        TellSetting.Guard(TellTermsAhead, nameof(TellTermsAhead));
    }
}
