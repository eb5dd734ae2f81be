using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>Come to so many of the lessons left.</summary>
/// <param name="Needed">How many, for the clock and for what must be seen.</param>
/// <param name="On">Days of the lessons left, in order.</param>
/// <param name="Left">How many lessons are left.</param>
/// <param name="AsOf">The evening just closed.</param>
public sealed record ComeTo(int Needed, IReadOnlyList<DateOnly> On, int Left, DateOnly AsOf) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"Come to {ReadinessPhrases.OfLeft(Needed, Left, "lesson")}: {ReadinessPhrases.Days(On, AsOf)}.";
}

/// <summary>Something must still be seen, and can be.</summary>
/// <param name="Name">Name of the item.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Missing">On so many evenings.</param>
/// <param name="Left">Of so many evenings on which it can be seen.</param>
/// <param name="After">Only evenings after this day; null where all do.</param>
/// <param name="IsMore">It was good before.</param>
/// <param name="OrAnother">Another item of the line would do as well.</param>
/// <param name="AsOf">The evening just closed.</param>
public sealed record ToBeSeen(string Name, ItemKind Kind, int Missing, int Left, DateOnly? After, bool IsMore, bool OrAnother, DateOnly AsOf) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var more = IsMore ? Missing == 1 ? " once more," : " more," : "";
            var after = After is { } day ? $" after {ReadinessPhrases.Day(day, AsOf)}" : "";
            var another = OrAnother ? ", or another of its line" : "";
            return $"{Name}: {ReadinessPhrases.Seen(Kind)}{more} on {ReadinessPhrases.OfLeft(Missing, Left, "evening")}{after}{another}.";
        }
    }
}

/// <summary>Something must still be seen, and too few evenings are left for it.</summary>
/// <param name="Name">Name of the item.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Missing">On so many evenings.</param>
/// <param name="Left">Of so many evenings on which it could be seen.</param>
/// <param name="FreshFrom">The last evening before the test is earlier than this day, from which it would count; null where that is not so.</param>
public sealed record OutOfReach(string Name, ItemKind Kind, int Missing, int Left, DateOnly? FreshFrom) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var seen = $"{Name}: {Words.Count(Missing, "more evening")} {ReadinessPhrases.Seen(Kind)} {Words.Is(Missing)} needed";
            return FreshFrom is { } from
                ? $"{seen}, and no lesson is left on or after {from.Full()}."
                : $"{seen}, and {Left} {Words.Is(Left)} left for it.";
        }
    }
}

/// <summary>The registration must be renewed before the test.</summary>
/// <param name="Registration">How it stands.</param>
public sealed record RenewTheRegistration(RegistrationForTheTest Registration) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            if (Registration.AskBy is not { } by)
                return $"Register with the body before the test on {ReadinessPhrases.Day(Registration.TestOn, Registration.AsOf)}.";
            return Registration.IsOverdue
                ? $"Renew the registration at once: it was to be asked for by {ReadinessPhrases.Day(by, Registration.AsOf)}."
                : $"Renew the registration: ask by {ReadinessPhrases.Day(by, Registration.AsOf)}.";
        }
    }
}

/// <summary>A verdict that an instructor set against the sum.</summary>
/// <param name="Overrule">Who, when and why.</param>
/// <param name="Reckoned">What the sum says.</param>
public sealed record OverruledBy(Overrule Overrule, ReadyWord Reckoned) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{Overrule.By.Trim()} decided on {Overrule.On.Full()}: {VerdictWords.Of(Overrule.To)}, {(Overrule.To == Reckoned ? "as the sum says" : $"where the sum says {VerdictWords.Of(Reckoned)}")}. The reason: {Overrule.Why.Trim().TrimEnd('.')}.";
}

/// <summary>An overrule that does not hold.</summary>
/// <param name="Why">Why not, a sentence.</param>
public sealed record OverruleDoesNotHold(string Why) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Why;
}

/// <summary>The chance of enough lessons: for the instructor only.</summary>
/// <param name="Words">As the instructor says it.</param>
/// <param name="Needed">Lessons to come to.</param>
/// <param name="Left">Lessons left.</param>
/// <param name="Attended">Lessons attended.</param>
/// <param name="Held">Lessons held.</param>
public sealed record ChanceOfLessons(string Words, int Needed, int Left, int Attended, int Held) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"For the instructor: {Words}, {Needed} of the {Left} left, from {Attended} of {Held} attended and the club's common rate; it says nothing of the items.";
}

/// <summary>The verdict in words.</summary>
public static class VerdictWords
{
    /// <summary>"put forward", "if", "not this time".</summary>
    public static string Of(ReadyWord word) => word switch
    {
        ReadyWord.PutForward => "put forward",
        ReadyWord.If => "if",
        _ => "not this time",
    };
}
