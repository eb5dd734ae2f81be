using System.Net;
using Keikocho.App.Commands;
using Keikocho.Testing;
using Npgsql;

namespace Keikocho.App.Tests.Commands;

/// <summary>The verbs on a PostgreSQL database that holds several clubs.</summary>
public sealed class DatabaseVerbTests(PostgresDatabase database) : IClassFixture<PostgresDatabase>, IDisposable
{
    private readonly TempFolder folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Clubs_of_a_database_are_made_checked_archived_and_served_each_by_its_number()
    {
        var text = await database.AnotherAsync();
        var name = new NpgsqlConnectionStringBuilder(text).Database;
        Says(ExitCode.Refused, "holds no club", await BuiltProgram.HereAsync("check", "--database", text));
        Says(ExitCode.Done, $"is in the PostgreSQL database {name} on", await BuiltProgram.HereAsync("demo", "--database", text, "--day", "2026-03-03"));
        Says(ExitCode.Refused, "There is a club in", await BuiltProgram.HereAsync("demo", "--database", text, "--day", "2026-03-03"));
        Says(ExitCode.Done, "all is well", await BuiltProgram.HereAsync("check", "--database", text));
        Says(ExitCode.Refused, "holds no club yet", await BuiltProgram.HereAsync("check", "--database", text, "--club", "2"));

        Says(ExitCode.Done, "stand open", await BuiltProgram.HereAsync("archive", "out", "--database", text, folder.File("club.zip")));
        Says(ExitCode.Done, "club.zip is in the PostgreSQL database", await BuiltProgram.HereAsync("archive", "in", folder.File("club.zip"), "--database", text, "--club", "2"));
        Says(ExitCode.Refused, "already holds a club", await BuiltProgram.HereAsync("archive", "in", folder.File("club.zip"), "--database", text, "--club", "2"));
        Says(ExitCode.Done, "all is well", await BuiltProgram.HereAsync("check", "--database", text, "--club", "2"));
        Says(ExitCode.Done, "club.zip is in", await BuiltProgram.HereAsync("archive", "in", folder.File("club.zip"), folder.File("club.keikocho")));
        Says(ExitCode.Done, "all is well", await BuiltProgram.HereAsync("check", folder.File("club.keikocho")));

        Says(ExitCode.Refused, "pg_dump --format=custom", await BuiltProgram.HereAsync("backup", folder.File("copy"), "--database", text));
        Assert.False(File.Exists(folder.File("copy")));
    }

    [Fact]
    public async Task A_club_of_a_database_is_served_and_its_password_is_not_printed()
    {
        // A throw-away server asks for no password: whatever is given is let pass, and must not be seen again.
        var text = new NpgsqlConnectionStringBuilder(await database.AnotherAsync()) { Password = "sesam" }.ConnectionString;
        using var process = BuiltProgram.Start(folder.Path, ["serve", "--database", text, "--club", "3", "--port", "0"]);
        try
        {
            var opened = await process.StandardOutput.ReadLineAsync(Stop);
            Assert.StartsWith("Keikocho is open at ", opened, StringComparison.Ordinal);
            var keeps = await process.StandardOutput.ReadLineAsync(Stop);
            Assert.StartsWith("It keeps your club in the PostgreSQL database", keeps, StringComparison.Ordinal);
            using var browser = new HttpClient();
            using var page = await browser.GetAsync(opened!["Keikocho is open at ".Length..], Stop);
            Assert.Equal(HttpStatusCode.OK, page.StatusCode);
            Assert.Equal("/start", page.RequestMessage!.RequestUri!.AbsolutePath);
            Assert.Equal(0, await BuiltProgram.CloseAsync(process));
            var all = keeps + await process.StandardOutput.ReadToEndAsync(Stop) + await process.StandardError.ReadToEndAsync(Stop) + await page.Content.ReadAsStringAsync(Stop);
            Assert.DoesNotContain("sesam", all, StringComparison.Ordinal);
        }
        finally
        {
            if (!process.HasExited)
                process.Kill();
        }
    }

    private static void Says(int code, string words, Ended ended)
    {
        Assert.Contains(words, ended.Answers + ended.Complaints, StringComparison.Ordinal);
        Assert.Equal(code, ended.Code);
        Assert.Equal(code == ExitCode.Done, ended.Complaints.Length == 0);
    }
}
