using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Keikocho.App.Commands;
using Keikocho.Core.Command;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Commands;

/// <summary>The page of each sum's format holds a question and the answer that the program gives.</summary>
public sealed class SumPageTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    public static TheoryData<string> Names => [.. AnswerQuestion.Names];

    [Theory, MemberData(nameof(Names))]
    public async Task The_answer_on_the_page_is_the_answer_of_the_program(string name)
    {
        var page = File.ReadAllText(Repository.PathOf($"docs/formats/{name}.md"));
        var question = Assert.Single(Fences.Of(page), fence => fence.Mark == "json question").Text;
        var printed = Assert.Single(Fences.Of(page), fence => fence.Mark == "json answer").Text;
        await File.WriteAllTextAsync(folder.File("question.json"), question, TestContext.Current.CancellationToken);

        var fromFile = await BuiltProgram.RunAsync(folder.Path, null, [name, "question.json"]);
        Assert.Equal("", fromFile.Complaints);
        Assert.Equal(ExitCode.Done, fromFile.Code);
        Assert.True(Same(JsonNode.Parse(printed), JsonNode.Parse(fromFile.Answers)), $"docs/formats/{name}.md has another answer than:\n{fromFile.Answers}");
        Assert.Equal(fromFile, await BuiltProgram.RunAsync(folder.Path, Encoding.UTF8.GetBytes(question), [name, "-"]));
    }

    [Fact]
    public void Another_answer_would_be_seen()
    {
        Assert.False(Same(JsonNode.Parse("""{"a":[1,2]}"""), JsonNode.Parse("""{"a":[1,3]}""")));
        Assert.False(Same(JsonNode.Parse("""{"a":1}"""), JsonNode.Parse("""{"a":1,"b":null}""")));
        Assert.False(Same(JsonNode.Parse("""{"a":"1"}"""), JsonNode.Parse("""{"a":1}""")));
        Assert.True(Same(JsonNode.Parse("""{"a":0.3333333}"""), JsonNode.Parse("""{"a":0.33333333333}""")));
    }

    // Figures on a page are rounded to seven digits.
    private static bool Same(JsonNode? page, JsonNode? program) => (page, program) switch
    {
        (JsonObject a, JsonObject b) => a.Count == b.Count && a.All(member => b.ContainsKey(member.Key) && Same(member.Value, b[member.Key])),
        (JsonArray a, JsonArray b) => a.Count == b.Count && a.Zip(b).All(pair => Same(pair.First, pair.Second)),
        (JsonValue a, JsonValue b) when a.GetValueKind() == JsonValueKind.Number && b.GetValueKind() == JsonValueKind.Number =>
            Math.Abs(a.GetValue<double>() - b.GetValue<double>()) <= 1e-6,
        _ => JsonNode.DeepEquals(page, program),
    };
}
