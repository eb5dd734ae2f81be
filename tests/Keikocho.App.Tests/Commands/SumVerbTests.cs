using Keikocho.App.Commands;
using Keikocho.Core.Kernel;

namespace Keikocho.App.Tests.Commands;

public sealed class SumVerbTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("keikocho-test-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private sealed record Question(PersonId Child, DateOnly Day, TimeOnly From, int Lessons, StringComparison Kind);

    private sealed record Answer(PersonId Child, string Says, IReadOnlyList<Reason> Because);

    private sealed record LessonsLeft(int Lessons, DateOnly By) : Reason
    {
        public override string Sentence => $"{Lessons} lessons are left.";
    }

    private const string Good = """
        {
          "child": "018f2c3e-0000-7000-8000-000000000001",
          "day": "2026-03-03",
          "from": "17:30",
          "lessons": 4,
          "kind": "ordinal"
        }
        """;

    [Fact]
    public async Task A_question_in_a_file_gets_an_indented_answer_with_its_reasons_and_kana_as_they_are()
    {
        var (code, answers, complaints) = await AskAsync(Good);
        Assert.Equal("", complaints);
        Assert.Equal(0, code);
        Assert.Equal("""
            {
              "child": "018f2c3e-0000-7000-8000-000000000001",
              "says": "受身 José 17:30",
              "because": [
                {
                  "reason": "LessonsLeft",
                  "sentence": "4 lessons are left.",
                  "lessons": 4,
                  "by": "2026-03-03"
                }
              ]
            }
            """, answers.ReplaceLineEndings("\n").TrimEnd());
    }

    [Theory]
    [InlineData("\"lessons\": 4", "\"lesons\": 4", "line 5", "'lesons' is not known here")]
    [InlineData("\"lessons\": 4,", "", "question.json", "'lessons' is missing")]
    [InlineData("\"lessons\": 4", "\"lessons\": \"four\"", "line 5", "$.lessons is of the wrong kind")]
    [InlineData("\"lessons\": 4", "\"lessons\": 4, \"lessons\": 5", "line 5", "stands twice")]
    [InlineData("\"17:30\"", "\"half past\"", "line 4", "a time of day is written like \"17:30\"")]
    [InlineData("\"2026-03-03\"", "\"2026-02-29\"", "line 3", "$.day is of the wrong kind")]
    [InlineData("\"ordinal\"", "\"sometimes\"", "line 6", "$.kind is of the wrong kind")]
    [InlineData("\"ordinal\"", "4", "line 6", "$.kind is of the wrong kind")]
    [InlineData("018f2c3e-0000", "018f2c3e", "line 2", "an id is written like")]
    [InlineData("\"lessons\": 4,", "\"lessons\": 4", "line 6", "not JSON that can be read")]
    [InlineData("\"lessons\": 4", "\"lessons\": -1", "question.json", "cannot be answered")]
    public async Task What_is_wrong_with_a_question_is_said_with_its_place(string right, string wrong, string where, string what)
    {
        var (code, answers, complaints) = await AskAsync(Good.Replace(right, wrong, StringComparison.Ordinal));
        Assert.Equal(1, code);
        Assert.Equal("", answers);
        Assert.Contains(where, complaints, StringComparison.Ordinal);
        Assert.Contains(what, complaints, StringComparison.Ordinal);
        Assert.Single(complaints.TrimEnd().Split('\n'));
    }

    [Fact]
    public async Task A_file_that_is_not_there_is_named()
    {
        var (code, _, complaints) = await RunAsync("sum", Path.Combine(_folder, "none.json"));
        Assert.Equal(1, code);
        Assert.Contains("There is no file", complaints, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sum_without_a_question_is_wrong_usage()
    {
        var (code, _, complaints) = await RunAsync("sum");
        Assert.Equal(2, code);
        Assert.Contains("See: keikocho --help", complaints, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_nobody_expected_is_a_sentence_and_the_details()
    {
        var file = Path.Combine(_folder, "question.json");
        await File.WriteAllTextAsync(file, Good, TestContext.Current.CancellationToken);
        var (code, _, complaints) = await RunAsync("broken", file);
        Assert.Equal(3, code);
        Assert.StartsWith("Keikocho came upon something it did not expect", complaints, StringComparison.Ordinal);
        Assert.Contains("out of ink", complaints, StringComparison.Ordinal);
    }

    private async Task<(int Code, string Answers, string Complaints)> AskAsync(string question)
    {
        var file = Path.Combine(_folder, "question.json");
        await File.WriteAllTextAsync(file, question, TestContext.Current.CancellationToken);
        return await RunAsync("sum", file);
    }

    private static async Task<(int Code, string Answers, string Complaints)> RunAsync(params string[] args)
    {
        using var answers = new StringWriter();
        using var complaints = new StringWriter();
        var code = await CommandLine.RunAsync(
            [
                SumVerb.Build<Question, Answer>("sum", "A sum", Sum),
                SumVerb.Build<Question, Answer>("broken", "Breaks", _ => throw new InvalidOperationException("out of ink")),
            ],
            args, answers, complaints);
        return (code, answers.ToString(), complaints.ToString());
    }

    private static Answer Sum(Question question)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(question.Lessons);
        return new Answer(question.Child, $"受身 José {question.From.Plain()}", [new LessonsLeft(question.Lessons, question.Day)]);
    }
}
