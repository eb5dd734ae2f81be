using System.Net;
using Keikocho.App.Hall;
using Keikocho.App.Shared;
using Keikocho.App.Tests.Shell;
using Keikocho.Store.Hall;
using Keikocho.Store.People;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.App.Tests.Hall;

public sealed class JoiningTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_door_is_shut_until_an_adult_opens_it_on_the_laptop_and_can_be_shut_again()
    {
        await using var app = await RunningApp.StartAsync();
        var hall = app.App.Services.GetRequiredService<HallNetwork>();
        Assert.False(hall.IsOpen);
        Assert.Empty(hall.Addresses);

        using var laptop = app.Browser();
        await HoldAsync(laptop);
        var token = await RunningApp.TokenAsync(laptop, "/tablets");
        Assert.Equal("/tablets", (await RunningApp.PostAsync(laptop, "/tablets/door", ("page-token", token), ("door", "open"))).Headers.Location?.ToString());
        Assert.True(hall.IsOpen);
        var port = hall.Port!.Value;
        Assert.True(await ListensAsync(port));

        await RunningApp.PostAsync(laptop, "/tablets/door", ("page-token", token), ("door", "shut"));
        Assert.False(hall.IsOpen);
        for (var i = 0; i < 100 && await ListensAsync(port); i++) await Task.Delay(50, Cancel);
        Assert.False(await ListensAsync(port));
    }

    [Fact]
    public async Task A_tablet_that_has_not_joined_sees_how_to_join_and_nothing_else()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = hall.Tablet();
        foreach (var endpoint in hall.App.App.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>())
        {
            if (endpoint.Metadata.GetMetadata<SeenByAttribute>() is null || endpoint.Metadata.GetMetadata<BeforeJoiningAttribute>() is not null
                || endpoint.Metadata.GetMetadata<Keikocho.App.Hosting.StaticFileMark>() is not null) continue;
            var address = "/" + System.Text.RegularExpressions.Regex.Replace(endpoint.RoutePattern.RawText!.TrimStart('/'), @"\{[^}]*\}", "0199c3a8-0000-7000-8000-000000000000");
            var isRead = endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods.Contains("GET") ?? true;
            using var request = new HttpRequestMessage(isRead ? HttpMethod.Get : HttpMethod.Post, address);
            var answer = await tablet.SendAsync(request, Cancel);
            if (isRead) Assert.True(answer.Headers.Location?.ToString() == "/join" || answer.StatusCode == HttpStatusCode.BadRequest, $"{address}: {answer.StatusCode}");
            else Assert.True(answer.StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.BadRequest, $"{address}: {answer.StatusCode}");
        }

        var page = await tablet.GetStringAsync("/join", Cancel);
        Assert.Contains("Four digits", page, StringComparison.Ordinal);
        Assert.DoesNotContain("/register", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_square_lets_one_tablet_in_once()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        var invitation = hall.Invite(DutyKind.Instructor);
        using var first = hall.Tablet();
        var token = await RunningApp.TokenAsync(first, $"/join?square={invitation.Token}");
        var joined = await RunningApp.PostAsync(first, "/join", ("page-token", token), ("square", invitation.Token));
        Assert.Equal("/mat", joined.Headers.Location?.ToString());
        Assert.Equal(HttpStatusCode.OK, (await first.GetAsync("/register", Cancel)).StatusCode);

        using var second = hall.Tablet();
        token = await RunningApp.TokenAsync(second, "/join");
        var refused = await RunningApp.PostAsync(second, "/join", ("page-token", token), ("square", invitation.Token));
        Assert.Equal("/join", refused.Headers.Location?.ToString());
        Assert.Equal("/join", (await second.GetAsync("/register", Cancel)).Headers.Location?.ToString());
    }

    [Fact]
    public async Task Four_digits_let_a_tablet_in_until_three_minutes_are_over()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = hall.Tablet();
        var token = await RunningApp.TokenAsync(tablet, "/join");
        var late = hall.Invite(DutyKind.Instructor);
        hall.Time.Step(Invitations.Life);
        Assert.Equal("/join", (await RunningApp.PostAsync(tablet, "/join", ("page-token", token), ("digits", late.Digits))).Headers.Location?.ToString());

        var fresh = hall.Invite(DutyKind.Instructor);
        hall.Time.Step(Invitations.Life - TimeSpan.FromSeconds(1));
        Assert.Equal("/mat", (await RunningApp.PostAsync(tablet, "/join", ("page-token", token), ("digits", fresh.Digits))).Headers.Location?.ToString());
    }

    [Fact]
    public async Task After_five_wrong_digits_the_right_ones_are_worth_nothing_but_the_square_is()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        var invitation = hall.Invite(DutyKind.Instructor);
        using var tablet = hall.Tablet();
        var token = await RunningApp.TokenAsync(tablet, "/join");
        var wrong = invitation.Digits == "0000" ? "0001" : "0000";
        for (var i = 0; i < Invitations.MostWrong; i++)
            await RunningApp.PostAsync(tablet, "/join", ("page-token", token), ("digits", wrong));
        Assert.Equal("/join", (await RunningApp.PostAsync(tablet, "/join", ("page-token", token), ("digits", invitation.Digits))).Headers.Location?.ToString());
        Assert.Equal("/mat", (await RunningApp.PostAsync(tablet, "/join", ("page-token", token), ("square", invitation.Token))).Headers.Location?.ToString());
    }

    [Fact]
    public async Task A_tablet_that_is_put_out_sees_nothing_at_its_next_touch()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = await hall.TabletOfAsync(DutyKind.Instructor);
        Assert.Equal(HttpStatusCode.OK, (await tablet.GetAsync("/tonight", Cancel)).StatusCode);

        using var laptop = hall.App.Browser();
        await HoldAsync(laptop);
        var page = await laptop.GetStringAsync("/tablets", Cancel);
        var id = System.Text.RegularExpressions.Regex.Match(page, "name=\"tablet\" value=\"([^\"]+)\"").Groups[1].Value;
        var token = await RunningApp.TokenAsync(laptop, "/tablets");
        await RunningApp.PostAsync(laptop, "/tablets/put-out", ("page-token", token), ("tablet", id));
        Assert.Equal("/join", (await tablet.GetAsync("/tonight", Cancel)).Headers.Location?.ToString());
    }

    [Fact]
    public async Task A_tablet_sees_nothing_of_anybody_once_its_evening_is_over()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var tablet = await hall.TabletOfAsync(DutyKind.Instructor);
        hall.Time.Step(TimeSpan.FromHours(5));
        Assert.Equal("/join", (await tablet.GetAsync("/tonight", Cancel)).Headers.Location?.ToString());
    }

    [Fact]
    public async Task A_tablet_reaches_no_page_of_the_laptop()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        foreach (var duty in new[] { DutyKind.Instructor, DutyKind.JuniorLeader })
        {
            using var tablet = await hall.TabletOfAsync(duty);
            foreach (var address in new[] { "/students", "/club", "/papers", "/promotion-tests", "/syllabus", "/tablets", "/sightings/waiting" })
                Assert.Equal(HttpStatusCode.Forbidden, (await tablet.GetAsync(address, Cancel)).StatusCode);
            var page = await tablet.GetStringAsync("/tonight", Cancel);
            Assert.DoesNotContain("href=\"/students", page, StringComparison.Ordinal);
            Assert.DoesNotContain("href=\"/club", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_page_that_tablets_keep_is_the_same_for_everybody_and_holds_nothing_of_anybody()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var stranger = hall.Tablet();
        using var leader = await hall.TabletOfAsync(DutyKind.JuniorLeader);
        using var adult = await hall.TabletOfAsync(DutyKind.HeadInstructor);
        var page = await stranger.GetStringAsync("/mat", Cancel);
        Assert.Equal(page, await leader.GetStringAsync("/mat", Cancel));
        Assert.Equal(page, await adult.GetStringAsync("/mat", Cancel));
        Assert.DoesNotContain("Larkwater", page, StringComparison.Ordinal);
        using var answer = await adult.GetAsync("/mat/evening", Cancel);
        Assert.True(answer.Headers.CacheControl?.NoStore);
    }

    [Fact]
    public async Task The_role_of_a_tablet_is_that_of_whoever_holds_it()
    {
        await using var hall = await HallDoorOpen.StartAsync();
        using var leader = await hall.TabletOfAsync(DutyKind.JuniorLeader);
        using var adult = await hall.TabletOfAsync(DutyKind.Instructor);
        using var db = hall.House.Engine.OpenDb();
        Assert.Equal([JoinRole.JuniorLeader, JoinRole.Instructor], db.Joins.OrderBy(j => j.Number).Select(j => j.Role));
        Assert.Equal(HttpStatusCode.Forbidden, (await leader.GetAsync("/acting", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await adult.GetAsync("/acting", Cancel)).StatusCode);
    }

    private static async Task HoldAsync(HttpClient laptop)
    {
        var page = await laptop.GetStringAsync("/acting", Cancel);
        var adult = System.Text.RegularExpressions.Regex.Match(page, "name=\"adult\" value=\"([^\"]+)\"").Groups[1].Value;
        await RunningApp.PostAsync(laptop, "/acting", ("page-token", await RunningApp.TokenAsync(laptop, "/acting")), ("adult", adult));
    }

    private static async Task<bool> ListensAsync(int port)
    {
        using var there = new System.Net.Sockets.TcpClient();
        try
        {
            await there.ConnectAsync(IPAddress.Loopback, port, Cancel);
            return true;
        }
        catch (System.Net.Sockets.SocketException)
        {
            return false;
        }
    }
}
