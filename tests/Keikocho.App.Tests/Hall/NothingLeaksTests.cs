using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Text.RegularExpressions;
using Keikocho.App.Hosting;
using Keikocho.App.Shared;
using Keikocho.App.Tests.Shell;
using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
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
/// note, no care note; to a junior leader's no mark of what was seen and no sign of one either. Nobody needs to remember a new page: the addresses are asked of the program.
/// </summary>
public sealed partial class NothingLeaksTests
{
    private const string Reason = "Dr Pemberley’s letter about her epilepsy";
    private const string Note = "wet accident, spare clothes in the bag";
    private const string Care = "Quetzal nut butter, red pouch in the bag";
    private const string Code = "271828";
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
    [InlineData("care note")]
    public async Task A_leak_that_is_planted_is_found(string what)
    {
        await using var hall = await HallDoorOpen.StartAsync(add: app => app.MapGet("/planted", (HttpContext http) =>
            Results.Text(what switch
            {
                "phone" => "Call 01632 960777",
                "weight" => $"{Grams / 1000m} kg",
                "care note" => "Quetzal nut butter",
                _ => "because of Dr Pemberley’s letter",
            })).WithMetadata(new SeenByAttribute(Role.Anyone, Device.Tablet)));
        var secrets = await PlantAsync(hall);
        using var tablet = await hall.TabletOfAsync(DutyKind.Instructor);
        Assert.All(await FoundAsync(hall, tablet, secrets), found => Assert.StartsWith("/planted", found, StringComparison.Ordinal));
        Assert.NotEmpty(await FoundAsync(hall, tablet, secrets));
    }

    [Fact, Statement(86)]
    public async Task The_words_of_a_care_note_are_on_its_own_page_of_the_laptop_and_behind_an_adults_code_only()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        await PlantAsync(hall);
        using var laptop = hall.App.Browser();
        var (_, child) = Ids(hall);
        string[] where = [.. (await FoundAsync(hall, laptop, [Care])).Where(f => f.EndsWith(Care, StringComparison.Ordinal))];
        Assert.NotEmpty(where);
        Assert.All(where, found => Assert.StartsWith($"/care/{child:D}", found, StringComparison.Ordinal));

        using var tablet = new TabletOfTests(await hall.TabletOfAsync(DutyKind.HeadInstructor));
        await tablet.AskAsync();
        var adult = tablet.Evening["join"]!["person"]!.GetValue<Guid>();
        await hall.House.AdultCodes.SetAsync(adult, Code, new DateOnly(2026, 11, 24), adult, Guid.CreateVersion7(), Cancel);
        Assert.DoesNotContain(Care, await AdultAsync(tablet, child, "000001"), StringComparison.Ordinal);
        Assert.Contains(Care, await AdultAsync(tablet, child, Code), StringComparison.Ordinal);
        hall.House.Lock.Shut();
        var locked = await AdultAsync(tablet, child, Code);
        Assert.DoesNotContain("Quetzal", locked, StringComparison.Ordinal);
        Assert.Contains("Unlock the laptop to read them", locked, StringComparison.Ordinal);

        using var leader = new TabletOfTests(await hall.TabletOfAsync(DutyKind.JuniorLeader));
        await leader.AskAsync();
        Assert.DoesNotContain("Quetzal", await AdultAsync(leader, child, Code), StringComparison.Ordinal);
    }

    [Fact, Statement(10), Statement(86)]
    public async Task An_instructors_tablet_has_two_plain_signs_and_a_leaders_has_none()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        await PlantAsync(hall);
        var (_, child) = Ids(hall);
        using (var db = hall.House.Engine.OpenDb())
        {
            foreach (var contact in db.Contacts) contact.BarredFromCollecting = false;
            db.Contacts.Add(new ContactRow { Club = 1, Id = Guid.CreateVersion7(), PersonId = child, Position = 9, Name = Seal.Close("Marmaduke Thistlethwaite"), BarredFromCollecting = true });
            db.SaveChanges();
        }

        using var tablet = new TabletOfTests(await hall.TabletOfAsync(DutyKind.HeadInstructor));
        await tablet.AskAsync();
        Assert.True(tablet.ChildNow(child)["askAdult"]!.GetValue<bool>());
        Assert.Equal([child], tablet.Lesson["children"]!.AsArray().Where(c => c!["checkFirst"]!.GetValue<bool>()).Select(c => c!["id"]!.GetValue<Guid>()));
        Assert.DoesNotContain("Thistlethwaite", tablet.Evening.ToJsonString(), StringComparison.Ordinal);

        using var leader = new TabletOfTests(await hall.TabletOfAsync(DutyKind.JuniorLeader));
        await leader.AskAsync();
        Assert.All(leader.Lesson["children"]!.AsArray(), c => Assert.False(c!["askAdult"]!.GetValue<bool>() || c["checkFirst"]!.GetValue<bool>()));
        // Its register says the same of every child, so that it tells nothing of any.
        var page = WebUtility.HtmlDecode(await leader.Http.GetStringAsync("/register", Cancel));
        Assert.DoesNotContain("Check with instructor", page, StringComparison.Ordinal);
        Assert.Equal(leader.Lesson["children"]!.AsArray().Count, page.Split("Before a child goes: an instructor hands the child over.").Length - 1);
        Assert.Single(WebUtility.HtmlDecode(await tablet.Http.GetStringAsync("/register", Cancel)).Split("Check with instructor before this child goes.").Skip(1));
        using var laptop = hall.App.Browser();
        var head = tablet.Evening["join"]!["person"]!.GetValue<Guid>();
        using (await RunningApp.PostAsync(laptop, "/acting", ("page-token", await RunningApp.TokenAsync(laptop, "/acting")), ("adult", head.ToString()))) { }
        var register = WebUtility.HtmlDecode(await laptop.GetStringAsync("/register", Cancel));
        Assert.Single(register.Split("Check with instructor before this child goes.").Skip(1));
        Assert.DoesNotContain("Thistlethwaite", register, StringComparison.Ordinal);
        Assert.Contains("check with instructor", await laptop.GetStringAsync("/close", Cancel), StringComparison.Ordinal);
    }

    private static async Task<string> AdultAsync(TabletOfTests tablet, Guid child, string code)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/mat/adult") { Content = JsonContent.Create(new { child, code }) };
        request.Headers.Add("Page-Token", tablet.Evening["token"]!.GetValue<string>());
        request.Headers.Add("Accept", "application/json");
        using var answer = await tablet.Http.SendAsync(request, Cancel);
        return await answer.Content.ReadAsStringAsync(Cancel);
    }

    // The evening's first lesson and the child whose id is put into addresses.
    private static (Guid Lesson, Guid Child) Ids(HallDoorOpen hall)
    {
        using var db = hall.House.Engine.OpenDb();
        var lesson = db.Lessons.Where(l => l.Date == new DateOnly(2026, 11, 24)).OrderBy(l => l.Start).First();
        return (lesson.Id, db.Enrolments.Where(e => e.ProgrammeId == lesson.ProgrammeId && e.To == null).OrderBy(e => e.Position).Select(e => e.PersonId).Skip(3).First());
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
        using (var reading = hall.House.Engine.OpenReading())
        {
            foreach (var child in children)
                Assert.True(await hall.House.CareNotes.EnterAsync(child, [new(CareHeading.Allergies, Care)], day, hall.House.Lock.Now(reading).Key!, by, Guid.CreateVersion7(), Cancel));
        }

        var lesson = db.Lessons.Where(l => l.Date == day).OrderBy(l => l.Start).First();
        var device = db.Devices.Select(d => d.Id).First();
        foreach (var child in children)
            await hall.House.Marks.TapAsync(new Tap(Guid.CreateVersion7(), device, null, lesson.Id, child, by, hall.Time.GetUtcNow(), MarkKind.Present, lesson.Start), day, new AttendanceRules(), Cancel);
        // Whoever is an adult of the club as well is on the roll by name.
        var adults = db.Duties.Select(d => d.PersonId).ToHashSet();
        var onTheRoll = db.People.AsEnumerable().Where(p => adults.Contains(p.Id)).Select(p => $"{Seal.Open(p.Given)} {Seal.Open(p.Family)}".Trim()).ToHashSet();
        var contacts = db.Contacts.AsEnumerable().SelectMany(c => new[] { Seal.Open(c.Phone), Seal.Open(c.Email), Seal.Open(c.Name) }).OfType<string>().Where(t => t.Length > 5 && !onTheRoll.Contains(t));
        return [Reason, "Pemberley", Note, Care, "Quetzal", Grams.ToString(CultureInfo.InvariantCulture), (Grams / 1000m).ToString(CultureInfo.InvariantCulture), "01632 960777", .. contacts.Distinct()];
    }

    [GeneratedRegex(@"\b\d+([.,]\d+)?\s*(kg|kilo|kilos|kilograms|lb|lbs|pounds|stone)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Weights();

    [GeneratedRegex(@"\b(epilep\w*|asthma\w*|inhaler|allerg\w*|diabet\w*|concuss\w*|medication|diagnos\w*|syndrome|autis\w*)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Medical();

    [GeneratedRegex(@"\{[^}]*\}")]
    private static partial Regex Parts();
}
