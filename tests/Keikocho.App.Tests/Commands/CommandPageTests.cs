using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Keikocho.App.Commands;
using Keikocho.Testing;
using Npgsql;

namespace Keikocho.App.Tests.Commands;

/// <summary>
/// Types every example of <c>docs/formats/command-line.md</c> in the order of the page, in one folder, and compares what comes.
/// <c>sh run</c> is a block of commands with their output; <c>json NAME</c> and <c>toml NAME</c> are files to write first. In the output <c>{folder}</c>
/// is the working folder, another word in braces is anything in that line, and a line <c>...</c> is any number of lines.
/// </summary>
public sealed partial class CommandPageTests(PostgresDatabase database) : IClassFixture<PostgresDatabase>, IDisposable
{
    private const string Page = "docs/formats/command-line.md";

    private readonly TempFolder folder = new();
    private Ended last = new(0, "", "");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Every_example_on_the_page_does_what_the_page_says()
    {
        foreach (var fence in Fences.Of(File.ReadAllText(Repository.PathOf(Page))))
        {
            if (fence.Mark.Split(' ') is ["json" or "toml", var name])
                await File.WriteAllTextAsync(folder.File(name), fence.Text, Stop);
            else if (fence.Mark == "sh run")
                await TypeAsync(fence, text => text, text => text);
        }
    }

    [Fact]
    public async Task Every_example_with_a_database_does_what_the_page_says()
    {
        var own = await database.AnotherAsync();
        var parts = new NpgsqlConnectionStringBuilder(own);
        var blocks = Fences.Of(File.ReadAllText(Repository.PathOf(Page))).Where(fence => fence.Mark == "sh run with a database").ToList();
        Assert.NotEmpty(blocks);
        foreach (var fence in blocks)
            await TypeAsync(fence, text => text == EngineChoice.Example.Trim('"') ? own : text, text => text.Replace($"database {parts.Database} on {parts.Host}", "database club on localhost", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_verb_and_every_number_at_the_end_has_its_example()
    {
        var page = File.ReadAllText(Repository.PathOf(Page));
        var typed = string.Join('\n', Fences.Of(page).Where(fence => fence.Mark.StartsWith("sh run", StringComparison.Ordinal)).Select(fence => fence.Text));
        foreach (var verb in AllVerbs.Build())
        {
            Assert.Contains($"$ keikocho {verb.Name} ", typed, StringComparison.Ordinal);
            foreach (var word in verb.Subcommands)
                Assert.Contains($"$ keikocho {verb.Name} {word.Name} ", typed, StringComparison.Ordinal);
            foreach (var option in verb.Options.Concat(verb.Subcommands.SelectMany(word => word.Options)).Where(option => option.Name != "--help"))
                Assert.Contains(option.Name, page, StringComparison.Ordinal);
        }
        foreach (var code in new[] { ExitCode.Done, ExitCode.Refused, ExitCode.WrongUsage })
            Assert.Contains($"$ echo $?\n{code.ToString(CultureInfo.InvariantCulture)}", typed, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("all is well", "all is well", true)]
    [InlineData("all is well", "all is lost", false)]
    [InlineData("made at {time} UTC", "made at 2026-03-03 17:30:00 UTC", true)]
    [InlineData("made at {time} UTC", "made at 2026-03-03 17:30:00", false)]
    [InlineData("{\n...\n}", "{\n  \"a\": 1,\n  \"b\": 2\n}", true)]
    [InlineData("{\n...\n}", "{\n  \"a\": 1", false)]
    [InlineData("one", "one\ntwo", false)]
    [InlineData("", "two", false)]
    public void An_output_that_differs_is_seen(string page, string output, bool same) => Assert.Equal(same, Fits(page, output));

    private async Task TypeAsync(Fence fence, Func<string, string> ownArgument, Func<string, string> ownOutput)
    {
        var lines = fence.Text.Split('\n');
        for (var i = 0; i < lines.Length;)
        {
            Assert.StartsWith("$ ", lines[i], StringComparison.Ordinal);
            var (at, typed) = (fence.Line + i, lines[i][2..]);
            var expected = lines.Skip(++i).TakeWhile(line => !line.StartsWith("$ ", StringComparison.Ordinal)).ToList();
            i += expected.Count;
            var wanted = string.Join('\n', expected);
            string output;
            if (typed == "echo $?")
            {
                output = last.Code.ToString(CultureInfo.InvariantCulture);
            }
            else
            {
                var (args, input) = await WordsAsync(typed);
                args = [.. args.Select(ownArgument)];
                last = args[0] == ServeVerb.Name && !args.Contains("--help")
                    ? await ServeAsync(args, expected.Count)
                    : await BuiltProgram.RunAsync(folder.Path, input, args);
                output = ownOutput((last.Answers + last.Complaints).ReplaceLineEndings("\n").Trim('\n'))
                    .Replace(folder.Path + Path.DirectorySeparatorChar, "{folder}/", StringComparison.Ordinal);
            }
            Assert.True(Fits(wanted, output), $"{Page}, line {at}: {typed}\nsays:\n{output}");
        }
    }

    private async Task<(string[] Args, byte[]? Input)> WordsAsync(string typed)
    {
        var words = Word().Matches(typed).Select(match => match.Value.Trim('"')).ToList();
        Assert.Equal("keikocho", words[0]);
        byte[]? input = null;
        if (words.IndexOf("<") is > 0 and var at)
        {
            input = await File.ReadAllBytesAsync(folder.File(words[at + 1]), Stop);
            words.RemoveRange(at, 2);
        }
        return ([.. words.Skip(1)], input);
    }

    private async Task<Ended> ServeAsync(string[] args, int lines)
    {
        using var process = BuiltProgram.Start(folder.Path, args);
        try
        {
            var said = new StringBuilder();
            for (var i = 0; i < lines && await process.StandardOutput.ReadLineAsync(Stop) is { } line; i++)
                said.Append(line).Append('\n');
            // Refused, it has said nothing there and has ended by itself.
            if (said.Length == 0)
                await process.WaitForExitAsync(Stop).WaitAsync(TimeSpan.FromSeconds(30), Stop);
            var code = await BuiltProgram.CloseAsync(process);
            said.Append(await process.StandardOutput.ReadToEndAsync(Stop));
            return new Ended(code, said.ToString(), await process.StandardError.ReadToEndAsync(Stop));
        }
        finally
        {
            if (!process.HasExited)
                process.Kill();
        }
    }

    private static bool Fits(string page, string output)
    {
        var pattern = new StringBuilder("\\A");
        foreach (var line in page.Split('\n'))
        {
            if (pattern.Length > 2)
                pattern.Append('\n');
            pattern.Append(line == "..."
                ? "(?:.*\n)*?.*"
                : string.Concat(Placeholder().Split(line).Select(part => Placeholder().IsMatch(part) && part != "{folder}" ? "[^\n]+?" : Regex.Escape(part))));
        }
        return Regex.IsMatch(output, pattern.Append("\\z").ToString(), RegexOptions.CultureInvariant, TimeSpan.FromSeconds(10));
    }

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Word();

    [GeneratedRegex("(\\{[a-z]+\\})")]
    private static partial Regex Placeholder();
}
