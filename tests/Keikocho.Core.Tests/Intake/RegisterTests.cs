using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;
using static Keikocho.Core.Tests.Intake.Grids;

namespace Keikocho.Core.Tests.Intake;

public sealed class RegisterTests
{
    private static readonly KnownPerson[] Three = [Known(1, "Ada", "Brook"), Known(2, "Ben", "Quay", called: "Benno"), Known(3, "Cy", "Weir")];

    private static string Marks(RegisterReading reading)
        => string.Join(' ', reading.Marks.Select(mark => $"{mark.Who.Person?.Value.ToString()[7] ?? '?'}:{mark.Day.Day}.{mark.Day.Month}:{RegisterMarks(mark.Says)}"));

    private static string RegisterMarks(RegisterSays says) => says.Arrived is { } time ? time.Plain() : says.Word.ToString();

    [Fact]
    public void A_grid_is_read_with_every_certain_sign()
    {
        var sheet = Of("Name|3/9/2026|10/9/2026|17/9/2026|Total\nAda Brook|✓|L|E|3\nQuay, Ben|P|17:50|n|2\nCy W.|1|yes|sick|3\nTotal|3|3|0|");
        var reading = Register(sheet, known: Three);
        Assert.True(reading.IsSettled, string.Join('\n', reading.Doubts.Select(doubt => doubt.Sentence)));
        Assert.Equal("1:3.9:Present 2:3.9:Present 3:3.9:Present 1:10.9:Late 2:10.9:17:50 3:10.9:Present 1:17.9:Excused 2:17.9:Absent 3:17.9:Excused", Marks(reading));
        Assert.Empty(ReadingCheck.Faults(sheet, reading));
        Assert.Contains(reading.Notes, note => note.Contains("'Total'", StringComparison.Ordinal));
    }

    [Fact]
    public void Dates_down_and_children_across_are_the_same_register()
    {
        var down = Of("|Ada Brook|Ben Quay|Cy Weir\n3/9/2026|✓|P|1\n10/9/2026|L|17:50|yes\n17/9/2026|E|n|sick");
        var reading = Register(down, known: Three);
        Assert.Equal(RegisterLayout.DatesDown, reading.Layout);
        Assert.Equal("1:3.9:Present 2:3.9:Present 3:3.9:Present 1:10.9:Late 2:10.9:17:50 3:10.9:Present 1:17.9:Excused 2:17.9:Absent 3:17.9:Excused", Marks(reading));
        Assert.Empty(ReadingCheck.Faults(down, reading));
    }

    [Fact]
    public void One_row_a_mark_is_read_and_two_marks_for_one_day_are_asked_about()
    {
        var sheet = Of("Date|Name|Mark|Arrived\n2026-09-03|Ada Brook|P|\n2026-09-03|Ben Quay|L|18:05\n2026-09-10|Ada Brook|A|\n2026-09-10|Ada Brook|P|");
        var reading = Register(sheet, known: Three);
        Assert.Equal(RegisterLayout.OneRowAMark, reading.Layout);
        var doubt = Assert.Single(reading.Doubts);
        var settled = Register(sheet, Say((doubt.Key, "first")), Three);
        Assert.Equal("1:3.9:Present 2:3.9:18:05 1:10.9:Absent", Marks(settled));
        Assert.Empty(ReadingCheck.Faults(sheet, settled));
    }

    [Fact]
    public void A_blank_is_absent_from_the_first_mark_on_and_never_before()
    {
        var reading = Register(Of("Name|3/9/2026|10/9/2026|17/9/2026\nAda Brook|✓||✓\nBen Quay||✓|\nCy Weir|✓|✓|✓"), known: Three);
        Assert.Equal("1:3.9:Present 3:3.9:Present 1:10.9:Absent 2:10.9:Present 3:10.9:Present 1:17.9:Present 2:17.9:Absent 3:17.9:Present", Marks(reading));
        Assert.Contains(reading.Notes, note => note.StartsWith("1 blanks before", StringComparison.Ordinal));
    }

    [Fact]
    public void A_blank_beside_signs_for_absent_is_asked_about()
    {
        var sheet = Of("Name|3/9/2026|17/9/2026\nAda Brook|✓|A\nBen Quay|✓|");
        var doubt = Assert.Single(Register(sheet, known: Three).Doubts);
        Assert.Equal((DoubtKind.BlankMeaning, "nothing"), (doubt.Kind, doubt.Proposed));
        Assert.Equal(3, Register(sheet, Say(("blank", "nothing")), Three).Marks.Count);
        Assert.Equal(4, Register(sheet, Say(("blank", "absent")), Three).Marks.Count);
    }

    [Theory]
    [InlineData("x|x\nBen Quay|x|o", "present")]
    [InlineData("✓|✓\nBen Quay|x|✓", "absent")]
    public void An_x_is_asked_once_with_a_proposal_from_the_other_signs(string marks, string proposed)
    {
        var sheet = Of("Name|3/9/2026|17/9/2026\nAda Brook|" + marks);
        var doubt = Assert.Single(Register(sheet, known: Three).Doubts, doubt => doubt.Key == "sign:x");
        Assert.Equal(proposed, doubt.Proposed);
    }

    [Fact]
    public void A_date_without_marks_is_closed_or_forgotten_and_one_to_come_is_left()
    {
        var sheet = Of("Name|3/9/2026|17/9/2026|24/12/2026\nAda Brook|✓||");
        var doubt = Assert.Single(Register(sheet, known: Three).Doubts);
        Assert.Equal(DoubtKind.DateWithoutMarks, doubt.Kind);
        var closed = Register(sheet, Say((doubt.Key, "closed")), Three);
        Assert.Equal([DayStanding.Held, DayStanding.Closed, DayStanding.LeftOut], closed.Days.Select(day => day.Standing));
        Assert.Single(closed.Marks);
        Assert.Equal(DayStanding.Forgotten, Register(sheet, Say((doubt.Key, "forgotten")), Three).Days[1].Standing);
    }

    [Theory]
    [InlineData("Season 2025/26\nName|3/9|17/9|14/1", "2025-09-03 2025-09-17 2026-01-14")]
    [InlineData("Spring 2026\nName|14/1|28/1|4/2", "2026-01-14 2026-01-28 2026-02-04")]
    [InlineData("Register\nName|Thu 3/9|Thu 17/9|Thu 24/9", "2026-09-03 2026-09-17 2026-09-24")]
    [InlineData("|Sept 2026||October 2026\nName|3|17|1", "2026-09-03 2026-09-17 2026-10-01")]
    [InlineData("Register\nName|3 Sep 26|17 Sep 26|1 Oct 26", "2026-09-03 2026-09-17 2026-10-01")]
    [InlineData("Register\nName|46268|46282|46296", "2026-09-03 2026-09-17 2026-10-01")]
    [InlineData("Register 2026\nName|9/3|9/17|10/1", "2026-09-03 2026-09-17 2026-10-01")]
    public void The_year_comes_from_where_the_club_wrote_it(string head, string days)
    {
        var reading = Register(Of(head + "\nAda Brook|✓|✓|✓"), known: Three);
        Assert.True(reading.IsSettled, string.Join('\n', reading.Doubts.Select(doubt => doubt.Sentence)));
        Assert.Equal(days, string.Join(' ', reading.Days.Select(day => day.Day.Iso())));
    }

    [Fact]
    public void A_year_that_is_nowhere_is_asked()
    {
        var sheet = Of("Name|3/9|17/9|14/1\nAda Brook|✓|✓|✓");
        var doubt = Assert.Single(Register(sheet, known: Three).Doubts);
        Assert.Equal((DoubtKind.YearMissing, "2026"), (doubt.Kind, doubt.Proposed));
        Assert.Equal("2025-09-03 2025-09-17 2026-01-14", string.Join(' ', Register(sheet, Say(("year", "2025")), Three).Days.Select(day => day.Day.Iso())));
        Assert.Equal(2024, Register(sheet, Say(("year", "=2024")), Three).Days[0].Day.Year);
    }

    [Fact]
    public void Day_and_month_of_the_headers_are_asked_where_both_are_possible()
    {
        var sheet = Of("2026\nName|3/9/2026|5/9/2026|3/10/2026\nAda Brook|✓|✓|✓");
        // 3 September, 5 September, 3 October rise; 9 March, 9 May, 10 March do not: known. Two dates alone are not.
        Assert.Empty(Register(sheet, known: Three).Doubts);
        var two = Register(Of("Name|3/9/2026|5/9/2026\nAda Brook|✓|✓"), known: Three);
        Assert.Equal(DoubtKind.DateOrder, Assert.Single(two.Doubts).Kind);
        Assert.Empty(two.Marks);
    }

    [Fact]
    public void Names_are_found_by_initial_called_name_and_fold_and_asked_where_several_fit()
    {
        KnownPerson[] known = [.. Three, Known(4, "Ada", "Brown"), Known(5, "Ádám", "Lock")];
        var sheet = Of("Name|3/9/2026|17/9/2026\nAda B|✓|✓\nBenno Quay|✓|✓\nC. Weir|✓|✓\nADAM LOCK|✓|✓\nWeer, Cy|✓|✓\nZoe Nobody|✓|✓");
        var reading = Register(sheet, known: known);
        Assert.Equal([null, "2", "3", "5", null, null], reading.Lines.Select(line => line.Who?.Person?.Value.ToString()[7].ToString()));
        Assert.Equal(["who:2", "who:6", "who:7"], reading.Doubts.Select(doubt => doubt.Key));
        Assert.Equal([4, 3, 2], reading.Doubts.Select(doubt => doubt.Offers.Count));
        var settled = Register(sheet, Say(("who:2", reading.Doubts[0].Offers[1].Code), ("who:6", "set-aside"), ("who:7", "new")), known);
        Assert.True(settled.IsSettled);
        Assert.Equal(("Zoe", "Nobody"), (settled.Lines[5].New!.GivenName, settled.Lines[5].New!.FamilyName));
        Assert.Empty(ReadingCheck.Faults(sheet, settled));
    }

    [Fact]
    public void Two_lines_of_one_child_are_joined_with_present_before_absent()
    {
        var sheet = Of("Name|3/9/2026|17/9/2026\nAda Brook|✓|\nBrook, Ada||✓");
        var doubt = Assert.Single(Register(sheet, known: Three).Doubts);
        Assert.Equal((DoubtKind.LineTwice, "join"), (doubt.Kind, doubt.Proposed));
        Assert.Equal("1:3.9:Present 1:17.9:Present", Marks(Register(sheet, Say((doubt.Key, "join")), Three)));
        // Without the second line nobody has a mark on the 17th, and that is asked about.
        var aside = Register(sheet, Say((doubt.Key, "set-aside")), Three);
        Assert.Equal("1:3.9:Present", Marks(aside));
        Assert.Equal(DoubtKind.DateWithoutMarks, aside.Doubts[^1].Kind);
    }

    [Fact]
    public void A_mark_held_otherwise_is_asked_old_and_new()
    {
        var sheet = Of("Name|3/9/2026|17/9/2026\nAda Brook|✓|✓\nBen Quay|✓|✓");
        var held = new Dictionary<(PersonId, DateOnly), RegisterSays>
        {
            [(Three[0].Id, new(2026, 9, 3))] = new(RegisterWord.Present, null),
            [(Three[1].Id, new(2026, 9, 3))] = new(RegisterWord.Absent, null),
        };
        var reading = Register(sheet, known: Three, held: held);
        var doubt = Assert.Single(reading.Doubts);
        Assert.Contains("held as absent, the file says present", doubt.Sentence, StringComparison.Ordinal);
        Assert.Equal((1, 2, 1), (reading.Count(MarkStanding.Same), reading.Count(MarkStanding.New), reading.Count(MarkStanding.Open)));
        Assert.Equal(1, Register(sheet, Say((doubt.Key, "take")), Three, held).Count(MarkStanding.Take));
    }

    [Fact]
    public void The_check_finds_a_mark_that_was_made_twice_or_up()
    {
        var sheet = Of("Name|3/9/2026|17/9/2026\nAda Brook|✓|✓");
        var good = Register(sheet, known: Three);
        Assert.Empty(ReadingCheck.Faults(sheet, good));
        Assert.NotEmpty(ReadingCheck.Faults(sheet, good with { Marks = [.. good.Marks, good.Marks[0]] }));
        Assert.NotEmpty(ReadingCheck.Faults(sheet, good with { Marks = [good.Marks[0] with { Day = new(2026, 9, 4) }] }));
        Assert.NotEmpty(ReadingCheck.Faults(sheet, good with { Cells = [.. good.Cells.Take(3)] }));
    }
}
