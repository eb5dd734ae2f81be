using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Evening;
using Keikocho.App.Hall;
using Keikocho.App.Roll;
using Keikocho.App.Sightings;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Calendar;
using Keikocho.Store.Hall;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Safety;

namespace Keikocho.App.Closing;

/// <summary>A child whose slip has not gone home.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">Full name.</param>
/// <param name="Words">What they were doing.</param>
public sealed record OpenSlip(Guid PersonId, string Name, string Words);

/// <summary>A tablet of the evening.</summary>
/// <param name="Number">What the laptop calls it.</param>
/// <param name="Words">Who holds it, and how many of its marks are here.</param>
public sealed record TabletLine(int Number, string Words);

/// <summary>What is looked at before an evening is closed. For adults, on the laptop.</summary>
/// <param name="Lesson">The lesson that named the evening.</param>
/// <param name="Closed">When it was closed and by whom; null while it is open.</param>
/// <param name="Slips">Children whose slips have not gone home: the evening stays open until they have.</param>
/// <param name="StillHere">Children on the roll who are not marked as gone; of whom it is checked with an instructor who fetches them.</param>
/// <param name="Tablets">Tablets of the evening.</param>
/// <param name="Points">What to look at on tablets before closing; none of it stops anybody.</param>
/// <param name="Clashes">What devices say differently, a sentence each.</param>
/// <param name="Suggested">What leaders marked and nobody has confirmed.</param>
/// <param name="Notes">Notes that were made on this evening.</param>
/// <param name="Care">What is looked at over the term.</param>
public sealed record ClosingView(
    LessonRow Lesson,
    string? Closed,
    ImmutableArray<OpenSlip> Slips,
    ImmutableArray<(string Name, bool CheckFirst)> StillHere,
    ImmutableArray<TabletLine> Tablets,
    ImmutableArray<string> Points,
    ImmutableArray<string> Clashes,
    ImmutableArray<SuggestedItem> Suggested,
    ImmutableArray<ChildNotes> Notes,
    CareOfTerm Care)
{
    /// <summary>Reads it.</summary>
    public static ClosingView Of(OpenClub club, TabletsHeard heard, LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        var book = club.Book;
        var lessons = EveningLesson.SameEvening(book, lesson);
        var marks = MarksOfLessons.Of(club.Reading, [.. lessons.Select(l => l.Id)]);
        var tablets = book.HallOf(lesson) is { } hall ? JoinReader.OfEvening(club.Reading, lesson.Date, hall.Id) : [];
        var items = new ItemsOfLadders(book, lessons.Select(l => book.Programme(l.ProgrammeId)?.LadderId));
        var names = new EveningNames(club, lessons);
        var (roll, fullNames, _, _) = EveningRoll.Take(club, lesson);
        Guid[] here = [.. roll.Here.Where(p => !p.IsAdult).Select(p => p.Person.Value)];
        var barred = PeopleReader.WithSomebodyBarred(club.Reading, here);
        return new ClosingView(
            lesson,
            ClosedWords(club, lesson),
            SlipsOf(club, lesson),
            [.. here.Select(id => (fullNames.GetValueOrDefault(id, ""), barred.Contains(id)))],
            [.. tablets.Select(t => new TabletLine(t.Number, $"{book.Person(t.PersonId)?.CallName}, {Shared.Counted.Of(marks.Count(m => m.DeviceId == t.DeviceId), "mark")} of it here"))],
            TabletPoints.Of(heard, club.Clock, tablets),
            EveningClashes.Of(club, lessons, marks, tablets, items, names),
            SuggestedOfEvening.Of(club, marks, items, names),
            NotesOfEvening.Of(club, lessons, names),
            CareOfTerm.Of(club, lessons));
    }

    /// <summary>The children of an evening whose slips have not gone home.</summary>
    public static ImmutableArray<OpenSlip> SlipsOf(OpenClub club, LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        return
        [
            .. KnockSlips.OpenOf(club.Reading, [.. EveningLesson.SameEvening(club.Book, lesson).Select(l => l.Id)])
                .Select(k => new OpenSlip(k.PersonId, club.Book.Person(k.PersonId)?.FullName ?? "a child who is not in the file any more", KnockActivities.Words(k.Activity))),
        ];
    }

    private static string? ClosedWords(OpenClub club, LessonRow lesson) => club.Book.Evening(lesson) is { ClosedAt: { } at } evening
        ? $"Closed on {club.Clock.DayOf(at).Full()} at {club.Clock.TimeOf(at).Plain()}{(evening.ClosedById is { } by && club.Book.Person(by) is { IsErased: false } person ? $" by {person.CallName}" : "")}."
        : null;
}
