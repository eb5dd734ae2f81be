using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;

namespace Keikocho.Bench;

/// <summary>The built application in a process of its own.</summary>
internal sealed partial class Server : IAsyncDisposable
{
    private readonly Process process;

    private Server(Process process, Uri address, TimeSpan opened)
    {
        this.process = process;
        Address = address;
        Opened = opened;
    }

    public Uri Address { get; }

    /// <summary>From the start of the process to the line that says it is open.</summary>
    public TimeSpan Opened { get; }

    public static Task<Server> StartAsync(string file, string folder) => StartAsync(["serve", file, "--port", "0"], folder);

    /// <summary>The small demo club, kept in the folder; started again on the same day it is the same club.</summary>
    public static Task<Server> DemoAsync(string folder) => StartAsync(["serve", "--demo", "--port", "0"], folder);

    private static async Task<Server> StartAsync(string[] arguments, string folder)
    {
        var watch = Stopwatch.StartNew();
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "keikocho.dll"), .. arguments])
        {
            RedirectStandardOutput = true,
            Environment = { ["KEIKOCHO_DATA"] = Path.Combine(folder, "data") },
        };
        Directory.CreateDirectory(Path.Combine(folder, "data"));
        var process = Process.Start(start)!;
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (Address_().Match(line) is { Success: true } found) return new Server(process, new Uri(found.Value), watch.Elapsed);
        }

        throw new InvalidOperationException("The application ended before it was open.");
    }

    /// <summary>A client with a memory of its own, on which the first adult acts.</summary>
    public async Task<HttpClient> ClientAsync()
    {
        var client = new HttpClient(new SocketsHttpHandler { CookieContainer = new CookieContainer(), AllowAutoRedirect = false }) { BaseAddress = Address };
        var html = await client.GetStringAsync("/acting?from=%2Ftonight");
        var adult = Adult().Match(html).Groups[1].Value;
        await client.PostAsync("/acting", new FormUrlEncodedContent([new("page-token", Token().Match(html).Groups[1].Value), new("adult", adult), new("from", "/tonight")]));
        return client;
    }

    /// <summary>Resident memory in MiB.</summary>
    public double MemoryMiB()
    {
        var line = File.ReadLines($"/proc/{process.Id}/status").First(l => l.StartsWith("VmRSS:", StringComparison.Ordinal));
        return int.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture) / 1024.0;
    }

    public async ValueTask DisposeAsync()
    {
        process.Kill(entireProcessTree: true);
        await process.WaitForExitAsync();
        process.Dispose();
    }

    [GeneratedRegex("http://[^ ]+")]
    private static partial Regex Address_();

    [GeneratedRegex("name=\"adult\" value=\"([^\"]+)\"")]
    private static partial Regex Adult();

    [GeneratedRegex("name=\"page-token\" value=\"([^\"]+)\"")]
    public static partial Regex Token();
}
