using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Evening;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.People;

namespace Keikocho.App.Register;

/// <summary>One tile of the register. It holds what anybody in the hall may see: a name, an end, a word.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">The name as called, with a second part where two share it.</param>
/// <param name="Where">The end, or the duty of an adult.</param>
/// <param name="Mark">Word of the look for its state: present, late, left, told, absent, or empty.</param>
/// <param name="Words">The state in words.</param>
/// <param name="Stamp">The stamp.</param>
/// <param name="AskOnce">Another child has the same called name and belt: a tap asks once more.</param>
/// <param name="FullName">Said when it asks.</param>
public sealed record RegisterTile(Guid PersonId, string Name, string Where, string Mark, string Words, StampKind Stamp, bool AskOnce, string FullName);

/// <summary>Counts of the bar.</summary>
/// <param name="Present">Here, or were here.</param>
/// <param name="Told">Absent, told us.</param>
/// <param name="Absent">Absent.</param>
/// <param name="NotMarked">Nobody has said anything.</param>
public sealed record RegisterTally(int Present, int Told, int Absent, int NotMarked);

/// <summary>The register of one lesson.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Programme">Its programme's name.</param>
/// <param name="Line">Day, the bow, which lesson of the term; short, so that the head of the page stays one row.</param>
/// <param name="Children">Children in register order.</param>
/// <param name="Adults">Adults and leaders on duty.</param>
/// <param name="OtherAdults">Adults on duty who have no tile, in a club with many.</param>
/// <param name="Tally">Counts of the children.</param>
/// <param name="Afterwards">The register is filled in afterwards: a tap says "was here", without a time.</param>
/// <param name="ToCome">The lesson's day is still to come: nobody can have been there yet.</param>
/// <param name="PastHalfTime">It is today, past half time: a tap now would not count as a lesson.</param>
/// <param name="Closed">Name of the closure that takes the lesson out; null when it is held.</param>
/// <param name="Evening">The lessons of this evening, with their programmes.</param>
public sealed record RegisterView(
    LessonRow Lesson,
    string Programme,
    string Line,
    ImmutableArray<RegisterTile> Children,
    ImmutableArray<RegisterTile> Adults,
    ImmutableArray<(Guid PersonId, string Name)> OtherAdults,
    RegisterTally Tally,
    bool Afterwards,
    bool ToCome,
    bool PastHalfTime,
    string? Closed,
    ImmutableArray<(Guid LessonId, string Programme)> Evening)
{
    private const int MostAdultTiles = 24;

    /// <summary>Reads the register of a lesson.</summary>
    public static RegisterView Of(OpenClub club, LessonRow lesson, bool afterwards)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        var book = club.Book;
        var states = AttendanceReader.OfLesson(club.Reading, lesson.Id);
        var programme = book.Programme(lesson.ProgrammeId)!;
        var duties = book.DutiesOn(lesson.Date).DistinctBy(d => d.PersonId).ToList();
        // A leader who also trains in this programme has one tile only, among the children.
        var register = book.RegisterOf(programme.Id, lesson.Date).DistinctBy(e => e.PersonId).ToList();
        var children = Tiles(book, programme, lesson, register, states);
        var trains = register.Select(e => e.PersonId).ToHashSet();
        var onTheList = duties.Where(d => !trains.Contains(d.PersonId)).ToList();
        // A club with many adults shows those who are here or act on this device; the others are chosen from a list.
        var shown = onTheList.Count <= MostAdultTiles
            ? onTheList
            : [.. onTheList.Where(d => states.ContainsKey(d.PersonId) || d.PersonId == club.Acting?.Id)];
        var adults = shown.Select(d => AdultTile(book, d, states)).ToImmutableArray();
        var others = onTheList.Except(shown).Select(d => book.Person(d.PersonId)!).Select(p => (p.Id, p.FullName)).OrderBy(p => p.FullName, StringComparer.Ordinal).ToImmutableArray();
        var isToday = lesson.Date == club.Today;
        var now = club.Clock.LocalTime;
        var past = !isToday || now > lesson.End;
        var place = EveningLesson.InTerm(book, lesson);
        return new RegisterView(
            lesson,
            programme.Name,
            $"{lesson.Date.DayOfWeek} {lesson.Date.Brief()} at {lesson.Start.Plain()}" + (place is { } p ? $", lesson {p.Number} of {p.Of}" : ""),
            children,
            adults,
            others,
            TallyOf(children),
            afterwards || past,
            lesson.Date > club.Today,
            isToday && !past && now >= lesson.HalfTime,
            book.Closure(lesson.ClosureId)?.Name,
            [.. EveningLesson.SameEvening(book, lesson).Select(l => (l.Id, book.Programme(l.ProgrammeId)!.Name))]);
    }

    /// <summary>The tile of one person of the lesson; null when that person is on neither list.</summary>
    public RegisterTile? Tile(Guid person) =>
        Children.FirstOrDefault(t => t.PersonId == person) ?? Adults.FirstOrDefault(t => t.PersonId == person);

    private static ImmutableArray<RegisterTile> Tiles(
        ClubBook book, ProgrammeRow programme, LessonRow lesson, List<EnrolmentRow> register, Dictionary<Guid, AttendanceRow> states)
    {
        var names = CallNames.Show([.. register.Select(e => book.Person(e.PersonId)!).Select(p =>
            new NamedChild(new PersonId(p.Id), p.CallName, p.Family, book.RankOf(p.Id, programme.LadderId)?.Name))]);
        return [.. names.Select(name =>
        {
            var person = book.Person(name.Person.Value)!;
            var end = book.EndOf(person.Id, programme, lesson, lesson.Date) == MatEnd.Beginners ? "beginners’ end" : "main group";
            return Tile(person, name.Name, end, states.GetValueOrDefault(person.Id), name.BeltsMatchToo);
        })];
    }

    private static RegisterTile AdultTile(ClubBook book, DutyRow duty, Dictionary<Guid, AttendanceRow> states)
    {
        var person = book.Person(duty.PersonId)!;
        return Tile(person, person.CallName, DutyWords.Of(duty.Kind), states.GetValueOrDefault(person.Id), false);
    }

    private static RegisterTile Tile(BookPerson person, string name, string where, AttendanceRow? state, bool askOnce)
    {
        var (mark, words, stamp) = Say(state);
        return new RegisterTile(person.Id, name, where, mark, words, stamp, askOnce, person.FullName);
    }

    private static (string Mark, string Words, StampKind Stamp) Say(AttendanceRow? state) => state?.Word switch
    {
        AttendanceWord.Present when state.Late => ("late", state.Arrived is { } at ? $"came {at.Plain()}" : "came late", StampKind.Late),
        AttendanceWord.Present => ("present", "present", StampKind.Present),
        AttendanceWord.Left => ("left", state.LeftAt is { } at ? $"left {at.Plain()}" : "left", StampKind.LeftEarly),
        AttendanceWord.Excused => ("told", "absent, told us", StampKind.Told),
        AttendanceWord.Absent => ("absent", "absent", StampKind.Absent),
        _ => ("", "not marked", StampKind.None),
    };

    private static RegisterTally TallyOf(ImmutableArray<RegisterTile> tiles) => new(
        tiles.Count(t => t.Mark is "present" or "late" or "left"),
        tiles.Count(t => t.Mark == "told"),
        tiles.Count(t => t.Mark == "absent"),
        tiles.Count(t => t.Mark == ""));
}

/// <summary>What someone does in the club, in the trade's words.</summary>
public static class DutyWords
{
    /// <summary>The words.</summary>
    public static string Of(DutyKind kind) => kind switch
    {
        DutyKind.HeadInstructor => "head instructor",
        DutyKind.Instructor => "instructor",
        DutyKind.Assistant => "assistant",
        DutyKind.JuniorLeader => "junior leader",
        DutyKind.Registrar => "registrar",
        DutyKind.WelfareOfficer => "welfare officer",
        DutyKind.Volunteer => "volunteer",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "There is no such duty."),
    };
}
