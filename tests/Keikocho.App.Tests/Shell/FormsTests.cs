using System.Net;
using Keikocho.App.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Keikocho.App.Tests.Shell;

public sealed class FormsTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Choosing_the_evening_paper_redirects_says_so_once_and_marks_the_page()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        var token = await RunningApp.TokenAsync(browser, "/club");

        using var answer = await RunningApp.PostAsync(browser, "/club/screen", ("page-token", token), ("screen", "evening"), ("from", "/club"));
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        Assert.Equal("/club", answer.Headers.Location?.ToString());

        var first = await browser.GetStringAsync("/club", Stop);
        Assert.Contains("<html lang=\"en\" data-paper=\"evening\">", first, StringComparison.Ordinal);
        Assert.Contains("Evening paper on this device.", first, StringComparison.Ordinal);
        var second = await browser.GetStringAsync("/club", Stop);
        Assert.DoesNotContain("Evening paper on this device.", second, StringComparison.Ordinal);
        Assert.Contains("data-paper=\"evening\"", second, StringComparison.Ordinal);

        using var back = await RunningApp.PostAsync(browser, "/club/screen", ("page-token", token), ("screen", "device"), ("from", "/club"));
        Assert.DoesNotContain("data-paper", await browser.GetStringAsync("/club", Stop), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("https://elsewhere.example/")]
    [InlineData("//elsewhere.example/")]
    [InlineData("/\\elsewhere.example/")]
    [InlineData("club")]
    [InlineData("/club\r\nSet-Cookie: a=b")]
    public async Task A_form_that_wants_to_go_elsewhere_goes_to_our_own_page(string from)
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        var token = await RunningApp.TokenAsync(browser, "/club");
        using var answer = await RunningApp.PostAsync(browser, "/club/screen", ("page-token", token), ("screen", "day"), ("from", from));
        Assert.Equal("/club", answer.Headers.Location?.ToString());
    }

    [Fact]
    public async Task An_old_page_says_so_keeps_what_was_typed_and_can_be_sent_again()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        browser.DefaultRequestHeaders.Add("Sec-Fetch-Site", "same-origin");
        using var refused = await RunningApp.PostAsync(browser, "/club/screen", ("page-token", "old"), ("screen", "day"), ("from", "/club?<\"Łucja\">"));
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        var html = await refused.Content.ReadAsStringAsync(Stop);
        Assert.Contains("This page is old", html, StringComparison.Ordinal);
        Assert.Contains("name=\"screen\" value=\"day\"", html, StringComparison.Ordinal);
        Assert.Contains("Łucja", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<\"Łucja", html, StringComparison.Ordinal);

        var start = html.IndexOf("name=\"page-token\" value=\"", StringComparison.Ordinal) + "name=\"page-token\" value=\"".Length;
        using var again = await RunningApp.PostAsync(browser, "/club/screen", ("page-token", html[start..html.IndexOf('"', start)]), ("screen", "day"));
        Assert.Equal(HttpStatusCode.SeeOther, again.StatusCode);
    }

    [Theory]
    [InlineData("cross-site")]
    [InlineData("same-site")]
    [InlineData(null)]
    public async Task A_form_that_may_come_from_elsewhere_is_not_offered_again(string? site)
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        if (site is not null)
            browser.DefaultRequestHeaders.Add("Sec-Fetch-Site", site);
        using var refused = await RunningApp.PostAsync(browser, "/club/screen", ("screen", "day"));
        var html = await refused.Content.ReadAsStringAsync(Stop);
        Assert.Contains("This page is old", html, StringComparison.Ordinal);
        Assert.Contains("<h1>This page is old</h1>", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<form", html, StringComparison.Ordinal);
        Assert.DoesNotContain("value=\"day\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_endpoint_without_a_form_needs_a_token_too_and_takes_it_from_the_header()
    {
        await using var app = await RunningApp.StartAsync(add: a =>
            a.MapPost("/tap", () => Results.Ok("taken")).WithMetadata(new SeenByAttribute(Role.Anyone, Device.Any)).DisableAntiforgery());
        using var browser = app.Browser();
        using var without = await browser.PostAsync("/tap", new StringContent("{}"), Stop);
        Assert.Equal(HttpStatusCode.BadRequest, without.StatusCode);
        browser.DefaultRequestHeaders.Add("Page-Token", await RunningApp.TokenAsync(browser, "/club"));
        using var with = await browser.PostAsync("/tap", new StringContent("{}"), Stop);
        Assert.Equal(HttpStatusCode.OK, with.StatusCode);
    }

    [Fact]
    public async Task A_request_of_more_than_a_megabyte_is_refused_as_too_large()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        var token = await RunningApp.TokenAsync(browser, "/club");
        // The answer comes before the body is sent: without this a client that still sends may find the line cut first.
        browser.DefaultRequestHeaders.ExpectContinue = true;
        using var answer = await RunningApp.PostAsync(browser, "/club/screen", ("page-token", token), ("screen", new string('x', 1_100_000)));
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Fact]
    public async Task Tokens_and_the_device_outlive_a_restart()
    {
        var folder = Directory.CreateTempSubdirectory("keikocho-test-").FullName;
        var copy = Directory.CreateTempSubdirectory("keikocho-test-").FullName;
        string token, device;
        using var handler = new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() };
        using var browser = new HttpClient(handler);
        await using (var before = await RunningApp.StartAsync(add: Who, folder: folder))
        {
            browser.DefaultRequestHeaders.ConnectionClose = true;
            var html = await browser.GetStringAsync(new Uri(before.Address, "/club"), Stop);
            var start = html.IndexOf("name=\"page-token\" value=\"", StringComparison.Ordinal) + "name=\"page-token\" value=\"".Length;
            token = html[start..html.IndexOf('"', start)];
            device = await browser.GetStringAsync(new Uri(before.Address, "/who"), Stop);
            Directory.CreateDirectory(Path.Combine(copy, "keys"));
            foreach (var key in Directory.GetFiles(Path.Combine(folder, "keys")))
                File.Copy(key, Path.Combine(copy, "keys", Path.GetFileName(key)));
        }
        await using var after = await RunningApp.StartAsync(add: Who, folder: copy);
        Assert.Equal(device, await browser.GetStringAsync(new Uri(after.Address, "/who"), Stop));
        using var answer = await browser.PostAsync(new Uri(after.Address, "/club/screen"),
            new FormUrlEncodedContent([new("page-token", token), new("screen", "day")]), Stop);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
    }

    [Fact]
    public async Task Each_browser_is_a_device_of_its_own_with_a_version_7_id()
    {
        await using var app = await RunningApp.StartAsync(add: Who);
        using var one = app.Browser();
        using var two = app.Browser();
        var first = await one.GetStringAsync("/who", Stop);
        Assert.Equal(first, await one.GetStringAsync("/who", Stop));
        Assert.NotEqual(first, await two.GetStringAsync("/who", Stop));
        Assert.Equal(7, Guid.Parse(first).Version);
    }

    [Fact]
    public async Task A_device_cookie_that_somebody_made_up_is_replaced()
    {
        await using var app = await RunningApp.StartAsync(add: Who);
        using var browser = app.Browser();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/who");
        request.Headers.Add("Cookie", "keikocho-device=made-up");
        using var answer = await browser.SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"));
        Assert.StartsWith("keikocho-device=", cookie, StringComparison.Ordinal);
        Assert.Contains("httponly", cookie, StringComparison.Ordinal);
        Assert.Contains("samesite=lax", cookie, StringComparison.Ordinal);
    }

    private static void Who(WebApplication app) =>
        app.MapGet("/who", (ThisDevice device) => device.Id.Value.ToString()).WithMetadata(new SeenByAttribute(Role.Anyone, Device.Any));
}
