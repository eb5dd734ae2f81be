using Keikocho.App.Club;
using Keikocho.App.Register;
using Keikocho.Core.Evening;
using Keikocho.Paper.Register;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.People;

namespace Keikocho.App.Papers;

/// <summary>Fills the register of one evening from the book and the states.</summary>
public static class RegisterPaper
{
    /// <summary>What the paper shows of a lesson.</summary>
    public static RegisterSheetContent Of(OpenClub club, LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        var book = club.Book;
        var programme = book.Programme(lesson.ProgrammeId)!;
        var states = AttendanceReader.OfLesson(club.Reading, lesson.Id);
        var register = book.RegisterOf(programme.Id, lesson.Date).Select(e => e.PersonId).Distinct().ToList();
        var barred = PeopleReader.WithSomebodyBarred(club.Db);
        var clock = new OwnClocks(club, programme, lesson);
        return new RegisterSheetContent(
            book.Club.Name,
            programme.Name,
            lesson.Date,
            lesson.Start,
            lesson.End,
            book.HallOf(lesson)?.Name,
            Edition: null,
            Adults(book, lesson, register, states),
            AdultsNeeded: null,
            [.. PaperName.Of(book, programme, register).Select(name => Child(name, states.GetValueOrDefault(name.PersonId), clock, barred))],
            book.Closure(lesson.ClosureId) is { } closure ? [$"This lesson is closed: {closure.Name}. Its marks count for nothing."] : [],
            RegisterHands.Of(club, lesson),
            club.Today);
    }

    /// <summary>The mark as the paper says it.</summary>
    public static RegisterMark Mark(AttendanceRow? state) => state?.Word switch
    {
        AttendanceWord.Present when state.Late => RegisterMark.CameLate(state.Arrived),
        AttendanceWord.Present => RegisterMark.Present,
        // Two tablets may say a coming after the leaving; the paper then keeps the leaving, which the roll goes by.
        AttendanceWord.Left => RegisterMark.Left(state.LeftAt, state.Late, state.Late && !(state.Arrived > state.LeftAt) ? state.Arrived : null),
        AttendanceWord.Excused => RegisterMark.ToldUs,
        AttendanceWord.Absent => RegisterMark.Absent,
        _ => RegisterMark.NotMarked,
    };

    private static RegisterChild Child(PaperName name, AttendanceRow? state, OwnClocks clock, HashSet<Guid> barred)
    {
        var mark = Mark(state);
        var gone = mark.Word is RegisterWord.Absent or RegisterWord.ToldUs;
        var box = gone ? CollectionBox.NoBox : barred.Contains(name.PersonId) ? CollectionBox.CheckWithInstructor : CollectionBox.Open;
        return new RegisterChild(name.First, name.Second, mark, gone ? null : clock.NoteOf(name.PersonId), box);
    }

    // Those who were marked here; a leader who trains in this programme stands among the children.
    private static List<RegisterAdult> Adults(ClubBook book, LessonRow lesson, List<Guid> register, Dictionary<Guid, AttendanceRow> states) =>
    [
        .. book.DutiesOn(lesson.Date).DistinctBy(d => d.PersonId)
            .Where(d => !register.Contains(d.PersonId) && states.GetValueOrDefault(d.PersonId)?.Word is AttendanceWord.Present or AttendanceWord.Left)
            .Select(d => new RegisterAdult(book.Person(d.PersonId)!.FullName, DutyWords.Of(d.Kind))),
    ];
}
