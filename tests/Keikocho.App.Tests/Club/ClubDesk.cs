using System.Net;
using System.Text.RegularExpressions;
using Keikocho.App.Club;
using Keikocho.App.Hosting;
using Keikocho.App.Tests.Shell;
using Keikocho.Store.Book;
using Keikocho.Store.Engines;
using Keikocho.Testing;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.App.Tests.Club;

/// <summary>The laptop on the desk: the real application with a club of one's own or the demo club, on Wednesday 25 November 2026.</summary>
internal sealed partial class ClubDesk : IAsyncDisposable
{
    private readonly RunningApp _app;
    private string? _token;

    private ClubDesk(RunningApp app, FixedTime time)
    {
        _app = app;
        Time = time;
        Browser = app.Browser();
    }

    public FixedTime Time { get; }

    public HttpClient Browser { get; }

    public static DateOnly Today { get; } = new(2026, 11, 25);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>The demo club at 17:00 of its evening.</summary>
    public static Task<ClubDesk> DemoAsync() => StartAsync(isDemo: true);

    /// <summary>A club of the first evening: Juniors on Wednesdays 17:30 to 18:45, a term from 28 October to 20 January.</summary>
    public static async Task<ClubDesk> FreshAsync(string club = "Osier Quay Judo Club", string paper = "a4")
    {
        var desk = await StartAsync(isDemo: false);
        using var answer = await desk.PostAsync("/start",
            ("club", club), ("given", "Maren"), ("family", "Holt"), ("programme", "Juniors"), ("zone", "Europe/London"), ("paper", paper),
            ("weekday1", "Wednesday"), ("from1", "17:30"), ("to1", "18:45"), ("weekday2", ""), ("from2", ""), ("to2", ""),
            ("term", "Autumn 2026"), ("termFrom", "2026-10-28"), ("termTo", "2027-01-20"));
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        return desk;
    }

    /// <summary>Posts a form with the token of the club's page.</summary>
    public async Task<HttpResponseMessage> PostAsync(string address, params (string Name, string Value)[] fields)
    {
        _token ??= await RunningApp.TokenAsync(Browser, Exists() ? "/club" : "/start");
        return await RunningApp.PostAsync(Browser, address, [("page-token", _token), .. fields]);
    }

    /// <summary>Posts a form that is taken, and gives what the next page says.</summary>
    public async Task<string> TakenAsync(string address, params (string Name, string Value)[] fields)
    {
        using var answer = await PostAsync(address, fields);
        var text = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Stop));
        Assert.True(answer.StatusCode == HttpStatusCode.SeeOther, $"{(int)answer.StatusCode}: {Error().Match(text).Value}");
        return Said(await PageAsync(answer.Headers.Location!.ToString()));
    }

    /// <summary>Posts a form that is not taken, and gives the page that comes back; the club's file is as it was.</summary>
    public async Task<string> RefusedAsync(string address, params (string Name, string Value)[] fields)
    {
        var before = Trail();
        using var answer = await PostAsync(address, fields);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(before, Trail());
        return WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Stop));
    }

    /// <summary>Posts a form that comes back with one sentence at one field, with everything that was typed in it.</summary>
    public async Task RefusedWithAsync(string address, string field, string sentence, params (string Name, string Value)[] fields)
    {
        var html = await RefusedAsync(address, fields);
        Assert.Contains($"<a href=\"#{field}\">{sentence}</a>", html, StringComparison.Ordinal);
        Assert.Contains($"id=\"{field}-error\">{sentence}</p>", html, StringComparison.Ordinal);
        foreach (var (name, value) in fields.Where(f => f.Value.Length > 0))
        {
            Assert.True(
                html.Contains($"name=\"{name}\" type=\"text\" value=\"{value}\"", StringComparison.Ordinal)
                || Regex.IsMatch(html, $"name=\"{Regex.Escape(name)}\"[^>]*value=\"{Regex.Escape(value)}\"")
                || Regex.IsMatch(html, $"<option value=\"{Regex.Escape(value)}\" selected")
                || html.Contains($"<option selected>{value}</option>", StringComparison.Ordinal),
                $"{name} = {value} is lost");
        }
    }

    /// <summary>A page's source with its entities read.</summary>
    public async Task<string> PageAsync(string address) => WebUtility.HtmlDecode(await Browser.GetStringAsync(address, Stop));

    /// <summary>A context on the club's file.</summary>
    public KeikochoDb Db() => _app.App.Services.GetRequiredService<ClubHouse>().Engine.OpenDb();

    /// <summary>The book as of now.</summary>
    public ClubBook Book()
    {
        using var reading = _app.App.Services.GetRequiredService<ClubHouse>().Engine.OpenReading();
        return BookStore.Read(reading, new DateOnly(2020, 1, 1));
    }

    /// <summary>The acting adult's device, as the program knows it.</summary>
    public async Task<Guid> AddChildAsync(Guid lesson, string given, string initial = "")
    {
        var person = Guid.CreateVersion7(Time.GetUtcNow());
        await TakenAsync("/register/new", ("lesson", lesson.ToString()), ("person", person.ToString()), ("given", given), ("initial", initial), ("phone", ""));
        return person;
    }

    public async ValueTask DisposeAsync()
    {
        Browser.Dispose();
        await _app.DisposeAsync();
    }

    private static async Task<ClubDesk> StartAsync(bool isDemo)
    {
        var time = FixedTime.At("2026-11-25T17:00");
        var folder = Directory.CreateTempSubdirectory("keikocho-test-").FullName;
        var app = await RunningApp.StartAsync(services =>
        {
            services.AddSingleton<TimeProvider>(time);
            if (!isDemo) services.AddSingleton(new ServedClub(Path.Combine(folder, "club.keikocho"), folder, IsDemo: false));
        }, folder: folder);
        return new ClubDesk(app, time);
    }

    private bool Exists()
    {
        using var db = Db();
        return db.Clubs.Any();
    }

    // Every change writes a line of the trail.
    private (long Trail, long Calendar, long People) Trail()
    {
        using var db = Db();
        var club = db.Clubs.Single();
        return (db.Trail.Count(), club.CalendarRevision, club.PeopleRevision);
    }

    private static string Said(string html) => Message().Match(html) is { Success: true } found
        ? Tags().Replace(found.Groups[1].Value, "").Trim()
        : "";

    [GeneratedRegex("""<div class="message[^"]*" role="[a-z]+">.*?<p>(.*?)</p>""", RegexOptions.Singleline)]
    private static partial Regex Message();

    [GeneratedRegex("""<p class="error"[^>]*>(.*?)</p>""")]
    private static partial Regex Error();

    [GeneratedRegex("<[^>]+>")]
    private static partial Regex Tags();
}
