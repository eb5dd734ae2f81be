namespace Keikocho.Core.Calendar;

/// <summary>Judges what is to be seen again by walking back from today to the last lesson.</summary>
public static class ReturnAfterAbsenceCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(DateOnly today, DateOnly lastLesson, ReturnRule rule, ReturnAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        if (lastLesson.AddDays(answer.DaysAway) != today)
            objections.Add("The days away do not lead from the last lesson to today.");
        var falls = lastLesson.AddDays(rule.FallsAfterDays) <= today;
        var more = lastLesson.AddDays(rule.MoreAfterDays) <= today;
        foreach (var thing in Enum.GetValues<SeeAgain>())
        {
            var asked = thing == SeeAgain.Falls ? falls : more;
            if (answer.SeeAgain.Count(s => s == thing) != (asked ? 1 : 0))
                objections.Add($"{thing} is asked {(asked ? "" : "not ")}after so many days.");
        }

        if (!answer.SeeAgain.Order().SequenceEqual(answer.SeeAgain))
            objections.Add("Falls come first.");
        if (answer.SeenBeforeTheBreak != falls)
            objections.Add("Items are marked as seen before the break exactly when something is asked.");
        return objections;
    }
}
