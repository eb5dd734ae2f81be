using System.Globalization;
using Keikocho.App.Club;
using Keikocho.App.Hall;
using Keikocho.App.Tests.Shell;
using Keikocho.Core.Evening;
using Keikocho.Store.Engines;
using Keikocho.Store.People;
using Keikocho.Testing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace Keikocho.Browser.Tests;

/// <summary>The demo evening with its door open over TLS, a browser that trusts it, and tablets that join.</summary>
internal sealed class TabletsInTheHall : IAsyncDisposable
{
    private static readonly DateOnly Tonight = new(2026, 11, 24);
    private readonly RunningApp app;
    private readonly FixedTime time;

    private TabletsInTheHall(RunningApp app, FixedTime time, TrustingBrowser browser, Uri door) => (this.app, this.time, Browser, Door) = (app, time, browser, door);

    public TrustingBrowser Browser { get; }

    public Uri Door { get; }

    /// <summary>The laptop itself, on the loopback.</summary>
    public Uri Laptop => app.Address;

    /// <summary>The laptop's clock.</summary>
    public FixedTime Time => time;

    public ClubHouse House => app.App.Services.GetRequiredService<ClubHouse>();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <param name="at">The hour; ten minutes before the bow where none is said.</param>
    public static async Task<TabletsInTheHall> OpenAsync(string? at = null)
    {
        var time = at is null ? DemoEvening.TenMinutesBefore() : FixedTime.At(at);
        var app = await DemoEvening.StartAsync(time);
        var hall = app.App.Services.GetRequiredService<HallNetwork>();
        var port = await hall.OpenAsync(0, Cancel);
        try
        {
            var browser = await TrustingBrowser.StartAsync(hall.Authority.ForTablets);
            return new TabletsInTheHall(app, time, browser, new Uri($"https://127.0.0.1:{port.ToString(CultureInfo.InvariantCulture)}/"));
        }
        catch
        {
            await app.DisposeAsync();
            throw;
        }
    }

    /// <summary>A tablet that has joined: an instructor's, or a junior leader's.</summary>
    public async Task<IPage> JoinAsync(bool leader = false, int width = 1280)
    {
        var tablet = await Browser.TabletAsync(Door, width);
        await JoinAsync(tablet, leader);
        return tablet;
    }

    public async Task JoinAsync(IPage tablet, bool leader = false)
    {
        string digits;
        using (var db = OpenDb())
        {
            var duties = db.Duties.Where(d => d.To == null).OrderBy(d => d.Kind).ThenBy(d => d.PersonId).ToList();
            var who = (leader ? duties.Last(d => d.Kind == DutyKind.JuniorLeader) : duties[0]).PersonId;
            digits = app.App.Services.GetRequiredService<Invitations>().Make(who, Tonight, db.Halls.Select(h => h.Id).First(), time.GetUtcNow().AddHours(4), who).Digits;
        }

        await tablet.GotoAsync("/");
        await tablet.FillAsync("#digits", digits);
        await tablet.GetByRole(AriaRole.Button, new() { Name = "Join the evening" }).ClickAsync();
        await tablet.WaitForURLAsync("**/mat**");
        await tablet.Locator(".tile").First.WaitForAsync();
    }

    /// <summary>The club's lock and a size for each child, so that pairs are made.</summary>
    public async Task EnterSizesAsync()
    {
        using var db = OpenDb();
        using var reading = House.Engine.OpenReading();
        var by = db.Duties.Select(d => d.PersonId).First();
        await House.Lock.MakeAsync("four plain words here", by, by, Cancel);
        var sizes = db.Enrolments.Where(e => e.To == null).Select(e => e.PersonId).Distinct().ToList().Select(c => new NewSize(c, new DateOnly(2026, 11, 20), 30_000));
        await House.Sizes.EnterAsync([.. sizes], House.Lock.Now(reading).Key!, by, by, Cancel);
    }

    public KeikochoDb OpenDb() => House.Engine.OpenDb();

    /// <summary>How many marks of a kind the laptop holds of tonight.</summary>
    public int Marks(MarkKind kind)
    {
        using var db = OpenDb();
        var lessons = db.Lessons.Where(l => l.Date == Tonight).Select(l => l.Id).ToList();
        return db.Marks.Count(m => lessons.Contains(m.LessonId) && m.Kind == kind);
    }

    public async ValueTask DisposeAsync()
    {
        await Browser.DisposeAsync();
        await app.DisposeAsync();
    }
}

/// <summary>What is on a tablet's screen.</summary>
internal static class OnTablet
{
    public static ILocator Tile(this IPage tablet, string name) => tablet.Locator(".tile").Filter(new() { Has = tablet.GetByText(name, new() { Exact = true }) });

    public static ILocator Here(this IPage tablet, string name) => tablet.Tile(name).Locator(".here");

    public static ILocator Button(this IPage tablet, string name) => tablet.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    /// <summary>Opens a view by its word in the row of views.</summary>
    public static async Task OpenViewAsync(this IPage tablet, string address)
    {
        await tablet.Locator($".mat-views a[href='#{address}']").ClickAsync();
        await tablet.Locator($".mat-views a[href='#{address}'][aria-current]").WaitForAsync();
    }

    /// <summary>The tablet keeps the page itself: from here on it opens without a network.</summary>
    public static Task KeepsThePageAsync(this IPage tablet) => tablet.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");

    /// <summary>Everything that was tapped is on the laptop.</summary>
    public static Task AllIsOnTheLaptopAsync(this IPage tablet) =>
        Assertions.Expect(tablet.Locator("#mat-waiting")).ToHaveTextAsync("all on the laptop", new() { Timeout = 20_000 });
}
