using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>"Backward, stage 3 (standing)".</summary>
internal static class GateWords
{
    public static string Place(FallWay way, int stage)
    {
        var text = $"{FallWords.Of(way)}, {FallWords.Stage(stage)}";
        return string.Concat(text[..1].ToUpper(CultureInfo.InvariantCulture), text[1..]);
    }

    public static string Days(IReadOnlyList<DateOnly> days) =>
        days.Count <= 3 ? Words.List([.. days.Select(d => d.Full())]) : $"the latest on {Words.List([.. days.TakeLast(2).Select(d => d.Full())])}";
}

/// <summary>Open.</summary>
/// <param name="Way">Which way.</param>
/// <param name="Stage">Which stage.</param>
/// <param name="Clean">The clean evenings that count.</param>
/// <param name="Tonight">Tonight.</param>
public sealed record StageIsOpen(FallWay Way, int Stage, IReadOnlyList<DateOnly> Clean, DateOnly Tonight) : GateReason(Way, Stage)
{
    /// <inheritdoc/>
    public override string Rest =>
        $"open; {Words.Count(Clean.Count, "clean evening")} ({GateWords.Days(Clean)}), the latest {Ago(Tonight.DayNumber - Clean[^1].DayNumber)}.";

    private static string Ago(int days) => days == 0 ? "tonight" : $"{Words.Count(days, "day")} ago";
}

/// <summary>Not enough clean evenings.</summary>
/// <param name="Way">Which way.</param>
/// <param name="Stage">Which stage.</param>
/// <param name="Clean">The clean evenings that count.</param>
/// <param name="Needed">How many open it.</param>
/// <param name="Touched">The head touched on this day, and the count began again; null for never.</param>
public sealed record TooFewCleanEvenings(FallWay Way, int Stage, IReadOnlyList<DateOnly> Clean, int Needed, DateOnly? Touched) : GateReason(Way, Stage)
{
    /// <inheritdoc/>
    public override string Rest
    {
        get
        {
            var days = Clean.Count == 0 ? "" : $" ({GateWords.Days(Clean)})";
            var touched = Touched is { } day ? $" since the head touched on {day.Full()}" : "";
            return $"shut; {Clean.Count} of {Words.Count(Needed, "clean evening")}{days}{touched}.";
        }
    }
}

/// <summary>Complete, but the latest clean evening is too old.</summary>
/// <param name="Way">Which way.</param>
/// <param name="Stage">Which stage.</param>
/// <param name="Latest">The latest clean evening.</param>
/// <param name="Tonight">Tonight.</param>
/// <param name="FreshDays">It may be so old.</param>
public sealed record CleanTooLongAgo(FallWay Way, int Stage, DateOnly Latest, DateOnly Tonight, int FreshDays) : GateReason(Way, Stage)
{
    /// <inheritdoc/>
    public override string Rest =>
        $"look again, which blocks like shut; last clean on {Latest.Full()}, {Tonight.DayNumber - Latest.DayNumber} days ago, more than {FreshDays}.";
}

/// <summary>The head touched tonight.</summary>
/// <param name="Way">Which way.</param>
/// <param name="Stage">The stage that is asked about.</param>
/// <param name="At">The lowest stage at which it touched.</param>
public sealed record HeadTouchedTonight(FallWay Way, int Stage, int At) : GateReason(Way, Stage)
{
    /// <inheritdoc/>
    public override string Rest =>
        $"shut; the head touched tonight at {FallWords.Stage(At)}, so no fall that way tonight.";
}

/// <summary>A stand-down forbids falls.</summary>
/// <param name="Way">Which way.</param>
/// <param name="Stage">Which stage.</param>
/// <param name="From">Its first day.</param>
public sealed record GateUnderStandDown(FallWay Way, int Stage, DateOnly From) : GateReason(Way, Stage)
{
    /// <inheritdoc/>
    public override string Rest => $"shut; stood down since {From.Full()}.";
}

/// <summary>The falls were not shown again yet.</summary>
/// <param name="Way">Which way.</param>
/// <param name="Stage">Which stage.</param>
/// <param name="Why">What asks for it.</param>
public sealed record NotShownAgain(FallWay Way, int Stage, Reason Why) : GateReason(Way, Stage)
{
    /// <inheritdoc/>
    public override string Rest => $"shut until shown again. {Why.Sentence}";
}

/// <summary>So long off the mat.</summary>
/// <param name="Last">The last day before.</param>
/// <param name="Back">The first day after, or tonight.</param>
public sealed record OffTheMatFor(DateOnly Last, DateOnly Back) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{Back.DayNumber - Last.DayNumber} days off the mat, {Last.Full()} to {Back.Full()}: the falls are shown again first, an instructor watching.";
}

/// <summary>A stand-down was lifted.</summary>
/// <param name="LiftedOn">The day.</param>
/// <param name="EnteredOn">The later day on which that was entered, from which falls count; null where the day of lifting is used.</param>
public sealed record FallsAgainAfterStandDown(DateOnly LiftedOn, DateOnly? EnteredOn = null) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => EnteredOn is { } entered
        ? $"A stand-down was lifted on {LiftedOn.Full()}, which was entered on {entered.Full()}: falls count from {entered.Full()} on, the later of the two days, and are shown again first, an instructor watching."
        : $"A stand-down was lifted on {LiftedOn.Full()}: the falls are shown again first, an instructor watching.";
}

/// <summary>A stand-down stands.</summary>
/// <param name="From">Its first day.</param>
public sealed record FallsStoodDown(DateOnly From) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"A stand-down since {From.Full()} forbids falls; it ends by the word of a named adult and by nothing else.";
}

/// <summary>Falls are known, days on the mat are not.</summary>
public sealed record NoDayOnTheMat : Reason
{
    /// <inheritdoc/>
    public override string Sentence => "No day on the mat is known, so how long the child was away is not known: the falls are shown again first.";
}

/// <summary>No fall was seen yet.</summary>
public sealed record NoFallSeen : Reason
{
    /// <inheritdoc/>
    public override string Sentence => "No fall was seen yet: every gate is shut, and the first stage may be tried with a named instructor watching.";
}

/// <summary>Falls wait to be confirmed.</summary>
/// <param name="Number">How many.</param>
public sealed record FallsToConfirm(int Number) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{Words.Count(Number, "fall")} {(Number == 1 ? "waits" : "wait")} to be confirmed: clean ones count nothing before, a head touch shuts at once.";
}

/// <summary>A planned throw.</summary>
/// <param name="Name">The technique.</param>
/// <param name="Stage">The stage that it asks.</param>
/// <param name="Shut">The ways that are not open there; empty when all are.</param>
public sealed record PlannedThrowJudged(string Name, int Stage, IReadOnlyList<FallWay> Shut) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Shut.Count == 0
        ? $"{Name}: may be thrown; every way is open at {FallWords.Stage(Stage)}."
        : $"{Name}: is not thrown; not open at {FallWords.Stage(Stage)}: {FallWords.Together(Shut)}.";
}

/// <summary>Nobody said how one falls from a planned throw.</summary>
/// <param name="Name">The technique.</param>
public sealed record NoWayGiven(string Name) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{Name}: is not thrown; the fall table does not say which way one falls from it.";
}
