using System.Net;
using System.Net.Http.Json;
using System.Security.Cryptography.X509Certificates;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Keikocho.Bench;

/// <summary>A tablet as its page's script behaves: it keeps each tap until the laptop says that it holds it.</summary>
internal sealed partial class Tablet : IDisposable
{
    private readonly CookieContainer cookies = new();
    private readonly byte[] authority;
    private HttpClient http;
    private JsonNode evening = null!;
    private int sequence;

    private Tablet(Uri door, TimeSpan clockOff, byte[] authority)
    {
        this.authority = authority;
        http = Client(door);
        ClockOff = clockOff;
    }

    /// <summary>How wrong its clock is.</summary>
    public TimeSpan ClockOff { get; }

    /// <summary>What waits, in the order of the thumb.</summary>
    public List<JsonObject> Waiting { get; } = [];

    /// <summary>Ids of what the laptop said it holds.</summary>
    public HashSet<Guid> Acknowledged { get; } = [];

    /// <summary>Ids of everything that was tapped.</summary>
    public HashSet<Guid> Tapped { get; } = [];

    public Guid Lesson => evening["lessons"]![0]!["id"]!.GetValue<Guid>();

    public IReadOnlyList<Guid> Children => [.. evening["lessons"]![0]!["children"]!.AsArray().Select(c => c!["id"]!.GetValue<Guid>())];

    /// <summary>Lets a tablet in by the laptop's own pages.</summary>
    /// <param name="laptop">A client on which an adult acts.</param>
    /// <param name="door">The hall's door.</param>
    /// <param name="nth">Which of the people in the list will hold it.</param>
    /// <param name="clockOff">How wrong its clock is.</param>
    public static async Task<Tablet> JoinAsync(HttpClient laptop, Uri door, int nth, TimeSpan clockOff = default)
    {
        var page = await laptop.GetStringAsync("/tablets");
        var people = Option().Matches(page).Select(m => m.Groups[1].Value).ToList();
        var invited = await laptop.PostAsync("/tablets/invite", new FormUrlEncodedContent([new("page-token", Server.Token().Match(page).Groups[1].Value), new("who", people[nth % people.Count])]));
        var shown = await laptop.GetStringAsync(invited.Headers.Location);
        var tablet = new Tablet(door, clockOff, await laptop.GetByteArrayAsync("/join/keikocho-hall.crt"));
        var join = await tablet.http.GetStringAsync("/join");
        var answer = await tablet.http.PostAsync("/join", new FormUrlEncodedContent(
            [new("page-token", Server.Token().Match(join).Groups[1].Value), new("digits", Digits().Match(shown).Groups[1].Value)]));
        if (answer.Headers.Location?.ToString() != "/mat") throw new InvalidOperationException("The tablet was not let in.");
        await tablet.AskAsync();
        return tablet;
    }

    /// <summary>The laptop was started anew, at another door.</summary>
    public async Task MoveAsync(Uri door)
    {
        http.Dispose();
        http = Client(door);
        await AskAsync();
    }

    public async Task AskAsync() => evening = JsonNode.Parse(await http.GetStringAsync("/mat/evening"))!;

    /// <summary>One tap: it waits from now on.</summary>
    public void Tap(Guid child, string kind)
    {
        var id = Guid.CreateVersion7();
        Tapped.Add(id);
        Waiting.Add(new JsonObject
        {
            ["id"] = id,
            ["sequence"] = ++sequence,
            ["lesson"] = Lesson,
            ["person"] = child,
            ["by"] = evening["join"]!["person"]!.GetValue<Guid>(),
            ["madeAt"] = (DateTimeOffset.UtcNow + ClockOff).ToUnixTimeMilliseconds(),
            ["kind"] = kind,
        });
    }

    /// <summary>Sends marks; true when the laptop said that it holds them.</summary>
    public async Task<bool> SendAsync(IReadOnlyList<JsonObject> marks, CancellationToken cancel = default)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/mat/marks")
        {
            Content = JsonContent.Create(new JsonObject { ["evening"] = evening["join"]!["date"]!.GetValue<string>(), ["marks"] = new JsonArray([.. marks.Select(m => m.DeepClone())]) }),
        };
        request.Headers.Add("Page-Token", evening["token"]!.GetValue<string>());
        request.Headers.Accept.ParseAdd("application/json");
        try
        {
            using var answer = await http.SendAsync(request, cancel);
            if (!answer.IsSuccessStatusCode) return false;
            foreach (var line in JsonNode.Parse(await answer.Content.ReadAsStringAsync(cancel))!["answers"]!.AsArray())
            {
                if (!line!["taken"]!.GetValue<bool>()) throw new InvalidOperationException(line["why"]!.GetValue<string>());
                Settle(line["id"]!.GetValue<Guid>());
            }

            return true;
        }
        catch (Exception e) when (e is HttpRequestException or OperationCanceledException or IOException)
        {
            return false;
        }
    }

    public void Dispose() => http.Dispose();

    private void Settle(Guid id)
    {
        Acknowledged.Add(id);
        Waiting.RemoveAll(m => m["id"]!.GetValue<Guid>() == id);
    }

    private HttpClient Client(Uri door) => new(new SocketsHttpHandler
    {
        CookieContainer = cookies,
        AllowAutoRedirect = false,
        SslOptions = { CertificateChainPolicy = TrustOnly(authority) },
    })
    { BaseAddress = door };

    private static X509ChainPolicy TrustOnly(byte[] authority)
    {
        var policy = new X509ChainPolicy { TrustMode = X509ChainTrustMode.CustomRootTrust, RevocationMode = X509RevocationMode.NoCheck };
        policy.CustomTrustStore.Add(X509CertificateLoader.LoadCertificate(authority));
        return policy;
    }

    [GeneratedRegex("<option value=\"([0-9a-f-]{36})\"")]
    private static partial Regex Option();

    [GeneratedRegex("class=\"digits\">(\\d{4})<")]
    private static partial Regex Digits();
}
