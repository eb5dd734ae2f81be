using System.Text.Json.Serialization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Calendar;

/// <summary>A lesson that the club did not hold, out of every count.</summary>
/// <param name="Date">Its day.</param>
/// <param name="Closure">Name of the closure.</param>
/// <param name="HadMarks">True when the register had a word about this child; the word is kept and shown.</param>
/// <param name="Lesson">Its id, where the question gave it.</param>
public sealed record TakenOut(DateOnly Date, string Closure, bool HadMarks, LessonId? Lesson);

/// <summary>The answer to "enough by the test?". A closed set.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "is")]
[JsonDerivedType(typeof(Enough), "enough")]
[JsonDerivedType(typeof(If), "if")]
[JsonDerivedType(typeof(NotThisTime), "notThisTime")]
[JsonDerivedType(typeof(NoTestSet), "noTestSet")]
public abstract record ClockVerdict
{
    private ClockVerdict()
    {
    }

    /// <summary>The verdict in a few words, as a page shows it.</summary>
    [JsonIgnore]
    public abstract string Words { get; }

    /// <summary>Lessons and weeks are enough on the day of the test.</summary>
    public sealed record Enough : ClockVerdict
    {
        /// <inheritdoc/>
        [JsonIgnore]
        public override string Words => "enough lessons";
    }

    /// <summary>Enough if the child comes to some of the lessons left.</summary>
    /// <param name="PresentAt">Lessons still needed.</param>
    /// <param name="OfLeft">Lessons left before the test.</param>
    public sealed record If(int PresentAt, int OfLeft) : ClockVerdict
    {
        /// <inheritdoc/>
        [JsonIgnore]
        public override string Words => $"{PresentAt} of the {Kernel.Words.Count(OfLeft, "lesson")} left";
    }

    /// <summary>Not by this test, whatever happens.</summary>
    /// <param name="NextTestOn">The next test; null when none is set.</param>
    public sealed record NotThisTime(DateOnly? NextTestOn) : ClockVerdict
    {
        /// <inheritdoc/>
        [JsonIgnore]
        public override string Words => NextTestOn is { } next ? $"not this time; next test {next.Full()}" : "not this time; no later test is set";
    }

    /// <summary>No test is set, so there is nothing to be in time for.</summary>
    /// <param name="StillNeeded">Lessons still needed, whenever the test is.</param>
    public sealed record NoTestSet(int StillNeeded) : ClockVerdict
    {
        /// <inheritdoc/>
        [JsonIgnore]
        public override string Words => StillNeeded == 0 ? "enough lessons; no test is set" : $"{Kernel.Words.Count(StillNeeded, "more lesson")} needed; no test is set";
    }
}

/// <summary>One child's clock.</summary>
/// <param name="Verdict">Enough, if, not this time, or no test set.</param>
/// <param name="Words">The verdict in a few words.</param>
/// <param name="Held">Lessons held for this child, from its own start to the evening just closed.</param>
/// <param name="Attended">Lessons attended of those.</param>
/// <param name="RatePercent">Attended of held, in whole percent, half up; null when none was held.</param>
/// <param name="Needed">Lessons still needed.</param>
/// <param name="Left">Lessons left before the day of the test; null when no test is set.</param>
/// <param name="ExpectedAtOwnRate">Lessons of those left that the child would come to at its own rate, to one decimal; null when unknown.</param>
/// <param name="WeeksFullOn">First day on which the minimum weeks are full.</param>
/// <param name="UkemiEvenings">Evenings at which the child was there for the falls; two lessons of one day are one evening.</param>
/// <param name="OnCalendar">Lessons on the calendar from the child's start to the evening just closed, held or not.</param>
/// <param name="RegisterMissing">Days whose register is missing, in neither count.</param>
/// <param name="TakenOut">Lessons that closures took out, up to the test, in order of date.</param>
/// <param name="Reasons">Every rule, figure and date used, in plain sentences.</param>
/// <param name="Settings">The settings used.</param>
/// <param name="MonthsFullOn">First day on which the least months are full; null where none are asked.</param>
public sealed record ClockAnswer(
    ClockVerdict Verdict,
    string Words,
    int Held,
    int Attended,
    int? RatePercent,
    int Needed,
    int? Left,
    decimal? ExpectedAtOwnRate,
    DateOnly WeeksFullOn,
    int UkemiEvenings,
    int OnCalendar,
    IReadOnlyList<DateOnly> RegisterMissing,
    IReadOnlyList<TakenOut> TakenOut,
    IReadOnlyList<Reason> Reasons,
    IReadOnlyList<SettingUsed> Settings,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] DateOnly? MonthsFullOn = null);
