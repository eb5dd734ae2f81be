using System.Text.Json;
using System.Text.Json.Nodes;
using Keikocho.Core.Command;

namespace Keikocho.Core.Tests.Command;

/// <summary>Every page about a sum shows a question and an answer, and the answer is what the sum says.</summary>
public sealed class PageTests
{
    public static TheoryData<string, string> Pages
    {
        get
        {
            var pages = new TheoryData<string, string>();
            foreach (var name in AnswerQuestion.Names)
            {
                pages.Add("sums", name);
                pages.Add("formats", name);
            }

            return pages;
        }
    }

    [Theory, MemberData(nameof(Pages))]
    public void The_answer_on_the_page_is_the_answer_of_the_sum(string folder, string name)
    {
        var page = File.ReadAllText(Path.Combine(Repository.Root, "docs", folder, name + ".md"));
        var question = Assert.Single(Repository.Blocks(page, "json question"));
        var printed = Assert.Single(Repository.Blocks(page, "json answer"));
        var answered = Assert.IsType<QuestionOutcome.Answered>(AnswerQuestion.Answer(name, question));
        Assert.Empty(Differences(JsonNode.Parse(printed), JsonNode.Parse(answered.Json), "$"));
    }

    [Fact]
    public void A_page_with_another_answer_would_be_found()
    {
        Assert.Single(Differences(JsonNode.Parse("""{"a":1,"b":[1,2]}"""), JsonNode.Parse("""{"a":1,"b":[1,3]}"""), "$"));
        Assert.Single(Differences(JsonNode.Parse("""{"a":1}"""), JsonNode.Parse("""{"a":1,"b":null}"""), "$"));
        Assert.Single(Differences(JsonNode.Parse("""{"a":"x"}"""), JsonNode.Parse("""{"a":"y"}"""), "$"));
        Assert.Empty(Differences(JsonNode.Parse("""{"a":0.3333333}"""), JsonNode.Parse("""{"a":0.33333333333}"""), "$"));
    }

    [Theory]
    [InlineData("{", "The question is not JSON in line 1; mend it.")]
    [InlineData("{}", "The question lacks \"asOf\"")]
    [InlineData("""{"asof": "2026-03-03"}""", "The question has a member that the format does not know in line 1 at $.asof")]
    [InlineData("""{"asOf": "3/3/2026"}""", "The question has a value that the format does not allow in line 1 at $.asOf")]
    [InlineData("""{"asOf":"2026-05-14","startOn":"2026-03-03","start":"firstLesson","rule":{"minimumLessons":-1},"lessons":[]}""", "Lessons attended before a test: 0 to 500 is allowed.")]
    [InlineData("""{"asOf":"2026-05-14","startOn":"2026-03-03","start":"firstLesson","rule":{},"lessons":[],"testOn":"2026-05-13"}""", "The test on 13 May 2026 is before 14 May 2026: ask about the next test.")]
    [InlineData("""{"asOf":"2026-05-14","startOn":"2026-03-03","start":1,"rule":{},"lessons":[]}""", "The question has a value that the format does not allow in line 1 at $.start")]
    [InlineData("""{"asOf":"9999-12-31","startOn":"9999-12-31","start":"firstLesson","rule":{},"lessons":[]}""", "")]
    [InlineData("null", "The question has a value that the format does not allow")]
    public void A_question_that_cannot_be_answered_gets_one_sentence(string question, string sentence)
    {
        var refused = Assert.IsType<QuestionOutcome.Refused>(AnswerQuestion.Answer("clock", question));
        Assert.StartsWith(sentence, refused.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", refused.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("clock", """{"asOf":"2026-05-14","startOn":"2026-03-03","start":"firstLesson","rule":{},"lessons":[null]}""", "Number 1 of the lessons is empty; take it out.")]
    [InlineData("attendance", """{"children":[{"child":"A","held":3,"attended":4}]}""", "A: attended is from 0 to the 3 held.")]
    [InlineData("attendance", """{"children":[{"child":"A","held":3,"attended":1,"left":2}]}""", "A: lessons needed and lessons left are asked together.")]
    [InlineData("roll", """{"now":"25:00","people":[]}""", "The question has a value that the format does not allow in line 1 at $.now; write a time of day as \"18:05\".")]
    [InlineData("roll", """{"now":18,"people":[]}""", "The question has a value that the format does not allow in line 1 at $.now; write a time of day as \"18:05\".")]
    [InlineData("roll", """{"now":"18:00","now":"19:00","people":[]}""", "The question has one member twice in line 1 at $.now; take one out.")]
    [InlineData("roll", """{"now":"18:00","people":[{"person":"x","isAdult":true,"lessons":[]}]}""", "The question has a value that the format does not allow in line 1 at $.people[0].person; write an id as \"019cb2a0-0000-7000-8000-000000000001\".")]
    [InlineData("roll", """{"now":"18:00","people":[{"person":"019cb2a0-0000-7000-8000-000000000001","isAdult":true,"lessons":null}]}""", "The question has a value that the format does not allow in line 1 at $.people[0].lessons; mend it.")]
    [InlineData("adults", """{"today":"2026-03-03","children":[{"end":"main","age":30}],"adults":[]}""", "A child is from 0 to 18 years old.")]
    [InlineData("adults", """{"today":"2026-03-03","children":[],"adults":[],"rules":{"bands":[null]}}""", "Number 1 of the bands is empty; take it out.")]
    [InlineData("adults", """{"today":"2026-03-03","children":[{"end":"main","age":7,"number":2147483647},{"end":"main","age":7,"number":2147483647}],"adults":[]}""", "A figure of the question is too large to reckon with; mend it.")]
    public void Each_slip_has_its_sentence(string name, string question, string sentence) =>
        Assert.Equal(sentence, Assert.IsType<QuestionOutcome.Refused>(AnswerQuestion.Answer(name, question)).Sentence);

    [Fact]
    public void An_unknown_sum_is_said_to_be_unknown() => Assert.IsType<QuestionOutcome.NoSuchSum>(AnswerQuestion.Answer("clocks", "{}"));

    private static IEnumerable<string> Differences(JsonNode? printed, JsonNode? answered, string path)
    {
        switch (printed, answered)
        {
            case (null, null):
                break;
            case (JsonObject a, JsonObject b):
                foreach (var name in a.Select(m => m.Key).Union(b.Select(m => m.Key)))
                {
                    if (!a.ContainsKey(name) || !b.ContainsKey(name))
                        yield return $"{path}.{name} is on one side only";
                    else
                    {
                        foreach (var d in Differences(a[name], b[name], $"{path}.{name}"))
                            yield return d;
                    }
                }

                break;
            case (JsonArray a, JsonArray b) when a.Count == b.Count:
                for (var i = 0; i < a.Count; i++)
                {
                    foreach (var d in Differences(a[i], b[i], $"{path}[{i}]"))
                        yield return d;
                }

                break;
            case (JsonValue a, JsonValue b) when a.GetValueKind() == JsonValueKind.Number && b.GetValueKind() == JsonValueKind.Number:
                if (Math.Abs(a.GetValue<double>() - b.GetValue<double>()) > 1e-6)
                    yield return $"{path}: {a} on the page, {b} from the sum";
                break;
            default:
                if (!JsonNode.DeepEquals(printed, answered))
                    yield return $"{path}: {printed?.ToJsonString()} on the page, {answered?.ToJsonString()} from the sum";
                break;
        }
    }
}
