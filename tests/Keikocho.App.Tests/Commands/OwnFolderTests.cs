using System.Diagnostics;
using System.Net;
using System.Runtime.InteropServices;
using System.Text;
using Keikocho.App.Papers;
using Keikocho.App.Sizes;
using Keikocho.App.Tests.Shell;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Commands;

/// <summary>
/// The folder that a club carries home, made as <c>eng/make-folders.sh</c> makes it and started where neither an SDK nor a runtime is found.
/// </summary>
public sealed class OwnFolderTests : IDisposable
{
    private static readonly TimeSpan MakingIt = TimeSpan.FromMinutes(15);

    private readonly TempFolder folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_folder_runs_alone_serves_the_demo_club_prints_seals_and_answers_a_question()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the script makes this machine’s folder on Linux");
        var program = await MakeAsync();

        using var serving = Start(program, "serve", "--demo", "--port", "0");
        try
        {
            var opened = await serving.StandardOutput.ReadLineAsync(Stop);
            Assert.StartsWith("Keikocho is open at ", opened, StringComparison.Ordinal);
            using var browser = new HttpClient(new SocketsHttpHandler { CookieContainer = new CookieContainer() })
            {
                BaseAddress = new Uri(opened!["Keikocho is open at ".Length..]),
            };
            Assert.Contains("Tonight", await browser.GetStringAsync("/", Stop), StringComparison.Ordinal);
            var paper = await browser.GetByteArrayAsync(PapersAddress.Blank + "?span=month", Stop);
            Assert.Equal("%PDF-"u8.ToArray(), paper[..5]);
            // The lock brings a native library of its own.
            const string words = "seven wet towels on the radiator";
            var made = await RunningApp.PostAsync(browser, SizesAddress.Make,
                ("page-token", await RunningApp.TokenAsync(browser, SizesAddress.Lock)), ("passphrase", words), ("again", words));
            Assert.Equal(HttpStatusCode.OK, made.StatusCode);
            Assert.Equal(0, await BuiltProgram.CloseAsync(serving));
        }
        finally
        {
            if (!serving.HasExited)
                serving.Kill();
        }

        var page = await File.ReadAllTextAsync(Repository.PathOf("docs/formats/clock.md"), Stop);
        var question = Encoding.UTF8.GetBytes(Assert.Single(Fences.Of(page), fence => fence.Mark == "json question").Text);
        using var asked = Start(program, "clock", "-");
        await asked.StandardInput.BaseStream.WriteAsync(question, Stop);
        asked.StandardInput.Close();
        Assert.Equal((await BuiltProgram.RunAsync(folder.Path, question, ["clock", "-"])).Answers, await asked.StandardOutput.ReadToEndAsync(Stop));
    }

    private async Task<string> MakeAsync()
    {
        var start = new ProcessStartInfo("bash", [Repository.PathOf("eng/make-folders.sh"), folder.Path, RuntimeInformation.RuntimeIdentifier])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var making = Process.Start(start)!;
        var said = making.StandardOutput.ReadToEndAsync(Stop);
        var complaints = making.StandardError.ReadToEndAsync(Stop);
        await making.WaitForExitAsync(Stop).WaitAsync(MakingIt, Stop);
        Assert.True(making.ExitCode == 0, $"{await said}{await complaints}");
        return Path.Combine(folder.Path, $"keikocho-{RuntimeInformation.RuntimeIdentifier}", "keikocho");
    }

    /// <summary>Nothing of this machine's .NET is in its environment.</summary>
    private Process Start(string program, params string[] args)
    {
        var start = new ProcessStartInfo(program, args)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = new UTF8Encoding(false, throwOnInvalidBytes: true),
            WorkingDirectory = folder.Path,
        };
        var mark = Environment.GetEnvironmentVariable("KEIKOCHO_TEST_RUN");
        start.Environment.Clear();
        start.Environment["PATH"] = folder.Path;
        start.Environment["DOTNET_ROOT"] = folder.File("no-runtime-here");
        start.Environment["KEIKOCHO_DATA"] = folder.File("data");
        if (mark is not null)
            start.Environment["KEIKOCHO_TEST_RUN"] = mark;
        return Process.Start(start)!;
    }
}
