using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Keikocho.Core.Evening;
using Keikocho.Testing;
using Microsoft.Playwright;

namespace Keikocho.Browser.Tests;

/// <summary>One child on an instructor's tablet, plan B and pairs, with the network gone.</summary>
public sealed class OneChildOnTheMatTests
{
    [Fact]
    public async Task What_a_child_lacks_and_a_note_need_no_network_and_the_note_arrives_once()
    {
        await using var hall = await TabletsInTheHall.OpenAsync();
        var tablet = await hall.JoinAsync();
        await tablet.AllIsOnTheLaptopAsync();
        await tablet.OpenViewAsync("child");
        await tablet.Here("Amina").ClickAsync();
        await Assertions.Expect(tablet.Locator(".mat-verdict")).ToContainTextAsync("Test on ");
        await tablet.KeepsThePageAsync();
        await tablet.Context.SetOfflineAsync(true);
        await tablet.ReloadAsync();
        await tablet.OpenViewAsync("child");
        await tablet.Here("Amina").ClickAsync();
        await Assertions.Expect(tablet.Locator(".mat-verdict")).ToContainTextAsync("Test on ");
        await tablet.Locator("[data-key='phrase courage']").ClickAsync();
        await tablet.Locator("[data-key='phrase words']").ClickAsync();
        await Assertions.Expect(tablet.Locator("#mat-waiting")).ToContainTextAsync("2 waiting");
        await tablet.Locator("#mat-undo-button").ClickAsync();
        await Assertions.Expect(tablet.Locator("[data-key='phrase words'] b")).ToHaveCountAsync(0);
        await tablet.Context.SetOfflineAsync(false);
        await tablet.AllIsOnTheLaptopAsync();
        using var db = hall.OpenDb();
        Assert.Equal(["courage"], db.PhraseNotes.Where(n => n.TakenBackAt == null).Select(n => n.Phrase));
        Assert.Equal(["words"], db.PhraseNotes.Where(n => n.TakenBackAt != null).Select(n => n.Phrase));
    }

    [Fact, Statement(87)]
    public async Task The_child_goes_with_the_names_only_face_and_with_another_view()
    {
        await using var hall = await TabletsInTheHall.OpenAsync();
        var tablet = await hall.Browser.TabletAsync(hall.Door);
        await tablet.Clock.InstallAsync();
        await hall.JoinAsync(tablet);
        await tablet.OpenViewAsync("child");
        await tablet.Here("Amina").ClickAsync();
        await Assertions.Expect(tablet.Locator(".mat-one")).ToBeVisibleAsync();
        await tablet.Clock.FastForwardAsync(61_000);
        await Assertions.Expect(tablet.Locator(".mat-one")).ToHaveCountAsync(0);
        await tablet.Here("Amina").ClickAsync();
        await Assertions.Expect(tablet.Locator(".mat-one")).ToHaveCountAsync(0);
        await tablet.Here("Amina").ClickAsync();
        await Assertions.Expect(tablet.Locator(".mat-one")).ToBeVisibleAsync();
        await tablet.OpenViewAsync("register");
        await tablet.OpenViewAsync("child");
        await Assertions.Expect(tablet.Locator(".mat-one")).ToHaveCountAsync(0);
        // The same word again leads back to the names.
        await tablet.Here("Amina").ClickAsync();
        await tablet.OpenViewAsync("child");
        await Assertions.Expect(tablet.Locator(".mat-one")).ToHaveCountAsync(0);
        Assert.DoesNotContain("Test on", await tablet.Locator("body").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task The_page_of_one_child_and_the_list_of_adults_have_large_targets_apart_and_axe_finds_nothing(int width)
    {
        await using var hall = await TabletsInTheHall.OpenAsync();
        var tablet = await hall.JoinAsync(width: width);
        await tablet.AllIsOnTheLaptopAsync();
        await tablet.OpenViewAsync("child");
        await tablet.Here("Amina").ClickAsync();
        await tablet.Locator("[data-key='phrase courage']").ClickAsync();
        await tablet.Locator("[data-key='phrase courage'] b").WaitForAsync();
        await SoundAsync(tablet);
        await tablet.OpenViewAsync("cards");
        await tablet.Button("Adult missing").ClickAsync();
        await tablet.Locator(".tile .here").First.WaitForAsync();
        await SoundAsync(tablet);
    }

    // 56 pixels high, 8 between those that stand side by side or one below the other, nothing wider than the window, and axe.
    private static async Task SoundAsync(IPage tablet)
    {
        var faults = await tablet.EvaluateAsync<string[]>("""
            () => {
              const all = [...document.querySelectorAll("main button, .mat-views a")].filter((b) => b.checkVisibility()).map((b) => ({ b, r: b.getBoundingClientRect() }));
              const low = all.filter(({ r }) => r.height < 56).map(({ b, r }) => `${b.innerText} is ${r.height} pixels high`);
              const near = all.flatMap(({ b, r }, i) => all.slice(i + 1)
                .filter(({ r: o }) => r.left - 7.5 < o.right && o.left - 7.5 < r.right && r.top - 7.5 < o.bottom && o.top - 7.5 < r.bottom)
                .map(({ b: other }) => `${b.innerText} and ${other.innerText} are less than 8 pixels apart`));
              const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
              return [...low, ...near, ...(wide > 0 ? [`${wide} pixels too wide`] : [])];
            }
            """);
        Assert.True(faults.Length == 0, string.Join("\n", faults));
        var found = (await tablet.RunAxe(new AxeRunOptions { ResultTypes = new HashSet<ResultType> { ResultType.Violations } })).Violations
            .SelectMany(v => v.Nodes.Select(n => $"{v.Id}: {v.Help}: {n.Html}")).ToList();
        Assert.True(found.Count == 0, string.Join("\n", found));
    }

    [Fact, Statement(86)]
    public async Task A_junior_leaders_tablet_has_neither_the_view_nor_what_it_would_show()
    {
        await using var hall = await TabletsInTheHall.OpenAsync();
        var leader = await hall.JoinAsync(leader: true);
        await leader.AllIsOnTheLaptopAsync();
        Assert.Equal(0, await leader.Locator(".mat-views a[href='#child']").CountAsync());
        await leader.EvaluateAsync("() => { location.hash = 'child'; }");
        await Assertions.Expect(leader.Locator(".mat-views a[href='#register'][aria-current]")).ToBeVisibleAsync();
        var kept = await leader.EvaluateAsync<string>("""
            () => new Promise((done) => {
              const open = indexedDB.open("keikocho-mat");
              open.onsuccess = () => {
                const all = open.result.transaction("kept").objectStore("kept").getAllKeys();
                all.onsuccess = () => done(all.result.join(" "));
              };
            })
            """);
        Assert.Contains("evening", kept, StringComparison.Ordinal);
        Assert.DoesNotContain("lacks", kept, StringComparison.Ordinal);
        await leader.OpenViewAsync("cards");
        Assert.Equal(0, await leader.Button("Adult missing").CountAsync());
    }

    [Fact, Statement(45)]
    public async Task Without_a_network_a_missing_adult_gives_the_plan_b_that_the_tablet_holds()
    {
        await using var hall = await TabletsInTheHall.OpenAsync();
        var tablet = await hall.JoinAsync();
        await tablet.OpenViewAsync("cards");
        await tablet.Context.SetOfflineAsync(true);
        await tablet.Button("Adult missing").ClickAsync();
        var name = await tablet.Locator(".tile .here b").First.InnerTextAsync();
        await tablet.Locator(".tile .here").First.ClickAsync();
        await Assertions.Expect(tablet.Locator(".mat-care")).ToContainTextAsync($"{name}: missing.");
        await Assertions.Expect(tablet.Locator(".mat-care")).ToContainTextAsync("nothing is thrown", new() { IgnoreCase = true });
        // Taken back, the card is as it was.
        await tablet.Locator("#mat-undo-button").ClickAsync();
        await Assertions.Expect(tablet.Locator(".mat-care")).ToHaveCountAsync(0);
        await tablet.Context.SetOfflineAsync(false);
    }

    [Fact, Statement(14)]
    public async Task A_knock_and_a_touched_head_that_wait_on_the_tablet_leave_the_child_out_of_its_pairs()
    {
        await using var hall = await TabletsInTheHall.OpenAsync();
        await hall.EnterSizesAsync();
        var tablet = await hall.JoinAsync();
        await tablet.Button("All here").ClickAsync();
        await tablet.AllIsOnTheLaptopAsync();
        await tablet.OpenViewAsync("pairs");
        await tablet.Button("Main group").ClickAsync(new() { Timeout = 60_000 });
        await tablet.Button("Holds").ClickAsync(new() { Timeout = 60_000 });
        await tablet.Locator(".mat-pairs li").First.WaitForAsync(new() { Timeout = 60_000 });
        var before = await NamesAsync(tablet);
        var (knocked, touched) = (before[0], before[^1]);
        await tablet.KeepsThePageAsync();
        await tablet.Context.SetOfflineAsync(true);

        await tablet.OpenViewAsync("knock");
        await tablet.Here(knocked).ClickAsync();
        await tablet.OpenViewAsync("pairs");
        var without = await NamesAsync(tablet);
        Assert.DoesNotContain(knocked, without);

        await tablet.OpenViewAsync("seen");
        await tablet.Button("Main group").ClickAsync();
        await tablet.Tile(touched).Locator(".touched").ClickAsync();
        await tablet.OpenViewAsync("pairs");
        Assert.DoesNotContain(touched, await NamesAsync(tablet));
        Assert.DoesNotContain(knocked, await NamesAsync(tablet));
        await Assertions.Expect(tablet.Locator("#mat-waiting")).ToContainTextAsync("2 waiting");
        Assert.Equal(0, hall.Marks(MarkKind.Knock) + hall.Marks(MarkKind.Fall));

        // A reload does not forget it.
        await tablet.ReloadAsync();
        await tablet.OpenViewAsync("pairs");
        Assert.DoesNotContain(knocked, await NamesAsync(tablet));
        Assert.DoesNotContain(touched, await NamesAsync(tablet));
        await tablet.Context.SetOfflineAsync(false);
        await tablet.AllIsOnTheLaptopAsync();
        Assert.Equal((1, 1), (hall.Marks(MarkKind.Knock), hall.Marks(MarkKind.Fall)));
    }

    [Fact, Statement(14), Statement(45)]
    public async Task What_the_laptop_took_and_has_not_reckoned_with_yet_opens_nothing_also_after_a_reload()
    {
        await using var hall = await TabletsInTheHall.OpenAsync();
        await hall.EnterSizesAsync();
        var tablet = await hall.JoinAsync();
        await tablet.Button("All here").ClickAsync();
        await tablet.AllIsOnTheLaptopAsync();
        await tablet.OpenViewAsync("pairs");
        await tablet.Button("Main group").ClickAsync(new() { Timeout = 60_000 });
        await tablet.Button("Holds").ClickAsync(new() { Timeout = 60_000 });
        await tablet.Locator(".mat-pairs li").First.WaitForAsync(new() { Timeout = 60_000 });
        var touched = (await NamesAsync(tablet))[0];
        await tablet.KeepsThePageAsync();
        // Marks arrive, and no evening comes back.
        await tablet.Context.RouteAsync("**/mat/evening", route => route.AbortAsync());

        await tablet.OpenViewAsync("seen");
        await tablet.Button("Main group").ClickAsync();
        await tablet.Tile(touched).Locator(".touched").ClickAsync();
        await tablet.OpenViewAsync("cards");
        await tablet.Button("Adult missing").ClickAsync();
        await tablet.Locator(".tile .here").First.ClickAsync();
        await Assertions.Expect(tablet.Locator("#mat-waiting")).Not.ToContainTextAsync("waiting", new() { Timeout = 20_000 });
        Assert.Equal(1, hall.Marks(MarkKind.Fall));
        Assert.Equal(1, hall.Marks(MarkKind.Absent));
        await ShutAsync();
        await tablet.ReloadAsync();
        await ShutAsync();

        // The laptop answers again, and what it made stands.
        await tablet.Context.UnrouteAsync("**/mat/evening");
        await Assertions.Expect(tablet.Locator("#mat-waiting")).ToHaveTextAsync("all on the laptop", new() { Timeout = 30_000 });
        await tablet.OpenViewAsync("pairs");
        await Assertions.Expect(tablet.Locator(".mat-pairs")).ToContainTextAsync(touched, new() { Timeout = 60_000 });

        async Task ShutAsync()
        {
            await tablet.OpenViewAsync("cards");
            await Assertions.Expect(tablet.Locator(".mat-care")).ToContainTextAsync("missing.");
            await tablet.OpenViewAsync("pairs");
            Assert.DoesNotContain(touched, await NamesAsync(tablet));
        }
    }

    // Everybody who stands in a pair, whatever is said beside the name.
    private static async Task<List<string>> NamesAsync(IPage tablet) =>
        [.. (await tablet.Locator(".mat-pairs li").AllInnerTextsAsync()).SelectMany(line => line.Split(':')[0].Split(" – ")).Select(n => n.Replace(" (tori only)", "", StringComparison.Ordinal))];
}
