using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>How an item that is read from sightings was counted.</summary>
/// <param name="Name">Name of the item.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Word">How it stands.</param>
/// <param name="Asked">Good evenings that are asked.</param>
/// <param name="GoodOn">Good evenings that count, oldest first.</param>
/// <param name="Since">Only evenings after this day count; null where all do.</param>
/// <param name="FreshFrom">The last must be on or after this day; null where it may be older.</param>
/// <param name="FreshDays">How many days before the test that is.</param>
/// <param name="Missing">Good evenings still missing.</param>
/// <param name="IsSettled">A sign-off on paper that counts as enough by itself.</param>
/// <param name="KeptUntil">For a kept pass: until when.</param>
public sealed record ItemCounted(
    string Name, ItemKind Kind, ItemStandingWord Word, int Asked, IReadOnlyList<DateOnly> GoodOn, DateOnly? Since, DateOnly? FreshFrom, int FreshDays,
    int Missing, bool IsSettled, DateOnly? KeptUntil) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            if (Word == ItemStandingWord.Kept && KeptUntil is { } until)
                return $"{Name}: kept from an earlier test until {until.Full()}.";
            if (Word == ItemStandingWord.CreditedByRank)
                return $"{Name}: credited by the rank that the child came with; nothing more is asked.";
            var seen = GoodOn.Count == 0
                ? $"not yet {ReadinessPhrases.Seen(Kind)}"
                : $"{ReadinessPhrases.Seen(Kind)} {ReadinessPhrases.AllDays(GoodOn)}";
            var harder = Word == ItemStandingWord.MetByHarderForm ? ", a harder form counted" : "";
            var signed = IsSettled ? ", signed off on paper, which is enough" : "";
            var since = Since is { } day ? $" since the promotion on {day.Full()}" : "";
            var fresh = FreshFrom is { } from ? $", the last on or after {from.Full()}, {FreshDays} days before the test" : "";
            var missing = Missing == 0 ? "nothing is missing" : $"{Words.Count(Missing, "evening")} {Words.Is(Missing)} missing";
            return $"{Name}: {seen}{harder}{signed}; {Words.Count(Asked, "evening")} {Words.Is(Asked)} asked{since}{fresh}: {missing}.";
        }
    }
}

/// <summary>How an item that is read from the fall gate was counted.</summary>
/// <param name="Name">Name of the item.</param>
/// <param name="Word">How it stands.</param>
/// <param name="Stage">Lowest stage that is enough.</param>
/// <param name="Asked">Clean evenings that open the gate.</param>
/// <param name="Clean">Clean evenings that count, of the side that has fewest.</param>
/// <param name="CleanOn">Evenings seen clean, oldest first.</param>
/// <param name="TouchedOn">The last evening with the head touched that matters; null for none.</param>
/// <param name="FreshFrom">The last clean evening must be on or after this day.</param>
/// <param name="FreshDays">How many days before the test that is.</param>
/// <param name="Missing">Clean evenings still missing.</param>
/// <param name="StandsDown">No falls for now; they are shown again first.</param>
/// <param name="AwayFirst">The gate is shut although the evenings would be enough: falls are shown again first.</param>
/// <param name="KeptUntil">For a kept pass: until when; also where it does not count because the gate is not open.</param>
/// <param name="Side">The side that alone is short, of which all figures are; none otherwise.</param>
/// <param name="IsShut">The gate is shut, rather than open or to be looked at again.</param>
public sealed record FallCounted(
    string Name, ItemStandingWord Word, int Stage, int Asked, int Clean, IReadOnlyList<DateOnly> CleanOn, DateOnly? TouchedOn, DateOnly FreshFrom,
    int FreshDays, int Missing, bool StandsDown, bool AwayFirst, DateOnly? KeptUntil, FallSide Side = FallSide.None, bool IsShut = false) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            if (Word == ItemStandingWord.Kept && KeptUntil is { } until)
                return $"{Name}: kept from an earlier test until {until.Full()}; the gate is open, and the head has not touched since.";
            var kept = KeptUntil is { } last ? $"kept from an earlier test until {last.Full()}, which opens no gate that is {(IsShut ? "shut" : "to be looked at again")}; " : "";
            var side = Side == FallSide.None ? "" : $"{ReadinessPhrases.To(Side)} ";
            var touched = TouchedOn is { } on ? $"the head touched on {on.Full()}; " : "";
            var clean = CleanOn.Count == 0 ? "not yet seen clean" : $"seen clean {ReadinessPhrases.AllDays(CleanOn)}";
            var rule = $"{Words.Count(Asked, "clean evening")} at stage {Stage} or higher {Words.Is(Asked)} asked, the last on or after {FreshFrom.Full()}, {FreshDays} days before the test";
            var shut = StandsDown ? "; no falls for now, and they are shown again first" : AwayFirst ? "; the gate is shut, and falls are shown again first" : "";
            var missing = Missing == 0 ? "nothing is missing" : $"{Words.Count(Missing, "clean evening")} {Words.Is(Missing)} missing";
            return $"{Name}: {kept}{side}{touched}{clean}; {rule}{shut}: {missing}.";
        }
    }
}

/// <summary>A stand-down that a test cannot pass by.</summary>
/// <param name="Scope">What it forbids.</param>
/// <param name="ReviewOn">Its review; null where no day is set.</param>
/// <param name="IsOverdue">The day of the review has come.</param>
/// <param name="WhoseWord">Whose word lifts it.</param>
/// <param name="LessonsAfter">Lessons left after the review.</param>
/// <param name="CleanEvenings">Clean evenings that falls need after it; 0 where no falls are asked.</param>
/// <param name="InTime">It may be lifted early enough.</param>
/// <param name="AsOf">The evening just closed.</param>
/// <param name="TestOn">The test.</param>
public sealed record StandDownStands(
    StandDownScope Scope, DateOnly? ReviewOn, bool IsOverdue, string? WhoseWord, int LessonsAfter, int CleanEvenings, bool InTime, DateOnly AsOf, DateOnly TestOn) : Reason
{
    /// <summary>In one phrase: "no falls, reviewed on 24 November; 1 lesson is left after that, and falls need 2 clean evenings".</summary>
    public string Said
    {
        get
        {
            var what = Scope switch
            {
                StandDownScope.NoFalls => "no falls",
                StandDownScope.NoContact => "no contact",
                StandDownScope.OffTheMat => "off the mat",
                _ => "nothing that loads the neck, and the sheet asks it",
            };
            if (Scope == StandDownScope.SpareTheNeck)
                return what;
            if (ReviewOn is not { } on)
                return $"{what}, and no day of review is set";
            var review = IsOverdue ? $"{what}, review due since {ReadinessPhrases.Day(on, AsOf)}" : $"{what}, reviewed on {ReadinessPhrases.Day(on, AsOf)}";
            if (on >= TestOn)
                return $"{review}, not before the test";
            var left = $"{review}; {Words.Count(LessonsAfter, "lesson")} {Words.Is(LessonsAfter)} left {(IsOverdue ? "" : "after that")}".TrimEnd();
            return CleanEvenings > 0 ? $"{left}, and falls need {Words.Count(CleanEvenings, "clean evening")}" : left;
        }
    }

    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var word = InTime ? $"; it stands until {WhoseWord ?? "a named adult"} lifts it" : "";
            return $"{char.ToUpperInvariant(Said[0])}{Said[1..]}{word}.";
        }
    }
}
