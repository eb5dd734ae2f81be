using System.Globalization;
using Keikocho.App.Tests.Shell;
using Keikocho.Testing;
using Microsoft.Playwright;

namespace Keikocho.Browser.Tests;

[Collection(BrowserTests.Name)]
public sealed class RegisterOnTheMatTests(Browser browser) : IAsyncLifetime
{
    private readonly FixedTime time = DemoEvening.TenMinutesBefore();
    private RunningApp app = null!;

    public async ValueTask InitializeAsync() => app = await DemoEvening.StartAsync(time);

    public ValueTask DisposeAsync() => app.DisposeAsync();

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task One_tap_marks_a_child_present_and_is_stored_at_once(bool script)
    {
        await using var window = await browser.OpenAsync(app.Address, script: script);
        await window.HoldAsync("/register");
        var tile = window.Page.Locator(".tile").First;
        await tile.Locator(".here").ClickAsync();
        await Assertions.Expect(tile.Locator(".state")).ToHaveTextAsync("present");
        await Assertions.Expect(window.Page.Locator("[data-tally=present]")).ToHaveTextAsync("1");

        await using var other = await browser.OpenAsync(app.Address);
        await other.HoldAsync("/register");
        await Assertions.Expect(other.Page.Locator(".tile").First.Locator(".state")).ToHaveTextAsync("present");
        Assert.Empty(window.Heard);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Undo_takes_the_last_tap_back(bool script)
    {
        await using var window = await browser.OpenAsync(app.Address, script: script);
        await window.HoldAsync("/register");
        var tile = window.Page.Locator(".tile").First;
        await tile.Locator(".here").ClickAsync();
        await Assertions.Expect(tile.Locator(".state")).ToHaveTextAsync("present");
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Assertions.Expect(tile.Locator(".state")).ToHaveTextAsync("not marked");
        Assert.Empty(window.Heard);
    }

    [Fact]
    public async Task All_here_but_two_is_three_taps()
    {
        await using var window = await browser.OpenAsync(app.Address);
        await window.HoldAsync("/register");
        var children = await window.Page.Locator("form.register > .tiles .tile").CountAsync();
        await window.Page.Locator(".tile").Nth(0).Locator(".here").ClickAsync();
        await window.Page.Locator(".tile").Nth(1).Locator(".here").ClickAsync();
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Rest are absent" }).ClickAsync();
        await Assertions.Expect(window.Page.Locator("[data-tally=absent]")).ToHaveTextAsync((children - 2).ToString(CultureInfo.InvariantCulture));
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Assertions.Expect(window.Page.Locator("[data-tally=absent]")).ToHaveTextAsync("0");
        Assert.Empty(window.Heard);
    }

    [Fact]
    public async Task A_tap_after_the_register_was_taken_says_when_the_child_came()
    {
        await using var window = await browser.OpenAsync(app.Address);
        await window.HoldAsync("/register");
        time.Set(FixedTime.At("2026-11-24T17:41").GetUtcNow());
        await window.Page.Locator(".tile").First.Locator(".here").ClickAsync();
        await Assertions.Expect(window.Page.Locator(".tile").First.Locator(".state")).ToHaveTextAsync("came 17:41");
    }

    [Fact]
    public async Task Left_told_us_and_absent_are_two_taps()
    {
        await using var window = await browser.OpenAsync(app.Address);
        await window.HoldAsync("/register");
        foreach (var (nth, button, words) in new[] { (0, "Absent, told us", "absent, told us"), (1, "Left now", "left 17:20") })
        {
            var tile = window.Page.Locator(".tile").Nth(nth);
            await tile.Locator(".more").ClickAsync();
            await window.Page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync();
            await Assertions.Expect(tile.Locator(".state")).ToHaveTextAsync(words);
        }

        Assert.Empty(window.Heard);
    }

    [Fact]
    public async Task Thirty_names_are_seen_without_scrolling_at_1280_by_800()
    {
        await using var window = await browser.OpenAsync(app.Address);
        await window.HoldAsync("/register");
        Assert.True(await window.Page.Locator("form.register > .tiles .tile").CountAsync() >= 30);
        var bar = await window.Page.Locator(".bar").BoundingBoxAsync();
        var last = await window.Page.Locator(".tile").Nth(29).BoundingBoxAsync();
        Assert.True(last!.Y + last.Height <= bar!.Y, $"The thirtieth name ends at {last.Y + last.Height}, the bar begins at {bar.Y}.");
    }

    [Fact]
    public async Task Every_tap_on_the_mat_is_56_pixels_high_and_8_apart()
    {
        await using var window = await browser.OpenAsync(app.Address, width: 390);
        await window.HoldAsync("/register");
        foreach (var button in await window.Page.Locator("form.register button:visible").AllAsync())
        {
            var box = await button.BoundingBoxAsync();
            Assert.True(box!.Height >= 56, $"{await button.InnerTextAsync()} is {box.Height} pixels high.");
        }

        var one = await window.Page.Locator(".tile").Nth(0).BoundingBoxAsync();
        var below = await window.Page.Locator(".tile").Nth(2).BoundingBoxAsync();
        Assert.True(below!.Y - (one!.Y + one.Height) >= 8);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_child_who_has_just_walked_in_is_on_the_register_in_one_short_form(bool script)
    {
        await using var window = await browser.OpenAsync(app.Address, script: script);
        await window.HoldAsync("/register");
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "New tonight" }).ClickAsync();
        await window.Page.GetByLabel("First name").FillAsync("Wilf");
        await window.Page.GetByLabel("Family name or initial").FillAsync("T");
        await window.Page.GetByLabel("An adult’s phone").FillAsync("01632 960123");
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Add and mark present" }).ClickAsync();
        await Assertions.Expect(window.Page.Locator("form.register > .tiles .tile").Last).ToContainTextAsync("Wilf");
        await Assertions.Expect(window.Page.Locator("form.register > .tiles .tile").Last.Locator(".state")).ToHaveTextAsync("present");
        await window.Page.GotoAsync("/tonight");
        await Assertions.Expect(window.Page.Locator(".care-box")).ToContainTextAsync("First evening");
        Assert.Empty(window.Heard);
    }

    [Fact, Statement(8), Statement(9)]
    public async Task The_roll_shows_who_is_on_the_premises_now_and_not_who_has_left()
    {
        await using var window = await browser.OpenAsync(app.Address);
        await window.HoldAsync("/register");
        var names = await window.Page.Locator(".tile .here b").AllInnerTextsAsync();
        await window.Page.Locator(".tile").Nth(0).Locator(".here").ClickAsync();
        await window.Page.Locator(".tile").Nth(1).Locator(".here").ClickAsync();
        await window.Page.Locator(".tile").Nth(1).Locator(".more").ClickAsync();
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Left now", Exact = true }).ClickAsync();
        await Assertions.Expect(window.Page.Locator(".tile").Nth(1).Locator(".state")).ToHaveTextAsync("left 17:20");
        await window.Page.GetByRole(AriaRole.Link, new() { Name = "Who is here", Exact = true }).ClickAsync();
        var here = window.Page.Locator("section").Filter(new() { Has = window.Page.GetByRole(AriaRole.Heading, new() { Name = "Children" }) });
        await Assertions.Expect(here).ToContainTextAsync(names[0].Split(' ')[0]);
        await Assertions.Expect(here.Locator("li")).ToHaveCountAsync(1);
        Assert.Empty(window.Heard);
    }
}
