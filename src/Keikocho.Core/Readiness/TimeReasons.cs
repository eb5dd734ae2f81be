using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>Lessons attended, asked and left.</summary>
/// <param name="Attended">Lessons attended.</param>
/// <param name="Minimum">Lessons asked, after anything that is taken off.</param>
/// <param name="Needed">Lessons still needed.</param>
/// <param name="Left">Lessons left before the test at which the child may be on the mat.</param>
/// <param name="TestOn">The test.</param>
public sealed record LessonsForTheTest(int Attended, int Minimum, int Needed, int Left, DateOnly TestOn) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            if (Minimum == 0)
                return $"No least number of lessons is asked; {Attended} {Words.Was(Attended)} attended, and {Words.Count(Left, "lesson")} {Words.Is(Left)} left before the test on {TestOn.WithWeekday()}.";
            var said = $"{Attended} of {Words.Count(Minimum, "lesson")} attended";
            if (Needed == 0)
                return $"{said}: enough, and {Words.Count(Left, "lesson")} {Words.Is(Left)} left before the test on {TestOn.WithWeekday()}.";
            return Needed <= Left
                ? $"{said}: {ReadinessPhrases.OfLeft(Needed, Left, "lesson")} before the test on {TestOn.WithWeekday()} {Words.Is(Needed)} needed."
                : $"{said}, and {Left} {Words.Is(Left)} left before the test on {TestOn.WithWeekday()}: {Needed - Left} short.";
        }
    }
}

/// <summary>Full calendar months on the day of the test.</summary>
/// <param name="Months">Months asked.</param>
/// <param name="StartOn">Counted from.</param>
/// <param name="FullOn">First day on which they are full.</param>
/// <param name="TestOn">The test.</param>
public sealed record MonthsAreFull(int Months, DateOnly StartOn, DateOnly FullOn, DateOnly TestOn) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{Words.Count(Months, "month")} from {StartOn.Full()} {Words.Is(Months)} full on {FullOn.Full()}, {(FullOn <= TestOn ? "in time for" : "after")} the test on {TestOn.WithWeekday()}.";
}

/// <summary>The least age for the rank.</summary>
/// <param name="Asked">Years asked.</param>
/// <param name="By">What the age is reckoned by.</param>
/// <param name="Age">Years on the day of the test; null where no birth date is held.</param>
/// <param name="ReachedOn">First day on which the age is reached; null where no birth date is held.</param>
/// <param name="TestOn">The test.</param>
public sealed record AgeForTheTest(int Asked, AgeBasis By, int? Age, DateOnly? ReachedOn, DateOnly TestOn) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var by = By == AgeBasis.CalendarYear ? "reckoned by calendar year" : "reckoned by birthday";
            if (Age is not { } age || ReachedOn is not { } on)
                return $"Age {Asked} is asked, {by}, and no birth date is held: enter it before the test on {TestOn.WithWeekday()}.";
            return age >= Asked
                ? $"Age {Asked} is asked, {by}: {age} at the test on {TestOn.WithWeekday()}, in time."
                : $"Age {Asked} is asked, {by}: {age} at the test on {TestOn.WithWeekday()}, and {Asked} only from {on.Full()}.";
        }
    }
}

/// <summary>The registration on the day of the test.</summary>
/// <param name="Until">Its last day; null where none is known.</param>
/// <param name="AskBy">The day by which a renewal is asked for; null where none is known.</param>
/// <param name="LeadDays">How long before the end that is.</param>
/// <param name="AsOf">The evening just closed.</param>
/// <param name="TestOn">The test.</param>
public sealed record RegistrationForTheTest(DateOnly? Until, DateOnly? AskBy, int LeadDays, DateOnly AsOf, DateOnly TestOn) : Reason
{
    /// <summary>It is valid on the day of the test.</summary>
    public bool Holds => Until >= TestOn;

    /// <summary>The day to ask by has passed.</summary>
    public bool IsOverdue => !Holds && AskBy < AsOf;

    /// <summary>In one phrase: "registered to 31 March"; "registration ends 5 December: ask by 21 November".</summary>
    public string Said
    {
        get
        {
            if (Until is not { } until || AskBy is not { } by)
                return "no registration is known";
            if (Holds)
                return $"registered to {ReadinessPhrases.Day(until, AsOf)}";
            var ends = until < AsOf ? "ended" : "ends";
            return $"registration {ends} {ReadinessPhrases.Day(until, AsOf)}: {(IsOverdue ? $"overdue, ask was by {ReadinessPhrases.Day(by, AsOf)}" : $"ask by {ReadinessPhrases.Day(by, AsOf)}")}";
        }
    }

    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            if (Until is not { } until || AskBy is not { } by)
                return $"No registration is known, and one must be valid at the test on {TestOn.WithWeekday()}.";
            if (Holds)
                return $"Registered to {until.Full()}, which includes the test on {TestOn.WithWeekday()}.";
            var ends = until < AsOf ? "ended" : "ends";
            var ask = IsOverdue
                ? $"a renewal was to be asked for by {by.Full()}, {LeadDays} days before, and is overdue"
                : $"ask for a renewal by {by.Full()}, {LeadDays} days before";
            return $"The registration {ends} on {until.Full()}, before the test on {TestOn.WithWeekday()}: {ask}.";
        }
    }
}

/// <summary>A share of the least time that is taken off for one child.</summary>
/// <param name="Asked">Percent that was entered.</param>
/// <param name="Given">Percent that the rank allows of it.</param>
/// <param name="Why">The reason.</param>
/// <param name="By">Who decided; null where not known.</param>
/// <param name="On">The day; null where not known.</param>
public sealed record TimeTakenOff(int Asked, int Given, string Why, string? By = null, DateOnly? On = null) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var decided = By is null && On is null ? "" : $", decided{(By is { } who ? $" by {who}" : "")}{(On is { } day ? $" on {day.Full()}" : "")}";
            return Asked == Given
                ? $"{Given} % of the least time is taken off, because {Why}{decided}."
                : $"{Asked} % of the least time was entered to be taken off, because {Why}{decided}; this rank allows {Given} %.";
        }
    }
}

/// <summary>An older starter who may move up by more than one rank, or might have at an earlier test.</summary>
/// <param name="Track">The rule.</param>
/// <param name="AgeAtStart">Age at the first lesson.</param>
/// <param name="TestsTaken">Tests at which the child was promoted already; null where not known.</param>
public sealed record FastTrackHolds(FastTrack Track, int AgeAtStart, int? TestsTaken = null) : Reason
{
    /// <summary>Whether this test is one of the first ones.</summary>
    public bool Holds => TestsTaken is not { } taken || taken < Track.FirstTests;

    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var rule = $"Started at {AgeAtStart}, and the rule is from {Track.FromAge}: up to {Words.Count(Track.MostRanks, "rank")} at one test, at the first {Words.Count(Track.FirstTests, "test")}";
            return TestsTaken is not { } taken ? $"{rule}."
                : Holds ? $"{rule}; promoted at {Words.Count(taken, "test")} before this one."
                : $"{rule}; promoted at {Words.Count(taken, "test")} already, so one rank at a time from now on.";
        }
    }
}

/// <summary>A rule of the rank that the register or the table keeps, said for the record.</summary>
/// <param name="Said">The sentence.</param>
public sealed record RuleOfTheRank(string Said) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Said;
}
