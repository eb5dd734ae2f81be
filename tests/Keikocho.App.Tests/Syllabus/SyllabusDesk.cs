using System.Net;
using System.Text.RegularExpressions;
using Keikocho.App.Tests.Club;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Tests.Syllabus;

/// <summary>The laptop at the syllabus: posts forms with the draft and the step that the page shows.</summary>
internal static partial class SyllabusDesk
{
    public const string Draft = "/syllabus/draft";

    /// <summary>Begins a draft.</summary>
    public static Task<string> BeginAsync(this ClubDesk desk, string from, string text = "") => desk.TakenAsync("/syllabus/draft/begin", ("from", from), ("text", text));

    /// <summary>The hidden fields that every form of the draft carries, as the page has them now.</summary>
    public static async Task<(string, string)[]> HiddenAsync(this ClubDesk desk)
    {
        var page = await desk.PageAsync(Draft);
        return [.. new[] { "programme", "draft", "step" }.Select(name => (name, Regex.Match(page, $"name=\"{name}\" value=\"([^\"]+)\"").Groups[1].Value))];
    }

    /// <summary>A form of the draft that is taken, and what the next page says.</summary>
    public static async Task<string> StepAsync(this ClubDesk desk, string form, params (string, string)[] fields) =>
        await desk.TakenAsync($"{Draft}/{form}", [.. await desk.HiddenAsync(), .. fields]);

    /// <summary>A form of the draft that comes back.</summary>
    public static async Task<string> RefusedStepAsync(this ClubDesk desk, string form, params (string, string)[] fields) =>
        await desk.RefusedAsync($"{Draft}/{form}", [.. await desk.HiddenAsync(), .. fields]);

    public static Task<string> PublishAsync(this ClubDesk desk, string name = "edition 1", string from = "2026-10-28") =>
        desk.StepAsync("publish", ("publish-name", name), ("publish-from", from));

    /// <summary>The draft as it is stored.</summary>
    public static Edition Stored(this ClubDesk desk)
    {
        using var db = desk.Db();
        return EditionDocument.Read(db.EditionDrafts.OrderByDescending(d => d.Step).First().Document);
    }

    public static string Plain(string html) => Blanks().Replace(Tags().Replace(WebUtility.HtmlDecode(html), " "), " ");

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();

    [GeneratedRegex("\\s+")]
    private static partial Regex Blanks();
}
