using System.Diagnostics;
using Keikocho.Testing;
using Microsoft.Playwright;

namespace Keikocho.Browser.Tests;

/// <summary>
/// A Chromium with a home of its own, whose store of authorities holds the hall's or not: what a tablet's owner does in the settings is
/// done here with certutil, the tool that the browser's maker names for it.
/// </summary>
internal sealed class TrustingBrowser : IAsyncDisposable
{
    private readonly IPlaywright playwright;
    private readonly IBrowser chromium;
    private readonly TempFolder home;

    private TrustingBrowser(IPlaywright playwright, IBrowser chromium, TempFolder home) => (this.playwright, this.chromium, this.home) = (playwright, chromium, home);

    /// <param name="authority">The authority's certificate (DER) to trust; null for a tablet that knows none.</param>
    public static async Task<TrustingBrowser> StartAsync(byte[]? authority)
    {
        var executable = Tool.ChromiumOrSkip();
        var certutil = Tool.Find(Environment.GetEnvironmentVariable("PATH") ?? "", ["certutil"]);
        Assert.SkipWhen(certutil is null, "certutil is not on this machine (Debian: libnss3-tools).");
        var home = new TempFolder();
        if (authority is not null)
        {
            var store = Path.Combine(home.Path, ".pki", "nssdb");
            Directory.CreateDirectory(store);
            var file = Path.Combine(home.Path, "hall.crt");
            await File.WriteAllBytesAsync(file, authority);
            await RunAsync(certutil!, "-d", $"sql:{store}", "-N", "--empty-password");
            await RunAsync(certutil!, "-d", $"sql:{store}", "-A", "-t", "C,,", "-n", "hall", "-i", file);
        }

        var playwright = await Playwright.CreateAsync();
        var environment = Environment.GetEnvironmentVariables().Cast<System.Collections.DictionaryEntry>()
            .Where(e => (string)e.Key is not ("HOME" or "XDG_CONFIG_HOME" or "XDG_CACHE_HOME")).ToDictionary(e => (string)e.Key, e => (string?)e.Value ?? "");
        environment["HOME"] = home.Path;
        var chromium = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = executable,
            Env = environment!,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
        return new TrustingBrowser(playwright, chromium, home);
    }

    /// <summary>A tablet: a window with a memory of its own.</summary>
    /// <param name="address">The laptop's door.</param>
    /// <param name="throughTheWarning">Whether whoever holds it went on past the browser's warning.</param>
    public async Task<IPage> TabletAsync(Uri address, int width = 1280, int height = 800, bool throughTheWarning = false)
    {
        var context = await chromium.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = address.ToString(),
            ViewportSize = new ViewportSize { Width = width, Height = height },
            Locale = "en-GB",
            TimezoneId = "Europe/London",
            IgnoreHTTPSErrors = throughTheWarning,
        });
        return await context.NewPageAsync();
    }

    private static async Task RunAsync(string program, params string[] arguments)
    {
        using var run = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        await run.WaitForExitAsync();
        if (run.ExitCode != 0) throw new InvalidOperationException(await run.StandardError.ReadToEndAsync());
    }

    public async ValueTask DisposeAsync()
    {
        await chromium.DisposeAsync();
        playwright.Dispose();
        home.Dispose();
    }
}
