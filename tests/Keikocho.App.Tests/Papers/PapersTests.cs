using System.Net;
using System.Text.RegularExpressions;
using Keikocho.App.Tests.Club;
using Keikocho.Testing;
using UglyToad.PdfPig;

namespace Keikocho.App.Tests.Papers;

public sealed class PapersTests
{
    private const double PointsAMillimetre = 72 / 25.4;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_register_of_tonight_is_the_first_paper_and_shows_every_mark()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var tonight = desk.Book().LessonsOn(ClubDesk.Today).Single().Id;
        await desk.AddChildAsync(tonight, "Wren");
        var told = await desk.AddChildAsync(tonight, "Piet");
        await MarkAsync(desk, tonight, "told", told);
        desk.Time.Set(new(2026, 11, 25, 17, 41, 0, TimeSpan.Zero));
        await desk.AddChildAsync(tonight, "Noor");
        var (text, answer) = await PdfAsync(desk, "/papers/register.pdf");
        Assert.Contains("Osier Quay Judo Club", text, StringComparison.Ordinal);
        Assert.Contains("Register, Juniors", text, StringComparison.Ordinal);
        Assert.Contains("Wednesday 25 November 2026, 17:30 to 18:45", text, StringComparison.Ordinal);
        Assert.Contains("1 Wren 出", text, StringComparison.Ordinal);
        Assert.Contains("2 Piet absent, told us 届", text, StringComparison.Ordinal);
        Assert.Contains("3 Noor came 17:41 遅", text, StringComparison.Ordinal);
        Assert.Contains("3 children: 2 present (1 came late), 1 absent and told us.", text, StringComparison.Ordinal);
        Assert.Equal("inline; filename=\"register-2026-11-25-1730.pdf\"", answer.Content.Headers.ContentDisposition?.ToString());
        Assert.True(answer.Headers.CacheControl?.NoStore);
    }

    [Fact]
    [Statement(6)]
    public async Task A_register_begun_by_one_adult_and_finished_by_another_bears_both_names()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var tonight = desk.Book().LessonsOn(ClubDesk.Today).Single().Id;
        desk.Time.Set(new(2026, 11, 25, 17, 31, 0, TimeSpan.Zero));
        var child = await desk.AddChildAsync(tonight, "Wren");
        Assert.Contains("Maren Holt at 17:31 (took the register)", (await PdfAsync(desk, "/papers/register.pdf")).Text, StringComparison.Ordinal);

        await desk.TakenAsync("/club/adults/add", ("adult-person", Guid.CreateVersion7(desk.Time.GetUtcNow()).ToString()), ("adult-given", "Piet"), ("adult-family", "Vos"), ("adult-duty", "Assistant"));
        var other = desk.Book().Duties.Single(d => desk.Book().Person(d.PersonId)!.CallName == "Piet").PersonId;
        await desk.TakenAsync("/acting", ("adult", other.ToString()), ("from", "/register"));
        desk.Time.Set(new(2026, 11, 25, 18, 20, 0, TimeSpan.Zero));
        await MarkAsync(desk, tonight, "left", child);
        var (text, _) = await PdfAsync(desk, "/papers/register.pdf");
        Assert.Contains("Maren Holt at 17:31 (began it), Piet Vos at 18:20 (finished it)", text, StringComparison.Ordinal);

        // Filled in on the next day: the day stands beside the time.
        desk.Time.Set(new(2026, 11, 26, 9, 5, 0, TimeSpan.Zero));
        await MarkAsync(desk, tonight, "absent", child);
        Assert.Contains("Piet Vos at 09:05 (finished it on 26 November 2026)", (await PdfAsync(desk, $"/papers/register.pdf?lesson={tonight}")).Text, StringComparison.Ordinal);
    }

    [Fact]
    [Statement(12)]
    public async Task Two_children_of_one_first_name_are_told_apart_on_both_papers()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var tonight = desk.Book().LessonsOn(ClubDesk.Today).Single().Id;
        await desk.AddChildAsync(tonight, "Noor", "Bakker");
        await desk.AddChildAsync(tonight, "Noor", "Visser");
        await desk.AddChildAsync(tonight, "Wren", "Abernathy");
        foreach (var address in new[] { "/papers/register.pdf", "/papers/blank-register.pdf?span=month" })
        {
            var (text, _) = await PdfAsync(desk, address);
            Assert.Contains("Noor B.", text, StringComparison.Ordinal);
            Assert.Contains("Noor V.", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Abernathy", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_child_at_the_beginners_end_has_its_own_lesson_or_trial_beside_its_name()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var juniors = desk.Book().Programmes[0].Id;
        var key = $"programme-{juniors:N}-";
        await desk.TakenAsync("/club/programmes/change", ("programme", juniors.ToString()), (key + "name", "Juniors"), (key + "lessons", "14"), (key + "weeks", "10"), (key + "trials", "3"));
        var lessons = desk.Book().LessonsOf(juniors).Where(l => l.Date <= ClubDesk.Today).ToList();
        var child = await desk.AddChildAsync(lessons[0].Id, "Wren");
        Assert.Equal(5, lessons.Count);
        foreach (var lesson in lessons.Skip(1))
            await MarkAsync(desk, lesson.Id, "present", child, afterwards: lesson.Date != ClubDesk.Today);
        Assert.Contains("trial 1 of 3", (await PdfAsync(desk, $"/papers/register.pdf?lesson={lessons[0].Id}")).Text, StringComparison.Ordinal);
        Assert.Contains("trial 3 of 3", (await PdfAsync(desk, $"/papers/register.pdf?lesson={lessons[2].Id}")).Text, StringComparison.Ordinal);
        Assert.Contains("lesson 5 of 14", (await PdfAsync(desk, $"/papers/register.pdf?lesson={lessons[4].Id}")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_closed_lesson_says_so_on_its_register()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.TakenAsync("/club/closures/add", ("closure-name", "Hall lost"), ("closure-from", "2026-11-25"), ("closure-to", "2026-11-25"));
        var tonight = desk.Book().LessonsOn(ClubDesk.Today).Single().Id;
        Assert.Contains("This lesson is closed: Hall lost.", (await PdfAsync(desk, $"/papers/register.pdf?lesson={tonight}")).Text, StringComparison.Ordinal);
        Assert.Contains("(closed)", await desk.PageAsync("/papers"), StringComparison.Ordinal);
        Assert.Contains("No lesson: 25 November, Hall lost.", (await PdfAsync(desk, "/papers/blank-register.pdf?span=month")).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("?span=month", "November 2026, Wednesdays, 17:30 to 18:45, Hall", "blank-register-2026-11-01-to-2026-11-30.pdf")]
    [InlineData("?span=term", "Autumn 2026, Wednesdays", "blank-register-2026-10-28-to-2027-01-20.pdf")]
    [InlineData("", "Autumn 2026, Wednesdays", "blank-register-2026-10-28-to-2027-01-20.pdf")]
    [InlineData("?span=dates&from=2026-12-01&to=2026-12-20", "1 December 2026 to 20 December 2026", "blank-register-2026-12-01-to-2026-12-20.pdf")]
    [InlineData("?from=2026-12-01&to=2026-12-31", "December 2026, Wednesdays", "blank-register-2026-12-01-to-2026-12-31.pdf")]
    public async Task A_blank_register_is_for_a_month_a_term_or_any_days(string query, string words, string fileName)
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.AddChildAsync(desk.Book().LessonsOn(ClubDesk.Today).Single().Id, "Wren");
        var (text, answer) = await PdfAsync(desk, "/papers/blank-register.pdf" + query);
        Assert.Contains(words, text, StringComparison.Ordinal);
        Assert.Contains("Maren Holt", text, StringComparison.Ordinal);
        Assert.Equal($"inline; filename=\"{fileName}\"", answer.Content.Headers.ContentDisposition?.ToString());
        Assert.DoesNotContain("Wren", answer.Headers.ToString() + answer.Content.Headers, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/papers/register.pdf?lesson=01a03524-d028-7f56-b029-6a708f6b0604", "lesson", "That lesson is not on the calendar. Choose one from the list.")]
    [InlineData("/papers/register.pdf?lesson=tonight", "lesson", "That lesson is not on the calendar. Choose one from the list.")]
    [InlineData("/papers/register.pdf?paper=a5", "paper", "Choose A4 or US Letter.")]
    [InlineData("/papers/blank-register.pdf?programme=juniors", "programme", "That programme is not in this club. Choose one from the list.")]
    [InlineData("/papers/blank-register.pdf?span=dates&from=&to=2026-12-20", "from", "Type the first day.")]
    [InlineData("/papers/blank-register.pdf?span=dates&from=2026-12-21&to=2026-12-20", "to", "20 December 2026 is before 21 December 2026. Type the last day.")]
    [InlineData("/papers/blank-register.pdf?span=dates&from=2026-01-01&to=2027-12-20", "to", "That is longer than a year. Type the last day.")]
    [InlineData("/papers/blank-register.pdf?from=2026-08-01&to=2026-08-31", "span", "Juniors have no lesson from 1 August 2026 to 31 August 2026. Choose other days, or add the term on the club’s page.")]
    public async Task A_paper_that_cannot_be_made_is_a_sentence_on_the_page_with_what_was_asked(string address, string field, string sentence)
    {
        await using var desk = await ClubDesk.FreshAsync();
        using var answer = await desk.Browser.GetAsync(address, Stop);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var html = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Stop));
        Assert.Contains($"<a href=\"#{field}\">{sentence}</a>", html, StringComparison.Ordinal);
        if (address.Contains("to=2026-12-20", StringComparison.Ordinal))
            Assert.Matches("name=\"to\"[^>]*value=\"2026-12-20\"", html);
    }

    [Theory]
    [InlineData("a4", "", 210, 297)]
    [InlineData("letter", "", 215.9, 279.4)]
    [InlineData("letter", "paper=a4", 210, 297)]
    [InlineData("a4", "paper=letter", 215.9, 279.4)]
    public async Task The_paper_is_the_clubs_unless_another_is_asked_for(string club, string query, double width, double height)
    {
        await using var desk = await ClubDesk.FreshAsync(paper: club);
        await desk.AddChildAsync(desk.Book().LessonsOn(ClubDesk.Today).Single().Id, "Wren");
        // A month stands upright; a whole term lies on its side.
        foreach (var address in new[] { "/papers/register.pdf?", "/papers/blank-register.pdf?span=month&" })
        {
            using var pdf = PdfDocument.Open(await desk.Browser.GetByteArrayAsync(address + query, Stop));
            var page = pdf.GetPage(1);
            // ISO 216 A4 and US Letter in millimetres, rounded to a point by the writer.
            Assert.InRange(Math.Abs(page.Width - (width * PointsAMillimetre)), 0, 1);
            Assert.InRange(Math.Abs(page.Height - (height * PointsAMillimetre)), 0, 1);
        }
    }

    [Fact]
    public async Task Characters_that_no_font_of_papers_has_are_named_on_the_page_without_the_child()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var tonight = desk.Book().LessonsOn(ClubDesk.Today).Single().Id;
        await desk.AddChildAsync(tonight, "Wren", "Kovač");
        Assert.DoesNotContain("cannot be printed", await desk.PageAsync("/papers"), StringComparison.Ordinal);
        await desk.AddChildAsync(tonight, "เด็ก");
        var page = await desk.PageAsync("/papers");
        Assert.Contains("Some characters cannot be printed.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("เด็ก", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_demo_clubs_registers_hold_every_child_of_the_programme()
    {
        await using var desk = await ClubDesk.DemoAsync();
        var book = desk.Book();
        var juniors = book.Programmes[0];
        var tonight = book.LessonsOn(ClubDesk.Today).First(l => l.ProgrammeId == juniors.Id);
        var (text, _) = await PdfAsync(desk, $"/papers/register.pdf?lesson={tonight.Id}");
        var children = book.RegisterOf(juniors.Id, ClubDesk.Today).Select(e => book.Person(e.PersonId)!.CallName).ToList();
        Assert.True(children.Count > 30);
        Assert.All(children, name => Assert.Matches($@"(?<!\w){Regex.Escape(name)}(?!\w)", text));
        Assert.Contains($"{children.Count} children: ", text, StringComparison.Ordinal);
    }

    private static async Task MarkAsync(ClubDesk desk, Guid lesson, string button, Guid child, bool afterwards = false) =>
        await desk.TakenAsync("/register/mark", [("lesson", lesson.ToString()), ("command", Guid.CreateVersion7(desk.Time.GetUtcNow()).ToString()), (button, child.ToString()), .. afterwards ? [("afterwards", "yes")] : Array.Empty<(string, string)>()]);

    private static async Task<(string Text, HttpResponseMessage Answer)> PdfAsync(ClubDesk desk, string address)
    {
        var answer = await desk.Browser.GetAsync(address, Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType?.ToString());
        using var pdf = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync(Stop));
        return (string.Join(" ", pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text)), answer);
    }
}
