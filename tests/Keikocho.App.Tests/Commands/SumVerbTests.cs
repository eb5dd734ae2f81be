using System.CommandLine;
using System.Text;
using System.Text.Json.Nodes;
using Keikocho.App.Commands;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Commands;

/// <summary>The sums as processes: a question from a file or the standard input, the answer in UTF-8, every slip with its place.</summary>
public sealed class SumVerbTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    private const string Roll = """
        {
          "now": "18:30",
          "people": [
            { "person": "019cb2a0-0000-7000-8000-000000000001", "isAdult": true, "lessons": [] }
          ]
        }
        """;

    private const string Kana = """{"children":[{"child":"受身 José","held":4,"attended":3}]}""";

    [Theory]
    [InlineData(false, "file")]
    [InlineData(true, "file")]
    [InlineData(false, "-")]
    [InlineData(true, "-")]
    public async Task Kana_and_accents_go_in_and_come_out_as_UTF8_with_and_without_a_mark_at_the_beginning(bool mark, string source)
    {
        byte[] question = [.. mark ? Encoding.UTF8.GetPreamble() : [], .. Encoding.UTF8.GetBytes(Kana)];
        await File.WriteAllBytesAsync(folder.File("question.json"), question, TestContext.Current.CancellationToken);
        var ended = source == "-"
            ? await BuiltProgram.RunAsync(folder.Path, question, ["attendance", "-"])
            : await BuiltProgram.RunAsync(folder.Path, null, ["attendance", "question.json"]);
        Assert.Equal("", ended.Complaints);
        Assert.Equal(ExitCode.Done, ended.Code);
        Assert.Contains("\"受身 José\"", ended.Answers, StringComparison.Ordinal);
        Assert.Equal('{', ended.Answers[0]);
        Assert.NotNull(JsonNode.Parse(ended.Answers));
    }

    [Theory]
    [InlineData("\"now\"", "\"nov\"", "in line 2 at $.nov; take it out or mend its spelling.")]
    [InlineData("\"now\": \"18:30\",", "", "The question lacks \"now\"")]
    [InlineData("\"18:30\"", "\"half past\"", "in line 2 at $.now; write a time of day as \"18:05\".")]
    [InlineData("\"18:30\"", "18.5", "in line 2 at $.now; write a time of day as \"18:05\".")]
    [InlineData("\"18:30\"", "null", "in line 2 at $.now; write a time of day as \"18:05\".")]
    [InlineData("\"18:30\"", "\"18:30\", \"now\": \"18:31\"", "one member twice in line 2 at $.now; take one out.")]
    [InlineData("019cb2a0-", "", "in line 4 at $.people[0].person; write an id as \"019cb2a0-")]
    [InlineData("true", "\"yes\"", "in line 4 at $.people[0].isAdult; mend it.")]
    [InlineData("\"18:30\",", "\"18:30\"", "The question is not JSON in line 3")]
    public async Task What_is_wrong_with_a_question_is_said_with_its_file_its_line_and_its_place(string right, string wrong, string words)
    {
        var file = folder.File("question.json");
        await File.WriteAllTextAsync(file, Roll.Replace(right, wrong, StringComparison.Ordinal), TestContext.Current.CancellationToken);
        var before = FolderPicture.Of(folder.Path);
        var ended = await BuiltProgram.HereAsync("roll", file);
        Assert.Equal(ExitCode.Refused, ended.Code);
        Assert.Equal("", ended.Answers);
        Assert.StartsWith($"In {file}: ", ended.Complaints, StringComparison.Ordinal);
        Assert.Contains(words, ended.Complaints, StringComparison.Ordinal);
        Assert.Single(ended.Complaints.TrimEnd().Split('\n'));
        Assert.Equal(before, FolderPicture.Of(folder.Path));
    }

    [Fact]
    public async Task What_the_sum_itself_refuses_is_a_refusal_too()
    {
        var ended = await BuiltProgram.RunAsync(folder.Path, """{"children":[{"child":"A","held":3,"attended":4}]}"""u8.ToArray(), ["attendance", "-"]);
        Assert.Equal(ExitCode.Refused, ended.Code);
        Assert.Equal("In the standard input: A: attended is from 0 to the 3 held.", ended.Complaints.TrimEnd());
    }

    [Fact]
    public async Task A_question_that_is_not_UTF8_is_refused()
    {
        var ended = await BuiltProgram.RunAsync(folder.Path, Encoding.Latin1.GetBytes(Kana.Replace("受身 ", "", StringComparison.Ordinal)), ["attendance", "-"]);
        Assert.Equal(ExitCode.Refused, ended.Code);
        Assert.Contains("save it as UTF-8", ended.Complaints, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("none.json", "There is no file")]
    [InlineData("none/none.json", "There is no file")]
    [InlineData(".", "is a folder")]
    public async Task A_file_that_is_not_there_is_named(string file, string words)
    {
        var ended = await BuiltProgram.HereAsync("clock", folder.File(file));
        Assert.Equal(ExitCode.Refused, ended.Code);
        Assert.Contains(words, ended.Complaints, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_nobody_expected_is_a_sentence_and_the_details()
    {
        var broken = new Command("broken", "Breaks");
        broken.SetAction(int (_) => throw new InvalidOperationException("out of ink"));
        await using var answers = new StringWriter();
        await using var complaints = new StringWriter();
        Assert.Equal(ExitCode.Unexpected, await CommandLine.RunAsync([broken], ["broken"], answers, complaints));
        Assert.StartsWith("Keikocho came upon something it did not expect", complaints.ToString(), StringComparison.Ordinal);
        Assert.Contains("out of ink", complaints.ToString(), StringComparison.Ordinal);
    }
}
