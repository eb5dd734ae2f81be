using Keikocho.App.Club;
using Keikocho.App.Evening;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.People;

// The folder is called as its sum is, so the sum is named in full here.
using RollSum = Keikocho.Core.Evening.Roll;

namespace Keikocho.App.Roll;

/// <summary>The roll of one evening: every lesson of that date and hall, children and adults.</summary>
public static class EveningRoll
{
    /// <summary>The roll now, the names to call, the hour that it is of, and the names of those whom nobody has marked, in name order.</summary>
    public static (RollAnswer Roll, Dictionary<Guid, string> Names, TimeOnly At, IReadOnlyList<string> NotMarked) Take(OpenClub club, LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        var book = club.Book;
        var lessons = EveningLesson.SameEvening(book, lesson);
        var states = AttendanceReader.OfLessons(club.Reading, [.. lessons.Select(l => l.Id)]).ToLookup(s => (s.LessonId, s.PersonId));
        var duties = book.DutiesOn(lesson.Date).DistinctBy(d => d.PersonId).ToDictionary(d => d.PersonId);
        var children = lessons.SelectMany(l => book.RegisterOf(l.ProgrammeId, l.Date).Select(e => e.PersonId));
        // Whoever was marked is on the roll, on the register or not: better one name too many.
        var everybody = children.Concat(duties.Keys).Concat(states.Select(s => s.Key.PersonId)).Distinct().ToList();
        var people = everybody.Select(id => new RollPerson(
            new PersonId(id),
            IsAdult(book.Person(id)?.Born, book.Person(id)?.SeenAdult ?? false, duties.GetValueOrDefault(id), lesson.Date),
            [.. lessons.Select(l => new RollLesson(l.Start, StateOf(states[(l.Id, id)].FirstOrDefault())))])).ToList();
        var names = everybody.Select(id => book.Person(id)).Where(p => p is not null).ToDictionary(p => p!.Id, p => p!.FullName);
        // At an evening of another day the roll is as it was at the bow out.
        var now = lesson.Date == club.Today ? club.Clock.LocalTime : lessons.Max(l => l.End);
        var notMarked = people.Where(p => p.Lessons.All(l => l.State.Word == AttendanceWord.Untouched)).Select(p => p.Person.Value)
            .OrderBy(id => names.GetValueOrDefault(id, ""), StringComparer.Ordinal).ThenBy(id => id).Select(id => names.GetValueOrDefault(id, "")).ToList();
        return (RollSum.Take(new RollSnapshot(now, people)), names, now, notMarked);
    }

    private static bool IsAdult(DateOnly? born, bool seenAdult, DutyRow? duty, DateOnly day) => born is { } date
        ? Age.On(date, day, LeapBirthday.FirstMarch) >= 18
        : seenAdult || duty is { Kind: not DutyKind.JuniorLeader };

    private static AttendanceState StateOf(AttendanceRow? row) => row is null
        ? AttendanceState.Untouched
        : new AttendanceState(row.Word, row.Arrived, row.LeftAt, row.Late, row.Counts, row.Ukemi, row.LeftEarly, row.Clash);
}
