using Keikocho.Paper.Cards;
using Keikocho.Testing;
using Xunit;

namespace Keikocho.Paper.Tests;

public sealed class EndCardPaperTests
{
    private static readonly EndCardContent Beginners = new(
        "Osier Quay Judo Club", "Beginners’ end", new DateOnly(2026, 11, 24), new TimeOnly(17, 30), new TimeOnly(18, 30), "Heron, edition 1", "Tobias", "Priya", null, null,
        [
            new(new TimeOnly(17, 30), 3, "Bow", ["Line up by rank, bow, one sentence about tonight."]),
            new(new TimeOnly(17, 33), 5, "Warm-up and game", ["Everybody together; one game.", "Games: Crocodiles, Islands."]),
            new(new TimeOnly(17, 38), 10, "Falls", ["Everybody; every direction of tonight, low first."]),
            new(new TimeOnly(17, 48), 15, "Turnover from underneath", ["Look for: Knee across, both sleeves held. Common fault: Lets go too early.", "Easier: Uke leans over. Harder: Uke resists a little."]),
            new(new TimeOnly(18, 3), 15, "Hiza-guruma", ["Look for: The foot below the knee. Common fault: Kicks.", "Easier: Uke kneels. Harder: Moving.", "Fit-in only: Wren.", "Tori only: Dilys, Pippa.", "Throws and is thrown: Juno, Tove."]),
            new(new TimeOnly(18, 18), 7, "Cool-down with words", ["Quiet breathing, stretching, words called and answered."]),
            new(new TimeOnly(18, 25), 5, "Bow and notices", ["Line up, bow, notices; nobody leaves before they are fetched."]),
        ],
        ["Backward, stage 1 (lying or sitting): Wren", "To the left side, stage 3 (standing): Dilys, Pippa"],
        [
            new("Dilys", "White", "", "tori only"), new("Juno", "White, one red tip", "", "throws and is thrown"), new("Pippa", "White", "back", "tori only"),
            new("Tove", "White, one red tip", "", "throws and is thrown"), new("Wren", "White", "new", "fit-in only"),
        ],
        "Dilys, Juno", "Mate (stop), Hajime (begin), Tori (the one who throws), Uke (the one who falls), Rei (bow)",
        ["An adult is missing: nothing is thrown at the beginners’ end, or the ends are joined and nothing is thrown.", "Ring the stand-by list; in doubt, sit them out."], "Maren");

    private static readonly EndCardContent Nobody = Beginners with
    {
        Title = "Main group",
        Lead = "",
        Drills = "",
        Empty = "Nobody is in the main group tonight, so there is no card.",
        Parts = [],
        Falls = [],
        Children = [],
    };

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void Both_cards_read_as_committed(PaperSize size) =>
        Golden.Check($"tests/Keikocho.Paper.Tests/Golden/cards-{size}.txt", PdfReading.Places(EndCardPaper.Draw([Beginners, Nobody], size).Pdf));

    [Fact]
    public void Each_end_has_one_page_and_an_empty_end_says_so()
    {
        var pdf = EndCardPaper.Draw([Beginners, Nobody], PaperSize.A4).Pdf;
        Assert.Equal(2, PdfReading.PageCount(pdf));
        var text = PdfReading.Flowing(pdf).Replace('\n', ' ');
        Assert.All(
            new[] { "Nobody is in the main group tonight, so there is no card.", "Stop: at “mate” or a tap everybody lets go.", "Plan B: An adult is missing", "Page 1 of 2", "Page 2 of 2", "Leads: Tobias. Drills: Priya" },
            part => Assert.Contains(part, text, StringComparison.Ordinal));
    }

    [Fact, Statement(18)]
    public void A_child_who_is_not_thrown_is_tori_only_and_no_reason_is_printed()
    {
        var text = PdfReading.Flowing(EndCardPaper.Draw([Beginners], PaperSize.A4).Pdf).Replace('\n', ' ');
        Assert.Contains("Dilys, White: tori only", text, StringComparison.Ordinal);
        Assert.DoesNotContain("because", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("stand-down", text, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData(15, 1)]
    [InlineData(30, 1)]
    public void So_many_children_stand_on_one_page(int children, int pages)
    {
        var full = Beginners with { Children = [.. Enumerable.Range(0, children).Select(i => new CardPaperChild($"Child {i}", "White, two red tips", "", "throws; is thrown low and slow only"))] };
        foreach (var size in Enum.GetValues<PaperSize>())
            Assert.Equal(pages, PdfReading.PageCount(EndCardPaper.Draw([full], size).Pdf));
    }

    [Fact]
    public void What_no_page_holds_goes_on_and_a_card_without_an_end_is_refused()
    {
        var full = Beginners with { Children = [.. Enumerable.Range(0, 200).Select(i => new CardPaperChild($"Child {i}", "White, two red tips", "", "throws and is thrown"))] };
        var pdf = EndCardPaper.Draw([full], PaperSize.A4).Pdf;
        Assert.True(PdfReading.PageCount(pdf) > 1);
        Assert.Contains("Child 199", PdfReading.Flowing(pdf), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => EndCardPaper.Draw([], PaperSize.A4));
        Assert.Throws<ArgumentException>(() => EndCardPaper.Draw([Beginners with { Title = "" }], PaperSize.A4));
    }
}
