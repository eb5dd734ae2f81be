using Keikocho.Core.Kernel;

namespace Keikocho.Core.Calendar;

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
