namespace Keikocho.Core.Calendar;

/// <summary>Judges an age-out answer by walking the calendar from the birth, day by day where it must.</summary>
public static class AgeOutCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(AgeOutSnapshot snapshot, AgeOutAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(answer);
        var rule = snapshot.Rule;
        var objections = new List<string>();

        // The birthday without a birthday sum: the month and day of the birth in the year of the age; 29 February by the setting.
        var day = new DateOnly(snapshot.Birth.Year + rule.LeavingAge, snapshot.Birth.Month, 1).AddDays(snapshot.Birth.Day - 1);
        if (day.Month != snapshot.Birth.Month && rule.LeapBirthday == Kernel.LeapBirthday.TwentyEighthFebruary)
            day = day.AddDays(-1);
        if (rule.Leaves == LeavingRule.EndOfThatTerm && snapshot.Terms.Any(t => day >= t.From && day <= t.To))
        {
            while (!snapshot.Terms.Any(t => t.To == day))
                day = day.AddDays(1);
        }

        if (rule.Leaves == LeavingRule.SchoolYearEnd)
        {
            while (day.Month != rule.SchoolYearEndMonth
                || (day.Day != rule.SchoolYearEndDay && !(day.Day < rule.SchoolYearEndDay && day.AddDays(1).Day == 1)))
                day = day.AddDays(1);
        }

        if (answer.LeavesOn != day)
            objections.Add("The leaving day does not follow from the birth and the rule.");
        if (!snapshot.Tests.Distinct().All(t => answer.TestsLeft.Contains(t) == (t >= snapshot.Today && t <= day))
            || !answer.TestsLeft.All(snapshot.Tests.Contains) || answer.TestsLeft.Distinct().Count() != answer.TestsLeft.Count)
            objections.Add("A test is left exactly when it is from today to the leaving day.");
        var rank = snapshot.Rank;
        foreach (var _ in answer.TestsLeft)
            rank += rank < snapshot.HighestRank ? 1 : 0;
        if (answer.HighestReachable != rank)
            objections.Add("One rank a test, and not beyond the ladder.");
        if (answer.TellFamilyFrom is { } tell)
        {
            if (!snapshot.Terms.Any(t => t.From == tell) || snapshot.Terms.Count(t => t.From > tell && t.From <= day) != rule.TellTermsAhead)
                objections.Add("The family is told from the first day of the right term.");
            if (answer.TellNow != (tell <= snapshot.Today))
                objections.Add("The family is told now once that day has come.");
        }
        else if (!answer.TellNow || snapshot.Terms.Count(t => t.From <= day) > rule.TellTermsAhead)
            objections.Add("Without enough terms the family is told now, and only then.");
        return objections;
    }
}
