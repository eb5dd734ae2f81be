using Keikocho.Testing;
using Microsoft.Playwright;

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
        await FreshClub.OpenTheNotebookAsync(page, "Two Locks Judo Club");
        Assert.Empty(await window.AxeAsync());

        // The size of the mat.
        await page.GetByRole(AriaRole.Link, new() { Name = "The hall" }).ClickAsync();
        Assert.Empty(await window.AxeAsync());

        // The children, then the register so far.
        var children = await OwnFiles.ReadInAsync(window, "messy-roster.xlsx");
        Assert.True(children.Contains("61 children are new", StringComparison.Ordinal), children);
        await page.GotoAsync("/students");
        var listed = await page.Locator("main tbody tr").CountAsync();
        Assert.True(listed >= 55, $"{listed} children stand on the list.");
        var register = await OwnFiles.ReadInAsync(window, "messy-register.xlsx");
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
        Assert.Contains("Wilf", OwnFiles.TextOf(await OwnFiles.PaperAsync(page, "/papers/register.pdf?paper=a4")), StringComparison.Ordinal);
        Assert.Contains("Two Locks Judo Club", OwnFiles.TextOf(await OwnFiles.PaperAsync(page, "/papers/blank-register.pdf?span=term&paper=letter")), StringComparison.Ordinal);
        Assert.Empty(window.Heard);
    }
}
