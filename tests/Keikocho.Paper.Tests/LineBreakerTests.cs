using Keikocho.Paper.Layout;
using Xunit;

namespace Keikocho.Paper.Tests;

public sealed class LineBreakerTests
{
    [Fact]
    public void Text_that_fits_stays_on_one_line() => Assert.Equal(["Ada Lund"], Lines("Ada Lund", 200));

    [Fact]
    public void Lines_break_at_spaces() => Assert.Equal(["Ada", "Lund"], Lines("Ada Lund", 40));

    [Fact]
    public void Lines_break_after_a_hyphen() => Assert.Equal(["Maximiliane-", "Charlotte"], Lines("Maximiliane-Charlotte", 80));

    [Fact]
    public void Lines_do_not_break_after_a_single_letter_and_its_hyphen() => Assert.Equal(["and", "O-goshi"], Lines("and O-goshi", 45));

    [Fact]
    public void Lines_break_between_kanji_but_not_before_a_full_stop() => Assert.Equal(["稽古", "帳。"], Lines("稽古帳。", 35));

    [Fact]
    public void A_word_too_long_for_a_line_is_broken_and_nothing_is_lost()
    {
        var name = new string('W', 60);
        var lines = Lines(name, 50);
        Assert.True(lines.Count > 1);
        Assert.Equal(name, string.Concat(lines));
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    public void Nothing_is_one_empty_line(string text) => Assert.Equal([""], Lines(text, 50));

    [Fact]
    public void No_line_is_wider_than_asked()
    {
        var missing = new SortedSet<int>();
        Words[] text = [new("Nguyễn Thị Ánh Nguyệt", true), ", ", "assistant and first-aider at the beginners’ end 稽古帳稽古帳", " Ελένη Йосиф"];
        for (var width = 30.0; width < 400; width += 7)
            Assert.All(LineBreaker.Break(text, 10, width, missing), line => Assert.True(line.Width * 10 <= width + 0.02, $"{line.Width * 10} in {width}"));
    }

    [Fact]
    public void A_width_of_nothing_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => Lines("a", 0));

    private static List<string> Lines(string text, double width) =>
        [.. LineBreaker.Break([text], 10, width, new SortedSet<int>()).Select(line => string.Concat(line.Runs.Select(run => run.Text)))];
}
