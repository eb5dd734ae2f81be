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

/// <summary>Days of one term.</summary>
/// <param name="From">First day.</param>
/// <param name="To">Last day, included.</param>
public sealed record TermDays(DateOnly From, DateOnly To);

/// <summary>The question: how many tests has this child left?</summary>
/// <param name="Today">Today; a test today is still left.</param>
/// <param name="Birth">Birth date.</param>
/// <param name="Rank">The child's rank, counted from 0 on the ladder.</param>
/// <param name="HighestRank">The highest rank of the ladder, counted the same way.</param>
/// <param name="Tests">Dates of the tests that are set.</param>
/// <param name="Terms">Terms that are set, in order of date and apart.</param>
/// <param name="Rule">The leaving rule.</param>
public sealed record AgeOutSnapshot(
    DateOnly Today, DateOnly Birth, int Rank, int HighestRank, IReadOnlyList<DateOnly> Tests, IReadOnlyList<TermDays> Terms, AgeOutRule Rule);

/// <summary>Tests left before a child leaves for its age.</summary>
/// <param name="LeavesOn">The last day in the programme; a test on it counts.</param>
/// <param name="TestsLeft">The tests from today to that day.</param>
/// <param name="HighestReachable">Highest rank reachable at one rank a test.</param>
/// <param name="TellFamilyFrom">From this day the family is to be told; null when the terms that are set do not reach back so far, which means now.</param>
/// <param name="TellNow">Whether the family is to be told by today.</param>
/// <param name="Reasons">Rules, figures and dates.</param>
/// <param name="Settings">The settings used.</param>
public sealed record AgeOutAnswer(
    DateOnly LeavesOn,
    IReadOnlyList<DateOnly> TestsLeft,
    int HighestReachable,
    DateOnly? TellFamilyFrom,
    bool TellNow,
    IReadOnlyList<Reason> Reasons,
    IReadOnlyList<SettingUsed> Settings);

/// <summary>Who leaves when, and what can still be reached (C15).</summary>
public static class AgeOut
{
    /// <summary>Reckons the tests left. Only tests that are set are known; the answer says how many that are.</summary>
    /// <exception cref="ArgumentException">A figure out of range or terms out of order.</exception>
    public static AgeOutAnswer Reckon(AgeOutSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        snapshot.Rule.Guard();
        if (snapshot.Rank < 0 || snapshot.Rank > snapshot.HighestRank)
            throw new ArgumentOutOfRangeException(nameof(snapshot), snapshot.Rank, $"The rank is from 0 to {snapshot.HighestRank}.");
        for (var i = 0; i < snapshot.Terms.Count; i++)
        {
            if (snapshot.Terms[i].To < snapshot.Terms[i].From || (i > 0 && snapshot.Terms[i].From <= snapshot.Terms[i - 1].To))
                throw new ArgumentException("The terms are in order of date and apart.", nameof(snapshot));
        }

        var rule = snapshot.Rule;
        var birthday = Age.Birthday(snapshot.Birth, rule.LeavingAge, rule.LeapBirthday);
        var leaves = rule.Leaves switch
        {
            LeavingRule.Birthday => birthday,
            LeavingRule.EndOfThatTerm => snapshot.Terms.FirstOrDefault(t => t.From <= birthday && birthday <= t.To)?.To ?? birthday,
            LeavingRule.SchoolYearEnd => SchoolYearEnd(birthday, rule),
            _ => throw new ArgumentOutOfRangeException(nameof(snapshot), rule.Leaves, "No such leaving rule."),
        };

        var left = snapshot.Tests.Where(t => t >= snapshot.Today && t <= leaves).Distinct().Order().ToArray();
        var reachable = Math.Min(snapshot.HighestRank, snapshot.Rank + left.Length);
        var lastTerm = snapshot.Terms.Count(t => t.From <= leaves) - 1;
        DateOnly? tellFrom = lastTerm >= rule.TellTermsAhead ? snapshot.Terms[lastTerm - rule.TellTermsAhead].From : null;
        var tellNow = tellFrom is null || tellFrom <= snapshot.Today;
        return new AgeOutAnswer(
            leaves, left, reachable, tellFrom, tellNow,
            [
                new LeavesForAge(birthday, rule.LeavingAge, leaves, rule.Leaves),
                new TestsLeftBeforeLeaving(left, snapshot.Tests.Distinct().Count(), leaves, snapshot.Rank, reachable, snapshot.HighestRank),
                new TellFamily(tellFrom, tellNow, rule.TellTermsAhead),
            ],
            rule.Used());
    }

    private static DateOnly SchoolYearEnd(DateOnly birthday, AgeOutRule rule)
    {
        var end = EndIn(birthday.Year, rule);
        return end >= birthday ? end : EndIn(birthday.Year + 1, rule);
    }

    private static DateOnly EndIn(int year, AgeOutRule rule) => new(
        year, rule.SchoolYearEndMonth, Math.Min(rule.SchoolYearEndDay, DateTime.DaysInMonth(year, rule.SchoolYearEndMonth)));
}

/// <summary>When the child leaves and by which rule.</summary>
/// <param name="Birthday">The birthday.</param>
/// <param name="LeavingAge">The age on it.</param>
/// <param name="LeavesOn">The last day.</param>
/// <param name="Rule">The rule.</param>
public sealed record LeavesForAge(DateOnly Birthday, int LeavingAge, DateOnly LeavesOn, LeavingRule Rule) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Rule switch
    {
        LeavingRule.EndOfThatTerm when LeavesOn != Birthday =>
            $"Turns {LeavingAge} on {Birthday.Full()} and leaves at the end of that term, {LeavesOn.Full()}.",
        LeavingRule.SchoolYearEnd =>
            $"Turns {LeavingAge} on {Birthday.Full()} and leaves at the end of that school year, {LeavesOn.Full()}.",
        _ => $"Turns {LeavingAge} on {Birthday.Full()} and leaves on that day.",
    };
}

/// <summary>Tests left and the rank they reach.</summary>
/// <param name="TestsLeft">The tests left.</param>
/// <param name="TestsSet">Tests that are set.</param>
/// <param name="LeavesOn">The last day.</param>
/// <param name="Rank">Rank now.</param>
/// <param name="Reachable">Highest rank reachable.</param>
/// <param name="HighestRank">Highest rank of the ladder.</param>
public sealed record TestsLeftBeforeLeaving(
    IReadOnlyList<DateOnly> TestsLeft, int TestsSet, DateOnly LeavesOn, int Rank, int Reachable, int HighestRank) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var dates = TestsLeft.Count == 0 ? "" : $" ({Words.List([.. TestsLeft.Select(t => t.Brief())])})";
            return $"{TestsLeft.Count} of the {Words.Count(TestsSet, "test")} set {Words.Is(TestsLeft.Count)} left by {LeavesOn.Full()}{dates}; at one rank a test, from rank {Rank} of {HighestRank} to rank {Reachable} at best.";
        }
    }
}

/// <summary>When the family is to be told.</summary>
/// <param name="From">From this day; null when the terms that are set do not reach back so far.</param>
/// <param name="Now">Whether that is by today.</param>
/// <param name="TermsAhead">Terms ahead.</param>
public sealed record TellFamily(DateOnly? From, bool Now, int TermsAhead) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => (From, Now) switch
    {
        ({ } from, false) => $"Tell the family from {from.Full()}, {Words.Count(TermsAhead, "term")} ahead.",
        ({ } from, true) => $"Tell the family now: {Words.Count(TermsAhead, "term")} ahead was {from.Full()}.",
        _ => $"Tell the family now: fewer than {Words.Count(TermsAhead, "term")} before the leaving are set.",
    };
}
