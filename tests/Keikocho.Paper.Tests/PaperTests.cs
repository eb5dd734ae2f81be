using System.Reflection;
using Keikocho.Paper.Layout;
using Keikocho.Paper.Register;
using Keikocho.Paper.Sheets;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Tokens;
using Xunit;

namespace Keikocho.Paper.Tests;

public sealed class PaperTests
{
    public static TheoryData<string, PaperSize> Papers { get; } = new()
    {
        { "register", PaperSize.A4 }, { "register", PaperSize.Letter }, { "blank", PaperSize.A4 }, { "blank", PaperSize.Letter },
        { "sheet", PaperSize.A4 }, { "sheet", PaperSize.Letter }, { "wall", PaperSize.A4 }, { "wall", PaperSize.Letter }, { "parents", PaperSize.A4 }, { "parents", PaperSize.Letter },
    };

    [Theory]
    [MemberData(nameof(Papers))]
    public void Nothing_is_drawn_outside_the_margins(string paper, PaperSize size)
    {
        using var document = PdfDocument.Open(Render(paper, size));
        var format = SheetFormat.Of(size);
        foreach (var page in document.GetPages())
        {
            var across = page.Width > page.Height ? format.MarginDown : format.MarginAcross;
            var down = page.Width > page.Height ? format.MarginAcross : format.MarginDown;
            var boxes = page.Letters.Where(letter => letter.Value.Trim().Length > 0).Select(letter => letter.BoundingBox)
                .Concat(page.Paths.Select(path => path.GetBoundingRectangle()).OfType<UglyToad.PdfPig.Core.PdfRectangle>()).ToList();
            Assert.True(boxes.Count > 100);
            Assert.All(boxes, box =>
            {
                Assert.InRange(box.Left, across - 1, page.Width);
                Assert.InRange(box.Right, 0, page.Width - across + 1);
                Assert.InRange(box.Bottom, down - 1, page.Height);
                Assert.InRange(box.Top, 0, page.Height - down + 1);
            });
        }
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void The_same_content_gives_the_same_text_in_the_same_places(string paper, PaperSize size) =>
        Assert.Equal(PdfReading.Places(Render(paper, size)), PdfReading.Places(Render(paper, size)));

    [Fact]
    public async Task Papers_rendered_at_the_same_time_are_as_those_rendered_alone()
    {
        var alone = new[] { PdfReading.Places(Render("register", PaperSize.A4)), PdfReading.Places(Render("blank", PaperSize.Letter)) };
        var together = await Task.WhenAll(Enumerable.Range(0, 24).Select(i => Task.Run(() => PdfReading.Places(i % 2 == 0 ? Render("register", PaperSize.A4) : Render("blank", PaperSize.Letter)))));
        for (var i = 0; i < together.Length; i++)
            Assert.Equal(alone[i % 2], together[i]);
    }

    [Fact]
    public void The_file_names_its_title_language_and_club()
    {
        using var document = PdfDocument.Open(Render("register", PaperSize.A4));
        Assert.Equal("Register, Juniors, Tuesday 10 November 2026", document.Information.Title);
        Assert.Equal("Osier Quay Judo Club", document.Information.Author);
        Assert.Equal("en", Text(document.Structure.Catalog.CatalogDictionary, "Lang"));
    }

    [Fact]
    public void The_file_is_tagged_with_a_title_headings_and_a_table()
    {
        using var document = PdfDocument.Open(RegisterSheet.Render(Samples.Sheet(80), PaperSize.A4).Pdf);
        Assert.True(document.Structure.Catalog.CatalogDictionary.ContainsKey(NameToken.Create("StructTreeRoot")));
        var tags = PdfReading.Dictionaries(document)
            .Where(dictionary => dictionary.ContainsKey(NameToken.Create("S")) && dictionary.ContainsKey(NameToken.Create("P")))
            .Select(dictionary => dictionary.TryGet(NameToken.Create("S"), out NameToken name) ? name.Data : "")
            .GroupBy(name => name).ToDictionary(group => group.Key, group => group.Count());
        Assert.Equal(1, tags["H1"]);
        Assert.Equal(3, tags["H2"]);
        // One table over all pages: its head once, then a row for each child whose name heads the row.
        Assert.Equal(1, tags["Table"]);
        Assert.Equal(81, tags["TR"]);
        Assert.Equal(6 + 80, tags["TH"]);
        Assert.Equal(5 * 80, tags["TD"]);
    }

    [Fact]
    public void A_file_stays_small_enough_to_send() => Assert.True(Render("blank", PaperSize.A4).Length < 400_000);

    // Whatever is added here is printed and lies about in a hall: no weight, nothing medical, no birth date.
    [Fact]
    public void The_content_records_hold_these_and_no_others()
    {
        Assert.Equal(["Club", "Programme", "Date", "Start", "End", "Hall", "Edition", "Adults", "AdultsNeeded", "Children", "Remarks", "Signatures", "PrintedOn"], Members<RegisterSheetContent>());
        Assert.Equal(["FirstName", "Second", "Mark", "Lesson", "Collection"], Members<RegisterChild>());
        Assert.Equal(["Word", "Late", "Came", "LeftAt"], Members<RegisterMark>());
        Assert.Equal(["Trial", "Number", "Of", "FormNeeded"], Members<LessonNote>());
        Assert.Equal(["Name", "Role"], Members<RegisterAdult>());
        Assert.Equal(["Name", "At", "Part"], Members<RegisterSignature>());
        Assert.Equal(["Club", "Programme", "Period", "Hours", "Edition", "Dates", "Children", "Adults", "SpareLines", "PrintedOn"], Members<BlankRegisterContent>());
        Assert.Equal(["Date", "Closure"], Members<BlankRegisterDate>());
        Assert.Equal(["FirstName", "Second"], Members<BlankRegisterChild>());
        Assert.Equal(
            ["Club", "PrintedOn", "Child", "Sheet", "Term", "TestStart", "OtherTestDays", "Before", "Belt", "Scripts", "AtHome", "SpeakTo", "SeenGood", "NotReviewed", "Cautions", "TestWord"],
            Members<RequirementSheetContent>());
        Assert.Equal(["Kanji", "Kana"], Members<ItemScript>());
        Assert.Equal(["Club", "Child", "PrintedOn", "Page", "SpeakTo"], Members<ParentsPageContent>());
    }

    [Fact]
    public void A_draft_with_ink_outside_its_margins_is_refused()
    {
        var draft = new Draft(SheetFormat.Of(PaperSize.A4), "Test", "Club", new DateOnly(2026, 1, 1));
        var page = draft.NewPage();
        page.Rule(page.Inside.X, page.Inside.Right, page.Inside.Y, 1);
        Bounds.Check(draft);
        page.Rule(page.Inside.X, page.Inside.Right + 5, page.Inside.Y, 1);
        Assert.Throws<ArgumentException>(() => Bounds.Check(draft));
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public async Task A_second_reader_finds_the_same_words(string paper, PaperSize size)
    {
        if (Poppler.Find("pdftotext") is not { } pdftotext)
        {
            Assert.Skip("pdftotext (poppler-utils) is not installed.");
            return;
        }

        var pdf = Render(paper, size);
        var read = await Poppler.Text(pdftotext, pdf, TestContext.Current.CancellationToken);
        string[] words = paper switch
        {
            "register" => ["Osier Quay Judo Club", "Register, Juniors", "Tuesday 10 November 2026, 17:30 to 18:45, Quay Hall", "Ngọc Ánh", "Йосиф", "Ελένη", "健太", "さくら", "Żaneta", "came 17:50, left 18:05", "Page 1 of 1"],
            "blank" => ["Osier Quay Judo Club", "Register, Juniors", "Ngọc Ánh", "Йосиф", "Ελένη", "健太", "さくら", "Żaneta", "In doubt, sit them out.", "Page 3 of 3"],
            "parents" => ["Osier Quay Judo Club", "Anselm: White, two red tips", "What would change this", "Page 1 of 1"],
            "wall" => ["Osier Quay Judo Club", "White, two red tips", "Copy for the wall", "大腰 おおごし · major hip throw", "Letting go at once at “mate”", "Page 1 of 1"],
            _ => ["Osier Quay Judo Club", "White, two red tips", "Anselm B.", "袈裟固 けさがため", "Any 2 of these 4:", "Page 2 of 2"],
        };
        Assert.All(words, word => Assert.Contains(word, read, StringComparison.Ordinal));
        Assert.Equal(Letters(PdfReading.Text(pdf)), Letters(read));
    }

    private static string[] Members<T>() =>
        [.. typeof(T).GetProperties(BindingFlags.Public | BindingFlags.Instance).OrderBy(property => property.MetadataToken).Select(property => property.Name)];

    private static byte[] Render(string paper, PaperSize size) =>
        (paper switch
        {
            "register" => RegisterSheet.Render(Samples.Sheet(40), size),
            "blank" => BlankRegister.Render(Samples.Blank(40, 26), size),
            "sheet" => RequirementSheetPaper.Draw(SheetSamples.Child(SheetSamples.Long), size),
            "wall" => RequirementSheetPaper.Draw(SheetSamples.Wall(), size),
            "parents" => ParentsPagePaper.Draw(SheetSamples.Parents, size),
            _ => throw new ArgumentOutOfRangeException(nameof(paper)),
        }).Pdf;

    // Both readers order lines in their own way: the letters must be the same, each as often.
    private static string Letters(string text) => string.Concat(text.Where(letter => !char.IsWhiteSpace(letter) && !char.IsControl(letter)).Order());

    private static string Text(DictionaryToken dictionary, string key) =>
        dictionary.TryGet(NameToken.Create(key), out StringToken text) ? text.Data : "";
}
