using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Keikocho.App.Mat;

namespace Keikocho.App.Tests.Hall;

/// <summary>A joined tablet as its page's script uses the laptop: the evening, and marks handed in.</summary>
internal sealed class TabletOfTests(HttpClient http) : IDisposable
{
    private int sequence;

    public HttpClient Http => http;

    public JsonNode Evening { get; private set; } = null!;

    public JsonNode Lesson => Evening["lessons"]![0]!;

    public Guid LessonId => Lesson["id"]!.GetValue<Guid>();

    public Guid Child(int nth) => Lesson["children"]![nth]!["id"]!.GetValue<Guid>();

    public JsonNode ChildNow(Guid id) => Lesson["children"]!.AsArray().Single(c => c!["id"]!.GetValue<Guid>() == id)!;

    public async Task<JsonNode> AskAsync()
    {
        var text = await http.GetStringAsync(MatAddress.Evening, TestContext.Current.CancellationToken);
        return Evening = JsonNode.Parse(text)!;
    }

    /// <summary>A mark as the tablet's script makes it.</summary>
    public JsonObject Mark(string kind, Guid person, Action<JsonObject>? more = null)
    {
        var mark = new JsonObject
        {
            ["id"] = Guid.CreateVersion7(),
            ["sequence"] = ++sequence,
            ["lesson"] = LessonId,
            ["person"] = person,
            ["by"] = Evening["join"]!["person"]!.GetValue<Guid>(),
            ["madeAt"] = 1_700_000_000_000,
            ["kind"] = kind,
        };
        more?.Invoke(mark);
        return mark;
    }

    /// <summary>A note as the tablet's script makes it.</summary>
    public JsonObject Note(Guid person, string phrase, Guid? replaces = null) => new()
    {
        ["id"] = Guid.CreateVersion7(),
        ["lesson"] = LessonId,
        ["person"] = person,
        ["by"] = Evening["join"]!["person"]!.GetValue<Guid>(),
        ["madeAt"] = 1_700_000_000_000,
        ["phrase"] = phrase,
        ["replaces"] = replaces,
    };

    public async Task<HttpResponseMessage> PostAsync(params JsonObject[] marks)
    {
        JsonArray Those(bool notes) => new([.. marks.Where(m => m.ContainsKey("phrase") == notes).Select(m => m.DeepClone())]);
        var body = new JsonObject { ["evening"] = Evening["join"]!["date"]!.GetValue<string>(), ["marks"] = Those(false), ["notes"] = Those(true) };
        using var request = new HttpRequestMessage(HttpMethod.Post, MatAddress.Marks) { Content = JsonContent.Create(body) };
        request.Headers.Add("Page-Token", Evening["token"]!.GetValue<string>());
        request.Headers.Add("Accept", "application/json");
        return await http.SendAsync(request, TestContext.Current.CancellationToken);
    }

    /// <summary>Hands in, and says of each mark whether it was taken, or why not.</summary>
    public async Task<string[]> HandInAsync(params JsonObject[] marks)
    {
        using var answer = await PostAsync(marks);
        answer.EnsureSuccessStatusCode();
        var done = JsonNode.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken))!;
        return [.. done["answers"]!.AsArray().Select(a => a!["taken"]!.GetValue<bool>() ? "taken" : a["why"]!.GetValue<string>())];
    }

    public void Dispose() => http.Dispose();
}
