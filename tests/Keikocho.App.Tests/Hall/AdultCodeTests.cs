using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Keikocho.App.Hall;
using Keikocho.Store.Hall;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;

namespace Keikocho.App.Tests.Hall;

public sealed class AdultCodeTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_adults_code_opens_one_childs_contacts_for_ten_seconds_on_an_instructors_tablet_only()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = new TabletOfTests(await hall.TabletOfAsync(DutyKind.HeadInstructor));
        await tablet.AskAsync();
        var (child, phone) = ChildWithPhone(hall);
        Assert.Equal(AdultCodeOutcome.Stored, await SetAsync(hall, tablet, "271828"));
        var sees = await OpenAsync(tablet, child, "271828", HttpStatusCode.OK);
        Assert.Equal(phone, sees["contacts"]![0]!["phone"]!.GetValue<string>());
        Assert.Equal(10, sees["seconds"]!.GetValue<int>());

        var wrong = await OpenAsync(tablet, child, "271829", HttpStatusCode.Forbidden);
        Assert.Empty(wrong["contacts"]!.AsArray());

        using var leader = new TabletOfTests(await hall.TabletOfAsync(DutyKind.JuniorLeader));
        await leader.AskAsync();
        using var answer = await PostAsync(leader, child, "271828");
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.DoesNotContain(phone, await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task After_five_wrong_codes_the_right_one_opens_nothing_for_a_minute()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = new TabletOfTests(await hall.TabletOfAsync(DutyKind.HeadInstructor));
        await tablet.AskAsync();
        var (child, _) = ChildWithPhone(hall);
        await SetAsync(hall, tablet, "271828");
        for (var i = 0; i < WrongCodes.Most; i++) await OpenAsync(tablet, child, "000001", HttpStatusCode.Forbidden);
        await OpenAsync(tablet, child, "271828", HttpStatusCode.Forbidden);
        hall.Time.Step(WrongCodes.Pause);
        await OpenAsync(tablet, child, "271828", HttpStatusCode.OK);
    }

    [Theory]
    [InlineData("12345")]
    [InlineData("1234567")]
    [InlineData("111111")]
    [InlineData("12a456")]
    [InlineData("")]
    public async Task Six_digits_make_a_code_and_nothing_else_does(string code)
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = new TabletOfTests(await hall.TabletOfAsync(DutyKind.HeadInstructor));
        await tablet.AskAsync();
        Assert.Equal(AdultCodeOutcome.NoCode, await SetAsync(hall, tablet, code));
        var (child, _) = ChildWithPhone(hall);
        await OpenAsync(tablet, child, code, HttpStatusCode.Forbidden);
    }

    private static Task<AdultCodeOutcome> SetAsync(HallDoorOpen hall, TabletOfTests tablet, string code)
    {
        var adult = tablet.Evening["join"]!["person"]!.GetValue<Guid>();
        return hall.House.AdultCodes.SetAsync(adult, code, new DateOnly(2026, 11, 24), adult, Guid.CreateVersion7(), Cancel);
    }

    private static (Guid Child, string Phone) ChildWithPhone(HallDoorOpen hall)
    {
        using var db = hall.House.Engine.OpenDb();
        var contact = db.Contacts.OrderBy(c => c.Position).AsEnumerable().First(c => c.Position == db.Contacts.Where(o => o.PersonId == c.PersonId).Min(o => o.Position) && c.Phone is not null);
        return (contact.PersonId, Seal.Open(contact.Phone)!);
    }

    private static async Task<JsonNode> OpenAsync(TabletOfTests tablet, Guid child, string code, HttpStatusCode expected)
    {
        using var answer = await PostAsync(tablet, child, code);
        Assert.Equal(expected, answer.StatusCode);
        Assert.True(answer.Headers.CacheControl?.NoStore);
        return JsonNode.Parse(await answer.Content.ReadAsStringAsync(Cancel))!;
    }

    private static Task<HttpResponseMessage> PostAsync(TabletOfTests tablet, Guid child, string code)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, "/mat/adult") { Content = JsonContent.Create(new { child, code }) };
        request.Headers.Add("Page-Token", tablet.Evening["token"]!.GetValue<string>());
        request.Headers.Add("Accept", "application/json");
        return tablet.Http.SendAsync(request, Cancel);
    }
}
