using System.Net;
using System.Text.RegularExpressions;
using Keikocho.App.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.App.Tests.Shell;

/// <summary>The real application on a real, free port, with a data folder of its own that is gone afterwards.</summary>
public sealed partial class RunningApp : IAsyncDisposable
{
    private readonly string _folder;

    private RunningApp(WebApplication app, string folder)
    {
        App = app;
        _folder = folder;
        Address = KeikochoHost.AddressOf(app);
    }

    public WebApplication App { get; }

    public Uri Address { get; }

    public static async Task<RunningApp> StartAsync(
        Action<IServiceCollection>? change = null, Action<WebApplication>? add = null, string? folder = null, bool isDemo = true)
    {
        folder ??= Directory.CreateTempSubdirectory("keikocho-test-").FullName;
        var club = new ServedClub(Path.Combine(folder, "club.keikocho"), folder, IsDemo: isDemo);
        var app = KeikochoHost.Build(club, IPAddress.Loopback, 0, change, add);
        await KeikochoHost.StartAsync(app, TestContext.Current.CancellationToken);
        return new RunningApp(app, folder);
    }

    /// <summary>A browser without a memory of other tests; it follows no redirect by itself.</summary>
    public HttpClient Browser() => new(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = true, CookieContainer = new CookieContainer() })
    {
        BaseAddress = Address,
    };

    /// <summary>The token of the page's first form.</summary>
    public static async Task<string> TokenAsync(HttpClient browser, string page)
    {
        var html = await browser.GetStringAsync(page, TestContext.Current.CancellationToken);
        return Token().Match(html) is { Success: true } found ? found.Groups[1].Value : throw new InvalidOperationException($"{page} holds no token");
    }

    public static Task<HttpResponseMessage> PostAsync(HttpClient browser, string address, params (string Name, string Value)[] fields) =>
        browser.PostAsync(address, new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value))), TestContext.Current.CancellationToken);

    public async ValueTask DisposeAsync()
    {
        await App.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [GeneratedRegex("name=\"page-token\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
