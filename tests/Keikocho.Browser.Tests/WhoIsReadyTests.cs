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
        await FreshClub.OpenTheNotebookAsync(page, "Lockside Judo");
        await OwnFiles.ReadInAsync(window, "messy-roster.xlsx", new Dictionary<string, string>(StringComparer.Ordinal) { ["rank-place:stripy"] = "leave-out" });
        await OwnFiles.ReadInAsync(window, "messy-register.xlsx");
        await LadderAsync(window);
        await TestDayAsync(window);
        await OwnFiles.ReadInAsync(window, "messy-signoffs.xlsx", Grid);
        await FallsAsync(window, "12 Nov", "back", "Piet F.", "clean");
        await FallsAsync(window, "17 Nov", "back", "Piet F.", "clean");
        await FallsAsync(window, "12 Nov", "side-left", "Jarek F.", "clean");
        await FallsAsync(window, "12 Nov", "side-right", "Jarek F.", "clean");
        await FallsAsync(window, "19 Nov", "side-left", "Fabian M.", "touched");
        await FallOfAsync(window, "Jarek Fennick", "19 Nov", "side-left");
        await StandDownAsync(window, "Alba Culvert");
        await page.GotoAsync("/promotion-tests");
        Assert.Empty(await window.AxeAsync());
        await page.Locator("main a[href^='/promotion-tests/']").First.ClickAsync();
        Assert.Empty(await window.AxeAsync());
        await RowsAreRightAsync(page);
        var test = page.Url;
        var piet = await ChildAsync(window, "Piet Ferriman");
        await page.GotoAsync($"{test}/children/{piet}");
        Assert.Empty(await window.AxeAsync());
        var why = Plain((await page.Locator("main").TextContentAsync())!);
        foreach (var reason in WhyPiet) Assert.Contains(reason, why, StringComparison.Ordinal);

        await page.GotoAsync($"/students/{piet}/parents-page?test={test[^36..]}");
        Assert.Empty(await window.AxeAsync());
        FamilyMayRead(Plain(await page.Locator("main").InnerTextAsync()));
        var sheet = await OwnFiles.PaperAsync(page, (await page.GetByRole(AriaRole.Link, new() { Name = "Requirement sheet as a PDF" }).GetAttributeAsync("href"))!);
        var told = await OwnFiles.PaperAsync(page, (await page.GetByRole(AriaRole.Link, new() { Name = "Parent’s page as a PDF" }).GetAttributeAsync("href"))!);
        FamilyMayRead(OwnFiles.TextOf(told));
        await SheetIsRightAsync(sheet);
        Assert.Empty(window.Heard);
    }

    /// <summary>
    /// Name, verdict, time and papers, items, by the register's order within a verdict. Counted by hand in messy-register.xlsx: a tick, L and a
    /// time are lessons, T was answered as present, 8 October had no mark and is closed; 19 lessons. Six lessons are left (docs/sums/readiness.md).
    /// </summary>
    private static readonly (string Name, string Verdict, string Time, string Items)[] Rows =
    [
        // Sixteen ticks, L and times; both throws, the hold and the word signed off and settled; backward clean on two evenings.
        ("Piet Ferriman", "Put forward", "16 of 14 lessons; registered to 31 August", "4 of 4 good, each on enough evenings"),
        // To the left is clean on 12 and 19 November, to the right on the 12th alone: one more. The white-yellow fall is asked always, and a fall is
        // never credited by rank.
        ("Jarek Fennick", "If", "15 of 15 lessons; registered to 31 August Instructor only almost certain to attend enough lessons",
            "3 of 5 good; Falling sideways, both sides, from standing: to the right clean once, on 12 November: once more; Falling backward, from standing not yet seen clean: two evenings"),
        // Two lessons short and six left; a head touch shuts that way and begins the count again. O-goshi and the word come with the rank worn.
        ("Fabian Millrace", "If", "13 of 15 lessons; if the child comes to 2 of the 6 lessons left Instructor only almost certain to attend enough lessons",
            "2 of 5 good; Falling sideways, both sides, from standing: the head touched on 19 November; not yet seen clean: two evenings; Falling backward, from standing not yet seen clean: two evenings; Kesa-gatame not yet seen good: two evenings"),
        // Lessons after the day of review: 3, 8 and 10 December. Falls need two of them.
        ("Alba Culvert", "If", "No falls, reviewed on 1 December; 3 lessons are left after that, and falls need 2 clean evenings Instructor only almost certain to attend enough lessons",
            "2 of 5 good; Falling sideways, both sides, from standing: no falls for now; to be shown again first: two evenings; Falling backward, from standing: no falls for now; to be shown again first: two evenings; Kesa-gatame not yet seen good: two evenings"),
        // Only falls were ticked for him, and falls are not read from paper: the word is credited by rank, the rest was never seen.
        ("Boris Ferriman", "If", "17 of 12 lessons; registered to 31 August Instructor only almost certain to attend enough lessons",
            "1 of 3 good; Falling backward, from standing not yet seen clean: two evenings; O-goshi not yet seen good: two evenings"),
        // Eleven and six are seventeen of twenty: three short, whatever she shows.
        ("Queenie Reedham", "Not this time", "11 of 20 lessons, 6 left: 3 short",
            "3 of 5 good, and they stay; Falling backward, from standing not yet seen clean: two evenings; Falling sideways, both sides, from standing not yet seen clean: two evenings"),
    ];

    /// <summary>16 of 19 is 84 percent; 14 without the two late evenings; 42 days before 12 December is 31 October; paper is settled, so once is enough.</summary>
    private static readonly string[] WhyPiet =
    [
        "Attended 16 of the 19 lessons held by 23 November 2026, which is 84 %; there for the falls on 14 evenings.",
        "closed (from the register) took out 1 lesson (8 Oct): in neither count.",
        "The register of 1 Sep, 3 Sep, 27 Oct and 29 Oct is missing: in neither count until the club says whether the lesson was held.",
        "16 of 14 lessons attended: enough, and 6 lessons are left before the test on Saturday 12 December 2026.",
        "10 weeks from 1 September 2024 are full on 10 November 2024, in time for the test on Saturday 12 December 2026.",
        "Registered to 31 August 2027, which includes the test on Saturday 12 December 2026.",
        "Backward, stage 3 (standing): open; 2 clean evenings (12 November 2026 and 17 November 2026), the latest 6 days ago.",
        "Falling backward, from standing: seen clean on 12 November 2026 and 17 November 2026; 2 clean evenings at stage 3 or higher are asked, the last on or after 31 October 2026, 42 days before the test: nothing is missing.",
        "Uki-goshi: seen good on 15 September 2026, signed off on paper, which is enough; 2 evenings are asked: nothing is missing.",
        "Hiza-guruma: seen good on 19 November 2026, signed off on paper, which is enough; 2 evenings are asked: nothing is missing.",
        "Yoko-shiho-gatame: seen good on 6 October 2026, signed off on paper, which is enough; 2 evenings are asked: nothing is missing.",
        "Mate: answered right on 19 November 2026, signed off on paper, which is enough; 1 evening is asked: nothing is missing.",
        "6 lessons are left before the test: 24 and 26 November, 1, 3, 8 and 10 December. What is missing may be seen on the same evening.",
    ];

    private static async Task RowsAreRightAsync(IPage page)
    {
        var verdict = "";
        var found = new List<(string, string, string, string)>();
        foreach (var row in await page.Locator("table.verdicts tbody tr").AllAsync())
        {
            var cells = (await row.Locator("th, td").AllInnerTextsAsync()).Select(Plain).ToList();
            if (cells.Count == 1) verdict = cells[0];
            else if (Rows.FirstOrDefault(r => cells[0].StartsWith(r.Name + " Why", StringComparison.Ordinal)).Name is { } name)
            {
                // What is missing stands as a list, one a line.
                var items = row.Locator("td").Nth(1);
                var good = Plain(await items.EvaluateAsync<string>("cell => cell.childNodes[0].textContent"));
                found.Add((name, verdict, cells[1], string.Join("; ", [good, .. (await items.Locator("li").AllTextContentsAsync()).Select(Plain)])));
            }
        }

        Assert.Equal(Rows, found);
    }

    // Nothing of another child, no chance, no judgement, nothing of health or money.
    private static void FamilyMayRead(string told)
    {
        foreach (var fact in new[] { "16ofthe19lessonsheldthistermby23November2026", "4ofthe4thingsaskedforWhite-yellowaresecure", "Pietisputforwardforthetest", "Saturday12December2026", "Uki-goshi:seengoodon15September" })
            Assert.Contains(fact, Squeezed(told), StringComparison.Ordinal);
        foreach (var other in Rows.Skip(1).SelectMany(r => r.Name.Split(' ')).Where(n => n != "Ferriman")) Assert.DoesNotContain(other, told, StringComparison.Ordinal);
        foreach (var word in new[] { "chance", "likely", "certain", "in 10", "Instructor only", "fail", "behind", "worse", "weight", "asthma", "money", "£" })
            Assert.DoesNotContain(word, told, StringComparison.OrdinalIgnoreCase);
    }

    // Read by two readers that know nothing of each other.
    private static async Task SheetIsRightAsync(byte[] sheet)
    {
        var readings = new List<string> { OwnFiles.TextOf(sheet) };
        if (Tool.Find(Environment.GetEnvironmentVariable("PATH") ?? "", ["pdftotext"]) is { } poppler) readings.Add(await OwnFiles.PopplerAsync(poppler, sheet));
        foreach (var reading in readings)
            foreach (var line in new[]
            {
                "Piet F., from White to White-yellow", "Syllabus autumn 2026, from 1 September 2026", "Promotion test: Saturday 12 December 2026",
                "Falling backward, from standing", "Either of: Uki-goshi or Hiza-guruma", "Yoko-shiho-gatame, a partner who resists a little, for 10 seconds", "Mate",
            })
                Assert.Contains(Squeezed(line), Squeezed(reading), StringComparison.Ordinal);
    }

    private static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    // The ladder as a text, one either-or and one condition through the page, published from the term's first day.
    private static async Task LadderAsync(Window window)
    {
        var page = window.Page;
        await page.GotoAsync("/syllabus");
        Assert.Empty(await window.AxeAsync());
        await page.Locator("summary", new() { HasText = "A text" }).ClickAsync();
        await page.Locator("#text").FillAsync(await File.ReadAllTextAsync(Repository.PathOf("tests/Keikocho.Browser.Tests/Fixtures/ladder-lockside.toml"), TestContext.Current.CancellationToken));
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin with the text" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Draft");
        Assert.Empty(await window.AxeAsync());
        await page.Locator("a[href*='/rank/white-yellow']").First.ClickAsync();
        Assert.Empty(await window.AxeAsync());
        await page.Locator("input[name=join][value=hip]").CheckAsync();
        await page.Locator("input[name=join][value=wheel]").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make them one line" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Change Yoko-shiho-gatame" }).ClickAsync();
        await page.Locator("#line-condition").FillAsync("a partner who resists a little");
        await page.GetByRole(AriaRole.Button, new() { Name = "Store the line" }).ClickAsync();
        Assert.Empty(await window.AxeAsync());
        await page.GetByRole(AriaRole.Link, new() { Name = "Draft", Exact = true }).ClickAsync();
        await page.Locator("#publish-from").SelectOptionAsync("2026-09-01");
        await page.GetByRole(AriaRole.Button, new() { Name = "Publish" }).ClickAsync();
        Assert.Empty(await window.AxeAsync());
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

    // Opens the child's own page; the child's id.
    private static async Task<string> ChildAsync(Window window, string child)
    {
        await window.Page.GotoAsync($"/students?search={Uri.EscapeDataString(child)}");
        await window.Page.Locator("main td a[href^='/students/'], main th a[href^='/students/']").First.ClickAsync();
        await Assertions.Expect(window.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync(child);
        return window.Page.Url.Split('?')[0].Split('#')[0][^36..];
    }
}
