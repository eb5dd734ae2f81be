using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.Safety;

namespace Keikocho.App.Knocks;

/// <summary>A line of the record as a page shows it.</summary>
/// <param name="Says">What it says: "Seen", "Slip handed over".</param>
/// <param name="Words">Day and words.</param>
/// <param name="By">Who wrote it.</param>
/// <param name="Written">"3 March 2026, 18:20".</param>
public sealed record KnockLineView(string Says, string Words, string By, string Written);

/// <summary>One knock: the record, the slip, the earliest dates.</summary>
/// <param name="Held">As it is kept.</param>
/// <param name="Person">The child.</param>
/// <param name="Lesson">The lesson; null where it is not in the book any more.</param>
/// <param name="When">"at the lesson of 17:30, marked at 18:12".</param>
/// <param name="Activity">What was going on, in words.</param>
/// <param name="MarkedBy">Who marked it.</param>
/// <param name="Lines">The record, in order.</param>
/// <param name="Answer">The dates; null where the knock counts no more.</param>
/// <param name="Stands">A stand-down of a knock stands for the child.</param>
/// <param name="IsOffTheMat">One that says off the mat stands.</param>
public sealed record KnockView(
    HeldKnock Held, BookPerson Person, LessonRow? Lesson, string When, string Activity, string MarkedBy, ImmutableArray<KnockLineView> Lines,
    HeadKnockAnswer? Answer, bool Stands, bool IsOffTheMat)
{
    /// <summary>Whether "no contact" can take the place of "off the mat" today.</summary>
    public bool CanEase(DateOnly today) => IsOffTheMat && Answer is { Advice: not null, NoContactDrills: { } drills } && drills <= today && Answer.FallsAndContact > today;

    /// <summary>Reads it; null when there is no such knock.</summary>
    public static KnockView? Of(OpenClub club, Guid id)
    {
        ArgumentNullException.ThrowIfNull(club);
        if (KnockReader.One(club.Reading, id) is not { } held || club.Book.Person(held.PersonId) is not { } person) return null;
        var lesson = club.Book.Lesson(held.LessonId);
        var knocks = KnockReader.OfPerson(club.Reading, person.Id);
        var standDowns = EvidenceReader.StandDownsOf(club.Reading, [person.Id])[person.Id].ToList();
        var own = KnockStandDowns.Of(knocks, standDowns).Where(s => s.LiftedOn is null).ToList();
        string Name(Guid? by) => by is { } who && club.Book.Person(who) is { IsErased: false } adult ? adult.FullName : "an adult whose name was erased";
        return new KnockView(
            held,
            person,
            lesson,
            $"{(lesson is null ? "" : $"at the lesson of {lesson.Start.Plain()}, ")}marked {(club.Clock.DayOf(held.MadeAt) == held.On ? "" : $"on {club.Clock.DayOf(held.MadeAt).Full()} ")}at {club.Clock.TimeOf(held.MadeAt).Plain()}",
            KnockActivities.Words(held.Activity),
            Name(held.ById),
            [.. held.Lines.Select(l => new KnockLineView(Says(l.Kind), WordsOf(l), Name(l.ById), $"{club.Clock.DayOf(l.MadeAt).Full()}, {club.Clock.TimeOf(l.MadeAt).Plain()}"))],
            held.Counts ? KnockSum.Of(club, person.Id, knocks, standDowns) : null,
            own.Count > 0,
            own.Any(s => s.Scope == StandDownScope.OffTheMat));
    }

    private static string WordsOf(HeldKnockLine line) => string.Join(": ", new[] { line.On?.Full(), line.Words }.OfType<string>());

    /// <summary>What a line says, in a word or two.</summary>
    public static string Says(KnockLine kind) => kind switch
    {
        KnockLine.Seen => "Seen",
        KnockLine.Done => "Done",
        KnockLine.Witness => "Led, and saw it",
        KnockLine.HandedOver => "Slip handed over to",
        KnockLine.ToldByPhone => "Told by phone",
        KnockLine.FreeFrom => "First day without any symptom",
        KnockLine.SymptomsAgain => "Symptoms again",
        KnockLine.Advice => "Written advice",
        KnockLine.WrongChild => "Entered for the wrong child",
        _ => "Added",
    };
}
