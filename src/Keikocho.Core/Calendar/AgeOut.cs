using Keikocho.Core.Kernel;

namespace Keikocho.Core.Calendar;

/// <summary>Who leaves when, and what can still be reached.</summary>
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
