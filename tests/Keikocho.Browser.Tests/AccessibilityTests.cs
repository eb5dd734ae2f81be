using Keikocho.App.Tests.Shell;
using Keikocho.Testing;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.Browser.Tests;

/// <summary>axe finds nothing on any page, day and evening, at 390, 820 and 1280 pixels.</summary>
[Collection(BrowserTests.Name)]
public sealed class AccessibilityTests(Browser browser)
{
    [Theory]
    [InlineData(390, false)]
    [InlineData(390, true)]
    [InlineData(820, false)]
    [InlineData(820, true)]
    [InlineData(1280, false)]
    [InlineData(1280, true)]
    public async Task Axe_finds_nothing_on_any_page_of_the_demo_club(int width, bool evening)
    {
        await using var app = await DemoEvening.StartAsync(DemoEvening.TenMinutesBefore());
        await using var window = await browser.OpenAsync(app.Address, width, evening: evening);
        await window.HoldAsync("/register");
        var found = new List<string>();
        foreach (var address in await AddressesAsync(app, window))
        {
            await window.Page.GotoAsync(address);
            found.AddRange((await window.AxeAsync()).Select(line => $"{address} at {width}{(evening ? ", evening" : "")}: {line}"));
            var wide = await window.Page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
            if (wide > 0) found.Add($"{address} at {width}: {wide} pixels wider than the window");
        }

        Assert.Empty(window.Heard);
        Assert.True(found.Count == 0, string.Join("\n", found));
    }

    [Theory]
    [InlineData(390, false)]
    [InlineData(1280, true)]
    public async Task Axe_finds_nothing_on_the_first_evening(int width, bool evening)
    {
        await using var app = await FreshClub.StartAsync(FixedTime.At("2026-11-24T17:20"));
        await using var window = await browser.OpenAsync(app.Address, width, evening: evening);
        await window.Page.GotoAsync("/");
        Assert.Empty(await window.AxeAsync());
        Assert.Empty(window.Heard);
    }

    /// <summary>Every page with an address: those without parameters, and one of each with.</summary>
    private static async Task<IReadOnlyList<string>> AddressesAsync(RunningApp app, Window window)
    {
        var pages = app.App.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(e => e.Metadata.GetMetadata<Microsoft.AspNetCore.Components.Endpoints.ComponentTypeMetadata>() is not null)
            .Select(e => "/" + e.RoutePattern.RawText!.TrimStart('/')).Distinct().Order(StringComparer.Ordinal).ToList();
        Assert.Contains("/register", pages);
        // The tablet's own page is looked at on a tablet.
        var addresses = pages.Where(p => !p.Contains('{', StringComparison.Ordinal) && p != "/mat").ToList();
        if (pages.Any(p => p.StartsWith("/students/{", StringComparison.Ordinal)))
        {
            await window.Page.GotoAsync("/students");
            addresses.Add((await window.Page.Locator("main a[href^='/students/']").First.GetAttributeAsync("href"))!);
        }

        // Care notes with the lock open: the form, and a child whose words stand there.
        if (pages.Contains("/care"))
        {
            await window.Page.GotoAsync("/lock");
            await window.Page.FillAsync("#passphrase", "four plain words here");
            await window.Page.FillAsync("#again", "four plain words here");
            await window.Page.Locator("button", new() { HasText = "Set it" }).ClickAsync();
            await window.Page.GotoAsync("/care");
            var care = window.Page.Locator("main a[href^='/care/']");
            string[] own = [(await care.First.GetAttributeAsync("href"))!, (await care.Last.GetAttributeAsync("href"))!];
            await window.Page.GotoAsync(own[0]);
            await window.Page.FillAsync("#care-1", "Nuts: lips swell.");
            await window.Page.Locator("button", new() { HasText = "Store" }).ClickAsync();
            addresses.AddRange(own);
        }

        // A test, its first and its last child (put forward; not this time), and what the families of both are told: one is kept.
        if (pages.Contains("/promotion-tests"))
        {
            var test = await FirstAsync(window, "/promotion-tests", "main a[href^='/promotion-tests/']");
            await window.Page.GotoAsync(test);
            var whys = window.Page.Locator("main a[href*='/children/']");
            string[] children = [(await whys.First.GetAttributeAsync("href"))!, (await whys.Last.GetAttributeAsync("href"))!];
            addresses.AddRange([test, .. children]);
            foreach (var child in children)
            {
                var told = $"/students/{child.Split('/')[^1]}/parents-page";
                addresses.AddRange([told, $"/students/{child.Split('/')[^1]}", $"/papers?test={test.Split('/')[^1]}"]);
                await window.Page.GotoAsync($"{told}?test={test.Split('/')[^1]}");
                await window.Page.Locator("form[action$='/parents-page/keep'] button").ClickAsync();
                addresses.Add(await FirstAsync(window, told, "main a[href*='/parents-page/']"));
            }

            addresses.Add(await FirstAsync(window, $"/students/{children[0].Split('/')[^1]}", "main a[href*='/lessons/']"));
        }

        // The draft's pages are about something once there is a draft: one rank with the form of a line, one item.
        if (pages.Contains("/syllabus/draft"))
        {
            await window.Page.GotoAsync("/syllabus");
            await window.Page.Locator("#begin-part").WaitForAsync();
            await window.Page.Locator("summary", new() { HasText = "A sample ladder" }).ClickAsync();
            await window.Page.Locator("button[value='sample:ladder-willow']").ClickAsync();
            var rank = (await window.Page.Locator("main a[href^='/syllabus/draft/rank/']").Nth(1).GetAttributeAsync("href"))!;
            await window.Page.GotoAsync(rank);
            var line = (await window.Page.Locator(".moves a.button").First.GetAttributeAsync("href"))!;
            // Without its last part, which only scrolls.
            await window.Page.GotoAsync(line.Split('#')[0]);
            addresses.AddRange([rank, line.Split('#')[0], (await window.Page.Locator("main a[href^='/syllabus/draft/item/']").First.GetAttributeAsync("href"))!]);
        }

        return [.. addresses.Distinct()];
    }

    private static async Task<string> FirstAsync(Window window, string page, string link)
    {
        await window.Page.GotoAsync(page);
        return (await window.Page.Locator(link).First.GetAttributeAsync("href"))!;
    }
}
