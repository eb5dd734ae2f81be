using Keikocho.Core.Kernel;

namespace Keikocho.Core.Calendar;

/// <summary>The least time after anything that is taken off, and the lessons that are too short for it.</summary>
/// <param name="Lessons">Lessons.</param>
/// <param name="Weeks">Weeks.</param>
/// <param name="Months">Months.</param>
/// <param name="MonthsFullOn">First day on which the months are full; null where none are asked.</param>
/// <param name="TooShort">Days of lessons that are too short, in order.</param>
internal sealed record LeastTime(int Lessons, int Weeks, int Months, DateOnly? MonthsFullOn, IReadOnlyList<DateOnly> TooShort);

/// <summary>Lessons count from further back than the last promotion.</summary>
/// <param name="From">First day whose lessons count.</param>
public sealed record CountedOverTwoRanks(DateOnly From) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"By the rule of this rank lessons count over two ranks: those from {From.WithWeekday()} on.";
}

/// <summary>A lesson must be of some length to count.</summary>
/// <param name="Minutes">The least length.</param>
/// <param name="Dates">Days of lessons that were too short.</param>
public sealed record ShortestLesson(int Minutes, IReadOnlyList<DateOnly> Dates) : Reason
{
    private const int MostNamed = 8;

    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var said = $"Lessons shorter than {Words.Count(Minutes, "minute")} do not count for this rank";
            if (Dates.Count == 0)
                return $"{said}; none was.";
            return Dates.Count <= MostNamed
                ? $"{said}: in neither count {Words.Is(Dates.Count)} {Words.List([.. Dates.Select(d => d.Brief())])}."
                : $"{said}: {Words.Count(Dates.Count, "lesson")} from {Dates[0].Full()} to {Dates[^1].Full()} {Words.Is(Dates.Count)} in neither count.";
        }
    }
}

/// <summary>The least months and when they are full.</summary>
/// <param name="Months">Months asked, after anything that is taken off.</param>
/// <param name="StartOn">Counted from.</param>
/// <param name="FullOn">First day on which they are full.</param>
/// <param name="TestOn">The test; null when none is set.</param>
public sealed record MonthsOfTheRank(int Months, DateOnly StartOn, DateOnly FullOn, DateOnly? TestOn) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var sum = $"{Words.Count(Months, "month")} from {StartOn.Full()} {Words.Is(Months)} full on {FullOn.Full()}";
            return TestOn is not { } test ? $"{sum}." : $"{sum}, {(FullOn <= test ? "in time for" : "after")} the test on {test.WithWeekday()}.";
        }
    }
}

/// <summary>What is taken off the least time, with the figures before and after.</summary>
/// <param name="Off">The share, why, who and when.</param>
/// <param name="Lessons">Lessons before and after.</param>
/// <param name="Weeks">Weeks before and after.</param>
/// <param name="Months">Months before and after.</param>
public sealed record TakenOff(TimeOff Off, (int Asked, int Left) Lessons, (int Asked, int Left) Weeks, (int Asked, int Left) Months) : Reason
{
    internal TakenOff(TimeOff off, ClockRule rule, LeastTime least)
        : this(off, (rule.MinimumLessons, least.Lessons), (rule.MinimumWeeks, least.Weeks), (rule.MinimumMonths, least.Months))
    {
    }

    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            List<string> figures = [];
            Say(Lessons, "lesson");
            Say(Weeks, "week");
            Say(Months, "month");
            var by = Off.By is { } who ? $" by {who}" : "";
            var on = Off.On is { } day ? $" on {day.Full()}" : "";
            var decided = by.Length + on.Length == 0 ? "" : $", decided{by}{on}";
            if (Off.Percent == 0)
                return $"{Off.Decided ?? 0} % of the least time was to be taken off, because {Off.Why.Trim().TrimEnd('.')}{decided}; this rank allows none of it.";
            var allowed = Off.Decided is { } asked && asked > Off.Percent ? $"{asked} % was decided and this rank allows {Off.Percent} %: " : "";
            var what = figures.Count == 0 ? "nothing is asked that it could be taken from" : Words.List(figures);
            return $"{allowed}{Off.Percent} % of the least time is taken off, because {Off.Why.Trim().TrimEnd('.')}{decided}: {what}.";

            void Say((int Asked, int Left) figure, string unit)
            {
                if (figure.Asked > 0)
                    figures.Add($"{Words.Count(figure.Left, unit)} instead of {figure.Asked}");
            }
        }
    }
}
