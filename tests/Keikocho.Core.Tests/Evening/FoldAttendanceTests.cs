using CsCheck;
using Keikocho.Core.Evening;
using Keikocho.Testing;
using static Keikocho.Core.Tests.Evening.Marks;

namespace Keikocho.Core.Tests.Evening;

public sealed class FoldAttendanceTests
{
    [Fact]
    public void No_marks_is_untouched_not_absent() => Assert.Equal(AttendanceState.Untouched, Fold());

    [Fact]
    public void Present_at_the_bow_is_a_lesson_and_an_ukemi_evening()
    {
        var state = Fold(Mark(1, MarkKind.Present, "17:28"));
        Assert.Equal(new AttendanceState(AttendanceWord.Present, At("17:28"), Counts: true, Ukemi: true), state);
    }

    [Theory]
    [InlineData("17:35", false)]
    [InlineData("17:36", true)]
    public void Late_begins_after_the_minutes_that_the_register_takes(string arrived, bool late) =>
        Assert.Equal(late, Fold(Mark(1, MarkKind.Present, arrived)).Late);

    [Fact, Statement(3)]
    public void Late_after_the_falls_is_a_lesson_but_not_an_ukemi_evening()
    {
        var state = Fold(Mark(1, MarkKind.Present, "18:00"));
        Assert.True(state.Late);
        Assert.True(state.Counts);
        Assert.False(state.Ukemi);
    }

    // Ruling: arrival while the falls are running is not an ukemi evening (shut wins).
    [Theory]
    [InlineData("17:45", true)]
    [InlineData("17:46", false)]
    [InlineData("17:54", false)]
    public void Arrival_during_the_falls_is_not_an_ukemi_evening(string arrived, bool ukemi) =>
        Assert.Equal(ukemi, Fold(Mark(1, MarkKind.Present, arrived)).Ukemi);

    // Ruling: "before" half time, so exactly at half time is not attended.
    [Theory]
    [InlineData("18:07", true)]
    [InlineData("18:08", false)]
    [InlineData("18:30", false)]
    public void Only_before_half_time_is_a_lesson(string arrived, bool counts) =>
        Assert.Equal(counts, Fold(Mark(1, MarkKind.Present, arrived)).Counts);

    [Fact]
    public void Leaving_before_half_time_counts_and_is_said_unless_the_club_sets_otherwise()
    {
        AttendanceMark[] marks = [Mark(1, MarkKind.Present, "17:30"), Mark(2, MarkKind.Left, "18:00")];
        var state = Fold(marks);
        Assert.True(state.Counts);
        Assert.True(state.LeftEarly);
        Assert.True(state.Ukemi);

        var strict = Rules with { LeavingEarlyCounts = false };
        Assert.False(FoldAttendance.Fold(marks, Times, strict).Counts);
        Assert.Empty(FoldAttendanceCheck.Objections(marks, Times, strict, FoldAttendance.Fold(marks, Times, strict)));
    }

    [Fact]
    public void Leaving_during_the_falls_is_not_an_ukemi_evening() =>
        Assert.False(Fold(Mark(1, MarkKind.Present, "17:30"), Mark(2, MarkKind.Left, "17:54")).Ukemi);

    [Fact]
    public void Leaving_at_an_unknown_time_is_a_lesson_but_not_an_ukemi_evening()
    {
        var state = Fold(Mark(1, MarkKind.Present, "17:30"), Mark(2, MarkKind.Left));
        Assert.True(state.Counts);
        Assert.False(state.Ukemi);
    }

    [Fact]
    public void An_imported_late_without_a_time_is_a_lesson_and_no_ukemi_evening()
    {
        var state = Fold(Mark(1, MarkKind.Present, late: true));
        Assert.Equal(new AttendanceState(AttendanceWord.Present, Late: true, Counts: true), state);
    }

    [Fact]
    public void Present_after_left_on_one_device_came_back_and_keeps_the_first_arrival()
    {
        var state = Fold(Mark(1, MarkKind.Present, "17:30"), Mark(2, MarkKind.Left, "18:00"), Mark(3, MarkKind.Present, "18:10"));
        Assert.Equal(AttendanceWord.Present, state.Word);
        Assert.Equal(At("17:30"), state.Arrived);
        Assert.Null(state.LeftAt);
    }

    [Fact]
    public void Arrival_is_counted_from_the_last_word_that_said_absent()
    {
        var state = Fold(Mark(1, MarkKind.Present, "17:30"), Mark(2, MarkKind.Absent), Mark(3, MarkKind.Present, "17:50"));
        Assert.Equal(At("17:50"), state.Arrived);
        Assert.True(state.Late);
    }

    [Fact]
    public void Left_on_one_device_stands_over_present_on_another()
    {
        var state = Fold(Mark(1, MarkKind.Present, "17:30"), Mark(2, MarkKind.Left, "18:20", device: 2));
        Assert.Equal(AttendanceWord.Left, state.Word);
        Assert.Equal(At("17:30"), state.Arrived);
        Assert.Equal(At("18:20"), state.LeftAt);
    }

    [Theory]
    [InlineData(MarkKind.Absent)]
    [InlineData(MarkKind.Excused)]
    public void Present_beats_away_on_another_device_and_the_clash_is_said(MarkKind away)
    {
        var state = Fold(Mark(1, MarkKind.Present, "17:30"), Mark(2, away, device: 2));
        Assert.Equal(AttendanceWord.Present, state.Word);
        Assert.Equal(AttendanceClash.PresentAndAbsent, state.Clash);
    }

    [Fact]
    public void Late_stands_over_on_time_and_the_clash_is_said()
    {
        var state = Fold(Mark(1, MarkKind.Present, "17:30"), Mark(2, MarkKind.Present, "17:50", device: 2));
        Assert.Equal(At("17:50"), state.Arrived);
        Assert.True(state.Late);
        Assert.False(state.Ukemi);
        Assert.Equal(AttendanceClash.OnTimeAndLate, state.Clash);
    }

    [Fact]
    public void Excused_stands_over_absent_without_a_clash() =>
        Assert.Equal(new AttendanceState(AttendanceWord.Excused), Fold(Mark(1, MarkKind.Absent), Mark(2, MarkKind.Excused, device: 2)));

    [Fact]
    public void A_device_that_takes_back_all_it_said_leaves_the_word_to_the_other() =>
        Assert.Equal(
            AttendanceWord.Absent,
            Fold(Mark(1, MarkKind.Present, "17:30"), Mark(2, MarkKind.Cleared), Mark(3, MarkKind.Absent, device: 2)).Word);

    [Fact]
    public void Undo_takes_one_mark_back_and_the_word_before_it_holds() =>
        Assert.Equal(
            AttendanceWord.Present,
            Fold(Mark(1, MarkKind.Present, "17:30"), Mark(2, MarkKind.Left, "18:00"), Mark(3, MarkKind.Cleared, replaces: 2)).Word);

    [Fact]
    public void Undo_of_an_undo_gives_the_mark_back() =>
        Assert.Equal(
            AttendanceWord.Present,
            Fold(Mark(1, MarkKind.Present, "17:30"), Mark(2, MarkKind.Cleared, replaces: 1), Mark(3, MarkKind.Cleared, replaces: 2)).Word);

    [Fact]
    public void A_correction_speaks_at_the_place_of_the_mark_that_it_corrects()
    {
        // The register said absent, then left: the correction of the first does not outrank the later word of that device.
        var state = Fold(
            Mark(1, MarkKind.Absent), Mark(2, MarkKind.Left, "18:00"),
            Mark(9, MarkKind.Corrected, "17:40", device: 2, replaces: 1, to: MarkKind.Present));
        Assert.Equal(AttendanceWord.Left, state.Word);
        Assert.Equal(At("17:40"), state.Arrived);
        Assert.Equal(AttendanceClash.None, state.Clash);
    }

    [Fact]
    public void A_correction_of_a_correction_does_not_bring_the_first_mark_back() =>
        Assert.Equal(
            AttendanceWord.Excused,
            Fold(
                Mark(1, MarkKind.Present, "17:30"),
                Mark(2, MarkKind.Corrected, replaces: 1, to: MarkKind.Absent),
                Mark(3, MarkKind.Corrected, device: 2, replaces: 2, to: MarkKind.Excused)).Word);

    [Fact]
    public void Undo_of_a_correction_brings_the_first_mark_back() =>
        Assert.Equal(
            AttendanceWord.Present,
            Fold(
                Mark(1, MarkKind.Present, "17:30"),
                Mark(2, MarkKind.Corrected, replaces: 1, to: MarkKind.Absent),
                Mark(3, MarkKind.Cleared, device: 2, replaces: 2)).Word);

    [Fact]
    public void Two_corrections_of_one_mark_settle_as_two_devices_do() =>
        Assert.Equal(
            AttendanceWord.Present,
            Fold(
                Mark(1, MarkKind.Absent),
                Mark(2, MarkKind.Corrected, "17:30", device: 2, replaces: 1, to: MarkKind.Present),
                Mark(3, MarkKind.Corrected, device: 3, replaces: 1, to: MarkKind.Excused)).Word);

    [Fact]
    public void Marks_that_replace_each_other_in_a_circle_hide_nothing() =>
        Assert.Equal(
            AttendanceWord.Present,
            Fold(Mark(1, MarkKind.Present, "17:30", replaces: 2), Mark(2, MarkKind.Cleared, device: 2, replaces: 1)).Word);

    [Fact]
    public void An_undo_whose_mark_has_not_arrived_says_nothing() =>
        Assert.Equal(
            AttendanceWord.Present,
            Fold(Mark(1, MarkKind.Present, "17:30"), Mark(5, MarkKind.Cleared, replaces: 4)).Word);

    [Fact, Statement(7)]
    public void A_corrected_mark_stays_in_the_trail_with_who_and_when()
    {
        AttendanceMark[] marks =
        [
            Mark(1, MarkKind.Present, "17:30", by: 4),
            Mark(2, MarkKind.Corrected, device: 2, replaces: 1, to: MarkKind.Absent, by: 5),
        ];
        var folded = FoldAttendance.Explain(marks, Times, Rules);
        Assert.Equal(AttendanceWord.Absent, folded.State.Word);
        Assert.Equal(new MarkTrace(marks[0], MarkFate.Replaced, marks[1].Id), folded.Trail[0]);
        Assert.Equal(new MarkTrace(marks[1], MarkFate.Speaks, null), folded.Trail[1]);
    }

    [Fact, Statement(6)]
    public void A_register_begun_by_one_and_finished_by_another_has_both_names() =>
        Assert.Equal(
            [Ids.Person(4), Ids.Person(7)],
            FoldAttendance.MarkedBy([Mark(1, MarkKind.Present, by: 7), Mark(2, MarkKind.Absent, by: 4), Mark(3, MarkKind.Present, by: 7)]));

    [Fact, Statement(96)]
    public void A_device_clock_that_is_a_day_wrong_changes_nothing()
    {
        var right = Mark(1, MarkKind.Present, "17:30");
        var wrong = right with { MadeAt = right.MadeAt.AddDays(-1) };
        Assert.Equal(Fold(right, Mark(2, MarkKind.Left, "18:30", device: 2)), Fold(wrong, Mark(2, MarkKind.Left, "18:30", device: 2)));
    }

    [Fact]
    public void Any_order_of_arrival_gives_the_same_state() =>
        Gen.Select(Marks.Any, Gen.Int[0, int.MaxValue]).Sample((marks, seed) =>
        {
            var shuffled = marks.ToArray();
            new Random(seed).Shuffle(shuffled);
            return FoldAttendance.Fold(marks, Times, Rules) == FoldAttendance.Fold(shuffled, Times, Rules);
        });

    [Fact]
    public void A_mark_that_arrives_twice_changes_nothing() =>
        Gen.Select(Marks.Any, Gen.Int[0, 8]).Sample((marks, which) =>
            FoldAttendance.Fold(marks, Times, Rules)
            == FoldAttendance.Fold([.. marks, marks[which % marks.Length] with { }], Times, Rules));

    [Fact]
    public void Every_state_stands_before_the_check() =>
        Gen.Select(Marks.Any, Gen.Bool).Sample((marks, leavingCounts) =>
        {
            var rules = Rules with { LeavingEarlyCounts = leavingCounts };
            return FoldAttendanceCheck.Objections(marks, Times, rules, FoldAttendance.Fold(marks, Times, rules)).Count == 0;
        }, iter: 20_000);

    [Fact]
    public void A_state_that_no_marks_say_is_objected_to() =>
        Gen.Select(Marks.Any, Marks.Any).Sample((mine, others) =>
        {
            var state = FoldAttendance.Fold(others, Times, Rules);
            var right = FoldAttendance.Fold(mine, Times, Rules);
            return (state == right) == (FoldAttendanceCheck.Objections(mine, Times, Rules, state).Count == 0);
        });

    [Fact]
    public void A_fall_is_not_a_word_about_presence() =>
        Assert.Throws<ArgumentException>(() => Fold(Mark(1, MarkKind.Fall)));

    [Fact]
    public void Two_different_marks_with_one_id_are_refused() =>
        Assert.Throws<ArgumentException>(() => Fold(Mark(1, MarkKind.Present, "17:30"), Mark(1, MarkKind.Absent)));

    [Fact]
    public void Every_reason_names_its_times()
    {
        var said = FoldAttendance.Explain([Mark(1, MarkKind.Present, "17:50")], Times, Rules).Reasons.Select(r => r.Sentence);
        Assert.Equal(
            [
                "A lesson: here at 17:50, before half time at 18:08.",
                "Late: came at 17:50, more than 5 minutes after the bow at 17:30.",
                "Not an ukemi evening: not known to be here for all of the falls from 17:45 to 17:55.",
            ],
            said);
    }
}
