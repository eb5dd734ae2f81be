using Keikocho.Core.Evening;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;

namespace Keikocho.Store.Tests.Marks;

public sealed class FoldMarksTests
{
    private static readonly Guid Child = Guid.Parse("01957a2e-3b4c-7d5e-8f60-718293a4b5c6");
    private static readonly Guid Tablet = Guid.Parse("01957a2e-3b4c-7d5e-8f60-000000000001");

    private readonly LessonRow lesson = new()
    {
        Club = 1,
        Date = new DateOnly(2026, 3, 3),
        Start = new TimeOnly(17, 30),
        UkemiFrom = new TimeOnly(17, 35),
        UkemiTo = new TimeOnly(17, 50),
        HalfTime = new TimeOnly(18, 0),
        End = new TimeOnly(18, 30),
    };

    [Fact]
    public void No_mark_of_presence_is_no_state() => Assert.Null(Fold(Mark(1, MarkKind.Fall), Mark(2, MarkKind.Sighting)));

    [Fact]
    public void Taking_back_a_fall_says_nothing_of_presence()
    {
        var fall = Mark(1, MarkKind.Fall);
        var undo = Mark(2, MarkKind.Cleared, fall.Id);
        Assert.Null(Fold(fall, undo));
        Assert.Null(Fold(undo, fall, Mark(3, MarkKind.Cleared, undo.Id)));
    }

    [Fact]
    public void Correcting_a_sighting_says_nothing_of_presence()
    {
        var sighting = Mark(1, MarkKind.Sighting);
        var correction = Mark(2, MarkKind.Corrected, sighting.Id, code: (int)MarkKind.Sighting);
        Assert.Null(Fold(sighting, correction));
        Assert.Equal(AttendanceWord.Present, Fold(sighting, correction, Mark(3, MarkKind.Present))!.Word);
    }

    [Fact]
    public void Marks_that_replace_each_other_in_a_circle_end()
    {
        var first = Mark(1, MarkKind.Present);
        var second = Mark(2, MarkKind.Corrected, first.Id, code: (int)MarkKind.Absent);
        first.Replaces = second.Id;
        Assert.NotNull(Fold(first, second));
    }

    [Fact]
    public void A_lesson_that_is_closed_counts_for_nobody_and_keeps_its_word()
    {
        lesson.ClosureId = Guid.Parse("01957a2e-3b4c-7d5e-8f60-000000000002");
        var state = Fold(Mark(1, MarkKind.Present))!;
        Assert.Equal((AttendanceWord.Present, false, false), (state.Word, state.Counts, state.Ukemi));
    }

    private AttendanceRow? Fold(params MarkRow[] marks) => FoldMarks.Fold(lesson, Child, marks, new AttendanceRules());

    private static MarkRow Mark(int sequence, MarkKind kind, Guid? replaces = null, int code = 0) => new()
    {
        Club = 1,
        Id = new Guid(sequence, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, 0),
        DeviceId = Tablet,
        Sequence = sequence,
        PersonId = Child,
        Kind = kind,
        At = new TimeOnly(17, 31),
        Replaces = replaces,
        Code = code,
    };
}
