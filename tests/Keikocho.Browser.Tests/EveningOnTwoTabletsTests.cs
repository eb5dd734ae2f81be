using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Keikocho.Core.Evening;
using Keikocho.Testing;
using Microsoft.Playwright;

namespace Keikocho.Browser.Tests;

/// <summary>An evening on two joined tablets over TLS, the network cut in the middle.</summary>
public sealed class EveningOnTwoTabletsTests : IAsyncLifetime
{
    private TabletsInTheHall hall = null!;

    public async ValueTask InitializeAsync() => hall = await TabletsInTheHall.OpenAsync();

    public ValueTask DisposeAsync() => hall.DisposeAsync();

    [Fact, Statement(84), Statement(85)]
    public async Task A_whole_evening_on_two_tablets_with_the_network_cut_in_the_middle_loses_nothing()
    {
        var adult = await hall.JoinAsync();
        var leader = await hall.JoinAsync(leader: true);

        // The register: all here but two, in three taps.
        await Taps(adult, "All here", "Adam B.", "Alice");
        await Assertions.Expect(adult.Locator("#mat-waiting")).ToHaveTextAsync("all on the laptop");
        await Assertions.Expect(adult.Locator(".mat-tally")).ToContainTextAsync("2 absent, 0 not marked");

        // The leader's tablet hears of it, and the network goes.
        await Assertions.Expect(leader.Locator(".mat-tally")).ToContainTextAsync("2 absent, 0 not marked", new() { Timeout = 20_000 });
        await leader.Context.SetOfflineAsync(true);
        await adult.Context.SetOfflineAsync(true);
        await leader.Locator("a[href='#seen']").ClickAsync();
        await leader.Here("Freya").ClickAsync();
        await Assertions.Expect(leader.Tile("Freya").Locator(".state")).ToHaveTextAsync("clean");
        await adult.Locator("a[href='#seen']").ClickAsync();
        await adult.Tile("Freya").GetByRole(AriaRole.Button, new() { Name = "Head touched" }).ClickAsync();
        await adult.Locator("a[href='#knock']").ClickAsync();
        await adult.Here("Noah").ClickAsync();
        await Assertions.Expect(adult.Locator("#mat-waiting")).ToContainTextAsync("2 waiting");
        await Assertions.Expect(leader.Locator("#mat-waiting")).ToContainTextAsync("1 waiting");

        // A reload without a network, and a mark after it.
        await leader.KeepsThePageAsync();
        await leader.ReloadAsync();
        await Assertions.Expect(leader.Locator("#mat-waiting")).ToContainTextAsync("1 waiting");
        await leader.Locator("a[href='#seen']").ClickAsync();
        await leader.Here("Jack").ClickAsync();
        await Assertions.Expect(leader.Locator("#mat-waiting")).ToContainTextAsync("2 waiting");
        Assert.Equal(0, hall.Marks(MarkKind.Fall) + hall.Marks(MarkKind.Knock));

        // The network is back: everything arrives, each once.
        await leader.Context.SetOfflineAsync(false);
        await adult.Context.SetOfflineAsync(false);
        await Assertions.Expect(adult.Locator("#mat-waiting")).ToHaveTextAsync("all on the laptop", new() { Timeout = 30_000 });
        await Assertions.Expect(leader.Locator("#mat-waiting")).ToHaveTextAsync("all on the laptop", new() { Timeout = 30_000 });
        Assert.Equal(3, hall.Marks(MarkKind.Fall));
        Assert.Equal(1, hall.Marks(MarkKind.Knock));
    }

    [Fact, Statement(84)]
    public async Task Send_hands_in_what_waits_without_waiting_for_the_next_try()
    {
        var tablet = await hall.Browser.TabletAsync(hall.Door);
        await tablet.Clock.InstallAsync();
        await hall.JoinAsync(tablet);
        await tablet.AllIsOnTheLaptopAsync();
        await tablet.RouteAsync("**/mat/*", route => route.AbortAsync());
        await tablet.Here("Amina").ClickAsync();
        await Assertions.Expect(tablet.Locator("#mat-waiting")).ToHaveTextAsync("1 waiting, no laptop");
        // The tablet's own clock stands still: nothing is tried again by itself, and what was under way has failed.
        await tablet.Clock.PauseAtAsync(DateTime.UtcNow.AddSeconds(5));
        await tablet.EvaluateAsync("() => fetch('/mat/token').catch(() => 0)");
        await tablet.UnrouteAsync("**/mat/*");
        await tablet.Locator("#mat-send").ClickAsync();
        await tablet.AllIsOnTheLaptopAsync();
        Assert.Equal(1, hall.Marks(MarkKind.Present));
    }

    [Fact]
    public async Task A_tablet_that_does_not_trust_the_laptop_is_warned_and_works_while_its_page_is_open()
    {
        await using var browser = await TrustingBrowser.StartAsync(authority: null);
        var warned = await browser.TabletAsync(hall.Door);
        var refused = await Assert.ThrowsAsync<PlaywrightException>(() => warned.GotoAsync("/join"));
        Assert.Contains("ERR_CERT_AUTHORITY_INVALID", refused.Message, StringComparison.Ordinal);

        var tablet = await browser.TabletAsync(hall.Door, throughTheWarning: true);
        await hall.JoinAsync(tablet);
        await tablet.Here("Amina").ClickAsync();
        await Assertions.Expect(tablet.Locator("#mat-waiting")).ToHaveTextAsync("all on the laptop");
        await tablet.Locator("a[href='#waiting']").ClickAsync();
        await Assertions.Expect(tablet.Locator("main")).ToContainTextAsync("as long as it stays open");
    }

    [Fact, Statement(87)]
    public async Task After_a_minute_untouched_only_names_remain_and_the_touch_that_wakes_it_does_nothing_else()
    {
        var tablet = await hall.Browser.TabletAsync(hall.Door);
        await tablet.Clock.InstallAsync();
        await hall.JoinAsync(tablet);
        await tablet.Here("Amina").ClickAsync();
        await Assertions.Expect(tablet.Tile("Amina").Locator(".state")).ToBeVisibleAsync();
        await tablet.Clock.FastForwardAsync(61_000);
        await Assertions.Expect(tablet.Tile("Amina").Locator(".state")).ToBeHiddenAsync();
        await Assertions.Expect(tablet.Tile("Amina").Locator("b")).ToBeVisibleAsync();
        await tablet.Here("Arjun").ClickAsync();
        await Assertions.Expect(tablet.Tile("Arjun").Locator(".state")).ToHaveTextAsync("not marked");
        await tablet.Locator("#mat-hide").ClickAsync();
        await Assertions.Expect(tablet.Tile("Amina").Locator(".state")).ToBeHiddenAsync();
    }

    [Theory]
    [InlineData(1280, 800)]
    public async Task Thirty_names_are_seen_without_scrolling(int width, int height)
    {
        var tablet = await hall.Browser.TabletAsync(hall.Door, width, height);
        await hall.JoinAsync(tablet);
        var last = await tablet.Locator(".tile").Nth(29).BoundingBoxAsync();
        Assert.True(last!.Y + last.Height <= height, $"The thirtieth name ends at {last.Y + last.Height}.");
    }

    [Fact]
    public async Task Undo_takes_the_last_tap_back_for_ten_seconds()
    {
        var tablet = await hall.JoinAsync();
        await tablet.Here("Amina").ClickAsync();
        await tablet.Locator("#mat-undo-button").ClickAsync();
        await Assertions.Expect(tablet.Tile("Amina").Locator(".state")).ToHaveTextAsync("not marked");
        await Assertions.Expect(tablet.Locator("#mat-waiting")).ToHaveTextAsync("all on the laptop");
        Assert.Equal(1, hall.Marks(MarkKind.Cleared));
    }

    [Fact]
    public async Task Every_tap_is_56_pixels_high_on_every_view_and_width()
    {
        foreach (var width in new[] { 390, 820, 1280 })
        {
            var tablet = await hall.Browser.TabletAsync(hall.Door, width);
            await hall.JoinAsync(tablet);
            foreach (var view in await tablet.Locator(".mat-views a").EvaluateAllAsync<string[]>("links => links.map((l) => l.getAttribute('href').slice(1))"))
            {
                await tablet.EvaluateAsync("view => { location.hash = view; }", view);
                // All in one look: the page draws itself anew whenever the laptop has answered.
                var low = await tablet.EvaluateAsync<string[]>("""
                    [...document.querySelectorAll("button, select, .mat-views a")].filter((b) => b.checkVisibility() && b.getBoundingClientRect().height > 0 && b.getBoundingClientRect().height < 56)
                        .map((b) => `${b.innerText} is ${b.getBoundingClientRect().height} pixels high`)
                    """);
                Assert.True(low.Length == 0, $"{view} at {width}: {string.Join(", ", low)}");

                var wide = await tablet.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
                Assert.True(wide <= 0, $"{view} at {width} is {wide} pixels wider than the window.");
            }
        }
    }

    [Theory]
    [InlineData(390, false)]
    [InlineData(820, true)]
    [InlineData(1280, false)]
    [InlineData(1280, true)]
    public async Task Axe_finds_nothing_on_any_view_of_the_tablet(int width, bool evening)
    {
        var tablet = await hall.Browser.TabletAsync(hall.Door, width, evening: evening);
        await hall.JoinAsync(tablet);
        await tablet.Here("Amina").ClickAsync();
        var found = new List<string>();
        foreach (var view in await tablet.Locator(".mat-views a").EvaluateAllAsync<string[]>("links => links.map((l) => l.getAttribute('href').slice(1))"))
        {
            await tablet.EvaluateAsync("view => { location.hash = view; }", view);
            await tablet.Locator($".mat-views a[href='#{view}'][aria-current]").WaitForAsync();
            found.AddRange((await AxeAsync(tablet)).Select(line => $"{view}: {line}"));
        }

        foreach (var page in new[] { "/join", "/join/trust" })
        {
            await tablet.GotoAsync(page);
            found.AddRange((await AxeAsync(tablet)).Select(line => $"{page}: {line}"));
        }

        Assert.True(found.Count == 0, string.Join("\n", found));
    }

    private static async Task<IEnumerable<string>> AxeAsync(IPage page) =>
        (await page.RunAxe(new AxeRunOptions { ResultTypes = new HashSet<ResultType> { ResultType.Violations } })).Violations.SelectMany(v => v.Nodes.Select(n => $"{v.Id}: {v.Help}: {n.Html}"));

    private static async Task Taps(IPage tablet, string button, params string[] names)
    {
        await tablet.GetByRole(AriaRole.Button, new() { Name = button }).ClickAsync();
        foreach (var name in names) await tablet.Here(name).ClickAsync();
    }

    [Fact, Statement(40), Statement(88)]
    public async Task Pairs_take_one_tap_and_two_more_without_a_child_who_left_with_the_network_gone()
    {
        await hall.EnterSizesAsync();
        var tablet = await hall.JoinAsync();
        await Taps(tablet, "All here", "Adam B.", "Alice");
        await Assertions.Expect(tablet.Locator("#mat-waiting")).ToHaveTextAsync("all on the laptop");
        await tablet.Locator("a[href='#pairs']").ClickAsync();
        await tablet.GetByRole(AriaRole.Button, new() { Name = "Main group" }).ClickAsync(new() { Timeout = 60_000 });
        await tablet.GetByRole(AriaRole.Button, new() { Name = "Holds" }).ClickAsync(new() { Timeout = 60_000 });
        var pairs = tablet.Locator(".mat-pairs li");
        await pairs.First.WaitForAsync(new() { Timeout = 60_000 });
        var before = await pairs.AllInnerTextsAsync();
        var one = before[^1].Split(" – ")[0];
        await tablet.Context.SetOfflineAsync(true);
        await tablet.GetByRole(AriaRole.Button, new() { Name = "Left", Exact = true }).ClickAsync();
        await tablet.Locator(".tile button.here").GetByText(one, new() { Exact = true }).ClickAsync();
        await Assertions.Expect(tablet.Locator("#mat-waiting")).ToContainTextAsync("1 waiting");
        var after = await pairs.AllInnerTextsAsync();
        Assert.DoesNotContain(after, line => line.Split(" – ").Contains(one));
        Assert.True(after.Count == 0 || before.Except(after).Count() <= 3, string.Join(" | ", after));
        Assert.DoesNotMatch(@"\d+\s*(kg|lb)", await tablet.Locator("body").InnerTextAsync());
    }
}
