using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>A test that comes too early after a knock to the head: words only on that day, or the child is tested on another.</summary>
/// <param name="DayZero">The day of the knock from which is counted.</param>
/// <param name="TestOn">The test.</param>
/// <param name="Day">How many days after the knock it is.</param>
/// <param name="Earliest">The earliest day of a test; null where none can be named yet.</param>
/// <param name="HasAdvice">Written advice that counts is recorded.</param>
/// <param name="NextTestOn">The test after it; null when none is set.</param>
public sealed record WordsOnlyOrMoved(DateOnly DayZero, DateOnly TestOn, int Day, DateOnly? Earliest, bool HasAdvice, DateOnly? NextTestOn) : Reason
{
    /// <summary>The next test is before the earliest day too.</summary>
    public bool NextIsTooEarly => NextTestOn < Earliest;

    /// <summary>In one phrase, without the reason: it stands on a list.</summary>
    public string Said => NextTestOn is not { } next ? $"words only on {TestOn.Full()}, or another day; no later test is set"
        : NextIsTooEarly ? $"words only on {TestOn.Full()}, or another day; the next test, on {next.Full()}, is too early as well"
        : $"words only on {TestOn.Full()}, or another day: the next test is on {next.Full()}";

    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var earliest = Earliest is not { } day ? "No earliest day can be named before a first day without any symptom is recorded."
                : TestOn < day ? $"The earliest day of a test is {day.Full()}{(HasAdvice ? "" : ", and written advice is still to be recorded")}."
                : "No written advice that counts is recorded.";
            var next = NextTestOn is not { } then ? "No later test is set."
                : NextIsTooEarly ? $"The next test, on {then.Full()}, is before that day as well."
                : $"The next test is on {then.Full()}.";
            return $"{TestOn.WithWeekday()} is day {Day.ToString(CultureInfo.InvariantCulture)} after the knock of {DayZero.Full()}: words only on that day, no falls and no contact, or the child is tested on another day. {earliest} {next}";
        }
    }
}

/// <summary>What a knock to the head means for one promotion test. It clears nobody: where it says nothing, the stand-down and the gates still hold.</summary>
public static class TestAfterKnock
{
    /// <summary>What to say; null where this knock asks nothing of this test.</summary>
    /// <param name="knock">The dates after the knock.</param>
    /// <param name="testOn">The test.</param>
    /// <param name="nextTestOn">The test after it; null when none is set.</param>
    /// <exception cref="ArgumentException">The test is before the knock, or the next test is not after it.</exception>
    public static WordsOnlyOrMoved? Of(HeadKnockAnswer knock, DateOnly testOn, DateOnly? nextTestOn)
    {
        ArgumentNullException.ThrowIfNull(knock);
        if (testOn < knock.DayZero) throw new ArgumentException($"The test of {testOn.Full()} is before the knock of {knock.DayZero.Full()}; mend a date.", nameof(testOn));
        if (nextTestOn <= testOn) throw new ArgumentException($"The next test of {nextTestOn.Value.Full()} is not after that of {testOn.Full()}; mend a date.", nameof(nextTestOn));
        // No earliest day, or no advice, is shut.
        return knock.Advice is not null && testOn >= knock.TestOrContest
            ? null
            : new WordsOnlyOrMoved(knock.DayZero, testOn, testOn.DayNumber - knock.DayZero.DayNumber, knock.TestOrContest, knock.Advice is not null, nextTestOn);
    }
}
