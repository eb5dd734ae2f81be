using System.Net;
using System.Text.RegularExpressions;
using Keikocho.App.Tests.Club;
using Keikocho.App.Tests.Shell;
using Keikocho.Store.Starter;

namespace Keikocho.App.Tests.Syllabus;

public sealed class SyllabusPageTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_empty_club_is_asked_what_to_begin_with_and_reads_who_reviewed_the_samples()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var page = await desk.PageAsync("/syllabus");
        Assert.Contains("<a href=\"/syllabus\" aria-current=\"page\">Syllabus</a>", page, StringComparison.Ordinal);
        Assert.Contains("No ladder yet. Begin with:", page, StringComparison.Ordinal);
        Assert.Contains("Willow (sample)", page, StringComparison.Ordinal);
        Assert.Equal(StarterKit.Ladders.Count, Regex.Count(page, "Not reviewed by a graded instructor"));
        Assert.Contains("There is no draft", await desk.PageAsync("/syllabus/draft"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sample_ladder_becomes_the_clubs_own_and_its_cautions_stay()
    {
        await using var desk = await ClubDesk.FreshAsync();
        Assert.StartsWith("Begun from the sample ladder Willow (sample).", await desk.BeginAsync("sample:ladder-willow"), StringComparison.Ordinal);
        Assert.Contains("Not reviewed by a graded instructor", await desk.PageAsync("/syllabus/draft"), StringComparison.Ordinal);
        Assert.StartsWith("Edition 1 is published. It holds from 28 October 2026 on.", await desk.PublishAsync(), StringComparison.Ordinal);
        var page = await desk.PageAsync("/syllabus");
        var words = SyllabusDesk.Plain(page);
        Assert.Contains("The ladder of Juniors; edition 1, from 28 October 2026", words, StringComparison.Ordinal);
        Assert.Contains("14 lessons, 10 weeks", words, StringComparison.Ordinal);
        Assert.Contains("Not reviewed by a graded instructor", words, StringComparison.Ordinal);
        Assert.Contains("class=\"belt belt-yellow\"", page, StringComparison.Ordinal);
        var book = desk.Book();
        Assert.Equal(book.Programmes[0].LadderId, Assert.Single(book.EditionsOf(book.Programmes[0].LadderId)).LadderId);
        Assert.Equal(book.EditionsOf(book.Programmes[0].LadderId)[0].Edition.Ranks.Select(r => r.Name), book.Ranks.Select(r => r.Name));
    }

    [Fact]
    public async Task An_edition_is_saved_as_a_text_that_begins_the_same_draft_again()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.BeginAsync("sample:ladder-willow");
        await desk.PublishAsync();
        var address = Regex.Match(await desk.PageAsync("/syllabus"), "href=\"(/syllabus/editions/[^\"]+)\"").Groups[1].Value;
        using var answer = await desk.Browser.GetAsync(address, Stop);
        Assert.Equal("text/plain; charset=utf-8", answer.Content.Headers.ContentType!.ToString());
        Assert.Equal("attachment; filename=\"juniors-edition-1.toml\"", answer.Content.Headers.ContentDisposition!.ToString());
        var text = await answer.Content.ReadAsStringAsync(Stop);
        Assert.IsType<SyllabusReading.Read>(SyllabusText.Read(text, "juniors.toml"));
        Assert.StartsWith("Begun from a text.", await desk.BeginAsync("text", text), StringComparison.Ordinal);
        using var none = await desk.Browser.GetAsync($"/syllabus/editions/{Guid.NewGuid()}/text", Stop);
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public async Task A_text_with_faults_begins_nothing_and_names_their_lines()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var page = await desk.RefusedAsync("/syllabus/draft/begin", ("from", "text"), ("text", "ladder = \"Ours\"\nedition = \"1\"\nnonsense = 3\n"));
        Assert.Contains("Line 3", page, StringComparison.Ordinal);
        Assert.Contains("nonsense = 3", page, StringComparison.Ordinal);
        Assert.Contains("id=\"text-error\"", await desk.RefusedAsync("/syllabus/draft/begin", ("from", "text"), ("text", " ")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_next_edition_begins_from_the_newest_and_says_what_changed()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.BeginAsync("sample:ladder-willow");
        await desk.PublishAsync();
        await desk.BeginAsync("edition");
        Assert.Equal("edition 2", desk.Stored().Name);
        Assert.Contains("It asks the same.", await desk.PageAsync("/syllabus/draft"), StringComparison.Ordinal);
        await desk.StepAsync("ranks/add", ("rank-name", "Blue"), ("rank-cloth", ""), ("rank-tips", ""), ("rank-after", "green"));
        Assert.DoesNotContain("It asks the same.", await desk.PageAsync("/syllabus/draft"), StringComparison.Ordinal);
        await desk.PublishAsync("edition 2");
        var words = SyllabusDesk.Plain(await desk.PageAsync("/syllabus"));
        Assert.Contains("What changed against edition 1:", words, StringComparison.Ordinal);
        Assert.Contains("Blue", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_terms_unit_is_chosen_on_the_page()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.BeginAsync("sample:ladder-willow");
        await desk.PublishAsync();
        var page = await desk.PageAsync("/syllabus");
        var term = Regex.Match(page, "name=\"term\" value=\"([^\"]+)\"").Groups[1].Value;
        var unit = desk.Book().NewestEdition(desk.Book().Programmes[0].LadderId)!.Edition.Units[1];
        Assert.Equal($"Autumn 2026: {unit.Name}.", await desk.TakenAsync("/syllabus/units", ("term", term), ("unit", unit.Key)));
        Assert.Contains($"<option value=\"{unit.Key}\" selected>{unit.Name}</option>", await desk.PageAsync("/syllabus"), StringComparison.Ordinal);
        Assert.StartsWith("Nothing was changed.", await desk.TakenAsync("/syllabus/units", ("term", term), ("unit", "no-such-unit")), StringComparison.Ordinal);
        Assert.Equal("Autumn 2026 has no unit.", await desk.TakenAsync("/syllabus/units", ("term", term), ("unit", "")));
    }

    [Fact]
    public async Task An_age_rule_needs_a_source_with_its_date_and_can_be_taken_out()
    {
        await using var desk = await ClubDesk.FreshAsync();
        var refused = await desk.RefusedAsync("/syllabus/age-rules/add", ("rule-name", "No neck grips"), ("rule-age", "11"), ("rule-names", "Koshi-guruma"), ("rule-source", ""), ("rule-on", ""));
        Assert.Contains("id=\"rule-source-error\"", refused, StringComparison.Ordinal);
        Assert.Contains("id=\"rule-on-error\"", refused, StringComparison.Ordinal);
        Assert.Contains("Koshi-guruma", refused, StringComparison.Ordinal);
        Assert.StartsWith("The rule “No neck grips” is entered.", await desk.TakenAsync(
            "/syllabus/age-rules/add", ("rule-name", "No neck grips"), ("rule-age", "11"), ("rule-by", "Birthday"), ("rule-names", "Koshi-guruma"), ("rule-kinds", "Strangle"),
            ("rule-source", "Body, page 9"), ("rule-on", "2025-09-01")), StringComparison.Ordinal);
        Assert.Contains("No neck grips below 11 years: Koshi-guruma, all strangles Body, page 9, 1 September 2025", SyllabusDesk.Plain(await desk.PageAsync("/syllabus")), StringComparison.Ordinal);
        await desk.TakenAsync("/syllabus/age-rules/end", ("rule", desk.Book().AgeRules[0].Id.ToString()));
        Assert.Empty(desk.Book().AgeRules);
    }

    [Fact]
    public async Task Nothing_is_written_while_nobody_acts_on_the_device()
    {
        await using var desk = await ClubDesk.DemoAsync();
        using var browser = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = desk.Browser.BaseAddress };
        var token = await RunningApp.TokenAsync(browser, "/syllabus");
        using var answer = await RunningApp.PostAsync(browser, "/syllabus/draft/begin", ("page-token", token), ("from", "nothing"));
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        Assert.StartsWith("/acting?from=%2Fsyllabus", answer.Headers.Location!.ToString(), StringComparison.Ordinal);
        using var db = desk.Db();
        Assert.Empty(db.EditionDrafts);
    }
}
