using Keikocho.Core.Kernel;

namespace Keikocho.Core.Calendar;

/// <summary>What is to be seen again after an absence.</summary>
public enum SeeAgain
{
    /// <summary>Falls: one clean a stage lower, then one at the stage; until then the fall gate is shut.</summary>
    Falls = 0,
    /// <summary>The stop word.</summary>
    StopWord = 1,
    /// <summary>Holds before throws.</summary>
    HoldsBeforeThrows = 2,
    /// <summary>No free practice at the first lesson.</summary>
    NoFreePractice = 3,
}

/// <summary>What a returning child shows first.</summary>
/// <param name="DaysAway">Calendar days since the last lesson attended, the club's own holidays included.</param>
/// <param name="SeeAgain">In the order to see it; empty when nothing is asked.</param>
/// <param name="SeenBeforeTheBreak">Items ready before are marked "seen before the break".</param>
/// <param name="Reasons">Why.</param>
/// <param name="Settings">The settings used.</param>
public sealed record ReturnAnswer(
    int DaysAway, IReadOnlyList<SeeAgain> SeeAgain, bool SeenBeforeTheBreak, IReadOnlyList<Reason> Reasons, IReadOnlyList<SettingUsed> Settings);

/// <summary>Return after an absence, whatever its cause.</summary>
public static class ReturnAfterAbsence
{
    /// <summary>What to see again on <paramref name="today"/> of a child last on the mat on <paramref name="lastLesson"/>.</summary>
    /// <exception cref="ArgumentException">The last lesson is after today, or a figure out of range.</exception>
    public static ReturnAnswer Reckon(DateOnly today, DateOnly lastLesson, ReturnRule rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        rule.Guard();
        var days = today.DayNumber - lastLesson.DayNumber;
        ArgumentOutOfRangeException.ThrowIfNegative(days, nameof(lastLesson));
        SeeAgain[] list = days >= rule.MoreAfterDays
            ? [SeeAgain.Falls, SeeAgain.StopWord, SeeAgain.HoldsBeforeThrows, SeeAgain.NoFreePractice]
            : days >= rule.FallsAfterDays ? [SeeAgain.Falls] : [];
        return new ReturnAnswer(days, list, list.Length > 0, [new DaysAway(lastLesson, days, list.Length > 1, list.Length > 0, rule)], rule.Used());
    }
}

/// <summary>How long a child was away and what follows.</summary>
/// <param name="LastLesson">Last lesson attended.</param>
/// <param name="Days">Calendar days since.</param>
/// <param name="LongList">The longer list applies.</param>
/// <param name="Falls">Falls are seen again.</param>
/// <param name="Rule">The limits.</param>
public sealed record DaysAway(DateOnly LastLesson, int Days, bool LongList, bool Falls, ReturnRule Rule) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var away = $"Last lesson on {LastLesson.Full()}, {Words.Count(Days, "day")} ago";
            if (LongList)
                return $"{away}, which is {Rule.MoreAfterDays} or more: see the falls and the stop word again, holds before throws, and no free practice at the first lesson.";
            return Falls
                ? $"{away}, which is {Rule.FallsAfterDays} or more: see the falls again before this child is thrown."
                : $"{away}, fewer than {Rule.FallsAfterDays}: nothing to be seen again.";
        }
    }
}
