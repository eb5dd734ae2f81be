using Keikocho.Paper.Layout;
using Keikocho.Testing;
using Xunit;

namespace Keikocho.Paper.Tests;

/// <summary>Whatever the product brings along in words can be printed and shown: every character has a glyph in the fonts of papers and of the screen.</summary>
public sealed class StarterGlyphTests
{
    private static readonly string[] TextFiles = [".csv", ".toml", ".txt", ".md", ".json"];
    private static readonly Lazy<List<FontFace>> Web = new(() => [.. Directory.GetFiles(Repository.PathOf("src/Keikocho.App/wwwroot/fonts"), "*-regular.woff2").Order(StringComparer.Ordinal).Select(WebFont.Read)]);

    [Fact]
    public void Every_name_kana_and_kanji_of_the_hundred_techniques_has_its_glyphs()
    {
        var lines = File.ReadAllLines(Repository.PathOf("tests/Keikocho.Paper.Tests/Sheets/kodokan-names.txt")).Where(line => !line.StartsWith('#')).ToList();
        Assert.Equal(100, lines.Count);
        Assert.All(lines, line => Assert.Equal(3, line.Split('\t').Length));
        HasItsGlyphs("the hundred techniques", string.Concat(lines));
    }

    [Fact]
    public void Every_text_of_the_starter_kit_has_its_glyphs()
    {
        var folder = Repository.PathOf("starter");
        if (!Directory.Exists(folder))
            Assert.Skip("There is no folder starter yet.");
        var files = Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Where(path => TextFiles.Contains(Path.GetExtension(path))).Order(StringComparer.Ordinal).ToList();
        Assert.NotEmpty(files);
        foreach (var file in files)
            HasItsGlyphs(Path.GetRelativePath(folder, file), File.ReadAllText(file));
    }

    [Fact]
    public void The_marks_and_slips_of_sheets_have_their_glyphs() => HasItsGlyphs("the sheets", "昇級審査連絡帳稽古帳※→✓·“”’");

    [Fact]
    public void A_character_that_the_fonts_of_the_screen_lack_is_found()
    {
        Assert.Equal(9, Web.Value.Count);
        Assert.Equal(["ก"], MissingOnTheScreen("柔道aŁ’ก"));
    }

    private static void HasItsGlyphs(string where, string text)
    {
        Assert.True(Glyphs.MissingIn([text]) is { Count: 0 }, $"{where}: the fonts of papers lack {string.Join(' ', Glyphs.MissingIn([text]))}");
        var missing = MissingOnTheScreen(text);
        Assert.True(missing.Count == 0, $"{where}: the fonts of the screen lack {string.Join(' ', missing)}; add them in eng/make-fonts.sh");
    }

    private static List<string> MissingOnTheScreen(string text) =>
        [.. text.EnumerateRunes().Where(rune => rune.Value >= ' ' && rune.Value != 0xFEFF && !Web.Value.Exists(face => face.Has(rune.Value))).Select(rune => rune.ToString()).Distinct().Order(StringComparer.Ordinal)];
}
