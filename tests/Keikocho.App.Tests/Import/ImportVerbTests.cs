using System.Diagnostics;
using System.Text.Json;
using System.Text.RegularExpressions;
using Keikocho.App.Commands;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Intake;
using Keikocho.Testing;
using Microsoft.Data.Sqlite;

namespace Keikocho.App.Tests.Import;

/// <summary><c>keikocho import</c>.</summary>
public sealed partial class ImportVerbTests : IDisposable
{
    private readonly TempFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task The_examples_of_the_page_print_what_the_page_shows()
    {
        await MakeClubAsync();
        var page = (await File.ReadAllTextAsync(Repository.PathOf("docs/formats/import.md"), Stop)).ReplaceLineEndings("\n");
        foreach (Match file in FileBlock().Matches(page)) await File.WriteAllTextAsync(_folder.File(file.Groups[2].Value), file.Groups[3].Value, Stop);
        var run = 0;
        foreach (Match example in ConsoleBlock().Matches(page))
        {
            var lines = example.Groups[1].Value.TrimEnd('\n').Split('\n');
            Assert.StartsWith("$ keikocho ", lines[0], StringComparison.Ordinal);
            var (code, said) = await RunAsync(lines[0]["$ keikocho ".Length..].Split(' '));
            Assert.Equal(string.Join('\n', lines[1..^1]), said);
            Assert.Equal(lines[^1], $"exit code {code}");
            run++;
        }

        Assert.True(run >= 3);
    }

    [Fact]
    public async Task Open_doubts_change_nothing_a_template_is_filled_in_and_the_same_file_again_doubles_nobody()
    {
        await MakeClubAsync();
        var file = ImportWalk.PathOf("messy-roster.xlsx");
        var (refused, said) = await RunAsync("import", file, "--club", "club.keikocho", "--take-proposed", "--write-answers", "answers.json");
        Assert.Equal(ExitCode.Refused, refused);
        Assert.Contains("order:4", said, StringComparison.Ordinal);
        Assert.Contains("nothing was changed", said, StringComparison.Ordinal);
        Assert.Equal(1, People());
        for (var round = 0; round < 10 && refused != ExitCode.Done; round++)
        {
            var answers = JsonSerializer.Deserialize<Dictionary<string, string>>(await File.ReadAllTextAsync(_folder.File("answers.json"), Stop))!;
            foreach (var key in answers.Where(pair => pair.Value.Length == 0).Select(pair => pair.Key).ToList())
                answers[key] = key.StartsWith("order", StringComparison.Ordinal) ? "day-first" : key.StartsWith("twice", StringComparison.Ordinal) || key.StartsWith("nearly", StringComparison.Ordinal) ? "one" : key.Contains(":name", StringComparison.Ordinal) ? "keep" : "leave-out";
            await File.WriteAllTextAsync(_folder.File("answers.json"), JsonSerializer.Serialize(answers), Stop);
            (refused, said) = await RunAsync("import", file, "--club", "club.keikocho", "--answers", "answers.json", "--take-proposed", "--write-answers", "answers.json");
        }

        Assert.True(refused == ExitCode.Done, said);
        var count = People();
        Assert.InRange(count, 61, 62);
        var (again, json) = await RunAsync("import", file, "--club", "club.keikocho", "--answers", "answers.json", "--take-proposed", "--json");
        Assert.Equal(ExitCode.Done, again);
        Assert.Equal(0, JsonDocument.Parse(json).RootElement.GetProperty("counts").EnumerateObject().Where(c => c.Name == "new").Sum(c => c.Value.GetInt32()));
        Assert.Equal(count, People());
    }

    [Theory]
    [InlineData("There is no file", "import", "none.csv", "--club", "club.keikocho")]
    [InlineData("There is no club's file", "import", "a.csv", "--club", "none.keikocho")]
    [InlineData("has no programme 'Teens'", "import", "a.csv", "--club", "club.keikocho", "--programme", "Teens")]
    [InlineData("are no JSON object", "import", "a.csv", "--club", "club.keikocho", "--answers", "a.csv")]
    [InlineData("is not a spreadsheet|is a database", "import", "club.keikocho", "--club", "club.keikocho")]
    public async Task What_cannot_be_done_is_one_sentence(string words, params string[] args)
    {
        await MakeClubAsync();
        await File.WriteAllTextAsync(_folder.File("a.csv"), "First name,Surname\nAda,Brook\n", Stop);
        var (code, said) = await RunAsync(args);
        Assert.Equal(ExitCode.Refused, code);
        Assert.Contains(words.Split('|'), word => said.Contains(word, StringComparison.Ordinal));
        Assert.Single(said.Split('\n'));
        Assert.Equal(1, People());
    }

    [Fact]
    public async Task A_process_killed_in_the_middle_of_saving_leaves_nothing_by_halves()
    {
        await MakeClubAsync();
        await File.WriteAllBytesAsync(_folder.File("many.csv"), Many.Roster(5_000), Stop);
        SqliteConnection.ClearAllPools();
        var club = await File.ReadAllBytesAsync(_folder.File("club.keikocho"), Stop);
        var wal = _folder.File("club.keikocho-wal");
        int before = 0, after = 0;
        // Killed as soon as the log holds so much of the save; then later and later, until one comes to its end.
        foreach (var bytes in new[] { 200_000L, 1_000_000, 2_000_000, 4_000_000, long.MaxValue })
        {
            SqliteConnection.ClearAllPools();
            await File.WriteAllBytesAsync(_folder.File("club.keikocho"), club, Stop);
            File.Delete(wal);
            File.Delete(_folder.File("club.keikocho-shm"));
            using var process = StartProcess("import", "many.csv", "--club", "club.keikocho", "--take-proposed");
            var watch = Stopwatch.StartNew();
            while (!process.HasExited && watch.Elapsed < TimeSpan.FromSeconds(60))
            {
                var log = new FileInfo(wal);
                if (log.Exists && log.Length > bytes)
                {
                    process.Kill();
                    break;
                }

                await Task.Delay(1, Stop);
            }

            await process.WaitForExitAsync(Stop);
            using var db = new SqliteEngine(_folder.File("club.keikocho")).OpenDb();
            var people = db.People.Count();
            Assert.True(people is 1 or 5_001, $"{people} people");
            Assert.Equal(people - 1, db.Enrolments.Count());
            Assert.Equal(people - 1, db.Contacts.Count());
            Assert.Equal(people - 1, db.Registrations.Count());
            Assert.Equal(people == 1 ? 0 : 1, db.Readings.Count(r => r.Stage == ReadingStage.Saved));
            if (people == 1) before++;
            else after++;
        }

        Assert.True(before > 0 && after > 0, $"{before} were killed before the end, {after} came to it");
    }

    private Process StartProcess(params string[] args)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = _folder.Path };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "keikocho.dll"));
        foreach (var arg in args) start.ArgumentList.Add(arg);
        return Process.Start(start)!;
    }

    private async Task MakeClubAsync()
    {
        var engine = new SqliteEngine(_folder.File("club.keikocho"));
        await engine.UpgradeAsync(TimeProvider.System.GetUtcNow(), Stop);
        await using (var writer = new WriterQueue(engine, TimeProvider.System))
            await new ClubStore(writer).MakeAsync(new NewClub("Lockside", "Maren", "Holt", "Juniors", "Europe/London", PaperChoice.A4), new Guid(1, 2, 3, new byte[8]), new DateOnly(2026, 9, 1), Stop);
        engine.Release();
    }

    private int People()
    {
        var engine = new SqliteEngine(_folder.File("club.keikocho"));
        using var db = engine.OpenDb();
        return db.People.Count();
    }

    /// <summary>Runs the verb with names that stand in the folder of this test; both outputs, one after the other.</summary>
    private async Task<(int Code, string Said)> RunAsync(params string[] args)
    {
        using var output = new StringWriter();
        using var complaints = new StringWriter();
        var placed = args.Select(arg => arg.EndsWith(".csv", StringComparison.Ordinal) || arg.EndsWith(".json", StringComparison.Ordinal) || arg.EndsWith(".keikocho", StringComparison.Ordinal) ? _folder.File(arg) : arg).ToList();
        var code = await CommandLine.RunAsync(placed, output, complaints);
        return (code, (output.ToString() + complaints).ReplaceLineEndings("\n").TrimEnd().Replace(_folder.Path + Path.DirectorySeparatorChar, "", StringComparison.Ordinal));
    }

    [GeneratedRegex(@"^```(csv|json) file=(\S+)\n(.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex FileBlock();
    [GeneratedRegex(@"^```console\n(.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex ConsoleBlock();
}
