using System.Globalization;
using System.Text.Json.Nodes;
using Keikocho.App.Commands;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Commands;

/// <summary>demo, backup, restore, check and archive on files.</summary>
public sealed class VerbTests(DemoFile demo) : IClassFixture<DemoFile>, IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_demo_is_written_whole_and_sound()
    {
        Assert.Equal("", demo.Written.Complaints);
        Assert.Equal(ExitCode.Done, demo.Written.Code);
        Assert.Contains("The demo club for 3 March 2026 is in", demo.Written.Answers, StringComparison.Ordinal);
        var check = await BuiltProgram.HereAsync("check", demo.CopyTo(folder), "--thorough");
        Assert.Contains("all is well", check.Answers, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Done, check.Code);
    }

    [Fact]
    public async Task The_same_day_and_number_make_the_same_club_and_another_number_another()
    {
        foreach (var (name, number) in new[] { ("a", "7"), ("b", "7"), ("c", "8") })
            Assert.Equal(ExitCode.Done, (await BuiltProgram.HereAsync("demo", folder.File(name + ".keikocho"), "--day", "2026-03-03", "--number", number)).Code);
        // Nothing is left of the names that the files had while they were made.
        Assert.Equal(3, Directory.GetFileSystemEntries(folder.Path).Length);
        Assert.Equal(Marks("a"), Marks("b"));
        Assert.NotEqual(Marks("a"), Marks("c"));

        string Marks(string name)
        {
            using var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={folder.File(name + ".keikocho")};Pooling=False;Mode=ReadOnly");
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "SELECT group_concat(hex(Id)) FROM (SELECT Id FROM Marks ORDER BY Id)";
            return (string)command.ExecuteScalar()!;
        }
    }

    [Fact]
    public async Task A_demo_of_a_day_to_come_is_written_too()
    {
        var ended = await BuiltProgram.HereAsync("demo", folder.File("a.keikocho"), "--day", "2100-12-31");
        Assert.Equal("", ended.Complaints);
        Assert.Equal(ExitCode.Done, ended.Code);
    }

    [Fact]
    public async Task A_copy_is_sound_and_comes_back_and_what_was_there_is_kept()
    {
        var file = demo.CopyTo(folder);
        var copied = await BuiltProgram.HereAsync("backup", file, folder.File("copy.keikocho"));
        Assert.Equal(ExitCode.Done, copied.Code);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{new FileInfo(folder.File("copy.keikocho")).Length:N0} bytes"), copied.Answers, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Done, (await BuiltProgram.HereAsync("check", folder.File("copy.keikocho"))).Code);

        var fresh = await BuiltProgram.HereAsync("restore", folder.File("copy.keikocho"), folder.File("fresh.keikocho"));
        Assert.Equal(ExitCode.Done, fresh.Code);
        Assert.DoesNotContain("is kept in", fresh.Answers, StringComparison.Ordinal);
        var over = await BuiltProgram.HereAsync("restore", folder.File("copy.keikocho"), file);
        Assert.Equal(ExitCode.Done, over.Code);
        var kept = Assert.Single(Directory.GetFiles(folder.Path, "club.keikocho.before-restore-*"), path => !path.EndsWith("-wal", StringComparison.Ordinal) && !path.EndsWith("-shm", StringComparison.Ordinal));
        Assert.Contains($"What was there before is kept in {kept}.", over.Answers, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Done, (await BuiltProgram.HereAsync("check", file)).Code);
    }

    [Theory]
    [InlineData("club.zip")]
    [InlineData("club-archive")]
    public async Task An_archive_out_and_in_is_the_same_club(string archive)
    {
        var written = await BuiltProgram.HereAsync("archive", "out", demo.CopyTo(folder), folder.File(archive));
        Assert.Equal(ExitCode.Done, written.Code);
        Assert.Contains("stand open in it", written.Answers, StringComparison.Ordinal);
        var read = await BuiltProgram.HereAsync("archive", "in", folder.File(archive), folder.File("again.keikocho"));
        Assert.Equal(ExitCode.Done, read.Code);
        var (before, after) = (await JsonAsync(folder.File("club.keikocho")), await JsonAsync(folder.File("again.keikocho")));
        foreach (var count in new[] { "marks", "states", "sealedValues" })
            Assert.Equal(before[count]!.GetValue<long>(), after[count]!.GetValue<long>());
        Assert.True(after["sound"]!.GetValue<bool>());
    }

    [Fact]
    public async Task Each_problem_of_a_check_is_one_sentence_and_the_number_is_1()
    {
        var file = demo.CopyTo(folder);
        DemoFile.Change(file, "DELETE FROM \"Attendances\" WHERE (\"LessonId\", \"PersonId\") = (SELECT \"LessonId\", \"PersonId\" FROM \"Attendances\" LIMIT 1)");
        var words = await BuiltProgram.HereAsync("check", file);
        Assert.Equal(ExitCode.Refused, words.Code);
        Assert.Equal("", words.Complaints);
        var lines = words.Answers.TrimEnd().ReplaceLineEndings("\n").Split('\n');
        Assert.Equal(2, lines.Length);
        Assert.StartsWith("States: ", lines[0], StringComparison.Ordinal);
        Assert.Contains("and no state", lines[0], StringComparison.Ordinal);
        Assert.StartsWith($"{file}: 1 problem; looked at", lines[1], StringComparison.Ordinal);

        var json = await JsonAsync(file, ExitCode.Refused);
        Assert.False(json["sound"]!.GetValue<bool>());
        Assert.Equal("states", Assert.Single(json["problems"]!.AsArray())!["part"]!.GetValue<string>());
    }

    private static async Task<JsonNode> JsonAsync(string file, int code = ExitCode.Done)
    {
        var ended = await BuiltProgram.HereAsync("check", file, "--json");
        Assert.Equal(code, ended.Code);
        return JsonNode.Parse(ended.Answers)!;
    }
}
