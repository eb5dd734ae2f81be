using System.Globalization;
using Keikocho.Testing;
using Microsoft.Playwright;
using UglyToad.PdfPig;

namespace Keikocho.Browser.Tests;

/// <summary>
/// The first fifteen minutes of somebody who has never seen it: a club of his own, its children and its register from his spreadsheets,
/// the doubts settled, tonight's register taken, a new child added, and the papers printed.
/// </summary>
[Collection(BrowserTests.Name)]
public sealed class FifteenMinutesTests(Browser browser)
{
    [Theory, Statement(98)]
    [InlineData(390, true)]
    [InlineData(820, true)]
    [InlineData(1280, false)]
    public async Task A_stranger_reads_in_his_lists_takes_tonights_register_adds_a_child_and_prints(int width, bool evening)
    {
        var time = FixedTime.At("2026-11-24T17:20");
        await using var app = await FreshClub.StartAsync(time);
        await using var window = await browser.OpenAsync(app.Address, width, evening: evening);
        var page = window.Page;

        // Name and evenings.
        await page.GotoAsync("/");
        await page.GetByLabel("Name of the club").FillAsync("Two Locks Judo Club");
        await page.GetByLabel("Your first name").FillAsync("Ottoline");
        await page.GetByLabel("Your family name").FillAsync("Marsh");
        await page.GetByLabel("Time zone").SelectOptionAsync("Europe/London");
        await page.Locator("#weekday1").SelectOptionAsync("Tuesday");
        await page.Locator("#weekday2").SelectOptionAsync("Thursday");
        await page.Locator("#termFrom").FillAsync("2026-09-01");
        await page.Locator("#termTo").FillAsync("2026-12-18");
        await page.GetByRole(AriaRole.Button, new() { Name = "Open the notebook" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("The first evening");
        Assert.Empty(await window.AxeAsync());

        // The size of the mat.
        await page.GetByRole(AriaRole.Link, new() { Name = "The hall" }).ClickAsync();
        Assert.Empty(await window.AxeAsync());

        // The children, then the register so far.
        var children = await ReadInAsync(window, "messy-roster.xlsx");
        Assert.True(children.Contains("61 children are new", StringComparison.Ordinal), children);
        await page.GotoAsync("/students");
        var listed = await page.Locator("main tbody tr").CountAsync();
        Assert.True(listed >= 55, $"{listed} children stand on the list.");
        var register = await ReadInAsync(window, "messy-register.xlsx");
        Assert.True(register.Contains("marks are new", StringComparison.Ordinal), register);

        // Closures and the promotion test.
        await page.GotoAsync("/club");
        await page.GotoAsync("/first-evening");
        Assert.Empty(await window.AxeAsync());

        // Tonight's register, a new child, and the number of lessons left for every child.
        await page.GotoAsync("/register");
        Assert.Empty(await window.AxeAsync());
        var tiles = await page.Locator("form.register > .tiles button.here[name=present]").AllAsync();
        // Many of this list share a first name and a belt: those ask once more, and are left to "the rest".
        Assert.True(tiles.Count > 30);
        Assert.True(await page.Locator("form.register > .tiles .tile").CountAsync() >= 61);
        foreach (var tile in tiles.Take(20)) await tile.ClickAsync();
        await Assertions.Expect(page.Locator("[data-tally=present]")).ToHaveTextAsync("20");
        await page.GetByRole(AriaRole.Button, new() { Name = "New tonight" }).ClickAsync();
        await page.GetByLabel("First name").FillAsync("Wilf");
        await page.GetByLabel("Family name or initial").FillAsync("T");
        await page.GetByLabel("An adult’s phone").FillAsync("01632 960123");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add and mark present" }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-tally=present]")).ToHaveTextAsync("21");
        await page.GetByRole(AriaRole.Button, new() { Name = "Rest are absent" }).ClickAsync();
        await Assertions.Expect(page.Locator("[data-tally=not-marked]")).ToHaveTextAsync("0");
        await page.GotoAsync("/tonight");
        await Assertions.Expect(page.Locator(".top-line")).ToContainTextAsync("short by");
        await Assertions.Expect(page.Locator(".care-box")).ToContainTextAsync("Wilf");
        Assert.Empty(await window.AxeAsync());

        // What one child's marks of that lesson say, and the child's own page.
        await page.GotoAsync("/students");
        await page.Locator("main a[href^='/students/']").First.ClickAsync();
        await page.Locator("main a[href*='/lessons/']").First.ClickAsync();
        Assert.Empty(await window.AxeAsync());

        // The papers: the register as taken, and a blank one.
        await page.GotoAsync("/papers");
        Assert.Empty(await window.AxeAsync());
        Assert.Contains("Wilf", await PaperAsync(page, "/papers/register.pdf?paper=a4"), StringComparison.Ordinal);
        Assert.Contains("Two Locks Judo Club", await PaperAsync(page, "/papers/blank-register.pdf?span=term&paper=letter"), StringComparison.Ordinal);
        Assert.Empty(window.Heard);
    }

    /// <summary>Uploads one of the club's own files, settles what is asked, saves; the words of the page afterwards.</summary>
    private static async Task<string> ReadInAsync(Window window, string fixture)
    {
        var page = window.Page;
        await page.GotoAsync("/club/import");
        Assert.Empty(await window.AxeAsync());
        await page.GetByLabel("Spreadsheet").SetInputFilesAsync(Repository.PathOf($"tests/Keikocho.Store.Tests/Fixtures/intake/{fixture}"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Read the file" }).ClickAsync();
        var save = page.GetByRole(AriaRole.Button, new() { Name = "Save it all" });
        var proposed = page.GetByRole(AriaRole.Button, new() { Name = "Accept all proposed" });
        var keep = page.GetByRole(AriaRole.Button, new() { Name = "Keep these answers" });
        await Assertions.Expect(save.Or(keep).First).ToBeVisibleAsync();
        Assert.Empty(await window.AxeAsync());
        for (var round = 0; round < 12 && await save.CountAsync() == 0; round++)
        {
            if (await proposed.CountAsync() > 0)
            {
                await proposed.ClickAsync();
                continue;
            }

            // What has no proposal is answered by hand: the first answer that is offered.
            var names = new HashSet<string>(StringComparer.Ordinal);
            foreach (var radio in await page.Locator("#questions-part input[type=radio], main form input[type=radio][name^='a:']").AllAsync())
            {
                var name = (await radio.GetAttributeAsync("name"))!;
                if (await radio.IsVisibleAsync() && names.Add(name) && await page.Locator($"input[name=\"{name}\"]:checked").CountAsync() == 0) await radio.CheckAsync();
            }

            await keep.First.ClickAsync();
        }

        await save.ClickAsync();
        var undo = page.GetByRole(AriaRole.Button, new() { Name = "Take this file back" });
        await Assertions.Expect(undo).ToBeVisibleAsync(new() { Timeout = 20_000 });
        Assert.Empty(await window.AxeAsync());
        return await page.Locator("main").InnerTextAsync();
    }

    private static async Task<string> PaperAsync(IPage page, string address)
    {
        var answer = await page.APIRequest.GetAsync(address);
        Assert.True(answer.Ok, string.Create(CultureInfo.InvariantCulture, $"{address}: {answer.Status}"));
        using var paper = PdfDocument.Open(await answer.BodyAsync());
        return string.Join('\n', paper.GetPages().Select(p => p.Text));
    }
}
