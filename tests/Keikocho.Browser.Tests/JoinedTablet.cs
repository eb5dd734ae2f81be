using Keikocho.App.Hall;
using Keikocho.App.Tests.Shell;
using Keikocho.Store.Engines;
using Keikocho.Store.People;
using Keikocho.Testing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace Keikocho.Browser.Tests;

/// <summary>A tablet that joins the demo's evening by the digits that the laptop shows.</summary>
internal static class JoinedTablet
{
    public static async Task JoinAsync(RunningApp app, FixedTime time, IPage tablet, bool leader)
    {
        string digits;
        using (var db = app.App.Services.GetRequiredService<Engine>().OpenDb())
        {
            var duties = db.Duties.Where(d => d.To == null).OrderBy(d => d.Kind).ThenBy(d => d.PersonId).ToList();
            var who = (leader ? duties.Last(d => d.Kind == DutyKind.JuniorLeader) : duties[0]).PersonId;
            var hall = db.Halls.Select(h => h.Id).First();
            digits = app.App.Services.GetRequiredService<Invitations>().Make(who, new DateOnly(2026, 11, 24), hall, time.GetUtcNow().AddHours(4), who).Digits;
        }

        await tablet.GotoAsync("/");
        await tablet.FillAsync("#digits", digits);
        await tablet.GetByRole(AriaRole.Button, new() { Name = "Join the evening" }).ClickAsync();
        await tablet.WaitForURLAsync("**/mat**");
        await tablet.Locator(".tile").First.WaitForAsync();
    }

    public static ILocator Tile(IPage tablet, string name) => tablet.Locator(".tile").Filter(new() { Has = tablet.GetByText(name, new() { Exact = true }) });
}
