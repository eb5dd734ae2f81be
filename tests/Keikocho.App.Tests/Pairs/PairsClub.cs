using Keikocho.App.Tests.Students;
using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Sealing;

namespace Keikocho.App.Tests.Pairs;

/// <summary>
/// The seven children of the worked example of pairs (docs/sums/pair.md) at the beginners' end of the spring club, none a newcomer, each
/// with clean backward falls thrown by a child on two evenings. Evening of 14 May 2026.
/// </summary>
internal sealed class PairsClub : IAsyncDisposable
{
    public const string Passphrase = "four plain words here";
    public const string Backwards = "activity=Throwing&way=back&stage=6";

    private static readonly (string Name, int Grams, int Age)[] Example =
        [("Ana", 24_000, 7), ("Ben", 26_000, 8), ("Cleo", 29_000, 9), ("Dov", 30_000, 9), ("Ella", 33_000, 10), ("Finn", 36_000, 10), ("Gus", 39_000, 12)];

    private PairsClub(SpringClub club) => Club = club;

    public SpringClub Club { get; }

    public Dictionary<string, Guid> Children { get; } = [];

    public static async Task<PairsClub> StartAsync(bool withSizes = true, params string[] names)
    {
        var club = new PairsClub(await SpringClub.StartAsync());
        foreach (var (name, grams, age) in Example.Where(e => names.Length == 0 || names.Contains(e.Name))) await club.AddAsync(name, age);
        if (withSizes) await club.WeighAsync([.. Example.Where(e => club.Children.ContainsKey(e.Name)).Select(e => (e.Name, e.Grams))]);
        return club;
    }

    /// <summary>A child who came to the last eight lessons and falls backwards.</summary>
    public async Task<Guid> AddAsync(string name, int age, bool isHere = true)
    {
        var days = Club.HeldAfter(SpringClub.FirstLesson).TakeLast(8).ToList();
        var child = await Club.JoinAsync(name, "Hale", days[0]);
        await Club.House.People.ChangeDetailsAsync(child, new PersonDetails(name, "Hale", null, new DateOnly(2026 - age, 1, 5)), Club.Head, Club.Tablet, SpringClub.Stop);
        foreach (var day in days.Skip(1).Where(d => isHere || d != Club.Today)) await Club.MarkAsync(child, day, MarkKind.Present);
        var back = new FallWay(FallDirection.Back, FallSide.None);
        var taps = days.SkipLast(1).TakeLast(2).Select(d => SeenTap.OfFall(Guid.CreateVersion7(Club.Time.GetUtcNow()), Club.Lesson(d).Id, child, back, 6, clean: true));
        Assert.Equal(EvidenceOutcome.Stored, (await Club.House.Sightings.AddAsync([.. taps], Club.Today, Club.Head, Club.Tablet, SpringClub.Stop)).Outcome);
        Children[name] = child;
        return child;
    }

    public async Task WeighAsync(params (string Name, int Grams)[] sizes)
    {
        using var reading = Club.Reading();
        if (Club.House.Lock.Now(reading).State == LockState.None) await Club.House.Lock.MakeAsync(Passphrase, Club.Head, Club.Tablet, SpringClub.Stop);
        await Club.House.Sizes.EnterAsync([.. sizes.Select(s => new NewSize(Children[s.Name], new DateOnly(2026, 4, 1), s.Grams))], Club.House.Lock.Now(reading).Key!, Club.Head, Club.Tablet, SpringClub.Stop);
    }

    /// <summary>An adult who is here and does not run an end.</summary>
    public async Task HelpAsync(string name)
    {
        var adult = await Club.AddAdultAsync(name, "Reed", DutyKind.Assistant);
        await Club.MarkAsync(adult, Club.Today, MarkKind.Present);
    }

    /// <summary>The lines of the first list of pairs on the page.</summary>
    public async Task<List<string>> LinesAsync(string asks) => Lines(await Club.TextAsync($"/pairs?{asks}"));

    public static List<string> Lines(string html)
    {
        var from = html.IndexOf("<ol class=\"pair-list\"", StringComparison.Ordinal);
        if (from < 0) return [];
        var list = html[from..html.IndexOf("</ol>", from, StringComparison.Ordinal)];
        return [.. list.Split("<li>").Skip(1).Select(l => SpringClub.Plain(l[(l.IndexOf("</b>", StringComparison.Ordinal) + 4)..]).Trim())];
    }

    /// <summary>Presses the button of the first list.</summary>
    public async Task UseAsync(string asks)
    {
        var html = await Club.TextAsync($"/pairs?{asks}");
        var form = html[html.IndexOf("action=\"/pairs/use\"", StringComparison.Ordinal)..];
        form = form[..form.IndexOf("</form>", StringComparison.Ordinal)];
        var fields = System.Text.RegularExpressions.Regex.Matches(form, "name=\"([a-z-]+)\" value=\"([^\"]*)\"").Select(m => (m.Groups[1].Value, m.Groups[2].Value)).ToArray();
        using var answer = await Club.PostAsync("/pairs", "/pairs/use", [.. fields.Where(f => f.Item1 != "page-token")]);
        Assert.Equal(System.Net.HttpStatusCode.SeeOther, answer.StatusCode);
        Assert.StartsWith("/pairs?", answer.Headers.Location!.ToString(), StringComparison.Ordinal);
    }

    public ValueTask DisposeAsync() => Club.DisposeAsync();
}
