using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace Keikocho.App.Tests.Commands;

/// <summary>The built program as a process of its own, as a person starts it.</summary>
public sealed class CommandLineTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("keikocho-test-").FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(2, "See: keikocho --help", "--no-such-option")]
    [InlineData(2, "neither a verb nor a club's file", "clok")]
    [InlineData(2, "See: keikocho --help", "serve", "--port", "many")]
    [InlineData(2, "0 to 65535", "serve", "--port", "70000")]
    [InlineData(2, "not both", "serve", "a.keikocho", "--demo")]
    [InlineData(1, "Sign-in and tablets come later", "serve", "--address", "0.0.0.0")]
    [InlineData(1, "Sign-in and tablets come later", "serve", "--address", "192.168.1.20")]
    [InlineData(1, "Sign-in and tablets come later", "serve", "--address", "::")]
    [InlineData(1, "does not exist", "/no/such/folder/club.keikocho")]
    public async Task What_cannot_be_done_is_one_sentence_and_a_number(int code, string words, params string[] args)
    {
        var ended = await RunAsync(args);
        Assert.Equal(code, ended.Code);
        Assert.Contains(words, ended.Complaints, StringComparison.OrdinalIgnoreCase);
        Assert.Single(ended.Complaints.TrimEnd().Split('\n'));
        Assert.DoesNotContain("   at ", ended.Complaints, StringComparison.Ordinal);
        Assert.Empty(ended.Answers);
        Assert.Empty(Directory.GetFiles(_folder, "*.keikocho", SearchOption.AllDirectories));
    }

    [Fact]
    public async Task Help_names_the_verbs_and_is_done()
    {
        var ended = await RunAsync(["--help"]);
        Assert.Equal(0, ended.Code);
        Assert.Contains("serve", ended.Answers, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ASPNETCORE_URLS")]
    [InlineData("DOTNET_URLS")]
    [InlineData("URLS")]
    public async Task A_setting_that_would_open_another_address_is_refused(string variable)
    {
        var ended = await RunAsync(["serve", "--port", "0"], (variable, "http://0.0.0.0:5000"));
        Assert.Equal(1, ended.Code);
        Assert.Contains("come later", ended.Complaints, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wanted_port_that_is_taken_is_refused()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        var port = ((IPEndPoint)taken.LocalEndpoint).Port.ToString(CultureInfo.InvariantCulture);
        var ended = await RunAsync(["serve", "--port", port]);
        Assert.Equal(1, ended.Code);
        Assert.Contains("give another with --port", ended.Complaints, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("club.keikocho")]
    public async Task Without_a_verb_it_opens_a_club_says_where_and_closes_when_asked(string file)
    {
        var path = file.Length == 0 ? Path.Combine(_folder, "demo.keikocho") : Path.Combine(_folder, file);
        // Other hosting settings of the machine are not read at all.
        using var process = Start(file.Length == 0 ? ["--port", "0"] : [path, "--port", "0"],
            ("ASPNETCORE_HTTP_PORTS", "8080"), ("Kestrel__Endpoints__All__Url", "http://0.0.0.0:0"), ("ASPNETCORE_ENVIRONMENT", "Development"));
        try
        {
            var opened = await process.StandardOutput.ReadLineAsync(Stop);
            Assert.StartsWith("Keikocho is open at http://127.0.0.1:", opened, StringComparison.Ordinal);
            Assert.EndsWith(path, await process.StandardOutput.ReadLineAsync(Stop), StringComparison.Ordinal);
            using var browser = new HttpClient();
            using var page = await browser.GetAsync(opened!["Keikocho is open at ".Length..], Stop);
            Assert.Equal(HttpStatusCode.OK, page.StatusCode);
            Assert.Contains("Keikocho", await page.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
            if (!OperatingSystem.IsWindows())
            {
                using var ask = Process.Start("kill", ["-INT", process.Id.ToString(CultureInfo.InvariantCulture)]);
                await process.WaitForExitAsync(Stop).WaitAsync(TimeSpan.FromSeconds(20), Stop);
                Assert.Equal(0, process.ExitCode);
            }
        }
        finally
        {
            if (!process.HasExited)
                process.Kill();
        }
    }

    private async Task<(int Code, string Answers, string Complaints)> RunAsync(string[] args, params (string Name, string Value)[] settings)
    {
        using var process = Start(args, settings);
        var answers = process.StandardOutput.ReadToEndAsync(Stop);
        var complaints = process.StandardError.ReadToEndAsync(Stop);
        try
        {
            await process.WaitForExitAsync(Stop).WaitAsync(TimeSpan.FromSeconds(30), Stop);
            return (process.ExitCode, await answers, await complaints);
        }
        finally
        {
            if (!process.HasExited)
                process.Kill();
        }
    }

    private Process Start(string[] args, params (string Name, string Value)[] settings)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = _folder };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "keikocho.dll"));
        foreach (var arg in args)
            start.ArgumentList.Add(arg);
        start.Environment["KEIKOCHO_DATA"] = _folder;
        foreach (var (name, value) in settings)
            start.Environment[name] = value;
        return Process.Start(start)!;
    }
}
