using Keikocho.Paper.Layout;
using Keikocho.Paper.Register;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Tokens;
using Xunit;

namespace Keikocho.Paper.Tests;

public sealed class FontTests
{
    // Block borders from the Unicode code charts; unassigned points and control characters are left out of each.
    public static TheoryData<string, string> Scripts { get; } = new()
    {
        { "Basic Latin", Range(0x21, 0x7E) },
        { "Latin-1", Range(0xA1, 0xFF, 0xAD) },
        { "Latin Extended-A", Range(0x100, 0x17F) },
        { "Latin Extended-B", Range(0x180, 0x24F) },
        { "Vietnamese", Range(0x1EA0, 0x1EF9) + "ƠơƯưĂăÂâÊêÔôĐđ" },
        { "Greek", Range(0x386, 0x3CE, 0x387, 0x38B, 0x38D, 0x3A2) },
        { "Cyrillic", Range(0x400, 0x45F) + "ҐґҚқӘәҢңҮүҰұӨөҺһ" },
        { "Hiragana", Range(0x3041, 0x3096) },
        { "Katakana", Range(0x30A1, 0x30FE) },
        { "Name kanji", "髙﨑齋邊邉齊濵栁仝廣澤嶋瀨凜佐藤鈴木高橋田中渡辺斎" },
        { "Judo", "柔道稽古帳出席簿受身大腰投固抑込技絞関節待始礼参済注欠届遅早一二三四五六" },
        { "Marks of the papers", "✓→※〓–—…’“”·×○△□" },
    };

    [Theory]
    [MemberData(nameof(Scripts))]
    public void Every_character_of_a_script_has_a_glyph_in_both_weights(string script, string characters)
    {
        _ = script;
        foreach (var bold in new[] { false, true })
        {
            var missing = new SortedSet<int>();
            var runs = FontSet.Runs(characters, bold, missing);
            Assert.Empty(missing);
            Assert.All(runs, run => Assert.Equal(bold, run.Face.Bold));
            Assert.DoesNotContain(runs, run => run.Text.Contains(FontSet.Missing, StringComparison.Ordinal) && !characters.Contains(FontSet.Missing, StringComparison.Ordinal));
        }
    }

    [Theory]
    [MemberData(nameof(Scripts))]
    public void Text_comes_back_exactly_from_the_file(string script, string characters)
    {
        _ = script;
        var content = Samples.Sheet(1) with { Remarks = [], Hall = null, Adults = [new("Маρία 髙﨑", "Nguyễn Thị Ánh")], Children = [Samples.Child(0) with { FirstName = "<<" + characters + ">>", Second = null }] };
        var text = PdfReading.Text(RegisterSheet.Render(content, PaperSize.A4).Pdf);
        Assert.Contains("<<" + characters + ">>", text, StringComparison.Ordinal);
        Assert.Contains("Маρία 髙﨑", text, StringComparison.Ordinal);
        Assert.Contains("Nguyễn Thị Ánh", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_character_that_no_font_has_is_drawn_as_a_geta_and_named()
    {
        var content = Samples.Sheet(1) with { Remarks = ["한 and 🥋 and again 한"] };
        var result = RegisterSheet.Render(content, PaperSize.A4);
        Assert.Equal(["한", "🥋"], result.MissingGlyphs);
        Assert.Contains("〓 and 〓 and again 〓", PdfReading.Text(result.Pdf), StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_missing_on_an_ordinary_paper() =>
        Assert.Empty(RegisterSheet.Render(Samples.Sheet(41), PaperSize.A4).MissingGlyphs);

    [Theory]
    [InlineData("邉\U000E0100", "邉")] // a variation of a kanji
    [InlineData("co\u00ADop\u200B", "coop")]
    [InlineData("a\tb\r\nc", "a b  c")]
    public void Marks_that_draw_nothing_leave_no_trace(string text, string drawn)
    {
        var missing = new SortedSet<int>();
        Assert.Equal(drawn, string.Concat(FontSet.Runs(text, false, missing).Select(run => run.Text)));
        Assert.Empty(missing);
    }

    // Unicode Standard Annex 15, figures 3 to 5 and the order of marks in Vietnamese and Greek.
    [Theory]
    [InlineData("e\u0301", "é")]
    [InlineData("e\u0302\u0323", "ệ")]
    [InlineData("e\u0323\u0302", "ệ")]
    [InlineData("ê\u0323", "ệ")]
    [InlineData("s\u0323\u0307", "ṩ")]
    [InlineData("ḋ\u0323", "ḍ\u0307")]
    [InlineData("か\u3099", "が")]
    [InlineData("И\u0306", "Й")]
    [InlineData("ι\u0308\u0301", "ΐ")]
    [InlineData("A\u030A", "Å")]
    [InlineData("q\u0301", "q\u0301")]
    [InlineData("Ada", "Ada")]
    public void A_letter_and_its_loose_marks_become_one(string loose, string composed) =>
        Assert.Equal(composed, string.Concat(Composition.Compose(loose).Select(char.ConvertFromUtf32)));

    [Fact]
    public void Every_font_is_embedded_as_a_subset()
    {
        using var document = PdfDocument.Open(RegisterSheet.Render(Samples.Sheet(41), PaperSize.A4).Pdf);
        var dictionaries = PdfReading.Dictionaries(document);
        var descriptors = dictionaries.Where(dictionary => dictionary.TryGet(NameToken.Create("Type"), out NameToken type) && type.Data == "FontDescriptor").ToList();
        Assert.Equal(4, descriptors.Count);
        Assert.All(descriptors, descriptor => Assert.True(descriptor.ContainsKey(NameToken.Create("FontFile2"))));
        var names = document.GetPages().SelectMany(page => page.Letters).Select(letter => letter.FontName).Distinct();
        Assert.All(names, name => Assert.Matches("^[A-Z]{6}\\+(BIZ UDPGothic|Noto Sans)", name));
        var size = RegisterSheet.Render(Samples.Sheet(41), PaperSize.A4).Pdf.Length;
        Assert.True(size < 200_000, $"{size} bytes: only used glyphs are embedded.");
    }

    [Fact]
    public void Text_is_as_wide_as_it_was_measured()
    {
        const string words = "Maximiliane 髙﨑 さくら 17:41";
        var measured = FontSet.Runs(words, true, new SortedSet<int>()).Sum(run => run.Width);
        var content = Samples.Sheet(0) with { Adults = [new(words, "")] };
        using var document = PdfDocument.Open(RegisterSheet.Render(content, PaperSize.A4).Pdf);
        var letters = document.GetPage(1).Letters;
        var start = string.Concat(letters.Select(letter => letter.Value)).IndexOf(words, StringComparison.Ordinal);
        var first = letters[start];
        var last = letters[start + words.Length - 1];
        // The file holds widths in whole thousandths of the size: at most one for each letter is lost.
        Assert.Equal(measured * first.PointSize, last.EndBaseLine.X - first.StartBaseLine.X, words.Length * first.PointSize * 0.001);
    }

    [Fact]
    public void The_resolver_knows_only_the_embedded_fonts()
    {
        Assert.Equal(["BIZ UDPGothic", "BIZ UDPGothic", "Noto Sans", "Noto Sans"], FontSet.Faces.Select(face => face.Family));
        Assert.All(FontSet.Faces, face => Assert.True(face.CharacterCount > 1000));
        Assert.Throws<ArgumentException>(() => EmbeddedFile.Bytes("Arial.ttf"));
    }

    private static string Range(int from, int to, params int[] without) =>
        string.Concat(Enumerable.Range(from, to - from + 1).Except(without).Select(char.ConvertFromUtf32));
}
