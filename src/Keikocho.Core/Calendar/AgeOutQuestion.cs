using Keikocho.Core.Kernel;

namespace Keikocho.Core.Calendar;

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
