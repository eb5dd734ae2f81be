using Keikocho.Core.Readiness;
using Keikocho.Paper.Sheets;
using Keikocho.Testing;
using Xunit;

namespace Keikocho.Paper.Tests;

public sealed class ParentsPagePaperTests
{
    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void A_parents_page_reads_as_committed(PaperSize size) =>
        Golden.Check($"tests/Keikocho.Paper.Tests/Golden/parents-{size}.txt", PdfReading.Places(ParentsPagePaper.Draw(SheetSamples.Parents, size).Pdf));

    [Fact]
    public void Every_sentence_stands_on_it_in_its_order_with_the_club_the_day_and_whom_to_speak_to()
    {
        var text = Text(SheetSamples.Parents);
        var at = 0;
        foreach (var sentence in SheetSamples.Parents.Page.Opening.Concat(SheetSamples.Parents.Page.Sections.SelectMany(section => section.Sentences.Prepend(section.Heading))))
        {
            var next = text.IndexOf(sentence, at, StringComparison.Ordinal);
            Assert.True(next >= at, sentence);
            at = next;
        }

        Assert.All(new[] { "Osier Quay Judo Club", "Printed 24 November 2026", "Anselm: White, two red tips", "Questions: speak to Maren before or after a lesson.", "Page 1 of 1" }, part => Assert.Contains(part, text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_unit_that_was_missed_is_named_with_the_term_in_which_it_returns() =>
        Assert.Contains("He missed the summer term, and with it the unit Sweeps. It returns in the spring term 2027.", Text(SheetSamples.Parents), StringComparison.Ordinal);

    [Theory]
    [InlineData(1)]
    [InlineData(20)]
    [InlineData(36)]
    public void It_is_one_page_however_much_there_is_to_say(int sentences)
    {
        foreach (var size in Enum.GetValues<PaperSize>())
            Assert.Equal(1, PdfReading.PageCount(ParentsPagePaper.Draw(Of(sentences), size).Pdf));
    }

    [Fact]
    public void More_than_a_page_holds_goes_on_and_is_not_cut()
    {
        var content = Of(90);
        var pdf = ParentsPagePaper.Draw(content, PaperSize.A4).Pdf;
        Assert.True(PdfReading.PageCount(pdf) > 1);
        var text = PdfReading.Flowing(pdf).Replace('\n', ' ');
        Assert.Contains($"Page 1 of {PdfReading.PageCount(pdf)}", text, StringComparison.Ordinal);
        Assert.All(content.Page.Opening.Concat(content.Page.Sections.SelectMany(s => s.Sentences)), sentence => Assert.Contains(sentence, text, StringComparison.Ordinal));
        Assert.Throws<ArgumentException>(() => ParentsPagePaper.Draw(SheetSamples.Parents with { SpeakTo = "" }, PaperSize.A4));
    }

    [Fact]
    public void A_title_without_the_childs_name_gets_it_below() =>
        Assert.Contains("For the family of Anselm", Text(SheetSamples.Parents with { Page = SheetSamples.Parents.Page with { Title = "White, two red tips" } }), StringComparison.Ordinal);

    [Fact]
    public void Pages_of_many_children_are_one_file() =>
        Assert.Equal(2, PdfReading.PageCount(SheetsPaper.DrawAll([SheetSamples.Parents, Of(5)], PaperSize.Letter).Pdf));

    private static ParentsPageContent Of(int sentences) => SheetSamples.Parents with
    {
        Page = new ParentsPageAnswer("Anselm: White, two red tips", ["Anselm has been to 9 of the 11 lessons held this term."], [new PageSection("What is secure", [.. Enumerable.Range(1, sentences).Select(i => $"Item {i} of the sheet: seen good on 17 November and 10 November 2026.")])], "1"),
    };

    private static string Text(ParentsPageContent content) =>
        PdfReading.Flowing(ParentsPagePaper.Draw(content, PaperSize.A4).Pdf);
}
