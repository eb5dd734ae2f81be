using Keikocho.Paper.Folder;
using Keikocho.Testing;
using Xunit;

namespace Keikocho.Paper.Tests;

public sealed class RedFolderPaperTests
{
    private static readonly string[] Called = ["Wren", "Noor", "Anselm", "Tilda", "Ivo", "Marta", "Piers", "Odile", "Hugo", "Sunniva", "Bram", "Lotte"];

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void A_red_folder_reads_as_committed(PaperSize size) =>
        Golden.Check($"tests/Keikocho.Paper.Tests/Golden/red-folder-{size}.txt", PdfReading.Places(RedFolderPaper.Draw(Folder(), size).Pdf));

    [Fact]
    public void The_first_page_has_the_number_the_address_the_entrance_the_hospital_and_whom_to_ring_about_welfare()
    {
        var text = Text(Folder(), PaperSize.A4);
        Assert.All(
            ["Ring 999 or 112", "Mill Lane hall, 4 Mill Lane, Osier Quay", "The blue gate in Weir Street", "St Bride’s", "Jo Farrow, welfare officer, 01632 960100", "3 Anselm", "Printed 24 November 2026.  Shred by 29 December 2026."],
            part => Assert.Contains(part, text, StringComparison.Ordinal));
        Assert.DoesNotContain(FolderFirstLine, text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void Without_care_notes_the_first_line_of_every_page_says_so_and_no_word_of_them_is_in_it(PaperSize size)
    {
        var folder = Folder();
        var without = folder with
        {
            Care = FolderCare.LeftOut,
            Children = [.. folder.Children.Select(c => c with { Notes = [], Care = c.HasNotes ? "There are care notes: they are on the laptop, under its lock." : c.Care })],
        };
        var pdf = RedFolderPaper.Draw(without, size).Pdf;
        var pages = PdfReading.Flowing(pdf).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(PdfReading.PageCount(pdf), PdfReading.Flowing(pdf).Split(FolderFirstLine).Length - 1);
        Assert.StartsWith(FolderFirstLine, pages[0].TrimStart(), StringComparison.Ordinal);
        Assert.DoesNotContain("Peanuts", Text(without, size), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, false, "No care note is entered.")]
    [InlineData(1, false, "No care note is entered. One family was never asked.")]
    [InlineData(2, false, "No care note is entered. 2 families were never asked.")]
    [InlineData(3, false, "Not known: no family was asked yet.")]
    [InlineData(2, true, "3 Child3. 2 families were never asked.")]
    public void The_first_page_never_says_that_a_child_has_nothing_where_nobody_asked(int notAsked, bool noted, string line)
    {
        var folder = Folder() with
        {
            Registers = [],
            Children = [.. Enumerable.Range(1, 3).Select(n => new FolderChild(n, $"Child{n}", null, $"Child{n} Name", null, [], [], null, noted && n == 3, n <= notAsked))],
        };
        Assert.Contains(line, Text(folder, PaperSize.A4), StringComparison.Ordinal);
    }

    [Fact]
    public void A_child_is_one_block_on_one_page_however_many_there_are()
    {
        var child = Folder().Children[2];
        var many = Folder() with
        {
            Registers = [],
            Children = [.. Enumerable.Range(1, 60).Select(n => child with { Number = n, First = $"Child{n}x", FullName = $"Full{n}x Name", Contacts = [new($"Last{n}x", null, "01632 960000", false)] })],
        };
        foreach (var size in Enum.GetValues<PaperSize>())
        {
            var pages = PagesOf(many, size);
            Assert.All(Enumerable.Range(1, 60), n => Assert.Single(pages, p =>
                p.Contains($"Child{n}x", StringComparison.Ordinal) && p.Contains($"Last{n}x", StringComparison.Ordinal) && p.Contains($"Full{n}x", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void The_longest_notes_with_many_contacts_stay_in_one_piece()
    {
        var long1 = string.Join(' ', Enumerable.Repeat("swells", 57));
        var child = Folder().Children[2] with
        {
            Notes = [.. Enumerable.Range(1, 5).Select(n => new FolderNote($"Heading {n}", $"{long1} end{n}x"))],
            Contacts = [.. Enumerable.Range(1, 20).Select(n => new FolderContact($"Contact{n}x", "aunt", "01632 960000", n == 3))],
        };
        var pages = PagesOf(Folder() with { Registers = [], Children = [child with { Number = 1 }, child with { Number = 2 }] }, PaperSize.Letter);
        Assert.Equal(2, pages.Count(p => p.Contains("end5x", StringComparison.Ordinal) && p.Contains("end1x", StringComparison.Ordinal) && p.Contains("Contact20x", StringComparison.Ordinal)));
    }

    [Fact]
    public void Who_is_barred_from_collecting_is_checked_with_an_instructor_and_no_reason_stands_there()
    {
        var text = Text(Folder(), PaperSize.A4);
        Assert.Contains("Rolf Hart, father  check with instructor", text, StringComparison.Ordinal);
        Assert.DoesNotContain("collect", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("barred", text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void What_nobody_has_entered_has_room_for_a_pen_and_the_folder_is_printed_all_the_same()
    {
        var empty = new RedFolderContent("Osier Quay Judo Club", "Juniors", new DateOnly(2026, 11, 24), new DateOnly(2026, 12, 29), FolderCare.InWords, "your country’s emergency number", [new("Hall", null, null, null)], [], [new("Juniors", [])], []);
        foreach (var size in Enum.GetValues<PaperSize>()) Assert.Equal(2, PdfReading.PageCount(RedFolderPaper.Draw(empty, size).Pdf));
        Assert.Throws<ArgumentException>(() => RedFolderPaper.Draw(empty with { EmergencyNumber = " " }, PaperSize.A4));
        Assert.Throws<ArgumentException>(() => RedFolderPaper.Draw(empty with { Registers = [new("Juniors", [7])] }, PaperSize.A4));
    }

    private const string FolderFirstLine = "Care notes are NOT in this folder: it was printed without them.";

    private static RedFolderContent Folder() => new(
        "Osier Quay Judo Club", "Tuesday 24 November 2026, Juniors at 17:30", new DateOnly(2026, 11, 24), new DateOnly(2026, 12, 29), FolderCare.InWords, "999 or 112",
        [new("Mill Lane hall", "4 Mill Lane, Osier Quay", "The blue gate in Weir Street; an adult waits there.", "St Bride’s, Harbour Road, ten minutes")],
        ["Jo Farrow, welfare officer, 01632 960100", "If a child is in danger now, ring 999"],
        [new("Juniors at 17:30", [.. Enumerable.Range(1, Called.Length)])],
        [.. Called.Select((name, i) => new FolderChild(
            i + 1, name, name is "Wren" ? "H" : null, $"{name} {(i % 2 == 0 ? "Hart" : "Lund")}", i == 4 ? null : $"{7 + (i % 6)} years",
            i == 5 ? [] : [new($"Maren {(i % 2 == 0 ? "Hart" : "Lund")}", "mother", $"01632 9601{i:00}", false), .. i == 2 ? new[] { new FolderContact("Rolf Hart", "father", null, true) } : []],
            i switch
            {
                2 => [new("Allergies", "Peanuts: lips swell within minutes."), new("What to do", "Pen in the red pouch in the bag, in the outer thigh, through the trousers.\nThen ring, and say that the pen was used.")],
                7 => [new("Inhaler or medicine", "Blue inhaler, two puffs, in the side pocket.")],
                _ => [],
            },
            i switch { 2 or 7 => null, 3 => "Nobody has asked the family about care yet.", _ => "No care notes: the family was asked on 12 May 2026." },
            i is 2 or 7))]);

    private static List<string> PagesOf(RedFolderContent content, PaperSize size) =>
        [.. PdfReading.Flowing(RedFolderPaper.Draw(content, size).Pdf).Split('\n')];

    private static string Text(RedFolderContent content, PaperSize size) => PdfReading.Flowing(RedFolderPaper.Draw(content, size).Pdf).Replace('\n', ' ');
}
