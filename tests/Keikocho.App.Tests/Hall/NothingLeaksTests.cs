using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Keikocho.App.Hosting;
using Keikocho.App.Shared;
using Keikocho.Core.Evening;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Keikocho.Store.Safety;
using Keikocho.Store.Sealing;
using Keikocho.Testing;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.App.Tests.Hall;

/// <summary>
/// Every answer to every kind of tablet, read to its last letter: no weight, no contact, no medical word, no reason of a stand-down, no
/// note; to a junior leader's no mark of what was seen either. Nobody needs to remember a new page: the addresses are asked of the program.
/// </summary>
public sealed partial class NothingLeaksTests
{
    private const string Reason = "Dr Pemberley’s letter about her epilepsy";
    private const string Note = "wet accident, spare clothes in the bag";
    private const int Grams = 28_350;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory, Statement(86), Statement(88)]
    [InlineData(null)]
    [InlineData(DutyKind.JuniorLeader)]
    [InlineData(DutyKind.Instructor)]
    [InlineData(DutyKind.HeadInstructor)]
    public async Task No_answer_to_a_tablet_holds_what_it_may_not_see(DutyKind? duty)
    {
        await using var hall = await HallDoorOpen.StartAsync();
        var secrets = await PlantAsync(hall);
        using var tablet = duty is { } held ? await hall.TabletOfAsync(held) : hall.Tablet();
        Assert.Empty(await FoundAsync(hall, tablet, secrets));
        if (duty is not null) Assert.Contains("\"may\":[", await tablet.GetStringAsync("/mat/evening", Cancel), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("phone")]
    [InlineData("weight")]
    [InlineData("reason")]
    public async Task A_leak_that_is_planted_is_found(string what)
    {
        await using var hall = await HallDoorOpen.StartAsync(add: app => app.MapGet("/planted", (HttpContext http) =>
            Results.Text(what switch
            {
                "phone" => "Call 01632 960777",
                "weight" => $"{Grams / 1000m} kg",
                _ => "because of Dr Pemberley’s letter",
            })).WithMetadata(new SeenByAttribute(Role.Anyone, Device.Tablet)));
        var secrets = await PlantAsync(hall);
        using var tablet = await hall.TabletOfAsync(DutyKind.Instructor);
        Assert.All(await FoundAsync(hall, tablet, secrets), found => Assert.StartsWith("/planted", found, StringComparison.Ordinal));
        Assert.NotEmpty(await FoundAsync(hall, tablet, secrets));
    }

    private static async Task<IReadOnlyList<string>> FoundAsync(HallDoorOpen hall, HttpClient tablet, IReadOnlyList<string> secrets)
    {
        var found = new List<string>();
        foreach (var address in Addresses(hall))
        {
            using var answer = await tablet.GetAsync(address, Cancel);
            var text = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
            found.AddRange(secrets.Where(secret => text.Contains(secret, StringComparison.OrdinalIgnoreCase)).Select(secret => $"{address}: {secret}"));
            if (Weights().Match(text) is { Success: true } weight) found.Add($"{address}: a weight, {weight.Value}");
            if (Medical().Match(text) is { Success: true } word) found.Add($"{address}: a medical word, {word.Value}");
        }

        return found;
    }

    // Every address that is read, with ids of this evening and of children on it.
    private static List<string> Addresses(HallDoorOpen hall)
    {
        using var db = hall.House.Engine.OpenDb();
        var day = new DateOnly(2026, 11, 24);
        var lesson = db.Lessons.Where(l => l.Date == day).OrderBy(l => l.Start).First();
        var child = db.Enrolments.Where(e => e.ProgrammeId == lesson.ProgrammeId && e.To == null).OrderBy(e => e.Position).Select(e => e.PersonId).Skip(3).First();
        var test = db.PromotionTests.Where(t => t.ProgrammeId == lesson.ProgrammeId && t.Date >= day).Select(t => t.Id).First();
        string Fill(Match part) => part.Value switch
        {
            var p when p.Contains("lesson", StringComparison.OrdinalIgnoreCase) => lesson.Id.ToString("D"),
            var p when p.Contains("test", StringComparison.OrdinalIgnoreCase) => test.ToString("D"),
            _ => child.ToString("D"),
        };
        var addresses = new List<string>();
        foreach (var endpoint in hall.App.App.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>())
        {
            if (endpoint.Metadata.GetMetadata<StaticFileMark>() is not null || endpoint.Metadata.GetMetadata<SeenByAttribute>() is null) continue;
            if (endpoint.Metadata.GetMetadata<HttpMethodMetadata>() is { } methods && !methods.HttpMethods.Contains("GET")) continue;
            var address = "/" + Parts().Replace(endpoint.RoutePattern.RawText!.TrimStart('/'), Fill);
            addresses.AddRange([address, $"{address}?lesson={lesson.Id:D}", $"{address}?child={child:D}&person={child:D}"]);
        }

        Assert.Contains(addresses, a => a.StartsWith("/register", StringComparison.Ordinal));
        Assert.Contains("/mat/evening", addresses);
        Assert.Contains("/mat/lacks", addresses);
        return addresses;
    }

    // Into the demo club: a reason, a note, a size, a phone that are nowhere else; and whatever contacts it has.
    private static async Task<List<string>> PlantAsync(HallDoorOpen hall)
    {
        using var db = hall.House.Engine.OpenDb();
        var day = new DateOnly(2026, 11, 24);
        var programme = db.Lessons.Where(l => l.Date == day).OrderBy(l => l.Start).Select(l => l.ProgrammeId).First();
        var children = db.Enrolments.Where(e => e.ProgrammeId == programme && e.To == null).OrderBy(e => e.Position).Select(e => e.PersonId).Take(5).ToList();
        var by = db.Duties.Select(d => d.PersonId).First();
        foreach (var child in children)
        {
            db.StandDowns.Add(new StandDownRow { Club = 1, Id = Guid.CreateVersion7(), PersonId = child, Scope = 1, From = day.AddDays(-3), WhoseWord = Seal.Close(Reason), ById = by });
            db.Notes.Add(new NoteRow { Club = 1, Id = Guid.CreateVersion7(), PersonId = child, Text = Seal.Close(Note), Until = day, ById = by });
            db.Sizes.Add(new SizeRow { Club = 1, Id = Guid.CreateVersion7(), PersonId = child, On = day.AddDays(-20), Grams = Seal.Close(Grams), ById = by });
        }

        db.SaveChanges();
        // Sizes as a club holds them: sealed, with the lock open, and the children on the mat, so that pairs are made of them.
        Assert.Equal(LockOutcome.Done, (await hall.House.Lock.MakeAsync("four plain words here", by, Guid.CreateVersion7(), Cancel)).Outcome);
        using (var reading = hall.House.Engine.OpenReading())
            Assert.Equal(5, await hall.House.Sizes.EnterAsync([.. children.Select((c, i) => new NewSize(c, day.AddDays(-10), Grams + i))], hall.House.Lock.Now(reading).Key!, by, Guid.CreateVersion7(), Cancel));
        var lesson = db.Lessons.Where(l => l.Date == day).OrderBy(l => l.Start).First();
        var device = db.Devices.Select(d => d.Id).First();
        foreach (var child in children)
            await hall.House.Marks.TapAsync(new Tap(Guid.CreateVersion7(), device, null, lesson.Id, child, by, hall.Time.GetUtcNow(), MarkKind.Present, lesson.Start), day, new AttendanceRules(), Cancel);
        // Whoever is an adult of the club as well is on the roll by name.
        var adults = db.Duties.Select(d => d.PersonId).ToHashSet();
        var onTheRoll = db.People.AsEnumerable().Where(p => adults.Contains(p.Id)).Select(p => $"{Seal.Open(p.Given)} {Seal.Open(p.Family)}".Trim()).ToHashSet();
        var contacts = db.Contacts.AsEnumerable().SelectMany(c => new[] { Seal.Open(c.Phone), Seal.Open(c.Email), Seal.Open(c.Name) }).OfType<string>().Where(t => t.Length > 5 && !onTheRoll.Contains(t));
        return [Reason, "Pemberley", Note, Grams.ToString(CultureInfo.InvariantCulture), (Grams / 1000m).ToString(CultureInfo.InvariantCulture), "01632 960777", .. contacts.Distinct()];
    }

    [GeneratedRegex(@"\b\d+([.,]\d+)?\s*(kg|kilo|kilos|kilograms|lb|lbs|pounds|stone)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Weights();

    [GeneratedRegex(@"\b(epilep\w*|asthma\w*|inhaler|allerg\w*|diabet\w*|concuss\w*|medication|diagnos\w*|syndrome|autis\w*)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Medical();

    [GeneratedRegex(@"\{[^}]*\}")]
    private static partial Regex Parts();
}
