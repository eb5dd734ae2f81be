using System.Net;
using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Calendar;
using Keikocho.Store.Syllabus;
using Keikocho.Testing;
using UglyToad.PdfPig;

namespace Keikocho.App.Tests.Papers;

public sealed class SheetPapersTests
{
    private const double PointsAMillimetre = 72 / 25.4;

    [Fact]
    [Statement(57)]
    public async Task A_childs_sheet_has_rank_lines_either_or_edition_and_the_marks()
    {
        await using var club = await ReadyAsync();
        var wren = await club.JoinOfTheExampleAsync();
        await club.SeenAsync(wren, "out-leg", SeenWord.Good, (5, 5), (5, 12));
        var (text, answer) = await club.PdfAsync($"/papers/sheet.pdf?child={wren}");
        Has(text, "Larkwater Lock", "White, one red tip", "Wren, from White to White, one red tip", "Syllabus edition 3, from 3 March 2026", "Spring 2026, unit 1: Hip throws",
            "Saturday 30 May 2026", "You need 12 lessons and 10 full weeks since your last belt.", "Falling backward", "slow, from a standstill", "O-goshi", "De-ashi-barai", "大腰",
            "→ hips below your partner’s", "待て", "stop, stand still", "Who founded judo?", "※ Asked again at every later test.", "Not reviewed by a graded instructor.",
            "An adult must have seen each technique good on 2 evenings", "Never practise throws, falls or holds at home: there is no mat.", "Questions: speak to Ruth Aldersey", "Page 1 of 1");
        // Either of two ways out meets the line, and the sheet says which was seen.
        Has(text, "trap the leg", "turn the hips away", "seen good on 12 May 2026");
        Assert.DoesNotContain("ashi foot", text, StringComparison.Ordinal);
        Assert.Equal("inline; filename=\"sheet-2026-05-30.pdf\"", answer.Content.Headers.ContentDisposition?.ToString());
        Assert.True(answer.Headers.CacheControl?.NoStore);
        Assert.DoesNotContain("Wren", answer.Headers.ToString() + answer.Content.Headers, StringComparison.Ordinal);
    }

    [Fact]
    public async Task At_home_a_child_is_told_three_safe_things_words_first_from_what_is_open()
    {
        await using var club = await ReadyAsync();
        var wren = await club.JoinOfTheExampleAsync();
        Has((await club.PdfAsync($"/papers/sheet.pdf?child={wren}")).Text,
            "Ask somebody to call mate and koshi, and say what each means. Twice, slowly: tying your own belt. Alone on a carpet, slowly, with nobody on you: turn the hips away.");
        await club.SeenAsync(wren, "mate", SeenWord.Good, (5, 12));
        Has((await club.PdfAsync($"/papers/sheet.pdf?child={wren}")).Text, "Ask somebody to call koshi, and say what it means.");
    }

    [Fact]
    public async Task All_sheets_of_a_test_are_one_file_in_register_order_each_with_its_own_count_of_pages()
    {
        await using var club = await ReadyAsync();
        var wren = await club.JoinOfTheExampleAsync();
        await club.JoinAsync("Anselm", "Bracken", new DateOnly(2026, 5, 12));
        var pages = await PagesAsync(club, "/papers/sheets.pdf?children=all");
        Assert.Equal(2, pages.Count);
        Assert.Contains("Wren", pages[0], StringComparison.Ordinal);
        Assert.DoesNotContain("Anselm", pages[0], StringComparison.Ordinal);
        Assert.Contains("Anselm", pages[1], StringComparison.Ordinal);
        Assert.All(pages, page => Assert.Contains("Page 1 of 1", page, StringComparison.Ordinal));
        // Anselm has too few lessons and weeks; Wren can still come to enough.
        var some = await PagesAsync(club, "/papers/sheets.pdf");
        Assert.Contains("Wren", Assert.Single(some), StringComparison.Ordinal);
        await RefusedAsync(club, "/papers/sheets.pdf?children=forward", "children", "Nobody stands so for the test on 30 May 2026. Choose others, or another test.");
        Assert.NotEqual(Guid.Empty, wren);
    }

    [Fact]
    [Statement(54), Statement(55)]
    public async Task The_copy_for_the_wall_names_no_child_and_keeps_words_of_the_term_to_their_term()
    {
        await using var club = await ReadyAsync();
        await club.JoinOfTheExampleAsync();
        var (spring, answer) = await club.PdfAsync("/papers/wall.pdf");
        Has(spring, "Copy for the wall: from White to White, one red tip", "koshi", "In this term only", "Koshi-guruma");
        Assert.DoesNotContain("Wren", spring, StringComparison.Ordinal);
        Assert.DoesNotContain("foot, leg", spring, StringComparison.Ordinal);
        Assert.Equal("inline; filename=\"wall-2026-05-30-white-1.pdf\"", answer.Content.Headers.ContentDisposition?.ToString());
        var (summer, _) = await club.PdfAsync($"/papers/wall.pdf?test={club.Test(SpringClub.NextTest)}&rank=white-1");
        Has(summer, "unit 2: Sweeps", "foot, leg", "Saturday 25 July 2026");
        Assert.DoesNotContain("koshi", summer, StringComparison.Ordinal);
        // What is always asked is asked at the higher rank as well.
        Has((await club.PdfAsync("/papers/wall.pdf?rank=yellow")).Text, "to Yellow", "mate", "待て", "Falling backward", "from White, one red tip");
        Has((await club.PdfAsync("/papers/wall.pdf?unit=sweeps")).Text, "unit 2: Sweeps", "foot, leg");
    }

    [Fact]
    [Statement(80)]
    public async Task A_barred_item_is_on_no_younger_childs_sheet_and_its_alternative_is()
    {
        await using var club = await ReadyAsync();
        await new SyllabusStore(club.House.Writer).AddAgeRuleAsync(
            new AgeRule("no neck grips", 11, AgeBasis.Birthday, [], ["koshi guruma"], [], "the body’s circular, page 2", new DateOnly(2026, 1, 1)), club.Head, club.Tablet, SpringClub.Stop);
        var young = await club.JoinOfTheExampleAsync();
        await club.BornAsync(young, "Wren", "Hollis", new DateOnly(2017, 2, 3));
        var unknown = await club.JoinAsync("Noor", "Vale", SpringClub.FirstLesson);
        var old = await club.JoinAsync("Anselm", "Bracken", SpringClub.FirstLesson);
        await club.BornAsync(old, "Anselm", "Bracken", new DateOnly(2013, 2, 3));
        foreach (var child in new[] { young, unknown })
        {
            var (text, _) = await club.PdfAsync($"/papers/sheet.pdf?child={child}");
            Has(text, "Uki-goshi", "instead of Koshi-guruma");
            Assert.DoesNotContain("首", text, StringComparison.Ordinal);
        }

        var (older, _) = await club.PdfAsync($"/papers/sheet.pdf?child={old}");
        Has(older, "Koshi-guruma");
        Assert.DoesNotContain("Uki-goshi", older, StringComparison.Ordinal);
    }

    [Fact]
    [Statement(76)]
    public async Task An_agreed_way_prints_its_wording_and_nothing_else_about_the_child()
    {
        await using var club = await ReadyAsync();
        var wren = await club.JoinOfTheExampleAsync();
        Guid item;
        using (var db = club.Db()) item = db.Items.Single(i => i.Key == "kesa").Id;
        Assert.True(await club.House.Ways.AgreeAsync(Guid.CreateVersion7(), wren, item, "with the arm free, from sitting", club.Today, club.Head, club.Tablet, SpringClub.Stop));
        Assert.Equal(Store.Safety.StandDownOutcome.Stored, await club.House.StandDowns.EnterAsync(
            new Store.Safety.NewStandDown(Guid.CreateVersion7(), wren, StandDownScope.NoFalls, club.Today, null, "the hospital at Larkwater"), club.Head, club.Tablet, SpringClub.Stop));
        var (text, _) = await club.PdfAsync($"/papers/sheet.pdf?child={wren}");
        Has(text, "Agreed way: with the arm free, from sitting");
        Assert.DoesNotContain("hospital", text, StringComparison.Ordinal);
        Assert.DoesNotContain("agreed on", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("Agreed way", (await club.PdfAsync("/papers/wall.pdf")).Text, StringComparison.Ordinal);
    }

    [Fact]
    [Statement(83)]
    public async Task After_a_rename_old_sheets_still_print_the_old_name_and_its_edition()
    {
        await using var club = await ReadyAsync();
        var wren = await club.JoinOfTheExampleAsync();
        var page = $"/students/{wren}/parents-page";
        using var printed = await club.PostAsync(page, $"/students/{wren}/sheet/keep", ("test", club.Test(SpringClub.Test).ToString()), ("command", Guid.CreateVersion7().ToString()));
        Assert.Equal(HttpStatusCode.SeeOther, printed.StatusCode);
        var kept = printed.Headers.Location!.ToString();
        Has((await club.PdfAsync(kept)).Text, "Kesa-gatame");

        var renamed = SheetDesk.Edition with
        {
            Name = "edition 4",
            Items = [.. SheetDesk.Edition.Items.Select(i => i.Key == "kesa" ? i with { Name = "Hon-kesa-gatame" } : i)],
        };
        await club.PublishAsync(renamed, new DateOnly(2026, 6, 2));
        // The test before the new edition still asks in the words of the old one, the next test in those of the new.
        Has((await club.PdfAsync($"/papers/sheet.pdf?child={wren}&test={club.Test(SpringClub.Test)}")).Text, "Kesa-gatame", "edition 3");
        Has((await club.PdfAsync($"/papers/sheet.pdf?child={wren}&test={club.Test(SpringClub.NextTest)}")).Text, "Hon-kesa-gatame", "edition 4");
        club.Time.Set(new(2026, 6, 10, 9, 0, 0, TimeSpan.Zero));
        var (old, _) = await club.PdfAsync(kept);
        Has(old, "edition 3, from 3 March 2026", "Kesa-gatame", "Printed 14 May 2026");
        Assert.DoesNotContain("Hon-kesa", old, StringComparison.Ordinal);
        using var db = club.Db();
        Assert.Equal("sheet", db.KeptAnswers.Single().Kind);
    }

    [Theory]
    [InlineData("/papers/sheet.pdf?test=tonight", "one-test", "That test is not to come. Choose one from the list.")]
    [InlineData("/papers/sheet.pdf", "child", "Choose the child.")]
    [InlineData("/papers/parents-page.pdf?child=01a03524-d028-7f56-b029-6a708f6b0604", "child", "That child is not on the register of Juniors at the test on 30 May 2026. Choose one who is, or another test.")]
    [InlineData("/papers/sheets.pdf?children=some", "children", "Choose whose sheets to make.")]
    [InlineData("/papers/sheets.pdf?paper=a5", "sheets-paper", "Choose A4 or US Letter.")]
    [InlineData("/papers/wall.pdf?rank=white", "rank", "The syllabus of Juniors on 30 May 2026 asks nothing for that rank. Choose another.")]
    [InlineData("/papers/wall.pdf?unit=groundwork", "unit", "The syllabus of Juniors on 30 May 2026 has no such unit. Choose another.")]
    public async Task A_sheet_that_cannot_be_made_is_a_sentence_on_the_page(string address, string field, string sentence)
    {
        await using var club = await ReadyAsync();
        await RefusedAsync(club, address, field, sentence);
    }

    [Fact]
    public async Task Without_a_syllabus_or_a_test_the_page_says_what_is_missing()
    {
        await using var club = await SpringClub.StartAsync();
        Assert.Contains("need a test to come", await club.WordsAsync("/papers"), StringComparison.Ordinal);
        await RefusedAsync(club, "/papers/wall.pdf", "wall-test", "Juniors have no syllabus that holds on 30 May 2026, so nothing can be asked. Publish one on the page of the syllabus.");
        club.Time.Set(new(2026, 8, 10, 9, 0, 0, TimeSpan.Zero));
        await RefusedAsync(club, "/papers/sheets.pdf", "sheets-test", "No promotion test is set from today on. Add one to its term on the club’s page.");
    }

    [Theory]
    [InlineData("", 210, 297)]
    [InlineData("&paper=letter", 215.9, 279.4)]
    public async Task Every_paper_of_a_test_is_made_in_both_sizes(string query, double width, double height)
    {
        await using var club = await ReadyAsync();
        var wren = await club.JoinOfTheExampleAsync();
        foreach (var address in new[] { $"/papers/sheet.pdf?child={wren}", "/papers/sheets.pdf?children=all", "/papers/wall.pdf?rank=yellow", $"/papers/parents-page.pdf?child={wren}" })
        {
            using var pdf = PdfDocument.Open(await club.Browser.GetByteArrayAsync(address + query, SpringClub.Stop));
            // ISO 216 A4 and US Letter in millimetres, rounded to a point by the writer.
            Assert.InRange(Math.Abs(pdf.GetPage(1).Width - (width * PointsAMillimetre)), 0, 1);
            Assert.InRange(Math.Abs(pdf.GetPage(1).Height - (height * PointsAMillimetre)), 0, 1);
        }
    }

    [Fact]
    public async Task The_page_of_papers_offers_tests_ranks_and_children()
    {
        await using var club = await ReadyAsync();
        await club.JoinOfTheExampleAsync();
        var html = await club.TextAsync("/papers");
        Assert.Contains("Saturday 30 May 2026, Juniors", html, StringComparison.Ordinal);
        Assert.Contains(">White, one red tip</option>", html, StringComparison.Ordinal);
        Assert.DoesNotContain(">White</option>", html, StringComparison.Ordinal);
        Assert.Contains(">Wren</option>", html, StringComparison.Ordinal);
        Assert.Contains("formaction=\"/papers/parents-page.pdf\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_several_programmes_are_tested_one_programmes_children_are_offered_at_a_time()
    {
        await using var club = await ReadyAsync();
        await club.JoinOfTheExampleAsync();
        await club.JoinAsync("Wren", "Vale", new DateOnly(2026, 5, 12));
        var teen = await club.JoinAsync("Anselm", "Bracken", new DateOnly(2026, 5, 12));
        var test = await club.House.Writer.RunAsync(session =>
        {
            var teens = new ProgrammeRow { Club = session.Club, Id = session.NewId(), Name = "Teens", Position = 2, LadderId = club.Ladder };
            session.Db.Programmes.Add(teens);
            session.Db.SaveChanges();
            var test = new PromotionTestRow { Club = session.Club, Id = session.NewId(), ProgrammeId = teens.Id, Date = SpringClub.NextTest };
            session.Db.PromotionTests.Add(test);
            session.Db.Enrolments.Add(new EnrolmentRow { Club = session.Club, Id = session.NewId(), PersonId = teen, ProgrammeId = teens.Id, From = SpringClub.FirstLesson, Position = 1, CountsFrom = SpringClub.FirstLesson });
            session.Db.Clubs.Single().CalendarRevision++;
            session.Db.Clubs.Single().PeopleRevision++;
            session.Db.SaveChanges();
            return test.Id;
        }, SpringClub.Stop);

        var juniors = await club.TextAsync("/papers");
        Assert.Equal(["Wren H.", "Wren V.", "Anselm"], Offered(juniors, "child").Skip(1));
        Assert.Equal(["Juniors", "Teens"], Offered(juniors, "one-programme"));
        Assert.Equal(["Saturday 30 May 2026, Juniors", "Saturday 25 July 2026, Juniors"], Offered(juniors, "one-test"));
        var teens = await club.TextAsync($"/papers?test={test}");
        Assert.Equal(["Anselm"], Offered(teens, "child").Skip(1));
        Assert.Equal(["Saturday 25 July 2026, Teens"], Offered(teens, "one-test"));
        Assert.Contains($"<option value=\"{test}\" selected>Teens</option>", teens, StringComparison.Ordinal);
        Assert.Equal(3, Offered(teens, "sheets-test").Count);
    }

    private static List<string> Offered(string html, string select)
    {
        var from = html.IndexOf($"<select id=\"{select}\"", StringComparison.Ordinal);
        return [.. html[from..html.IndexOf("</select>", from, StringComparison.Ordinal)].Split("</option>")[..^1].Select(o => o[(o.LastIndexOf('>') + 1)..])];
    }

    private static async Task<SpringClub> ReadyAsync()
    {
        var club = await SpringClub.StartAsync();
        await club.PublishAsync(SheetDesk.Edition);
        await club.SetUnitAsync("Spring 2026", "hips");
        await club.SetUnitAsync("Summer 2026", "sweeps");
        return club;
    }

    private static void Has(string text, params string[] all) => Assert.All(all, words => Assert.Contains(words, text, StringComparison.Ordinal));

    private static async Task<List<string>> PagesAsync(SpringClub club, string address)
    {
        using var pdf = PdfDocument.Open(await club.Browser.GetByteArrayAsync(address, SpringClub.Stop));
        return [.. pdf.GetPages().Select(SheetDesk.Flowing)];
    }

    private static async Task RefusedAsync(SpringClub club, string address, string field, string sentence)
    {
        using var answer = await club.Browser.GetAsync(address, SpringClub.Stop);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var html = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(SpringClub.Stop));
        Assert.Contains($"<a href=\"#{field}\">{sentence}</a>", html, StringComparison.Ordinal);
        Assert.Contains($"id=\"{field}\"", html, StringComparison.Ordinal);
    }
}
