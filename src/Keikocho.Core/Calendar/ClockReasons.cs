using Keikocho.Core.Kernel;

namespace Keikocho.Core.Calendar;

/// <summary>From when this child's lessons are counted.</summary>
/// <param name="StartOn">The day.</param>
/// <param name="Start">First lesson, promotion or joining.</param>
public sealed record CountedFrom(DateOnly StartOn, ClockStart Start) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Start switch
    {
        ClockStart.FirstLesson => $"Counted from this child's first lesson on {StartOn.WithWeekday()}.",
        ClockStart.Joined => $"Counted from the day of joining: joined on {StartOn.WithWeekday()} by the list that was read in; no mark says which lesson was the first.",
        _ => $"Counted from the promotion on {StartOn.WithWeekday()}; a lesson on that day does not count.",
    };
}

/// <summary>Held and attended.</summary>
/// <param name="Held">Lessons held.</param>
/// <param name="Attended">Lessons attended.</param>
/// <param name="RatePercent">In whole percent; null when none was held.</param>
/// <param name="AsOf">The evening just closed.</param>
/// <param name="UkemiEvenings">Evenings there for the falls.</param>
public sealed record HeldAndAttended(int Held, int Attended, int? RatePercent, DateOnly AsOf, int UkemiEvenings) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => RatePercent is { } rate
        ? $"Attended {Attended} of the {Words.Count(Held, "lesson")} held by {AsOf.Full()}, which is {rate} %; there for the falls on {Words.Count(UkemiEvenings, "evening")}."
        : $"No lesson was held for this child by {AsOf.Full()}.";
}

/// <summary>Lessons that a closure took out.</summary>
/// <param name="Closure">Its name.</param>
/// <param name="Dates">The days.</param>
/// <param name="WithMarks">Days that had marks of this child; kept, not counted.</param>
public sealed record ClosureTookOut(string Closure, IReadOnlyList<DateOnly> Dates, IReadOnlyList<DateOnly> WithMarks) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var dates = Words.List([.. Dates.Select(d => d.Brief())]);
            var said = $"{Closure} took out {Words.Count(Dates.Count, "lesson")} ({dates}): in neither count.";
            return WithMarks.Count == 0
                ? said
                : $"{said} The marks of {Words.List([.. WithMarks.Select(d => d.Brief())])} are kept and not counted.";
        }
    }
}

/// <summary>Lessons without any mark of anybody.</summary>
/// <param name="Dates">The days.</param>
public sealed record RegisterIsMissing(IReadOnlyList<DateOnly> Dates) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"The register of {Words.List([.. Dates.Select(d => d.Brief())])} is missing: in neither count until the club says whether the lesson was held.";
}

/// <summary>At most so many lessons of a day count.</summary>
/// <param name="LessonsADay">The limit.</param>
public sealed record LimitADay(int LessonsADay) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"At most {Words.Count(LessonsADay, "lesson")} of one day {(LessonsADay == 1 ? "counts" : "count")} by the club's rule.";
}

/// <summary>The minimum weeks and when they are full.</summary>
/// <param name="MinimumWeeks">Weeks asked for.</param>
/// <param name="StartOn">Counted from.</param>
/// <param name="FullOn">First day on which they are full.</param>
/// <param name="TestOn">The test; null when none is set.</param>
public sealed record WeeksAreFull(int MinimumWeeks, DateOnly StartOn, DateOnly FullOn, DateOnly? TestOn) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var sum = $"{Words.Count(MinimumWeeks, "week")} from {StartOn.Full()} {Words.Is(MinimumWeeks)} full on {FullOn.Full()}";
            return TestOn switch
            {
                null => sum + ".",
                { } test when FullOn <= test => $"{sum}, in time for the test on {test.WithWeekday()}.",
                { } test => $"{sum}, after the test on {test.WithWeekday()}.",
            };
        }
    }
}

/// <summary>Lessons still needed and left.</summary>
/// <param name="MinimumLessons">Lessons asked for.</param>
/// <param name="Attended">Lessons attended.</param>
/// <param name="Needed">Lessons still needed.</param>
/// <param name="Left">Lessons left before the test; null when no test is set.</param>
/// <param name="TestOn">The test; null when none is set.</param>
public sealed record NeededAndLeft(int MinimumLessons, int Attended, int Needed, int? Left, DateOnly? TestOn) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var asked = $"The rule asks for {Words.Count(MinimumLessons, "lesson")}";
            if (Left is not { } left || TestOn is not { } test)
                return Needed == 0 ? $"{asked}: enough." : $"{asked}: {Needed} more {Words.Is(Needed)} needed. No test is set.";
            if (Needed == 0)
                return $"{asked}: enough, and {Words.Count(left, "lesson")} {Words.Is(left)} left before the test on {test.WithWeekday()}.";
            return Needed <= left
                ? $"{asked}, {Attended} attended: {Needed} of the {Words.Count(left, "lesson")} left before the test on {test.WithWeekday()} {Words.Is(Needed)} needed."
                : $"{asked}, {Attended} attended: {Needed} more {Words.Is(Needed)} needed and {left} {Words.Is(left)} left before the test on {test.WithWeekday()}.";
        }
    }
}

/// <summary>What to expect of the lessons left at the child's own rate.</summary>
/// <param name="Left">Lessons left.</param>
/// <param name="RatePercent">The child's rate.</param>
/// <param name="Expected">To one decimal.</param>
public sealed record ExpectedOfLeft(int Left, int RatePercent, decimal Expected) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"At the child's own {RatePercent} % about {Words.OneDigit(Expected)} of the {Words.Count(Left, "lesson")} left would be attended.";
}

/// <summary>Not this time, and when next.</summary>
/// <param name="NextTestOn">The next test; null when none is set.</param>
public sealed record NextTestIs(DateOnly? NextTestOn) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => NextTestOn is { } next
        ? $"Not this time: the next test is on {next.WithWeekday()}."
        : "Not this time, and no later test is set yet.";
}

internal static class ClockReasons
{
    public static IReadOnlyList<Reason> For(
        ClockSnapshot snapshot, ClockVerdict verdict, int held, int attended, int? rate, int needed, int? left,
        decimal? expected, DateOnly weeksFullOn, int ukemi, IReadOnlyList<DateOnly> missing, IReadOnlyList<TakenOut> takenOut, LeastTime least)
    {
        var rule = snapshot.Rule;
        var reasons = new List<Reason>
        {
            new CountedFrom(snapshot.StartOn, snapshot.Start),
        };
        if (snapshot.LessonsFrom is { } from)
            reasons.Add(new CountedOverTwoRanks(from));
        reasons.Add(new HeldAndAttended(held, attended, rate, snapshot.AsOf, ukemi));
        foreach (var closure in takenOut.GroupBy(o => o.Closure).OrderBy(g => g.Min(o => o.Date)).ThenBy(g => g.Key, StringComparer.Ordinal))
            reasons.Add(new ClosureTookOut(
                closure.Key, [.. closure.Select(o => o.Date)], [.. closure.Where(o => o.HadMarks).Select(o => o.Date)]));
        if (missing.Count > 0)
            reasons.Add(new RegisterIsMissing(missing));
        if (rule.LessonsADay > 0)
            reasons.Add(new LimitADay(rule.LessonsADay));
        if (rule.ShortestLessonMinutes > 0)
            reasons.Add(new ShortestLesson(rule.ShortestLessonMinutes, least.TooShort));
        if (snapshot.Off is { } off)
            reasons.Add(new TakenOff(off, rule, least));
        reasons.Add(new WeeksAreFull(least.Weeks, snapshot.StartOn, weeksFullOn, snapshot.TestOn));
        if (least.MonthsFullOn is { } monthsFullOn)
            reasons.Add(new MonthsOfTheRank(least.Months, snapshot.StartOn, monthsFullOn, snapshot.TestOn));
        reasons.Add(new NeededAndLeft(least.Lessons, attended, needed, left, snapshot.TestOn));
        if (verdict is ClockVerdict.If && expected is { } some && rate is { } percent)
            reasons.Add(new ExpectedOfLeft(left!.Value, percent, some));
        if (verdict is ClockVerdict.NotThisTime not)
            reasons.Add(new NextTestIs(not.NextTestOn));
        return reasons;
    }
}
