using System.Net;
using System.Net.Http.Headers;
using System.Text.RegularExpressions;
using Keikocho.App.Tests.Shell;

namespace Keikocho.App.Tests.Import;

/// <summary>Someone without a script who reads a file in, page by page.</summary>
internal sealed partial class ImportWalk(HttpClient browser)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>The page as it is shown now.</summary>
    public string Html { get; private set; } = "";

    /// <summary>Its address.</summary>
    public string Address { get; private set; } = "";

    /// <summary>The page's words without markup.</summary>
    public string Words => Blanks().Replace(WebUtility.HtmlDecode(Tags().Replace(Html, " ")), " ");

    public static string PathOf(string fixture) => Testing.Repository.PathOf("tests/Keikocho.Store.Tests/Fixtures/intake/" + fixture);

    public async Task<HttpResponseMessage> SendFileAsync(string name, byte[] bytes, string kind = "guess")
    {
        var token = await RunningApp.TokenAsync(browser, "/club/import");
        using var form = new MultipartFormDataContent { { new StringContent(token), "page-token" }, { new StringContent(kind), "kind" } };
        var file = new ByteArrayContent(bytes);
        file.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        form.Add(file, "file", name);
        return await browser.PostAsync("/club/import", form, Stop);
    }

    public async Task ReadAsync(string name, byte[] bytes, string kind = "guess")
    {
        using var answer = await SendFileAsync(name, bytes, kind);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        await GoAsync(answer.Headers.Location!.ToString());
    }

    public Task ReadFixtureAsync(string fixture) => ReadAsync(fixture, File.ReadAllBytes(PathOf(fixture)));

    /// <summary>Goes to a page, and waits while it says that it looks again by itself.</summary>
    public async Task GoAsync(string address)
    {
        for (var turn = 0; turn < 120; turn++)
        {
            using var answer = await browser.GetAsync(address, Stop);
            (Html, Address) = (await answer.Content.ReadAsStringAsync(Stop), address);
            if (!answer.Headers.TryGetValues("Refresh", out var again)) return;
            Assert.Equal("1", Assert.Single(again));
            Assert.Contains("<progress", Html, StringComparison.Ordinal);
            await Task.Delay(250, Stop);
        }

        throw new InvalidOperationException("The file is worked on for ever.");
    }

    /// <summary>Posts the page's form with one button and some answers.</summary>
    public async Task PostAsync(string button, params IEnumerable<(string Name, string Value)> answers)
    {
        List<(string, string)> fields = [("page-token", Field("page-token")), ("looked", Field("looked")), ("do", button), .. answers];
        await SendAsync(Id() + "/answers", fields);
    }

    public Task UndoAsync() => SendAsync(Id() + "/undo", [("page-token", Field("page-token"))]);

    public async Task SendAsync(string address, IEnumerable<(string, string)> fields)
    {
        using var answer = await RunningApp.PostAsync(browser, address, [.. fields]);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        await GoAsync(answer.Headers.Location!.ToString());
    }

    /// <summary>Settles everything: what is chosen here, what is proposed, else an offer that keeps most.</summary>
    public async Task SettleAsync(Func<string, string?>? choose = null)
    {
        for (var round = 0; round < 40 && !CanSave; round++)
        {
            var open = Open().ToDictionary(q => q.Key, q => choose?.Invoke(q.Key) ?? q.Proposed ?? q.Offers.FirstOrDefault(o => o is "leave-out" or "keep" or "one") ?? q.Offers[0]);
            await PostAsync("keep", open.Select(pair => ("a:" + pair.Key, pair.Value)));
        }

        Assert.True(CanSave, Words);
    }

    public bool CanSave => Html.Contains("name=\"do\" value=\"save\"", StringComparison.Ordinal);

    /// <summary>The open questions on the page with their offers.</summary>
    public IEnumerable<(string Key, List<string> Offers, string? Proposed)> Open()
    {
        var questions = Html.IndexOf("id=\"questions-part\"", StringComparison.Ordinal);
        if (questions < 0) yield break;
        var end = Html.IndexOf("<details", questions, StringComparison.Ordinal);
        var part = Html[questions..(end < 0 ? Html.IndexOf("id=\"save-part\"", StringComparison.Ordinal) : end)];
        foreach (var field in Fieldset().Matches(part).Select(m => m.Value))
        {
            var key = WebUtility.HtmlDecode(Named().Match(field).Groups[1].Value);
            var offers = OfferValue().Matches(field).Select(m => WebUtility.HtmlDecode(m.Groups[1].Value)).Where(v => v is not ("" or "=")).ToList();
            var proposed = Proposal().Match(field) is { Success: true } found ? WebUtility.HtmlDecode(found.Groups[1].Value) : null;
            yield return (key, offers, proposed);
        }
    }

    private string Id() => Address.Split('?', '#')[0];

    private string Field(string name) => Regex.Match(Html, $"name=\"{name}\" value=\"([^\"]*)\"") is { Success: true } found ? WebUtility.HtmlDecode(found.Groups[1].Value) : "";

    [GeneratedRegex("<[^>]+>")]
    private static partial Regex Tags();
    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
    [GeneratedRegex("<fieldset.*?</fieldset>", RegexOptions.Singleline)]
    private static partial Regex Fieldset();
    [GeneratedRegex("name=\"a:([^\"]*)\"")]
    private static partial Regex Named();
    [GeneratedRegex("<(?:input type=\"radio\"|option)[^>]*? value=\"([^\"]*)\"")]
    private static partial Regex OfferValue();
    [GeneratedRegex("value=\"([^\"]*)\"[^<>]*>(?:(?!value=).)*?\\(proposed\\)", RegexOptions.Singleline)]
    private static partial Regex Proposal();
}
