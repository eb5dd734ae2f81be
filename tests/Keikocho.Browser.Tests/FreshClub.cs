using Keikocho.App.Tests.Shell;
using Keikocho.Testing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace Keikocho.Browser.Tests;

/// <summary>A club's own file that does not exist yet.</summary>
internal static class FreshClub
{
    public static Task<RunningApp> StartAsync(FixedTime time) =>
        RunningApp.StartAsync(services => services.AddSingleton<TimeProvider>(time), isDemo: false);

    /// <summary>The first page of all, filled in for a club with two evenings a week in the autumn of 2026.</summary>
    public static async Task OpenTheNotebookAsync(IPage page, string name)
    {
        await page.GotoAsync("/");
        await page.GetByLabel("Name of the club").FillAsync(name);
        await page.GetByLabel("Your first name").FillAsync("Ottoline");
        await page.GetByLabel("Your family name").FillAsync("Marsh");
        await page.GetByLabel("Time zone").SelectOptionAsync("Europe/London");
        await page.Locator("#weekday1").SelectOptionAsync("Tuesday");
        await page.Locator("#weekday2").SelectOptionAsync("Thursday");
        await page.Locator("#termFrom").FillAsync("2026-09-01");
        await page.Locator("#termTo").FillAsync("2026-12-18");
        await page.GetByRole(AriaRole.Button, new() { Name = "Open the notebook" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("The first evening");
    }
}
