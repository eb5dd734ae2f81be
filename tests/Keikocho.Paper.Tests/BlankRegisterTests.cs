using Keikocho.Paper.Layout;
using Keikocho.Paper.Register;
using UglyToad.PdfPig;
using Xunit;

namespace Keikocho.Paper.Tests;

public sealed class BlankRegisterTests
{
    [Theory]
    [InlineData(1, 1, 1, false)]
    [InlineData(30, 9, 2, false)]
    [InlineData(30, 12, 2, false)]
    [InlineData(40, 13, 3, true)]
    [InlineData(40, 26, 3, true)]
    [InlineData(41, 26, 3, true)]
    public void Children_and_evenings_take_this_many_pages(int children, int evenings, int pages, bool onItsSide)
    {
        foreach (var size in Enum.GetValues<PaperSize>())
        {
            using var document = PdfDocument.Open(BlankRegister.Render(Samples.Blank(children, evenings), size).Pdf);
            Assert.Equal(pages, document.NumberOfPages);
            Assert.All(document.GetPages(), page => Assert.Equal(onItsSide, page.Width > page.Height));
        }
    }

    [Theory]
    [InlineData(9)]
    [InlineData(26)]
    [InlineData(40)]
    public void Boxes_are_large_enough_for_a_pen(int evenings)
    {
        foreach (var size in Enum.GetValues<PaperSize>())
        {
            var draft = BlankRegister.Lay(Samples.Blank(40, evenings), SheetFormat.Of(size));
            foreach (var page in draft.Pages)
            {
                var uprights = page.Ink.OfType<LineInk>().Where(line => line.X1 == line.X2).Select(line => line.X1).Distinct().Order().ToList();
                var rows = page.Ink.OfType<LineInk>().Where(line => line.Y1 == line.Y2 && line.X1 == page.Inside.X).Select(line => line.Y1).Distinct().Order().ToList();
                // The last rule is that of the foot, and the space above it is not a box.
                Assert.All(uprights.Zip(uprights.Skip(1)), pair => Assert.True(pair.Second - pair.First >= 7.4.Mm() - 0.1, $"{pair.Second - pair.First} points wide"));
                Assert.All(rows.SkipLast(1).Zip(rows.SkipLast(1).Skip(1)), pair => Assert.True(pair.Second - pair.First >= 7.Mm(), $"{pair.Second - pair.First} points high"));
            }
        }
    }

    [Fact]
    public void More_evenings_than_a_sheet_holds_make_further_sheets_with_every_child()
    {
        var text = PdfReading.Text(BlankRegister.Render(Samples.Blank(10, 40), PaperSize.A4).Pdf);
        Assert.Equal(2, text.Split("Casimir").Length - 1);
    }

    [Fact]
    public void A_closure_is_hatched_and_named_in_the_column_and_in_words()
    {
        var draft = BlankRegister.Lay(Samples.Blank(20, 26), SheetFormat.Of(PaperSize.A4));
        var closed = Samples.Blank(20, 26).Dates.Count(date => date.Closure is not null);
        Assert.Equal(2, closed);
        Assert.All(draft.Pages, page => Assert.Equal(closed, page.Ink.OfType<HatchInk>().Count()));
        Assert.All(draft.Pages, page => Assert.Equal(closed, page.Ink.OfType<TextInk>().Count(text => text.Upward && text.Run.Text == "half-term")));
        Assert.Contains("No lesson: 27 October, 29 October, half-term.", PdfReading.Text(BlankRegister.Render(Samples.Blank(20, 26), PaperSize.A4).Pdf), StringComparison.Ordinal);
    }

    [Fact]
    public void Hatching_stays_inside_its_area()
    {
        var area = new Area(100, 50, 24, 300);
        var lines = Hatch.Lines(area, 5).ToList();
        Assert.Equal(64, lines.Count);
        Assert.All(lines, line =>
        {
            Assert.InRange(line.X1, area.X, area.Right);
            Assert.InRange(line.X2, area.X, area.Right);
            Assert.InRange(line.Y1, area.Y, area.Bottom);
            Assert.InRange(line.Y2, area.Y, area.Bottom);
            Assert.Equal(line.X2 - line.X1, line.Y1 - line.Y2, 1e-9);
        });
    }

    [Fact]
    public void Every_page_has_the_key_of_the_marks_and_the_safety_line()
    {
        var pdf = BlankRegister.Render(Samples.Blank(40, 26), PaperSize.Letter).Pdf;
        using var document = PdfDocument.Open(pdf);
        foreach (var page in document.GetPages())
        {
            var text = string.Concat(page.Letters.Select(letter => letter.Value));
            Assert.Contains("✓ present", text, StringComparison.Ordinal);
            Assert.Contains("17:41 came late", text, StringComparison.Ordinal);
            Assert.Contains("→18:10 left", text, StringComparison.Ordinal);
            Assert.Contains("T told us", text, StringComparison.Ordinal);
            Assert.Contains("A absent", text, StringComparison.Ordinal);
            Assert.Contains("In doubt, sit them out.", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Spare_lines_are_numbered_on_and_adults_follow()
    {
        var text = PdfReading.Text(BlankRegister.Render(Samples.Blank(2, 3) with { SpareLines = 2 }, PaperSize.A4).Pdf);
        Assert.Contains("1Anselm B.2Bram34Maren Holt, head instructor", text, StringComparison.Ordinal);
        Assert.Contains("Another adultTaken by (initials)", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_stand_on_a_sheet_is_refused()
    {
        var content = Samples.Blank(3, 4);
        Assert.Throws<ArgumentException>(() => BlankRegister.Render(content with { Dates = [] }, PaperSize.A4));
        Assert.Throws<ArgumentException>(() => BlankRegister.Render(content with { Dates = [content.Dates[1], content.Dates[0]] }, PaperSize.A4));
        Assert.Throws<ArgumentException>(() => BlankRegister.Render(content with { Dates = [content.Dates[0], content.Dates[0]] }, PaperSize.A4));
        Assert.Throws<ArgumentException>(() => BlankRegister.Render(content with { SpareLines = 41 }, PaperSize.A4));
        Assert.Throws<ArgumentNullException>(() => BlankRegister.Render(null!, PaperSize.A4));
    }
}
