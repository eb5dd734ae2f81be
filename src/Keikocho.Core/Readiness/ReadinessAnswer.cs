using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>How one item of one child stands.</summary>
public enum ItemStandingWord
{
    /// <summary>Good on enough evenings, and fresh enough.</summary>
    Good = 1,
    /// <summary>Kept from an earlier test.</summary>
    Kept = 2,
    /// <summary>Credited by the rank that the child came with.</summary>
    CreditedByRank = 3,
    /// <summary>Met by a harder form.</summary>
    MetByHarderForm = 4,
    /// <summary>Good, but on fewer evenings than are asked.</summary>
    GoodTooFew = 5,
    /// <summary>Good on enough evenings, but too long ago.</summary>
    GoodNotFresh = 6,
    /// <summary>Prompted at best.</summary>
    Prompted = 7,
    /// <summary>Not yet at best, or two adults disagree.</summary>
    NotYet = 8,
    /// <summary>Nobody has seen it.</summary>
    NeverSeen = 9,
    /// <summary>A leader's suggestion waits for an instructor.</summary>
    Suggested = 10,
    /// <summary>A fall whose gate is shut: the head touched, or a break.</summary>
    FallShut = 11,
}

/// <summary>One item of one line, as it stands.</summary>
/// <param name="Item">Key.</param>
/// <param name="Name">Name.</param>
/// <param name="Word">How it stands.</param>
/// <param name="EveningsGood">Good evenings that count.</param>
/// <param name="EveningsMissing">Good evenings still missing; 0 when met.</param>
/// <param name="SeenOn">Evenings on which it was seen good, oldest first; at most the last four.</param>
/// <param name="Said">"seen good on 29 September and 13 October"; "good once, on 3 November: once more".</param>
/// <param name="Because">The rule with its figures.</param>
public sealed record ItemStanding(
    string Item, string Name, ItemStandingWord Word, int EveningsGood, int EveningsMissing, IReadOnlyList<DateOnly> SeenOn, string Said, Reason Because)
{
    /// <summary>Nothing is missing.</summary>
    public bool IsMet => EveningsMissing == 0;
}

/// <summary>One line of the sheet, as it stands.</summary>
/// <param name="Line">The line.</param>
/// <param name="Met">Enough of its items are good.</param>
/// <param name="MetBy">Names of the items by which it is met, where there was a choice; empty otherwise.</param>
/// <param name="EveningsMissing">Least number of evenings on which what is missing could still be seen; 0 when met.</param>
/// <param name="Items">Its items, in the order of the line.</param>
/// <param name="Said">What is missing, in one phrase; null when met.</param>
public sealed record LineStanding(
    SheetLine Line, bool Met, IReadOnlyList<string> MetBy, int EveningsMissing, IReadOnlyList<ItemStanding> Items, string? Said);

/// <summary>When enough lessons are likely, and how likely by the test. For the instructor only; it says nothing of the items.</summary>
/// <param name="LikelyOn">First lesson by which enough are likely; null where none before the test is.</param>
/// <param name="Chance">Chance of enough lessons by the test, 0 to 1; null where nothing is known.</param>
/// <param name="Words">"about 8 in 10 to attend enough lessons".</param>
/// <param name="Days">Chance of enough lessons by each lesson left, for the small picture.</param>
public sealed record Forecast(DateOnly? LikelyOn, double? Chance, string Words, IReadOnlyList<ChanceByDay> Days);

/// <summary>Chance of enough lessons by one day.</summary>
/// <param name="On">Day of a lesson.</param>
/// <param name="Chance">0 to 1.</param>
public sealed record ChanceByDay(DateOnly On, double Chance);

/// <summary>The answer for one child and one test.</summary>
/// <param name="Verdict">What holds, an overrule included.</param>
/// <param name="Reckoned">What the sum says by itself.</param>
/// <param name="Gates">Safety gates that are shut and would not open in time, in sentences; an overrule never passes one.</param>
/// <param name="Time">Time and papers: every rule with figure and date; a page shows the first ones.</param>
/// <param name="TimeSaid">Time and papers in one phrase: "7 of 10 lessons; if the child comes to 3 of the 4 lessons left".</param>
/// <param name="ItemsSaid">The items in one phrase: "7 of 9 good; escape not yet seen good: two evenings".</param>
/// <param name="Lines">Every line of the sheet, as it stands.</param>
/// <param name="LinesMet">How many of them are met.</param>
/// <param name="LessonsNeeded">Lessons still needed by the clock.</param>
/// <param name="EveningsNeeded">Evenings on which something must still be seen; they may be the same lessons.</param>
/// <param name="LessonsLeft">Lessons left before the test.</param>
/// <param name="Conditions">For "if": what must happen, each with its figure. For "not this time": what stands against it.</param>
/// <param name="Forecast">For the instructor only.</param>
/// <param name="NextTestOn">The next test; null when none is set.</param>
/// <param name="Overrule">The overrule that holds; null where there is none or it was refused.</param>
/// <param name="OverruleRefused">Why an overrule does not hold; null otherwise.</param>
/// <param name="Reasons">Every rule, figure and date used, in plain sentences.</param>
/// <param name="Settings">The settings used.</param>
public sealed record ReadinessAnswer(
    ReadyWord Verdict,
    ReadyWord Reckoned,
    IReadOnlyList<Reason> Gates,
    IReadOnlyList<Reason> Time,
    string TimeSaid,
    string ItemsSaid,
    IReadOnlyList<LineStanding> Lines,
    int LinesMet,
    int LessonsNeeded,
    int EveningsNeeded,
    int LessonsLeft,
    IReadOnlyList<Reason> Conditions,
    Forecast Forecast,
    DateOnly? NextTestOn,
    Overrule? Overrule,
    string? OverruleRefused,
    IReadOnlyList<Reason> Reasons,
    IReadOnlyList<SettingUsed> Settings);
