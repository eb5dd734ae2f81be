using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Keikocho.App.Commands;

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
    [InlineData(2, "See: keikocho serve --help", "serve", "--port", "many")]
    [InlineData(2, "See: keikocho serve --help", "--port", "many")]
    [InlineData(2, "0 to 65535", "serve", "--port", "70000")]
    [InlineData(2, "not both", "serve", "a.keikocho", "--demo")]
    [InlineData(1, "these pages open on this machine only", "serve", "--address", "0.0.0.0")]
    [InlineData(1, "these pages open on this machine only", "serve", "--address", "192.168.1.20")]
    [InlineData(1, "these pages open on this machine only", "serve", "--address", "::")]
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

    [Theory]
    [InlineData("--help")]
    [InlineData("-h")]
    [InlineData("-?")]
    public async Task Help_names_the_verbs_and_is_done(string asked)
    {
        var ended = await RunAsync([asked]);
        Assert.Equal(0, ended.Code);
        Assert.Equal("", ended.Complaints);
        foreach (var verb in AllVerbs.Build())
            Assert.Contains($"\n  {verb.Name} ", ended.Answers.ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }

    public static TheoryData<string> Typed => [.. AllVerbs.Build().SelectMany(verb => verb.Subcommands.Select(word => $"{verb.Name} {word.Name}").Prepend(verb.Name))];

    [Theory, MemberData(nameof(Typed))]
    public async Task Help_of_a_verb_says_how_it_is_typed_and_what_each_word_means(string typed)
    {
        var ended = await BuiltProgram.HereAsync([.. typed.Split(' '), "--help"]);
        Assert.Equal(0, ended.Code);
        Assert.Equal("", ended.Complaints);
        Assert.Contains($" {typed} ", ended.Answers, StringComparison.Ordinal);
        // A name with nothing behind it is not explained; a type of the language is no explanation.
        Assert.DoesNotMatch("(?m)^  (<[A-Z]+>|--[a-z]+)\\s*$", ended.Answers);
        Assert.DoesNotContain("System.", ended.Answers, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_version_is_said()
    {
        var ended = await RunAsync(["--version"]);
        Assert.Equal(0, ended.Code);
        Assert.Matches("^[0-9]+\\.[0-9]+", ended.Answers);
    }

    [Theory]
    [InlineData("ASPNETCORE_URLS")]
    [InlineData("DOTNET_URLS")]
    [InlineData("URLS")]
    public async Task A_setting_that_would_open_another_address_is_refused(string variable)
    {
        var ended = await RunAsync(["serve", "--port", "0"], (variable, "http://0.0.0.0:5000"));
        Assert.Equal(1, ended.Code);
        Assert.Contains("these pages open on this machine only", ended.Complaints, StringComparison.Ordinal);
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
        var path = file.Length == 0 ? Path.Combine(_folder, "data", "demo.keikocho") : Path.Combine(_folder, file);
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
            Assert.Equal(0, await BuiltProgram.CloseAsync(process));
        }
        finally
        {
            if (!process.HasExited)
                process.Kill();
        }
    }

    private Task<Ended> RunAsync(string[] args, params (string Name, string Value)[] settings) =>
        BuiltProgram.RunAsync(_folder, null, args, settings);

    private Process Start(string[] args, params (string Name, string Value)[] settings) =>
        BuiltProgram.Start(_folder, args, settings);
}
