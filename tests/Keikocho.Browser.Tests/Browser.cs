using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Keikocho.Testing;
using Microsoft.Playwright;

namespace Keikocho.Browser.Tests;

/// <summary>One real Chromium for all tests of this project; each test has a window of its own, without a memory.</summary>
public sealed class Browser : IAsyncLifetime
{
    private IPlaywright? playwright;
    private IBrowser? chromium;

    public async ValueTask InitializeAsync()
    {
        if (Tool.Find(Environment.GetEnvironmentVariable("PATH") ?? "", ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"]) is null
            && Environment.GetEnvironmentVariable("KEIKOCHO_TEST_CHROMIUM") is null)
            return; // Each test then skips by name.
        playwright = await Playwright.CreateAsync();
        chromium = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Tool.ChromiumOrSkip(),
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync",
            ],
        });
    }

    /// <summary>A window on the app. Whatever it says on its console or asks of any other host fails the test when it is closed.</summary>
    public async Task<Window> OpenAsync(Uri address, int width = 1280, int height = 800, bool evening = false, bool script = true)
    {
        Tool.ChromiumOrSkip();
        var context = await chromium!.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = address.ToString(),
            ViewportSize = new ViewportSize { Width = width, Height = height },
            ColorScheme = evening ? ColorScheme.Dark : ColorScheme.Light,
            Locale = "en-GB",
            TimezoneId = "Europe/London",
            JavaScriptEnabled = script,
            ServiceWorkers = ServiceWorkerPolicy.Block,
        });
        return new Window(await context.NewPageAsync(), address);
    }

    public async ValueTask DisposeAsync()
    {
        if (chromium is not null) await chromium.DisposeAsync();
        playwright?.Dispose();
    }
}

/// <summary>One window of the browser and what it heard.</summary>
public sealed class Window : IAsyncDisposable
{
    private readonly List<string> heard = [];

    public Window(IPage page, Uri address)
    {
        Page = page;
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning") heard.Add($"console: {message.Text}");
        };
        page.PageError += (_, error) => heard.Add($"script: {error}");
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(address.ToString(), StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal))
                heard.Add($"asked another host: {request.Url}");
        };
    }

    public IPage Page { get; }

    /// <summary>What a person must not see: errors on the console, requests to other hosts.</summary>
    public IReadOnlyList<string> Heard => heard;

    /// <summary>Chooses the first adult where the page asks who holds this device.</summary>
    public async Task HoldAsync(string address)
    {
        await Page.GotoAsync($"/acting?from={Uri.EscapeDataString(address)}");
        await Page.Locator("button[name=adult]").First.ClickAsync();
    }

    /// <summary>What axe finds, a line each; empty when it finds nothing.</summary>
    public async Task<IReadOnlyList<string>> AxeAsync()
    {
        var result = await Page.RunAxe(new AxeRunOptions { ResultTypes = new HashSet<ResultType> { ResultType.Violations } });
        return [.. result.Violations.SelectMany(v => v.Nodes.Select(n => $"{v.Id}: {v.Help}: {n.Html}"))];
    }

    public async ValueTask DisposeAsync() => await Page.Context.DisposeAsync();
}

/// <summary>The tests that share the one browser.</summary>
[CollectionDefinition(Name)]
public sealed class BrowserTests : ICollectionFixture<Browser>
{
    public const string Name = "browser";
}
