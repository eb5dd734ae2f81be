using System.Text.Json;
using Keikocho.App.Tests.Shell;
using Keikocho.Testing;

namespace Keikocho.Browser.Tests;

/// <summary>The tablet's own repair of pairs, in a browser, held to the vectors that the program is held to.</summary>
[Collection(BrowserTests.Name)]
public sealed class RepairVectorsTests(Browser browser)
{
    [Fact, Statement(40)]
    public async Task The_tablet_repairs_pairs_as_the_program_does()
    {
        var vectors = await File.ReadAllTextAsync(Path.Combine(Repository.Root, "tests/Keikocho.Core.Tests/Fixtures/partners/repair-vectors.json"), TestContext.Current.CancellationToken);
        await using var app = await RunningApp.StartAsync(isDemo: false);
        await using var window = await browser.OpenAsync(app.Address);
        await window.Page.GotoAsync("/start");
        var wrong = await window.Page.EvaluateAsync<string[]>(
            """
            async (text) => {
              const { mend } = await import("/js/mat/repair.js");
              return JSON.parse(text)
                .map((v) => [v.says, JSON.stringify(v.groups), JSON.stringify(mend(v.table, v.standing, v.here, v.adults))])
                .filter(([, wanted, got]) => wanted !== got).map((v) => v.join(" "));
            }
            """,
            vectors);
        Assert.Empty(wrong);
        using var all = JsonDocument.Parse(vectors);
        Assert.True(all.RootElement.GetArrayLength() > 100);
    }
}
