using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>Day 0.</summary>
/// <param name="On">The day of the latest knock.</param>
/// <param name="First">The day of the first.</param>
public sealed record KnockDayZero(DateOnly On, DateOnly First) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => On == First
        ? $"Knock on {On.Full()}: that is day 0, and the child is off for the rest of that evening whatever is recorded."
        : $"A further knock on {On.Full()}, after that of {First.Full()}: day 0 is new.";
}

/// <summary>The slip goes home the same evening.</summary>
public sealed record SlipTheSameEvening : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        "The slip goes home the same evening however well the child looks: in 25 of 30 severe judo head injuries (Japan, 2003 to 2010; Nagahiro, abstract read) there was a spell of looking well.";
}

/// <summary>From when the days without symptoms are counted.</summary>
/// <param name="From">The first day without any symptom.</param>
/// <param name="DayZero">Day 0.</param>
public sealed record FreeFromSymptoms(DateOnly From, DateOnly DayZero) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => From == DayZero
        ? $"No symptom at any time is recorded: the days without symptoms count from {From.Full()}, day 0."
        : $"The first day without any symptom was {From.Full()}.";
}

/// <summary>No first day without symptoms is recorded.</summary>
/// <param name="SymptomsOn">The last day with symptoms since day 0 that is recorded; null for none.</param>
/// <param name="DayZero">Day 0.</param>
public sealed record NotFreeFromSymptoms(DateOnly? SymptomsOn, DateOnly DayZero) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => SymptomsOn is { } day
        ? $"Symptoms were there again on {day.Full()}, and no first day without any symptom after it is recorded: no earliest date can be named."
        : $"No first day without any symptom since the knock of {DayZero.Full()} is recorded: no earliest date can be named.";
}

/// <summary>Symptoms came back: the count began again.</summary>
/// <param name="On">The last day on which they were there.</param>
public sealed record SymptomsCameBack(DateOnly On) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"Symptoms were there again on {On.Full()}: the days without symptoms count from the beginning again, and what was advised before does not count.";
}

/// <summary>Advice that counts.</summary>
/// <param name="Advice">Which.</param>
public sealed record AdviceCounts(KnockAdvice Advice) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"Written advice of {Advice.Whose}, dated {Advice.Dated.Full()}, is recorded by {Advice.RecordedBy}.";
}

/// <summary>Advice that does not count.</summary>
/// <param name="Advice">Which.</param>
/// <param name="FreeFrom">The first day without symptoms; null where there is none.</param>
public sealed record AdviceVoid(KnockAdvice Advice, DateOnly? FreeFrom) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => FreeFrom is { } day
        ? $"The advice of {Advice.Whose}, dated {Advice.Dated.Full()}, is from before the first day without symptoms, {day.Full()}: it does not count."
        : $"The advice of {Advice.Whose}, dated {Advice.Dated.Full()}, does not count while no first day without symptoms is recorded.";
}

/// <summary>No advice counts.</summary>
public sealed record NoAdvice : Reason
{
    /// <inheritdoc/>
    public override string Sentence => "No written advice that counts is recorded: falls, contact and tests stay shut whatever the date.";
}

/// <summary>One limit of a date.</summary>
/// <param name="Day">The day it gives.</param>
/// <param name="Words">What it follows from.</param>
public sealed record KnockLimit(DateOnly Day, string Words);

/// <summary>An earliest date with all its limits.</summary>
/// <param name="Step">Of what.</param>
/// <param name="Earliest">The latest of the limits.</param>
/// <param name="Limits">Each limit.</param>
public sealed record EarliestDate(KnockStep Step, DateOnly Earliest, IReadOnlyList<KnockLimit> Limits) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{KnockWords.Of(Step)}: earliest {Earliest.Full()}, the latest of {Words.List([.. Limits.Select(l => $"{l.Day.Full()} ({l.Words})")])}.";
}

/// <summary>No date can be named for a step.</summary>
/// <param name="Step">Of what.</param>
/// <param name="Because">What is missing.</param>
public sealed record NoEarliestDate(KnockStep Step, string Because) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{KnockWords.Of(Step)}: no date before {Because}.";
}

/// <summary>A step is shut today.</summary>
/// <param name="Today">Today.</param>
/// <param name="Because">Every cause, as half sentences.</param>
public sealed record StepShut(DateOnly Today, IReadOnlyList<string> Because) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"Shut on {Today.Full()}: {Words.List(Because)}.";
}

/// <summary>A step is not shut by this knock any more.</summary>
/// <param name="Lifting">On whose word.</param>
/// <param name="Advice">The advice that counts; null for light movement, which needs none.</param>
public sealed record StepNotShut(KnockLifting Lifting, KnockAdvice? Advice) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Advice is { } advice
        ? $"Not shut by this knock any more: {Lifting.By} lifted it on {Lifting.On.Full()}, on the written advice of {advice.Whose}. That clears nobody; any symptom stops everything."
        : $"Not shut by this knock any more: {Lifting.By} lifted it on {Lifting.On.Full()}. That clears nobody; any symptom stops everything.";
}

/// <summary>The first lesson with falls.</summary>
/// <param name="On">The day.</param>
public sealed record FirstLessonWithFalls(DateOnly On) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"The first lesson from then on is on {On.WithWeekday()}.";
}

/// <summary>A test in the shadow of a knock.</summary>
/// <param name="On">The day of the test.</param>
/// <param name="Earliest">The earliest day; null where there is none.</param>
public sealed record TestWordsOnly(DateOnly On, DateOnly? Earliest) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Earliest is not { } day ? $"Test on {On.Full()}: words only, no falls, or another day: no earliest date can be named."
        : On < day ? $"Test on {On.Full()}: words only, no falls, or another day: it is before {day.Full()}."
        : $"Test on {On.Full()}: words only, no falls, or another day, until written advice is recorded.";
}

/// <summary>To be seen within a day.</summary>
/// <param name="On">Day 0.</param>
public sealed record SeenWithinADay(DateOnly On) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"To be seen or spoken to by a clinician within 24 hours of the knock of {On.Full()} (UK grassroots guidance, 2023); at once, by the emergency number, with any sign on the watch-for list.";
}

/// <summary>Symptoms go on.</summary>
/// <param name="Day">Which day it is.</param>
/// <param name="After">From which day on a doctor is asked.</param>
public sealed record StillSymptoms(int Day, int After) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"See a doctor: it is day {Day.ToString(CultureInfo.InvariantCulture)}, and no first day without symptoms is recorded (from day {After.ToString(CultureInfo.InvariantCulture)} on).";
}

/// <summary>Symptoms came back.</summary>
/// <param name="On">When.</param>
public sealed record DoctorAfterSymptomsAgain(DateOnly On) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"See a doctor: symptoms were there again on {On.Full()}. Everything stops until the doctor has been asked.";
}

/// <summary>A second knock.</summary>
/// <param name="On">When.</param>
public sealed record DoctorAfterFurtherKnock(DateOnly On) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"See a doctor: there was a further knock on {On.Full()}.";
}

/// <summary>Plain words for steps.</summary>
public static class KnockWords
{
    /// <summary>"Falls and contact".</summary>
    public static string Of(KnockStep step) => step switch
    {
        KnockStep.LightMovement => "Light movement",
        KnockStep.NoContactDrills => "Drills without contact",
        KnockStep.FallsAndContact => "Falls and contact",
        _ => "Test or contest",
    };
}
