using System.Globalization;
using Keikocho.Core.Evening;
using Keikocho.Testing;
using Microsoft.Playwright;

namespace Keikocho.Browser.Tests;

/// <summary>
/// The frequent tasks of an evening on a joined instructor's tablet, and the most taps that each may take. The taps are counted in the
/// page, by a listener; the count begins in the register for what comes unasked, and in the view of the work for what goes on there.
/// </summary>
public sealed class TapsOfTheEveningTests
{
    private static readonly Row[] Table =
    [
        new("1 mark one child here", 1, Nothing, t => t.Here("Amina").ClickAsync(), async (hall, t) =>
        {
            await Assertions.Expect(t.Tile("Amina").Locator(".state")).ToContainTextAsync("present");
            await t.AllIsOnTheLaptopAsync();
            Assert.Equal(1, hall.Marks(MarkKind.Present));
        }),
        new("2 all here but two", 3, Nothing, AllHereButTwoAsync, async (_, t) =>
            await Assertions.Expect(t.Locator(".mat-tally")).ToContainTextAsync("2 absent, 0 not marked")),
        new("3 late arrival", 1, Nothing, t => t.Here("Amina").ClickAsync(), async (_, t) =>
        {
            await Assertions.Expect(t.Tile("Amina").Locator(".state")).ToContainTextAsync("came 17:58");
            await t.AllIsOnTheLaptopAsync();
        }) { At = "2026-11-24T17:58" },
        new("4 left or collected early", 2, (_, t) => t.Here("Amina").ClickAsync(), async t =>
        {
            await t.Tile("Amina").Locator(".more").ClickAsync();
            await t.Button("Left now").ClickAsync();
        }, async (_, t) => await Assertions.Expect(t.Tile("Amina").Locator(".state")).ToContainTextAsync("left 17:2")),
        new("5 fire roll", 1, (_, t) => t.Here("Amina").ClickAsync(), t => t.OpenViewAsync("roll"), async (_, t) =>
        {
            await Assertions.Expect(t.Locator("main h2").First).ToHaveTextAsync("Children here: 1");
            await Assertions.Expect(t.Locator(".mat-roll").First).ToContainTextAsync("Amina");
        }),
        new("6 how many adults short", 0, Nothing, _ => Task.CompletedTask, async (_, t) =>
        {
            await Assertions.Expect(t.Locator("#mat-top")).ToBeVisibleAsync();
            await Assertions.Expect(t.Locator("#mat-top")).ToContainTextAsync("Adults: ");
        }),
        new("7 good on the item being worked", 1, OnTheItemAsync, FirstNameAsync, (hall, t) => StateAsync(hall, t, "good", MarkKind.Sighting)),
        new("7 not yet", 2, OnTheItemAsync, async t =>
        {
            await FirstNameAsync(t);
            await FirstNameAsync(t);
        }, (hall, t) => StateAsync(hall, t, "not yet", MarkKind.Cleared)),
        new("8 fall clean", 1, (_, t) => t.OpenViewAsync("seen"), FirstNameAsync, (hall, t) => StateAsync(hall, t, "clean", MarkKind.Fall)),
        new("8 head touched", 2, (_, t) => t.OpenViewAsync("seen"), t => t.Locator(".tile").First.Locator(".touched").ClickAsync(), (hall, t) => StateAsync(hall, t, "head touched", MarkKind.Fall)),
        new("9 knock: off, slip started", 2, Nothing, async t =>
        {
            await t.OpenViewAsync("knock");
            await t.Here("Amina").ClickAsync();
        }, async (hall, t) =>
        {
            await Assertions.Expect(t.Tile("Amina").Locator(".state")).ToHaveTextAsync("off tonight");
            await t.AllIsOnTheLaptopAsync();
            using var db = hall.OpenDb();
            Assert.Equal(1, db.Knocks.Count(k => k.On == new DateOnly(2026, 11, 24)));
        }),
        new("10 pairs for this activity", 1, PairsAreMadeAsync, t => t.OpenViewAsync("pairs"), async (_, t) =>
            Assert.True(await t.Locator(".mat-pairs li").CountAsync() > 2)),
        new("10 pairs without an absent child", 2, async (hall, t) =>
        {
            await PairsAreMadeAsync(hall, t);
            await t.OpenViewAsync("pairs");
        }, async t =>
        {
            var gone = await GoneAsync(t);
            await t.Button("Sits out").ClickAsync();
            await t.Here(gone).ClickAsync();
            await t.Locator(".mat-pairs").WaitForAsync();
            Assert.DoesNotContain(await t.Locator(".mat-pairs li").AllInnerTextsAsync(), line => line.Split(" – ").Contains(gone));
        }, async (_, t) => Assert.True(await t.Locator(".mat-pairs li").CountAsync() > 1)),
        new("11 next slot on the card", 1, async (_, t) =>
        {
            await t.OpenViewAsync("cards");
            await t.Button("Start").ClickAsync();
        }, t => t.Locator("[data-key=next]").ClickAsync(), async (_, t) =>
            await Assertions.Expect(t.Locator(".mat-card-parts li").Nth(1)).ToHaveAttributeAsync("aria-current", "step")),
        new("12 assistant missing, plan B", 2, (_, t) => t.OpenViewAsync("cards"), async t =>
        {
            await t.Button("Adult missing").ClickAsync();
            await t.Locator(".tile .here").First.ClickAsync();
        }, async (hall, t) =>
        {
            await t.AllIsOnTheLaptopAsync();
            Assert.Equal(1, hall.Marks(MarkKind.Absent));
            await Assertions.Expect(t.Locator(".mat-care")).ToContainTextAsync("nothing is thrown", new() { IgnoreCase = true, Timeout = 60_000 });
        }),
        new("13 a due word right", 1, WordsAsync, t => t.Locator(".tile").First.GetByRole(AriaRole.Button, new() { Name = "right" }).ClickAsync(), (hall, t) => AnsweredAsync(hall, t, "right")),
        new("13 a due word wrong", 1, WordsAsync, t => t.Locator(".tile").First.GetByRole(AriaRole.Button, new() { Name = "wrong" }).ClickAsync(), (hall, t) => AnsweredAsync(hall, t, "wrong")),
        new("14 what does this child lack", 2, Nothing, async t =>
        {
            await t.OpenViewAsync("child");
            await t.Here("Amina").ClickAsync();
        }, async (_, t) =>
        {
            await Assertions.Expect(t.Locator(".mat-verdict")).ToContainTextAsync("Test on ");
            await Assertions.Expect(t.Locator(".mat-lacks").First).ToContainTextAsync("attended");
        }),
        new("15 two-line note on a child", 3, Nothing, async t =>
        {
            await t.OpenViewAsync("child");
            await t.Here("Amina").ClickAsync();
            await t.Locator("[data-key='phrase courage']").ClickAsync();
        }, async (hall, t) =>
        {
            await Assertions.Expect(t.Locator("[data-key='phrase courage'] b")).ToHaveTextAsync("noted");
            await t.AllIsOnTheLaptopAsync();
            using var db = hall.OpenDb();
            Assert.Equal("courage", db.PhraseNotes.Single().Phrase);
        }),
    ];

    public static TheoryData<string, int> Tasks
    {
        get
        {
            var tasks = new TheoryData<string, int>();
            foreach (var row in Table) tasks.Add(row.Task, row.Most);
            return tasks;
        }
    }

    [Theory, Statement(45)]
    [MemberData(nameof(Tasks))]
    public async Task A_frequent_task_takes_no_more_taps_than_the_table_allows(string task, int most)
    {
        var row = Table.Single(r => r.Task == task);
        await using var hall = await TabletsInTheHall.OpenAsync(row.At);
        var tablet = await hall.JoinAsync();
        await row.Before(hall, tablet);
        await tablet.EvaluateAsync("() => { window.taps = 0; addEventListener('pointerdown', () => window.taps++, { capture: true }); }");
        await row.Do(tablet);
        var taps = await tablet.EvaluateAsync<int>("window.taps");
        await row.Holds(hall, tablet);
        Assert.True(taps <= most, $"{task} took {taps.ToString(CultureInfo.InvariantCulture)} taps; the table allows {most.ToString(CultureInfo.InvariantCulture)}.");
    }

    [Fact]
    public void All_fifteen_tasks_stand_in_the_table() =>
        Assert.Equal(Enumerable.Range(1, 15), Table.Select(r => int.Parse(r.Task.Split(' ')[0], CultureInfo.InvariantCulture)).Distinct());

    private static Task Nothing(TabletsInTheHall hall, IPage tablet) => Task.CompletedTask;

    private static async Task AllHereButTwoAsync(IPage tablet)
    {
        await tablet.Button("All here").ClickAsync();
        await tablet.Here("Adam B.").ClickAsync();
        await tablet.Here("Alice").ClickAsync();
    }

    private static Task FirstNameAsync(IPage tablet) => tablet.Locator(".tile").First.Locator(".here").ClickAsync();

    // From the card to what is worked on, as an evening goes.
    private static async Task OnTheItemAsync(TabletsInTheHall hall, IPage tablet)
    {
        await tablet.OpenViewAsync("cards");
        await tablet.Button("Start").ClickAsync();
        for (var i = 0; i < 8 && !await tablet.Button("Mark what is seen").IsVisibleAsync(); i++) await tablet.Locator("[data-key=next]").ClickAsync();
        await tablet.Button("Mark what is seen").ClickAsync();
        await tablet.Locator(".tile .here").First.WaitForAsync();
    }

    private static async Task WordsAsync(TabletsInTheHall hall, IPage tablet)
    {
        await AllHereButTwoAsync(tablet);
        await tablet.AllIsOnTheLaptopAsync();
        await tablet.OpenViewAsync("words");
        await tablet.Locator(".tiles.asked .tile").First.WaitForAsync(new() { Timeout = 60_000 });
    }

    private static async Task PairsAreMadeAsync(TabletsInTheHall hall, IPage tablet)
    {
        await hall.EnterSizesAsync();
        await AllHereButTwoAsync(tablet);
        await tablet.AllIsOnTheLaptopAsync();
        await tablet.OpenViewAsync("pairs");
        await tablet.Button("Main group").ClickAsync(new() { Timeout = 60_000 });
        await tablet.Button("Holds").ClickAsync(new() { Timeout = 60_000 });
        await tablet.Locator(".mat-pairs li").First.WaitForAsync(new() { Timeout = 60_000 });
        await tablet.OpenViewAsync("register");
    }

    private static async Task<string> GoneAsync(IPage tablet) => (await tablet.Locator(".mat-pairs li").AllInnerTextsAsync())[^1].Split(" – ")[0];

    private static async Task StateAsync(TabletsInTheHall hall, IPage tablet, string state, MarkKind kind)
    {
        await Assertions.Expect(tablet.Locator(".tile").First.Locator(".state")).ToHaveTextAsync(state);
        await tablet.AllIsOnTheLaptopAsync();
        Assert.Equal(1, hall.Marks(kind));
    }

    private static async Task AnsweredAsync(TabletsInTheHall hall, IPage tablet, string word)
    {
        await Assertions.Expect(tablet.Locator(".tile").First.GetByRole(AriaRole.Button, new() { Name = word })).ToHaveAttributeAsync("aria-pressed", "true");
        await tablet.AllIsOnTheLaptopAsync();
        Assert.Equal(1, hall.Marks(MarkKind.Words));
    }

    /// <param name="Task">Number and name of the task.</param>
    /// <param name="Most">The most taps.</param>
    /// <param name="Before">What has gone before; not counted.</param>
    /// <param name="Do">The task.</param>
    /// <param name="Holds">What holds afterwards.</param>
    private sealed record Row(string Task, int Most, Func<TabletsInTheHall, IPage, Task> Before, Func<IPage, Task> Do, Func<TabletsInTheHall, IPage, Task> Holds)
    {
        /// <summary>The hour, where it matters.</summary>
        public string? At { get; init; }
    }
}
