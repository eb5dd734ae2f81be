using Keikocho.App.Club;
using Keikocho.App.Evening;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.People;

namespace Keikocho.App.Cards;

/// <summary>Adults and leaders who are here, or expected while nobody of them is marked; the head instructor first.</summary>
/// <param name="All">Who, with the duty of the day.</param>
/// <param name="Sum">The sum of the adults over these and the children.</param>
/// <param name="ShortBy">How many are missing; 0 while there is nothing to go by.</param>
public sealed record CardAdults(IReadOnlyList<(CardAdult Adult, DutyKind Duty)> All, AdultsAnswer Sum, int ShortBy)
{
    /// <summary>Those who may lead an end.</summary>
    public IReadOnlyList<CardAdult> Leads => [.. All.Where(a => a.Adult.MayLead).Select(a => a.Adult)];

    /// <summary>Reads them.</summary>
    /// <param name="book">The club.</param>
    /// <param name="lesson">The lesson.</param>
    /// <param name="states">The marks of the lesson.</param>
    /// <param name="children">The children of the cards with their ends.</param>
    /// <param name="registerTaken">Whether a child is marked.</param>
    /// <param name="hasBegun">Whether the lesson has begun.</param>
    public static CardAdults Of(
        ClubBook book, LessonRow lesson, IReadOnlyDictionary<Guid, AttendanceRow> states, IEnumerable<(Guid Person, MatEnd End)> children, bool registerTaken, bool hasBegun)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(lesson);
        ArgumentNullException.ThrowIfNull(states);
        AttendanceWord WordOf(Guid person) => states.TryGetValue(person, out var state) ? state.Word : AttendanceWord.Untouched;
        var duties = book.DutiesOn(lesson.Date).DistinctBy(d => d.PersonId).Where(d => book.Person(d.PersonId) is { IsErased: false }).ToList();
        var anyHere = duties.Any(d => WordOf(d.PersonId) == AttendanceWord.Present);
        // Before the bow somebody who is not marked may still come; from the bow on only who is here counts.
        var here = duties.Where(d => WordOf(d.PersonId) == AttendanceWord.Present || ((!hasBegun || !anyHere) && WordOf(d.PersonId) == AttendanceWord.Untouched)).ToList();
        var present = here.Select(d => (Duty: d, Adult: AgesOfEvening.Adult(book, d, lesson.Date))).ToList();
        var ages = children.Select(c => AgesOfEvening.Child(book, c.Person, c.End, lesson.Date)).ToList();
        var sum = EnoughAdults.Count(new AdultsSnapshot(lesson.Date, ages, [.. present.Select(p => p.Adult)], null, ClubRules.Adults(book, lesson.Date)));
        var missing = duties.Any(d => WordOf(d.PersonId) is AttendanceWord.Absent or AttendanceWord.Excused or AttendanceWord.Left);
        return new CardAdults(
            [.. present.Where(p => p.Duty.Kind is DutyKind.HeadInstructor or DutyKind.Instructor or DutyKind.Assistant or DutyKind.JuniorLeader).Select(p => (
                new CardAdult(
                    p.Duty.PersonId.ToString("D"), book.Person(p.Duty.PersonId)!.CallName,
                    !p.Adult.Under18 && p.Duty.Kind != DutyKind.JuniorLeader && p.Adult.VettedUntil >= lesson.Date),
                p.Duty.Kind))],
            sum,
            registerTaken || missing ? sum.Hall.ShortBy : 0);
    }

    /// <summary>Who is at which end: the head instructor's the main group, an assistant the beginners' end, the others where fewer are.</summary>
    public (IReadOnlyList<CardAdult> Beginners, IReadOnlyList<CardAdult> Main) Share(bool hasBeginners, bool hasMain)
    {
        if (!hasMain) return ([.. All.Select(a => a.Adult)], []);
        if (!hasBeginners) return ([], [.. All.Select(a => a.Adult)]);
        // First somebody who leads at each end, then the others where fewer are.
        var assistant = All.FirstOrDefault(a => a.Adult.MayLead && a.Duty == DutyKind.Assistant).Adult;
        var atBeginners = Leads.Count < 2 ? null : assistant ?? Leads[1];
        var atMain = Leads.FirstOrDefault(l => l != atBeginners);
        List<CardAdult> beginners = atBeginners is null ? [] : [atBeginners];
        List<CardAdult> main = atMain is null ? [] : [atMain];
        foreach (var adult in All.Select(a => a.Adult).Where(a => a != atBeginners && a != atMain))
            (beginners.Count <= main.Count ? beginners : main).Add(adult);
        return (beginners, main);
    }
}
