using Keikocho.Testing;
using Microsoft.Playwright;

namespace Keikocho.Browser.Tests;

/// <summary>
/// From three messy lists and a club's own ladder to who is put forward and why, the sheet and the parent's page: the whole way through the pages.
/// </summary>
[Collection(BrowserTests.Name)]
public sealed class WhoIsReadyTests(Browser browser)
{
    // The questions of the grid that are not answered as proposed.
    private static readonly Dictionary<string, string> Grid = new(StringComparer.Ordinal)
    {
        ["worth"] = "settled",
        ["order"] = "day-first",
        ["year"] = "latest",
        ["sign:mh"] = "good",
        ["sign:x"] = "good",
        ["tick:date"] = "before-today",
        ["day:2026-11-15"] = "before",
        ["item:12"] = "leave-out",
        ["who:9"] = "set-aside",
        ["who:12"] = "set-aside",
    };

    [Fact]
    public async Task A_club_of_its_own_reads_who_is_ready_and_why_from_its_own_lists_and_ladder()
    {
        var time = FixedTime.At("2026-11-24T17:20");
        await using var app = await FreshClub.StartAsync(time);
        await using var window = await browser.OpenAsync(app.Address);
        var page = window.Page;
        await OpenTheNotebookAsync(page);
        await OwnFiles.ReadInAsync(window, "messy-roster.xlsx", new Dictionary<string, string>(StringComparer.Ordinal) { ["rank-place:stripy"] = "leave-out" });
        await OwnFiles.ReadInAsync(window, "messy-register.xlsx");
        await DumpAsync(page, "register");
        await LadderAsync(window);
        await TestDayAsync(window);
        await DumpAsync(page, "test");
        await OwnFiles.ReadInAsync(window, "messy-signoffs.xlsx", Grid);
        await DumpAsync(page, "grid");
        await FallsAsync(window, "12 Nov", "back", "Piet F.", "clean");
        await DumpAsync(page, "falls");
        await FallsAsync(window, "17 Nov", "back", "Piet F.", "clean");
        await FallsAsync(window, "12 Nov", "side-left", "Jarek F.", "clean");
        await FallsAsync(window, "12 Nov", "side-right", "Jarek F.", "clean");
        await FallsAsync(window, "19 Nov", "side-left", "Fabian M.", "touched");
        await FallOfAsync(window, "Jarek Fennick", "19 Nov", "side-left");
        await DumpAsync(page, "jarek");
        await StandDownAsync(window, "Alba Culvert");
        await DumpAsync(page, "alba");
        await page.GotoAsync("/promotion-tests");
        Assert.Empty(await window.AxeAsync());
        await page.Locator("main a[href^='/promotion-tests/']").First.ClickAsync();
        Assert.Empty(await window.AxeAsync());
        await DumpAsync(page, "list");
        var test = page.Url;
        var rows = new List<string>();
        foreach (var tr in await page.Locator("table.verdicts tbody tr").AllAsync()) rows.Add(string.Join(" | ", (await tr.Locator("th, td").AllInnerTextsAsync()).Select(Plain)));
        await File.WriteAllLinesAsync("/tmp/walk-rows.txt", rows, TestContext.Current.CancellationToken);
        foreach (var child in new[] { "Piet Ferriman", "Jarek Fennick", "Alba Culvert" })
        {
            await page.GotoAsync(test);
            await page.GetByRole(AriaRole.Link, new() { Name = $"Why is the word on {child}" }).ClickAsync();
            Assert.Empty(await window.AxeAsync());
            await DumpAsync(page, "why-" + child[..4]);
        }

        await page.GotoAsync(test);
        await page.GetByRole(AriaRole.Link, new() { Name = "Why is the word on Piet Ferriman" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Parent’s page and sheet" }).ClickAsync();
        Assert.Empty(await window.AxeAsync());
        await DumpAsync(page, "parents");
        var sheet = await OwnFiles.PaperAsync(page, (await page.GetByRole(AriaRole.Link, new() { Name = "Requirement sheet as a PDF" }).GetAttributeAsync("href"))!);
        var told = await OwnFiles.PaperAsync(page, (await page.GetByRole(AriaRole.Link, new() { Name = "Parent’s page as a PDF" }).GetAttributeAsync("href"))!);
        await File.WriteAllBytesAsync("/tmp/walk-sheet.pdf", sheet, TestContext.Current.CancellationToken);
        await File.WriteAllBytesAsync("/tmp/walk-told.pdf", told, TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync("/tmp/walk-pdfs.txt", OwnFiles.TextOf(sheet) + "\n=====\n" + OwnFiles.TextOf(told), TestContext.Current.CancellationToken);
        Assert.Empty(window.Heard);
    }

    private static async Task DumpAsync(IPage page, string name) =>
        await File.WriteAllTextAsync($"/tmp/walk-{name}.txt", page.Url + "\n" + await page.Locator("main").InnerTextAsync(), TestContext.Current.CancellationToken);

    private static async Task OpenTheNotebookAsync(IPage page)
    {
        await page.GotoAsync("/");
        await page.GetByLabel("Name of the club").FillAsync("Lockside Judo");
        await page.GetByLabel("Your first name").FillAsync("Ottoline");
        await page.GetByLabel("Your family name").FillAsync("Marsh");
        await page.GetByLabel("Time zone").SelectOptionAsync("Europe/London");
        await page.Locator("#weekday1").SelectOptionAsync("Tuesday");
        await page.Locator("#weekday2").SelectOptionAsync("Thursday");
        await page.Locator("#termFrom").FillAsync("2026-09-01");
        await page.Locator("#termTo").FillAsync("2026-12-18");
        await page.GetByRole(AriaRole.Button, new() { Name = "Open the notebook" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("The first evening");
    }

    // The ladder as a text, one either-or and one condition through the page, published from the term's first day.
    private static async Task LadderAsync(Window window)
    {
        var page = window.Page;
        await page.GotoAsync("/syllabus");
        Assert.Empty(await window.AxeAsync());
        await page.Locator("summary", new() { HasText = "A text" }).ClickAsync();
        await page.Locator("#text").FillAsync(await File.ReadAllTextAsync(Repository.PathOf("tests/Keikocho.Browser.Tests/Fixtures/ladder-lockside.toml"), TestContext.Current.CancellationToken));
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin with the text" }).ClickAsync();
        await DumpAsync(page, "draft");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Draft");
        Assert.Empty(await window.AxeAsync());
        await page.Locator("a[href*='/rank/white-yellow']").First.ClickAsync();
        Assert.Empty(await window.AxeAsync());
        await page.Locator("input[name=join][value=hip]").CheckAsync();
        await page.Locator("input[name=join][value=wheel]").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make them one line" }).ClickAsync();
        await DumpAsync(page, "joined");
        await page.GetByRole(AriaRole.Link, new() { Name = "Change Yoko-shiho-gatame" }).ClickAsync();
        await page.Locator("#line-condition").FillAsync("a partner who resists a little");
        await page.GetByRole(AriaRole.Button, new() { Name = "Store the line" }).ClickAsync();
        Assert.Empty(await window.AxeAsync());
        await DumpAsync(page, "condition");
        await page.GetByRole(AriaRole.Link, new() { Name = "Draft", Exact = true }).ClickAsync();
        await DumpAsync(page, "before");
        await page.Locator("#publish-from").SelectOptionAsync("2026-09-01");
        await page.GetByRole(AriaRole.Button, new() { Name = "Publish" }).ClickAsync();
        Assert.Empty(await window.AxeAsync());
        await DumpAsync(page, "published");
    }

    private static async Task TestDayAsync(Window window)
    {
        var page = window.Page;
        await page.GotoAsync("/club");
        if (!await page.Locator("#test-date").IsVisibleAsync()) await page.Locator("#tests-part summary").ClickAsync();
        await page.Locator("#test-date").FillAsync("2026-12-12");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add the test" }).ClickAsync();
        Assert.Empty(await window.AxeAsync());
    }

    private static string Plain(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    // One fall of one child on the grid of an evening.
    private static async Task FallsAsync(Window window, string evening, string way, string child, string outcome)
    {
        var page = window.Page;
        await page.GotoAsync("/sightings/falls");
        var lesson = await page.Locator("#lesson option", new() { HasText = evening }).First.GetAttributeAsync("value");
        await page.Locator("#lesson").SelectOptionAsync(lesson!);
        await page.Locator("#way").SelectOptionAsync(way);
        await page.Locator("#stage").SelectOptionAsync("3");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show" }).ClickAsync();
        Assert.Empty(await window.AxeAsync());
        await DumpAsync(page, "fallgrid");
        var mark = page.GetByLabel($"{child}, fall", new() { Exact = true });
        if (await mark.CountAsync() == 0)
        {
            // Who holds a belt stands at the other end of the mat.
            await page.Locator("#end").SelectOptionAsync(new SelectOptionValue { Label = "Main group" });
            await page.GetByRole(AriaRole.Button, new() { Name = "Show" }).ClickAsync();
        }

        await mark.SelectOptionAsync(outcome);
        await page.GetByRole(AriaRole.Button, new() { Name = "Store" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Stored");
    }

    // One clean fall from standing on the child's own page.
    private static async Task FallOfAsync(Window window, string child, string evening, string way)
    {
        var page = window.Page;
        await ChildAsync(window, child);
        await page.Locator("#fall-form > summary").ClickAsync();
        var lesson = await page.Locator("#fallLesson option", new() { HasText = evening }).First.GetAttributeAsync("value");
        await page.Locator("#fallLesson").SelectOptionAsync(lesson!);
        await page.Locator("#fall-form #way").SelectOptionAsync(way);
        await page.Locator("#fall-form #stage").SelectOptionAsync("3");
        await page.Locator("#fall-form input[value=clean]").CheckAsync();
        await page.Locator("#fall-form button.primary").ClickAsync();
        Assert.Empty(await window.AxeAsync());
    }

    private static async Task StandDownAsync(Window window, string child)
    {
        var page = window.Page;
        await ChildAsync(window, child);
        await page.Locator("summary", new() { HasText = "Enter a stand-down" }).ClickAsync();
        await page.Locator("input[name=scope][value=no-falls]").CheckAsync();
        await page.Locator("#reviewOn").FillAsync("2026-12-01");
        await page.Locator("#whoseWord").FillAsync("the family");
        await page.Locator("form[action$='/stand-down'] button.primary").ClickAsync();
        Assert.Empty(await window.AxeAsync());
    }

    private static async Task ChildAsync(Window window, string child)
    {
        await window.Page.GotoAsync("/students");
        await window.Page.Locator("main a[href^='/students/']", new() { HasText = child }).First.ClickAsync();
        Assert.Empty(await window.AxeAsync());
    }
}
