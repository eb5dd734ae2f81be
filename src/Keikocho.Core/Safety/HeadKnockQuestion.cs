using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>Written advice that was shown.</summary>
/// <param name="Dated">The day on which it was written.</param>
/// <param name="Whose">Who wrote it.</param>
/// <param name="RecordedBy">The adult who saw it and recorded it.</param>
public sealed record KnockAdvice(DateOnly Dated, string Whose, string RecordedBy);

/// <summary>A named adult took something off the stand-down that the knock brought.</summary>
/// <param name="On">The day.</param>
/// <param name="By">The adult.</param>
public sealed record KnockLifting(DateOnly On, string By);

/// <summary>The question: what is known of one child's knock to the head, and today.</summary>
/// <param name="On">The day of the knock.</param>
/// <param name="Today">The day asked about.</param>
/// <param name="FreeFrom">Days that were recorded as the first without any symptom; after symptoms came back, another.</param>
/// <param name="SymptomsOn">Days after it on which symptoms were there again.</param>
/// <param name="Advice">Written advice.</param>
/// <param name="FurtherKnocks">Days of further knocks.</param>
/// <param name="Eased">"Off the mat" gave way to "no contact"; null while it did not.</param>
/// <param name="Lifted">The stand-down was lifted; null while it stands.</param>
/// <param name="Lessons">The club's lessons to come.</param>
/// <param name="Tests">The club's promotion tests to come.</param>
/// <param name="Rule">The club's rule.</param>
public sealed record HeadKnockSnapshot(
    DateOnly On,
    DateOnly Today,
    IReadOnlyList<DateOnly> FreeFrom,
    IReadOnlyList<DateOnly> SymptomsOn,
    IReadOnlyList<KnockAdvice> Advice,
    IReadOnlyList<DateOnly> FurtherKnocks,
    KnockLifting? Eased,
    KnockLifting? Lifted,
    IReadOnlyList<DateOnly> Lessons,
    IReadOnlyList<DateOnly> Tests,
    KnockRule Rule);

/// <summary>What comes back step by step.</summary>
public enum KnockStep
{
    /// <summary>Walking, footwork alone.</summary>
    LightMovement = 1,
    /// <summary>Drills without contact, turning in without a throw; no falls.</summary>
    NoContactDrills = 2,
    /// <summary>Falls, being thrown, holds, free practice.</summary>
    FallsAndContact = 3,
    /// <summary>A promotion test or a contest.</summary>
    TestOrContest = 4,
}

/// <summary>One step: its earliest date, and whether it is shut today.</summary>
/// <param name="Step">Which.</param>
/// <param name="Earliest">Not before this day; null where no day can be named.</param>
/// <param name="IsShut">Shut today. Not shut never means cleared: the adults in the hall and the written advice decide.</param>
/// <param name="Why">Why it is shut, or on whose word it is not.</param>
public sealed record KnockStepToday(KnockStep Step, DateOnly? Earliest, bool IsShut, Reason Why);

/// <summary>A promotion test to come.</summary>
/// <param name="On">The day.</param>
/// <param name="WordsOnly">Words only, no falls: the earliest day is later, unknown, or advice is missing.</param>
public sealed record KnockTest(DateOnly On, bool WordsOnly);

/// <summary>Earliest dates after a knock. Nobody is cleared by it.</summary>
/// <param name="DayZero">The day from which is counted: the latest knock.</param>
/// <param name="FreeFrom">The first day without any symptom that counts; null where there is none.</param>
/// <param name="Advice">The written advice that counts; null where there is none.</param>
/// <param name="LightMovement">Earliest day; null before the child is without symptoms.</param>
/// <param name="NoContactDrills">Earliest day; null before the child is without symptoms and advice counts.</param>
/// <param name="FallsAndContact">Earliest day; null before the child is without symptoms.</param>
/// <param name="TestOrContest">Earliest day; null before the child is without symptoms.</param>
/// <param name="FirstLesson">The first lesson on or after the earliest day of falls; null where none is known.</param>
/// <param name="Tests">Tests to come, by day.</param>
/// <param name="Steps">Every step today.</param>
/// <param name="Missing">What is missing before the stand-down can be lifted; empty where nothing is.</param>
/// <param name="SeeADoctor">When a doctor is to be asked.</param>
/// <param name="Reasons">Every date with what it follows from.</param>
/// <param name="Settings">The settings that were used.</param>
public sealed record HeadKnockAnswer(
    DateOnly DayZero,
    DateOnly? FreeFrom,
    KnockAdvice? Advice,
    DateOnly? LightMovement,
    DateOnly? NoContactDrills,
    DateOnly? FallsAndContact,
    DateOnly? TestOrContest,
    DateOnly? FirstLesson,
    IReadOnlyList<KnockTest> Tests,
    IReadOnlyList<KnockStepToday> Steps,
    IReadOnlyList<Reason> Missing,
    IReadOnlyList<Reason> SeeADoctor,
    IReadOnlyList<Reason> Reasons,
    IReadOnlyList<SettingUsed> Settings);
