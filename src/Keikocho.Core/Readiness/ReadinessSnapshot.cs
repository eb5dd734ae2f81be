using Keikocho.Core.Attendance;
using Keikocho.Core.Calendar;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>When a child is put forward. A club's own; proposed values are ours, no source.</summary>
/// <param name="TechniqueEvenings">Evenings on which a technique must be seen good. Proposed 2.</param>
/// <param name="WordEvenings">Evenings on which a word, question or point of etiquette must be good. Proposed 1.</param>
/// <param name="CriticalFreshDays">Falls and critical items: the last good evening is at most so many days before the test. Proposed 42.</param>
/// <param name="RegistrationLeadDays">A renewal is asked for so many days before it ends. Proposed 14.</param>
public sealed record ReadinessRule(int TechniqueEvenings = 2, int WordEvenings = 1, int CriticalFreshDays = 42, int RegistrationLeadDays = 14)
{
    private static readonly WholeNumberSetting Techniques = new("readiness.techniqueEvenings", "Evenings on which a technique must be seen good", 2, "evenings", 1, 10, Setting.Ours);
    private static readonly WholeNumberSetting Words = new("readiness.wordEvenings", "Evenings on which a word, a question or etiquette must be good", 1, "evenings", 1, 10, Setting.Ours);
    private static readonly WholeNumberSetting Fresh = new("readiness.criticalFreshDays", "Falls were seen clean, and critical items good, at most so many days before the test", 42, "days", 1, 365, Setting.Ours);
    private static readonly WholeNumberSetting Lead = new("readiness.registrationLeadDays", "A renewal of the registration is asked for so long before it ends", 14, "days", 0, 180, Setting.Ours);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Techniques, Words, Fresh, Lead];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() =>
        [Techniques.Use(TechniqueEvenings), Words.Use(WordEvenings), Fresh.Use(CriticalFreshDays), Lead.Use(RegistrationLeadDays)];

    internal void Guard()
    {
        Techniques.Guard(TechniqueEvenings, nameof(TechniqueEvenings));
        Words.Guard(WordEvenings, nameof(WordEvenings));
        Fresh.Guard(CriticalFreshDays, nameof(CriticalFreshDays));
        Lead.Guard(RegistrationLeadDays, nameof(RegistrationLeadDays));
    }
}

/// <summary>The verdict for one child and one test. The numbers are stored and never change their meaning.</summary>
public enum ReadyWord
{
    /// <summary>Put forward.</summary>
    PutForward = 1,
    /// <summary>Put forward if something that can still be done is done.</summary>
    If = 2,
    /// <summary>Not this time.</summary>
    NotThisTime = 3,
}

/// <summary>A verdict that an instructor set against the sum. Never against a safety gate.</summary>
/// <param name="To">What holds instead.</param>
/// <param name="By">Name of the instructor.</param>
/// <param name="On">The day.</param>
/// <param name="Why">The reason, never empty.</param>
public sealed record Overrule(ReadyWord To, string By, DateOnly On, string Why);

/// <summary>Everything that the club saw of one child.</summary>
/// <param name="Seen">Items, in any order; an item that nobody saw is not there.</param>
/// <param name="Falls">Every fall, in any order.</param>
/// <param name="OnTheMat">Days on which the child was on the mat.</param>
/// <param name="CreditedItems">Keys of items of the ranks that the child came with: credited by rank, shown as such; falls never are.</param>
/// <param name="PromotedOn">Day of the last promotion; null before the first.</param>
public sealed record Evidence(
    IReadOnlyList<ItemSeen> Seen,
    IReadOnlyList<FallMark> Falls,
    IReadOnlyList<DateOnly> OnTheMat,
    IReadOnlyList<string> CreditedItems,
    DateOnly? PromotedOn);

/// <summary>Papers and age, as far as a test asks for them.</summary>
/// <param name="Born">Birth date; null where not known.</param>
/// <param name="RegistrationAsked">Whether the club registers its children with a body at all; false asks nothing.</param>
/// <param name="RegisteredUntil">Last day of the registration; null where none is known.</param>
/// <param name="StartedOn">The first lesson, for a fast track.</param>
/// <param name="ReductionPercent">Share of the least time that the club takes off for this child.</param>
/// <param name="ReductionWhy">Why; needed where anything is taken off.</param>
/// <param name="ReductionBy">Who decided it; null where not known.</param>
/// <param name="ReductionOn">The day of the decision; null where not known.</param>
/// <param name="TestsTaken">Tests at which the child was promoted already, for a fast track; null where that is not known.</param>
public sealed record TestPapers(
    DateOnly? Born,
    bool RegistrationAsked,
    DateOnly? RegisteredUntil,
    DateOnly? StartedOn = null,
    int ReductionPercent = 0,
    string? ReductionWhy = null,
    string? ReductionBy = null,
    DateOnly? ReductionOn = null,
    int? TestsTaken = null);

/// <summary>The question: is this child put forward at this test?</summary>
/// <param name="Clock">The child's clock, as of the evening just closed, with this test as its test.</param>
/// <param name="Sheet">What must be shown at it.</param>
/// <param name="Evidence">What was seen.</param>
/// <param name="StandDowns">Every stand-down.</param>
/// <param name="Papers">Papers and age.</param>
/// <param name="Common">The club's common rate of attendance; null where nothing is known of it.</param>
/// <param name="LessonsLeft">Days of the lessons left before the test, in order.</param>
/// <param name="Overrule">A verdict that was set against the sum; null for none.</param>
/// <param name="GateRule">The rule of the fall gate.</param>
/// <param name="Rule">The rule of readiness.</param>
/// <param name="LikelyPercent">From this chance on, enough lessons are "likely": the club's own setting. Proposed 80.</param>
public sealed record ReadinessSnapshot(
    ClockSnapshot Clock,
    SheetSnapshot Sheet,
    Evidence Evidence,
    IReadOnlyList<StandDown> StandDowns,
    TestPapers Papers,
    BetaPrior? Common,
    IReadOnlyList<DateOnly> LessonsLeft,
    Overrule? Overrule,
    FallGateRule GateRule,
    ReadinessRule Rule,
    int LikelyPercent = 80);

/// <summary>The same question with the parts that a club reckons once for many children already reckoned.</summary>
/// <param name="AsOf">The evening just closed.</param>
/// <param name="TestOn">The test.</param>
/// <param name="NextTestOn">The test after it; null when none is set.</param>
/// <param name="Clock">The child's clock for this test.</param>
/// <param name="Sheet">What must be shown at it.</param>
/// <param name="Evidence">What was seen.</param>
/// <param name="StandDowns">Every stand-down.</param>
/// <param name="Papers">Papers and age.</param>
/// <param name="Common">The common rate; null where nothing is known.</param>
/// <param name="LessonsLeft">Days of the lessons left before the test, in order.</param>
/// <param name="Overrule">A verdict set against the sum.</param>
/// <param name="GateRule">The rule of the fall gate.</param>
/// <param name="Rule">The rule of readiness.</param>
/// <param name="LikelyPercent">From this chance on, enough lessons are "likely": the club's own setting. Proposed 80.</param>
/// <param name="HarderForms">Items of the edition that cover easier ones; null for those of the sheet alone.</param>
/// <param name="AfterKnock">The test comes too early after a knock to the head: words only, or another day; null where it does not.</param>
public sealed record ReadinessParts(
    DateOnly AsOf,
    DateOnly TestOn,
    DateOnly? NextTestOn,
    ClockAnswer Clock,
    RequirementSheet Sheet,
    Evidence Evidence,
    IReadOnlyList<StandDown> StandDowns,
    TestPapers Papers,
    BetaPrior? Common,
    IReadOnlyList<DateOnly> LessonsLeft,
    Overrule? Overrule,
    FallGateRule GateRule,
    ReadinessRule Rule,
    int LikelyPercent = 80,
    IReadOnlyList<Item>? HarderForms = null,
    WordsOnlyOrMoved? AfterKnock = null);
