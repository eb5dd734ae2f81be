using System.Globalization;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Keikocho.Core.Evening;
using Keikocho.Store.Keeping;
using Keikocho.Store.Marks;
using Keikocho.Testing;
using Microsoft.Playwright;

namespace Keikocho.Browser.Tests;

/// <summary>One whole evening as it goes: the instructor's laptop and two joined tablets, from the register to the closing.</summary>
public sealed class EveningWalkTests
{
    private readonly List<Tapped> tapped = [];
    private readonly List<string> axe = [];

    /// <summary>A tap as it must be found on the laptop afterwards.</summary>
    private sealed record Tapped(string Tablet, Guid Person, MarkKind Kind, int Code);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact, Statement(40), Statement(84), Statement(85)]
    public async Task From_the_register_to_the_closing_the_laptop_holds_what_was_tapped_to_the_mark()
    {
        await using var hall = await TabletsInTheHall.OpenAsync();
        var laptop = await hall.Browser.TabletAsync(hall.Laptop);
        await laptop.GotoAsync("/acting?from=%2Fregister");
        await laptop.Locator("button[name=adult]").First.ClickAsync();
        var adult = await hall.JoinAsync();
        var leader = await hall.JoinAsync(leader: true, width: 820);

        await RegisterAsync(adult, leader);
        await CardsAsync(hall, adult, leader, laptop);
        await SeenAsync(adult, leader);
        await PairsAsync(adult, leader, laptop);
        await WithoutANetworkAsync(adult, leader);
        await KnockAndPlanBAsync(adult, leader, laptop);
        await CloseAsync(hall, laptop);
        await NothingIsLostAndNothingIsDoubledAsync(hall);
        Assert.True(axe.Count == 0, string.Join("\n", axe));
    }

    private async Task RegisterAsync(IPage adult, IPage leader)
    {
        var children = await adult.Locator(".tiles").First.Locator(".tile").EvaluateAllAsync<string[]>("tiles => tiles.map((t) => t.dataset.person)");
        await adult.GetByRole(AriaRole.Button, new() { Name = "All here" }).ClickAsync();
        tapped.AddRange(children.Select(c => new Tapped("adult", Guid.Parse(c), MarkKind.Present, 0)));
        foreach (var name in new[] { "Adam B.", "Alice" }) await TapAsync(adult, "adult", name, MarkKind.Absent);
        await adult.GetByRole(AriaRole.Button, new() { Name = "Nobody else is missing" }).ClickAsync();
        foreach (var name in new[] { "Ruth", "Graham", "Ewa", "Samir" }) await TapAsync(adult, "adult", name, MarkKind.Present);
        await AllArrivedAsync(adult);
        await Assertions.Expect(leader.Locator(".mat-tally").First).ToContainTextAsync("2 absent, 0 not marked", new() { Timeout = 30_000 });
        await LookAsync(adult, "register", "roll");
        await Assertions.Expect(adult.Locator("main")).ToContainTextAsync($"Children here: {children.Length - 2}");
        await Assertions.Expect(adult.Locator("main")).ToContainTextAsync("Adults here: 4");
    }

    /// <summary>Each tablet goes through the card of its end; what it goes to counts as shown.</summary>
    private async Task CardsAsync(TabletsInTheHall hall, IPage adult, IPage leader, IPage laptop)
    {
        foreach (var (tablet, end) in new[] { (adult, 1), (leader, 0) })
        {
            await ToAsync(tablet, "cards");
            await tablet.Locator(".mat-ends button").Nth(end).ClickAsync();
            await tablet.GetByRole(AriaRole.Button, new() { Name = "Start", Exact = true }).ClickAsync();
            await AxeAsync(tablet, "cards");
            var parts = await tablet.Locator(".mat-card-parts li").CountAsync();
            var at = await tablet.Locator(".mat-card-parts li").EvaluateAllAsync<int>("parts => parts.findIndex((p) => p.getAttribute('aria-current') === 'step')");
            for (; at < parts - 1; at++)
            {
                await tablet.Locator("button[data-key=next]").ClickAsync();
                await Assertions.Expect(tablet.Locator(".mat-card-parts li").Nth(at + 1)).ToHaveAttributeAsync("aria-current", "step");
            }
        }

        await WaitForAsync(() => Task.FromResult(Shown(hall).Count >= 4), "four slots shown");
        await laptop.GotoAsync("/cards");
        await AxeAsync(laptop, "/cards");
        foreach (var (name, _, _) in Shown(hall)) Assert.Contains($"{name}, shown", await laptop.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
    }

    private async Task SeenAsync(IPage adult, IPage leader)
    {
        await ToAsync(adult, "seen");
        await adult.Locator(".mat-ends button").Nth(1).ClickAsync();
        var items = adult.Locator(".mat-item select option");
        var item = await items.Filter(new() { HasNotText = "stage" }).First.GetAttributeAsync("value");
        await adult.SelectOptionAsync(".mat-item select", item!);
        foreach (var name in new[] { "Amina", "Bia", "Ewan" }) await TapAsync(adult, "adult", name, MarkKind.Sighting, (int)SeenWord.Good);
        // Once more on the same name: not yet, in the place of good.
        tapped.Add(new Tapped("adult", await PersonAsync(adult, "Bia"), MarkKind.Cleared, 0));
        await TapAsync(adult, "adult", "Bia", MarkKind.Sighting, (int)SeenWord.NotYet);
        await AxeAsync(adult, "seen");

        await ToAsync(leader, "seen");
        await leader.Locator(".mat-ends button").Nth(0).ClickAsync();
        var fall = await ChooseAFallAsync(leader);
        foreach (var name in new[] { "Jack", "Freya" }) await TapAsync(leader, "leader", name, MarkKind.Fall, fall);
        tapped.Add(new Tapped("leader", await PersonAsync(leader, "Tomás"), MarkKind.Fall, fall | MarkCode.HeadTouched));
        await leader.Tile("Tomás").GetByRole(AriaRole.Button, new() { Name = "Head touched" }).ClickAsync();
        await AxeAsync(leader, "seen");
        await AllArrivedAsync(adult);
        await AllArrivedAsync(leader);
    }

    /// <summary>The laptop puts pairs to use, the tablet shows them, and mends them when somebody goes home.</summary>
    private async Task PairsAsync(IPage adult, IPage leader, IPage laptop)
    {
        await laptop.GotoAsync("/pairs?end=beginners&activity=Throwing");
        await Assertions.Expect(laptop.Locator("main")).ToContainTextAsync("Nobody here may be thrown tonight");
        await AxeAsync(laptop, "/pairs, nobody thrown");
        await laptop.GotoAsync("/pairs?end=main&activity=TurnIns");
        await laptop.Locator("form[action='/pairs/use'] button").First.ClickAsync();
        await Assertions.Expect(laptop.Locator("section[aria-labelledby=standing]")).ToBeVisibleAsync();
        await AxeAsync(laptop, "/pairs");
        await ToAsync(adult, "pairs");
        await adult.Locator(".mat-ends button").Nth(1).ClickAsync();
        await adult.GetByRole(AriaRole.Button, new() { Name = "Turn-ins" }).ClickAsync();
        var wanted = await laptop.Locator("section[aria-labelledby=standing] .pair-list li").CountAsync();
        await Assertions.Expect(adult.Locator(".mat-pairs li")).ToHaveCountAsync(wanted, new() { Timeout = 30_000 });
        await AxeAsync(adult, "pairs");
        var before = await adult.Locator(".mat-pairs li").AllInnerTextsAsync();
        // Whoever works with an adult goes home: the pairs of the others stand.
        var gone = before.Single(line => line.EndsWith(" – Graham", StringComparison.Ordinal) || line.EndsWith(" – Ewa", StringComparison.Ordinal) || line.EndsWith(" – Samir", StringComparison.Ordinal)).Split(" – ")[0];
        await adult.GetByRole(AriaRole.Button, new() { Name = "Left", Exact = true }).ClickAsync();
        await ToAsync(leader, "register");
        tapped.Add(new Tapped("adult", await PersonAsync(leader, gone), MarkKind.Left, 0));
        await adult.Locator(".tile button.here").GetByText(gone, new() { Exact = true }).ClickAsync();
        await AllArrivedAsync(adult);
        await Assertions.Expect(adult.Locator(".mat-pairs li")).ToHaveCountAsync(wanted - 1);
        Assert.Equal(before.Where(line => !line.StartsWith(gone, StringComparison.Ordinal)), await adult.Locator(".mat-pairs li").AllInnerTextsAsync());

        // At the beginners' end one child without a partner does not cost the others theirs.
        await ToAsync(leader, "pairs");
        await Assertions.Expect(leader.Locator(".mat-pairs li").First).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await leader.GetByRole(AriaRole.Button, new() { Name = "Throwing" }).ClickAsync();
        await Assertions.Expect(leader.Locator(".mat-asks")).ToContainTextAsync("In turn-ins");
        await AxeAsync(leader, "pairs");
    }

    private async Task WithoutANetworkAsync(IPage adult, IPage leader)
    {
        await leader.Context.SetOfflineAsync(true);
        await ToAsync(leader, "words");
        foreach (var (name, word, code) in new[] { ("Jack", "right", SeenWord.Good), ("Noah", "wrong", SeenWord.NotYet) })
        {
            tapped.Add(new Tapped("leader", await PersonAsync(leader, name), MarkKind.Words, (int)code));
            await leader.Tile(name).GetByRole(AriaRole.Button, new() { Name = word }).ClickAsync();
        }

        await AxeAsync(leader, "words");
        await Assertions.Expect(leader.Locator("#mat-waiting")).ToContainTextAsync("2 waiting");
        await leader.KeepsThePageAsync();
        await leader.ReloadAsync();
        await ToAsync(leader, "seen");
        var fall = await ChooseAFallAsync(leader);
        await TapAsync(leader, "leader", "Ruben", MarkKind.Fall, fall);
        await Assertions.Expect(leader.Locator("#mat-waiting")).ToContainTextAsync("3 waiting");

        // The other tablet works on meanwhile.
        await ToAsync(adult, "words");
        tapped.Add(new Tapped("adult", await PersonAsync(adult, "Amina"), MarkKind.Words, (int)SeenWord.Good));
        await adult.Tile("Amina").GetByRole(AriaRole.Button, new() { Name = "right" }).ClickAsync();
        await AllArrivedAsync(adult);
        await leader.Context.SetOfflineAsync(false);
        await AllArrivedAsync(leader);
        await LookAsync(leader, "waiting", "roll");
    }

    private async Task KnockAndPlanBAsync(IPage adult, IPage leader, IPage laptop)
    {
        await ToAsync(adult, "knock");
        await Assertions.Expect(adult.Locator(".mat-item select")).ToHaveValueAsync("0");
        await adult.SelectOptionAsync(".mat-item select", "5");
        await AxeAsync(adult, "knock");
        await TapAsync(adult, "adult", "Finn", MarkKind.Knock, 5);
        await Assertions.Expect(adult.Tile("Finn").Locator(".state")).ToHaveTextAsync("off tonight");

        // One adult is missing, two taps on the card; two more go home: what is left is too few for two ends.
        await ToAsync(adult, "cards");
        await adult.Locator("button[data-key=missing]").ClickAsync();
        await TapAsync(adult, "adult", "Graham", MarkKind.Absent);
        // The laptop makes the card anew; the tablet asks every ten seconds.
        await Assertions.Expect(adult.Locator(".mat-care")).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await AxeAsync(adult, "cards, an adult missing");
        await ToAsync(adult, "register");
        foreach (var name in new[] { "Ewa", "Samir" })
        {
            tapped.Add(new Tapped("adult", await PersonAsync(adult, name), MarkKind.Left, 0));
            await adult.GetByRole(AriaRole.Button, new() { Name = $"More of {name}", Exact = true }).ClickAsync();
            await adult.GetByRole(AriaRole.Button, new() { Name = "Left now" }).ClickAsync();
        }

        await AllArrivedAsync(adult);
        await ToAsync(leader, "cards");
        await Assertions.Expect(leader.Locator(".mat-care")).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await AxeAsync(leader, "cards, plan B");
        await laptop.GotoAsync("/cards");
        await Assertions.Expect(laptop.Locator("main")).ToContainTextAsync("Plan B: the ends are joined, nothing is thrown.");
        await AxeAsync(laptop, "/cards, plan B");
    }

    private async Task CloseAsync(TabletsInTheHall hall, IPage laptop)
    {
        hall.Time.Step(TimeSpan.FromMinutes(80));
        await laptop.GotoAsync("/close");
        await AxeAsync(laptop, "/close");
        await Assertions.Expect(laptop.Locator("section[aria-labelledby=slips]")).ToContainTextAsync("Finn");
        await laptop.GetByRole(AriaRole.Button, new() { Name = "Close the evening" }).ClickAsync();
        await Assertions.Expect(laptop.Locator("main")).ToContainTextAsync("Not closed.");

        await laptop.GotoAsync("/knocks");
        await AxeAsync(laptop, "/knocks");
        await laptop.Locator("main a[href^='/knocks/']").Filter(new() { HasText = "Finn" }).First.ClickAsync();
        await AxeAsync(laptop, "a knock");
        await laptop.FillAsync("#toldWhom", "his mother, who fetched him");
        await laptop.GetByRole(AriaRole.Button, new() { Name = "Handed over" }).ClickAsync();

        await laptop.GotoAsync("/close");
        await Assertions.Expect(laptop.Locator("section[aria-labelledby=slips]")).ToContainTextAsync("none");
        foreach (var fold in await laptop.Locator("section[aria-labelledby=suggestions] details:not([open]) > summary").AllAsync()) await fold.ClickAsync();
        foreach (var mark in await laptop.Locator("section[aria-labelledby=suggestions] input[name=mark]").AllAsync()) await mark.CheckAsync();
        await laptop.GetByRole(AriaRole.Button, new() { Name = "Confirm what is ticked" }).ClickAsync();
        await Assertions.Expect(laptop.Locator("section[aria-labelledby=suggestions]")).ToContainTextAsync("Nothing waits to be confirmed.");
        await laptop.GetByRole(AriaRole.Button, new() { Name = "Close the evening" }).ClickAsync();
        await Assertions.Expect(laptop.Locator("main")).ToContainTextAsync("The evening is closed.");
        await AxeAsync(laptop, "/close, closed");
    }

    private async Task NothingIsLostAndNothingIsDoubledAsync(TabletsInTheHall hall)
    {
        using var db = hall.OpenDb();
        var marks = db.Marks.ToList().Join(db.Lessons.Where(l => l.Date == DemoEvening.Day).ToList(), m => m.LessonId, l => l.Id, (m, _) => m).ToList();
        var tablets = db.Joins.Where(j => j.Date == DemoEvening.Day).OrderBy(j => j.Number).Select(j => j.DeviceId).ToList();
        string Tablet(Guid device) => tablets.IndexOf(device) switch { 0 => "adult", 1 => "leader", _ => "laptop" };
        static int Code(MarkRow m) => m.Kind switch
        {
            MarkKind.Fall => m.Code & 0x1FFF,
            MarkKind.Sighting or MarkKind.Words or MarkKind.Knock => m.Code & 0xFF,
            _ => 0,
        };
        static IEnumerable<string> Lines(IEnumerable<Tapped> all) => all.Select(t => t.ToString()).Order(StringComparer.Ordinal);
        var confirmed = marks.Where(m => m.Kind == MarkKind.Confirmed).ToList();
        Assert.Equal(Lines(tapped), Lines(marks.Except(confirmed).Select(m => new Tapped(Tablet(m.DeviceId), m.PersonId, m.Kind, Code(m)))));

        // Each of the leader's suggestions was confirmed once, on the laptop; each device counted without a gap.
        var suggested = marks.Where(m => Tablet(m.DeviceId) == "leader").Select(m => m.Id).Order();
        Assert.Equal(suggested, confirmed.Select(m => m.Replaces!.Value).Order());
        Assert.All(tablets, device => Assert.Equal(Enumerable.Range(1, marks.Count(m => m.DeviceId == device)), marks.Where(m => m.DeviceId == device).Select(m => m.Sequence).Order()));
        Assert.Single(db.Knocks.Where(k => k.On == DemoEvening.Day).ToList());
        Assert.Equal(Shown(hall).Count, Shown(hall).Select(s => (s.End, s.Slot)).Distinct().Count());
        var report = await CheckClub.RunAsync(hall.House.Engine, _ => new AttendanceRules(), cancel: Cancel);
        Assert.Empty(report.Problems);
    }

    private List<(string Name, int End, int Slot)> Shown(TabletsInTheHall hall)
    {
        using var db = hall.OpenDb();
        return [.. db.Showings.Where(s => s.TakenBackAt == null).ToList()
            .Join(db.Lessons.Where(l => l.Date == DemoEvening.Day).ToList(), s => s.LessonId, l => l.Id, (s, _) => s)
            .Join(db.Items.ToList(), s => s.ItemId, i => i.Id, (s, i) => (i.Name, s.End, s.Slot))];
    }

    private static async Task<Guid> PersonAsync(IPage tablet, string name) => Guid.Parse((await tablet.Tile(name).GetAttributeAsync("data-person"))!);

    /// <summary>The first fall of the list; what it says of a clean one.</summary>
    private static async Task<int> ChooseAFallAsync(IPage tablet)
    {
        var value = (await tablet.Locator(".mat-item option[value^='fall ']").First.GetAttributeAsync("value"))!;
        await tablet.SelectOptionAsync(".mat-item select", value);
        return int.Parse(value.Split(' ')[1], CultureInfo.InvariantCulture);
    }

    /// <summary>One tap on a name, noted down.</summary>
    private async Task TapAsync(IPage tablet, string which, string name, MarkKind kind, int code = 0)
    {
        tapped.Add(new Tapped(which, await PersonAsync(tablet, name), kind, code));
        await tablet.Tile(name).Locator(".here").ClickAsync();
    }

    private static async Task ToAsync(IPage tablet, string view)
    {
        await tablet.Locator($".mat-views a[href='#{view}']").ClickAsync();
        await tablet.Locator($".mat-views a[href='#{view}'][aria-current]").WaitForAsync();
    }

    private async Task LookAsync(IPage tablet, params string[] views)
    {
        foreach (var view in views)
        {
            await ToAsync(tablet, view);
            await AxeAsync(tablet, view);
        }
    }

    private static Task AllArrivedAsync(IPage tablet) => Assertions.Expect(tablet.Locator("#mat-waiting")).ToHaveTextAsync("all on the laptop", new() { Timeout = 30_000 });

    private static async Task WaitForAsync(Func<Task<bool>> holds, string what)
    {
        for (var i = 0; i < 150; i++)
        {
            if (await holds()) return;
            await Task.Delay(200, Cancel);
        }

        Assert.Fail($"{what}: not within half a minute.");
    }

    private async Task AxeAsync(IPage page, string where)
    {
        var found = await page.RunAxe(new AxeRunOptions { ResultTypes = new HashSet<ResultType> { ResultType.Violations } });
        axe.AddRange(found.Violations.SelectMany(v => v.Nodes.Select(n => $"{where}: {v.Id}: {v.Help}: {n.Html}")));
    }
}
