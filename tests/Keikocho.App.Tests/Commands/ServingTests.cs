using System.Net;
using Keikocho.App.Commands;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Commands;

/// <summary>What works, and what is refused, on a file that a serving process has open.</summary>
public sealed class ServingTests(DemoFile demo) : IClassFixture<DemoFile>, IDisposable
{
    private readonly TempFolder folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task While_it_serves_a_club_is_checked_copied_and_archived_but_not_restored()
    {
        var file = demo.CopyTo(folder);
        Assert.Equal(ExitCode.Done, (await BuiltProgram.HereAsync("backup", file, folder.File("before.keikocho"))).Code);
        using var process = BuiltProgram.Start(folder.Path, ["serve", file, "--port", "0"]);
        try
        {
            var opened = await process.StandardOutput.ReadLineAsync(Stop);
            Assert.StartsWith("Keikocho is open at ", opened, StringComparison.Ordinal);
            using var browser = new HttpClient { BaseAddress = new Uri(opened!["Keikocho is open at ".Length..]) };
            Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/", Stop)).StatusCode);

            Assert.Equal(ExitCode.Done, (await BuiltProgram.HereAsync("check", file)).Code);
            Assert.Equal(ExitCode.Done, (await BuiltProgram.HereAsync("backup", file, folder.File("copy.keikocho"))).Code);
            Assert.Equal(ExitCode.Done, (await BuiltProgram.HereAsync("check", folder.File("copy.keikocho"))).Code);
            Assert.Equal(ExitCode.Done, (await BuiltProgram.HereAsync("archive", "out", file, folder.File("club.zip"))).Code);

            var demoOver = await BuiltProgram.HereAsync("demo", file);
            Assert.Equal(ExitCode.Refused, demoOver.Code);
            var restored = await BuiltProgram.HereAsync("restore", folder.File("before.keikocho"), file);
            Assert.Equal(ExitCode.Refused, restored.Code);
            Assert.Contains("is in use. Close Keikocho", restored.Complaints, StringComparison.Ordinal);
            Assert.Empty(Directory.GetFiles(folder.Path, "*.before-restore-*"));

            Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/", Stop)).StatusCode);
            Assert.Equal(0, await BuiltProgram.CloseAsync(process));
        }
        finally
        {
            if (!process.HasExited)
                process.Kill();
        }

        Assert.Equal(ExitCode.Done, (await BuiltProgram.HereAsync("restore", folder.File("before.keikocho"), file)).Code);
    }
}
