using Keikocho.Testing;
using Microsoft.Playwright;

namespace Keikocho.Browser.Tests;

/// <summary>The pictures of the guide show the real pages; they are taken again with <c>KEIKOCHO_UPDATE_GOLDEN=1</c>.</summary>
[Collection(BrowserTests.Name)]
public sealed class PicturesOfTheGuideTests(Browser browser)
{
    [Fact]
    public async Task Tonight_is_in_the_guide_as_it_looks_when_the_register_is_taken()
    {
        await using var app = await DemoEvening.StartAsync(DemoEvening.TenMinutesBefore());
        await using var window = await browser.OpenAsync(app.Address);
        await window.HoldAsync("/register");
        // Two children of one name and belt ask once more; this picture does without them.
        var tiles = await window.Page.Locator("form.register > .tiles button.here[name=present]").AllAsync();
        var here = tiles.Where((_, n) => n % 7 != 3).ToList();
        foreach (var tile in here) await tile.ClickAsync();
        foreach (var adult in (await window.Page.Locator("section[aria-labelledby=adults] .here").AllAsync()).Take(4)) await adult.ClickAsync();
        await Assertions.Expect(window.Page.Locator("[data-tally=present]")).ToHaveTextAsync(here.Count.ToString(System.Globalization.CultureInfo.InvariantCulture));
        await window.Page.GotoAsync("/tonight");
        await Assertions.Expect(window.Page.Locator(".top-line")).ToContainTextAsync("needed");
        var picture = await window.Page.ScreenshotAsync();
        Assert.True(picture.Length > 20_000, "The picture is nearly empty.");
        if (Environment.GetEnvironmentVariable(Golden.Variable) == "1")
        {
            var path = Repository.PathOf("docs/guide/tonight.png");
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            await File.WriteAllBytesAsync(path, picture, TestContext.Current.CancellationToken);
        }

        Assert.True(File.Exists(Repository.PathOf("docs/guide/tonight.png")), $"docs/guide/tonight.png is missing. Take it with {Golden.Variable}=1.");
        Assert.Empty(window.Heard);
    }
}
