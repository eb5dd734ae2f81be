using Xunit;

namespace Keikocho.Paper.Tests;

public sealed class GlyphsTests
{
    [Fact]
    public void Characters_that_no_font_has_are_named_once_and_by_code_point() =>
        Assert.Equal(["ก", "😀"], Glyphs.MissingIn(["Wren 😀", "ก😀", "Šárka Łucja 柔道 Ōgoshi", ""]));

    [Fact]
    public void Names_that_papers_can_print_miss_nothing() => Assert.Empty(Glyphs.MissingIn(["Émile", "Inês", "Юлия", "Ελένη", "佐藤"]));

    [Fact]
    public void What_is_said_to_be_missing_is_what_a_paper_misses() =>
        Assert.Equal(
            Register.RegisterSheet.Render(Samples.Sheet(14) with { Club = "ก Weir" }, PaperSize.A4).MissingGlyphs,
            Glyphs.MissingIn(["ก Weir"]));
}
