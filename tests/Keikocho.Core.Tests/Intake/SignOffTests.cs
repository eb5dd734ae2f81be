using Keikocho.Core.Evening;
using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Intake;

public sealed class SignOffTests
{
    private static readonly Answers OneEvening = Grids.Say(("worth", "one-evening"));

    [Fact]
    public void Children_down_and_items_across_are_read_by_the_dates_in_the_cells()
    {
        var reading = SignOffGrids.Read("Name|O goshi|Mate\nAda Brook|2026-11-10|17 November 2026\nQuay, Ben||24.11.26", OneEvening);
        Assert.True(reading.IsSettled);
        Assert.Equal(SignOffLayout.ChildrenDown, reading.Layout);
        Assert.Equal(["Ada o-goshi 2026-11-10 Good New", "Ada mate 2026-11-17 Good New", "Ben mate 2026-11-24 Good New"], reading.Say());
    }

    [Fact]
    public void The_other_way_round_under_a_title_it_is_the_same()
    {
        var reading = SignOffGrids.Read("Autumn sign-offs\n|Ada Brook|Ben Quay\nO goshi|2026-11-10|\nMate|17/11/2026|24/11/2026\nTotal|2|1", OneEvening);
        Assert.Equal(SignOffLayout.ItemsDown, reading.Layout);
        Assert.True(reading.IsSettled);
        Assert.Equal(["Ada o-goshi 2026-11-10 Good New", "Ada mate 2026-11-17 Good New", "Ben mate 2026-11-24 Good New"], reading.Say());
        Assert.Equal((3, 2), (reading.Marks[0].Row, reading.Marks[0].Column));
    }

    [Theory]
    [InlineData("ogoshi", "o-goshi")]
    [InlineData("O GOSHI", "o-goshi")]
    [InlineData("De ashi barai", "de-ashi-barai")]
    [InlineData("deashi harai", "de-ashi-barai")]
    [InlineData("Yoko shiho gatame", "yoko")]
    [InlineData("kuzure yoko shihogatame", "kuzure")]
    [InlineData("であしはらい", "de-ashi-barai")]
    [InlineData("おおごし", null)]
    [Statement(56)]
    public void A_heading_in_another_spelling_is_the_item(string heading, string? item)
        => Assert.Equal(item, SignOffGrids.Read($"Name|{heading}|Mate\nAda Brook|2026-11-10|", OneEvening).Columns[0].Item);

    [Fact]
    public void What_was_read_by_another_spelling_is_said()
        => Assert.Contains("Sheet 'Juniors', column B ('deashi harai') was read as De-ashi-barai.", SignOffGrids.Read("Name|deashi harai|Mate\nAda Brook|2026-11-10|", OneEvening).Notes);

    [Fact]
    public void Two_items_of_one_technique_are_asked_about_and_the_bare_one_is_proposed()
    {
        var doubt = Assert.Single(SignOffGrids.Read("Name|major hip throw|Mate\nAda Brook|2026-11-10|", OneEvening).Doubts, d => !d.IsSettled);
        Assert.Equal((DoubtKind.WhichItem, "item:o-goshi"), (doubt.Kind, doubt.Proposed));
        Assert.Equal(["item:o-goshi", "item:o-goshi-moving", "leave-out"], doubt.Offers.Select(o => o.Code));
        var reading = SignOffGrids.Read("Name|major hip throw|Mate\nAda Brook|2026-11-10|", OneEvening.With("item:2", "item:o-goshi-moving"));
        Assert.Equal(["Ada o-goshi-moving 2026-11-10 Good New"], reading.Say());
    }

    [Fact]
    public void Two_ways_out_of_one_hold_are_asked_about()
        => Assert.Contains(SignOffGrids.Read("Name|Yoko shiho escape|Mate\nAda Brook|✓|", OneEvening).Doubts, d => d.Kind == DoubtKind.WhichItem && d.Sentence.Contains("bridge and roll or Out of", StringComparison.Ordinal));

    [Fact]
    public void A_heading_that_is_no_item_is_asked_about_typed_or_left_out()
    {
        const string Grid = "Name|Mate|O goshi|Handstand\nAda Brook|2026-11-10||2026-11-17";
        var doubt = Assert.Single(SignOffGrids.Read(Grid, OneEvening).Doubts, d => !d.IsSettled);
        Assert.Equal(("item:4", "leave-out"), (doubt.Key, doubt.Proposed));
        Assert.Equal(["Ada mate 2026-11-10 Good New"], SignOffGrids.Read(Grid, OneEvening.With("item:4", "leave-out")).Say());
        Assert.Equal(2, SignOffGrids.Read(Grid, OneEvening.With("item:4", "=De ashi harai")).Marks.Count);
        var wrong = Assert.Single(SignOffGrids.Read(Grid, OneEvening.With("item:4", "=Cartwheel")).Doubts, d => !d.IsSettled);
        Assert.StartsWith("'Cartwheel' is not an answer to this.", wrong.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Falling backward")]
    [InlineData("Ukemi")]
    [InlineData("Ushiro ukemi")]
    [InlineData("Breakfalls")]
    public void Falls_are_never_read_from_a_paper_and_the_note_says_so(string heading)
    {
        var reading = SignOffGrids.Read($"Name|{heading}|O goshi|Mate\nAda Brook|2026-11-10|2026-11-10|", OneEvening);
        Assert.True(reading.IsSettled);
        Assert.Equal(["Ada o-goshi 2026-11-10 Good New"], reading.Say());
        Assert.Contains(reading.Notes, note => note.EndsWith("was not read: falls are seen again on the mat, never taken from a paper.", StringComparison.Ordinal));
        Assert.Equal("falls are seen again on the mat", reading.Columns[0].LeftOut);
    }

    [Fact]
    public void A_fall_that_is_typed_as_an_answer_is_left_too()
        => Assert.Empty(SignOffGrids.Read("Name|Mate|O goshi|Handstand\nAda Brook|||2026-11-17", OneEvening.With("item:4", "=Falling backward")).Marks);

    [Fact]
    [Statement(98)]
    public void Day_or_month_first_is_asked_with_the_files_own_date_unless_another_date_proves_it()
    {
        const string Grid = "Name|O goshi|Mate\nAda Brook|10/11/2026|12/11/2026\nBen Quay||{0}";
        var asked = SignOffGrids.Read(Grid.Replace("{0}", "", StringComparison.Ordinal), OneEvening);
        var doubt = Assert.Single(asked.Doubts, d => !d.IsSettled);
        Assert.Equal((DoubtKind.DateOrder, "day-first"), (doubt.Kind, doubt.Proposed));
        Assert.Contains("10 November 2026 with the day first, or 11 October 2026 with the month first", doubt.Sentence, StringComparison.Ordinal);
        Assert.Empty(asked.Marks);
        Assert.Equal(3, SignOffGrids.Read(Grid.Replace("{0}", "24/11/2026", StringComparison.Ordinal), OneEvening).Marks.Count);
    }

    [Fact]
    public void Dates_without_a_year_are_asked_about_once()
    {
        const string Grid = "Name|O goshi|Mate\nAda Brook|Tue 10 Nov|24/11";
        var doubt = Assert.Single(SignOffGrids.Read(Grid, OneEvening).Doubts, d => !d.IsSettled);
        Assert.Equal((DoubtKind.YearMissing, "latest"), (doubt.Kind, doubt.Proposed));
        Assert.Equal(["Ada o-goshi 2026-11-10 Good New", "Ada mate 2026-11-24 Good New"], SignOffGrids.Read(Grid, OneEvening.With("year", "latest")).Say());
        Assert.Contains(SignOffGrids.Read(Grid, OneEvening.With("year", "=2025")).Doubts, d => d.Key == "day:2025-11-10" && d.Kind == DoubtKind.NoLessonThatDay);
    }

    [Fact]
    public void Initials_beside_a_date_are_left_and_initials_alone_are_asked_about_once()
    {
        var reading = SignOffGrids.Read("Name|O goshi|Mate\nAda Brook|24/11/2026 MH|M.H.\nBen Quay|m.h.|MH 17 Nov 2026", OneEvening);
        var sign = Assert.Single(reading.Doubts, d => d.Kind == DoubtKind.SignUnknown);
        Assert.Contains("(first in sheet 'Juniors', row 2, column C, 2 in all) may be a mark or somebody’s initials", sign.Sentence, StringComparison.Ordinal);
        Assert.Equal(["Ada o-goshi 2026-11-24 Good New", "Ben mate 2026-11-17 Good New"], reading.Say());
        var settled = SignOffGrids.Read("Name|O goshi|Mate\nAda Brook|24/11/2026 MH|M.H.\nBen Quay|m.h.|MH 17 Nov 2026", OneEvening.With(sign.Key, "good").With("tick:date", "last"));
        Assert.True(settled.IsSettled);
        Assert.Equal(4, settled.Marks.Count);
    }

    [Fact]
    public void On_the_day_of_a_lesson_ticks_without_a_date_may_go_to_todays_lesson_or_to_the_one_before()
    {
        SignOffReading On(int day, Answers answers)
        {
            var question = SignOffGrids.Question(Grids.Of("Name|O goshi|Mate\nAda Brook|✓|yes"), answers) with { Today = new DateOnly(2026, 11, day) };
            var reading = ReadSignOffs.Read(question);
            Assert.Empty(ReadingCheck.Faults(question, reading));
            return reading;
        }

        var asked = Assert.Single(On(24, OneEvening).Doubts, d => !d.IsSettled);
        Assert.Equal(
            ["The last lesson before today, Tuesday 17 November 2026", "Today’s lesson, Tuesday 24 November 2026", "Leave them out"],
            asked.Offers.Select(o => o.Words));
        Assert.All(On(24, OneEvening.With("tick:date", "before-today")).Marks, mark => Assert.Equal(new DateOnly(2026, 11, 17), mark.Day));
        Assert.All(On(24, OneEvening.With("tick:date", "last")).Marks, mark => Assert.Equal(new DateOnly(2026, 11, 24), mark.Day));
        Assert.Equal(
            ["The last lesson, Tuesday 24 November 2026", "Leave them out"],
            Assert.Single(On(25, OneEvening).Doubts, d => !d.IsSettled).Offers.Select(o => o.Words));
    }

    [Fact]
    public void Ticks_without_a_date_are_put_on_the_evening_that_is_answered()
    {
        const string Grid = "Name|O goshi|Mate|Yoko shiho gatame\nAda Brook|✓|prompted|0\nBen Quay|1|yes|TRUE";
        var doubt = Assert.Single(SignOffGrids.Read(Grid, OneEvening).Doubts, d => !d.IsSettled);
        Assert.Equal((DoubtKind.TickWithoutDate, null), (doubt.Kind, doubt.Proposed));
        Assert.StartsWith("6 sign-offs have no date", doubt.Sentence, StringComparison.Ordinal);
        Assert.Equal(
            ["Ada o-goshi 2026-11-24 Good New", "Ada mate 2026-11-24 Prompted New", "Ada yoko 2026-11-24 NotYet New", "Ben o-goshi 2026-11-24 Good New", "Ben mate 2026-11-24 Good New", "Ben yoko 2026-11-24 Good New"],
            SignOffGrids.Read(Grid, OneEvening.With("tick:date", "last")).Say());
        Assert.All(SignOffGrids.Read(Grid, OneEvening.With("tick:date", "=2026-11-13")).Marks, mark => Assert.Equal(new DateOnly(2026, 11, 12), mark.Day));
        Assert.Empty(SignOffGrids.Read(Grid, OneEvening.With("tick:date", "leave-out")).Marks);
        // A day to come is no evening on which anything was seen.
        Assert.False(SignOffGrids.Read(Grid, OneEvening.With("tick:date", "=2026-12-24")).IsSettled);
    }

    [Fact]
    public void A_date_without_a_lesson_is_asked_about_once_and_goes_to_the_lesson_before_it()
    {
        const string Grid = "Name|O goshi|Mate\nAda Brook|2026-11-15|2026-11-15\nBen Quay|2026-01-02|";
        var doubts = SignOffGrids.Read(Grid, OneEvening).Doubts.Where(d => d.Kind == DoubtKind.NoLessonThatDay).ToList();
        Assert.Equal([("day:2026-11-15", "before"), ("day:2026-01-02", "leave-out")], doubts.Select(d => (d.Key, d.Proposed!)));
        var reading = SignOffGrids.Read(Grid, OneEvening.With("day:2026-11-15", "before").With("day:2026-01-02", "leave-out"));
        Assert.Equal(["Ada o-goshi 2026-11-12 Good New", "Ada mate 2026-11-12 Good New"], reading.Say());
    }

    [Fact]
    public void A_date_to_come_is_asked_about_and_left()
    {
        var reading = SignOffGrids.Read("Name|O goshi|Mate\nAda Brook|2026-12-01|", OneEvening.With("day:2026-12-01", "leave-out"));
        Assert.Equal(DoubtKind.DateToCome, Assert.Single(reading.Doubts, d => d.Key != "worth").Kind);
        Assert.Empty(reading.Marks);
    }

    [Fact]
    public void What_a_sign_off_is_worth_is_asked_and_settled_holds_for_what_was_good()
    {
        var answers = Grids.Say(("tick:date", "last"));
        Assert.Equal("one-evening", Assert.Single(SignOffGrids.Read("Name|O goshi|Mate\nAda Brook|✓|0", answers).Doubts, d => !d.IsSettled).Proposed);
        Assert.Equal(["Ada o-goshi 2026-11-24 Good settled New", "Ada mate 2026-11-24 NotYet New"], SignOffGrids.Read("Name|O goshi|Mate\nAda Brook|✓|0", answers.With("worth", "settled")).Say());
    }

    [Fact]
    public void Nobody_is_made_by_a_grid_a_stranger_is_set_aside_and_a_name_of_two_is_asked_about()
    {
        const string Grid = "Name|O goshi|Mate\nAda Brook|2026-11-10|\nNell Visitor|2026-11-10|\nDot|2026-11-10|";
        var open = SignOffGrids.Read(Grid, OneEvening).Doubts.Where(d => !d.IsSettled).ToList();
        Assert.All(open, d => Assert.Equal(DoubtKind.WhoIsIt, d.Kind));
        Assert.Equal(["set-aside"], open[0].Offers.Select(o => o.Code));
        Assert.Equal(3, open[1].Offers.Count);
        var reading = SignOffGrids.Read(Grid, OneEvening.With("who:3", "set-aside").With("who:4", open[1].Offers[1].Code));
        Assert.Equal(["Ada o-goshi 2026-11-10 Good New", "Dot o-goshi 2026-11-10 Good New"], reading.Say());
        Assert.Equal(SignOffGrids.Who(5), reading.Marks[1].Person);
        Assert.Contains(reading.Lines, line => line.SetAside == "you set it aside" && line.Name.Length == 0);
    }

    [Fact]
    public void One_child_on_two_rows_is_read_together_and_the_lesser_word_of_one_evening_holds()
    {
        var reading = SignOffGrids.Read("Name|O goshi|Mate\nAda Brook|✓|✓\nBROOK Ada|0|", OneEvening.With("tick:date", "last"));
        Assert.Equal(["Ada o-goshi 2026-11-24 NotYet New", "Ada mate 2026-11-24 Good New"], reading.Say());
        Assert.Contains(reading.Notes, note => note.Contains("is the same child as", StringComparison.Ordinal));
        Assert.Contains(reading.Notes, note => note.EndsWith("of the same child, item and evening: not yet was taken.", StringComparison.Ordinal));
    }

    [Fact]
    public void Titles_group_headings_merged_cells_totals_and_belts_are_not_children_or_items()
    {
        var merged = Cell.OfText("White belts");
        var sheet = new Sheet("Juniors",
        [
            [Cell.OfText("Lockside"), Cell.OfText("Lockside") with { FromMerge = true }],
            [Cell.OfText("Name"), Cell.OfText("Belt"), Cell.OfText("O goshi"), Cell.OfText("Mate"), Cell.OfText("Total")],
            [merged, merged with { FromMerge = true }, merged with { FromMerge = true }, merged with { FromMerge = true }],
            [Cell.OfText("Ada Brook"), Cell.OfText("white"), Cell.OfText("✓"), Cell.OfText("✓") with { FromMerge = true }, Grids.Number(2)],
            [Cell.OfText("Ada Brook") with { FromMerge = true }, Cell.Empty, Cell.Empty, Grids.Day(2026, 11, 10)],
            [],
            [Cell.OfText("Number present:"), Cell.Empty, Grids.Number(1), Grids.Number(2)],
        ]);
        var reading = SignOffGrids.Read(sheet, OneEvening.With("tick:date", "last"));
        Assert.True(reading.IsSettled);
        Assert.Equal(["Ada o-goshi 2026-11-24 Good New", "Ada mate 2026-11-24 Good New", "Ada mate 2026-11-10 Good New"], reading.Say());
    }

    [Fact]
    [Statement(99)]
    public void The_same_grid_again_is_all_here_already_even_when_the_last_lesson_is_another_one()
    {
        const string Grid = "Name|O goshi|Mate\nAda Brook|✓|2026-11-10\nBen Quay|0|✓";
        var first = SignOffGrids.Read(Grid, OneEvening.With("tick:date", "=2026-11-17"));
        var again = SignOffGrids.Read(Grid, OneEvening.With("tick:date", "last"), first.Held());
        Assert.Equal((4, 4), (again.Marks.Count, again.Count(MarkStanding.Same)));
    }

    [Fact]
    public void What_is_held_otherwise_is_asked_about_and_a_settled_sign_off_settles_what_is_held()
    {
        var day = new DateOnly(2026, 11, 10);
        var held = new Dictionary<(PersonId, string, DateOnly), HeldSeen>
        {
            [(SignOffGrids.Who(1), "o-goshi", day)] = new(SeenWord.NotYet),
            [(SignOffGrids.Who(1), "mate", day)] = new(SeenWord.Good),
            [(SignOffGrids.Who(2), "mate", day)] = new(null),
        };
        const string Grid = "Name|O goshi|Mate\nAda Brook|2026-11-10|2026-11-10\nBen Quay||2026-11-10";
        var open = SignOffGrids.Read(Grid, OneEvening, held).Doubts.Where(d => !d.IsSettled).ToList();
        Assert.Equal([(DoubtKind.Differs, "leave"), (DoubtKind.Differs, "leave")], open.Select(d => (d.Kind, d.Proposed!)));
        Assert.Contains("10 November 2026 is held as not yet, the file says good", open[0].Sentence, StringComparison.Ordinal);
        Assert.Contains("is held as not agreed", open[1].Sentence, StringComparison.Ordinal);
        var reading = SignOffGrids.Read(Grid, Grids.Say(("worth", "settled"), (open[0].Key, "take"), (open[1].Key, "leave")), held);
        Assert.Equal([MarkStanding.Take, MarkStanding.Take, MarkStanding.Leave], reading.Marks.Select(mark => mark.Standing));
    }

    [Fact]
    public void A_line_can_be_set_aside_and_without_a_syllabus_nothing_is_found()
    {
        var reading = SignOffGrids.Read("Name|O goshi|Mate\nAda Brook|2026-11-10|", OneEvening.With("line:2", "set-aside"));
        Assert.Empty(reading.Marks);
        var none = ReadSignOffs.Read(SignOffGrids.Question(Grids.Of("Name|O goshi|Mate\nAda Brook|✓|")) with { Items = [] });
        Assert.StartsWith("The club has no syllabus yet", Assert.Single(none.Doubts).Sentence, StringComparison.Ordinal);
        Assert.Equal(DoubtKind.NothingFound, Assert.Single(SignOffGrids.Read("Name|Belt\nAda Brook|white").Doubts).Kind);
    }

    [Theory]
    [InlineData("Name|O goshi|Mate\nAda Brook|✓|", SheetKind.SignOffs)]
    [InlineData("Name|O goshi|Mate\nAda Brook|2026-11-10|2026-11-10\nBen Quay|✓|✓", SheetKind.SignOffs)]
    [InlineData("|Ada Brook|Ben Quay\nO goshi|✓|\nMate||MH", SheetKind.SignOffs)]
    [InlineData("Name|2026-11-10|2026-11-12\nAda Brook|✓|", SheetKind.Register)]
    [InlineData("First name|Surname|Born|Mobile\nAda|Brook|2016-05-04|07700 900123", SheetKind.Roster)]
    [InlineData("Name|Born|Mobile|Notes\nAda Brook|2016-05-04|07700 900123|Mate\nBen Quay|||O goshi", SheetKind.Roster)]
    public void A_grid_of_items_is_told_from_a_register_and_a_roster(string grid, SheetKind kind)
        => Assert.Equal(kind, GuessSheet.Guess(Grids.Of(grid), Grids.Today, SignOffGrids.Items, SignOffGrids.Names));

    [Fact]
    public void The_check_finds_a_fall_a_stranger_and_a_day_without_a_lesson()
    {
        var question = SignOffGrids.Question(Grids.Of("Name|O goshi|Mate\nAda Brook|2026-11-10|"), OneEvening);
        var reading = ReadSignOffs.Read(question);
        IReadOnlyList<string> Faults(SignOffReading wrong) => ReadingCheck.Faults(question, wrong);
        Assert.Empty(Faults(reading));
        Assert.Contains(Faults(reading with { Columns = [reading.Columns[0] with { Item = "back-fall" }] }), fault => fault.Contains("is a fall", StringComparison.Ordinal));
        Assert.Contains(Faults(reading with { Marks = [reading.Marks[0] with { Day = new(2026, 11, 11) }] }), fault => fault.Contains("without a lesson", StringComparison.Ordinal));
        Assert.Contains(Faults(reading with { Marks = [reading.Marks[0] with { Person = SignOffGrids.Who(2) }] }), fault => fault.Contains("another child", StringComparison.Ordinal));
        Assert.Contains(Faults(reading with { Marks = [reading.Marks[0], reading.Marks[0]] }), fault => fault.Contains("a second sighting", StringComparison.Ordinal));
        Assert.Contains(Faults(reading with { Marks = [reading.Marks[0] with { Standing = MarkStanding.Same }] }), fault => fault.Contains("cannot be", StringComparison.Ordinal));
    }
}
