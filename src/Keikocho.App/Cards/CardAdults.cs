using Keikocho.App.Club;
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
    public static CardAdults Of(
        ClubBook book, LessonRow lesson, IReadOnlyDictionary<Guid, AttendanceRow> states, IEnumerable<(Guid Person, MatEnd End)> children, bool registerTaken)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(lesson);
        ArgumentNullException.ThrowIfNull(states);
        AttendanceWord WordOf(Guid person) => states.TryGetValue(person, out var state) ? state.Word : AttendanceWord.Untouched;
        var duties = book.DutiesOn(lesson.Date).DistinctBy(d => d.PersonId).Where(d => book.Person(d.PersonId) is { IsErased: false }).ToList();
        var anyHere = duties.Any(d => WordOf(d.PersonId) == AttendanceWord.Present);
        var here = duties.Where(d => anyHere ? WordOf(d.PersonId) == AttendanceWord.Present : WordOf(d.PersonId) == AttendanceWord.Untouched).ToList();
        var present = here.Select(d => (Duty: d, Adult: Present(book, lesson, d))).ToList();
        var ages = children.Select(c => new ChildrenAtEnd(c.End, AgeOn(book.Person(c.Person)?.Born, lesson.Date))).ToList();
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
        var beginners = new List<CardAdult>();
        var main = new List<CardAdult>();
        var lead = All.FirstOrDefault(a => a.Adult.MayLead && a.Duty == DutyKind.Assistant).Adult ?? (Leads.Count > 1 ? Leads[1] : null);
        if (lead is not null && Leads.Count > 1) beginners.Add(lead);
        foreach (var (adult, _) in All.Where(a => a.Adult != lead || beginners.Count == 0))
        {
            if (main.Count == 0 && adult.MayLead) main.Add(adult);
            else if (beginners.Count <= main.Count) beginners.Add(adult);
            else main.Add(adult);
        }

        return (beginners, main);
    }

    private static AdultPresent Present(ClubBook book, LessonRow lesson, DutyRow duty)
    {
        var person = book.Person(duty.PersonId)!;
        return new AdultPresent(
            person.CallName, null, AgeOn(person.Born, lesson.Date) is { } age ? age < 18 : duty.Kind == DutyKind.JuniorLeader || !person.SeenAdult, duty.VettedUntil, duty.FirstAidUntil);
    }

    private static int? AgeOn(DateOnly? born, DateOnly day) => born is { } date && date <= day ? Age.On(date, day, LeapBirthday.FirstMarch) : null;
}
