using System.Net;
using Keikocho.App.Hosting;
using Keikocho.App.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.App.Tests.Shell;

public sealed class EveryAddressTests
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; "
        + "form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_address_that_can_be_read_without_parameters_answers_with_its_type_and_all_headers()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        var wrong = new List<string>();
        var seen = 0;
        foreach (var endpoint in Readable(app).Where(e => SeenAs.Laptop.May(e.Metadata.GetMetadata<SeenByAttribute>()!)))
        {
            var address = "/" + endpoint.RoutePattern.RawText!.TrimStart('/');
            // A variant for another encoding stands at the same address.
            using var answer = await browser.GetAsync(address, Stop);
            seen++;
            var isFile = address.Contains('.', StringComparison.Ordinal);
            var expected = address == "/" ? HttpStatusCode.SeeOther : HttpStatusCode.OK;
            // A paper of a promotion test asks for a child, a test to come and a syllabus: without them the page of papers says so.
            var isAsked = address.StartsWith("/papers/", StringComparison.Ordinal) && answer.StatusCode == HttpStatusCode.UnprocessableEntity;
            if (answer.StatusCode != expected && !isAsked)
                wrong.Add($"{address}: {(int)answer.StatusCode}");
            if (address == "/alive")
                Assert.Equal("text/plain; charset=utf-8", answer.Content.Headers.ContentType?.ToString());
            else if (!isFile && address != "/" && answer.Content.Headers.ContentType?.ToString() != "text/html; charset=utf-8")
                wrong.Add($"{address}: {answer.Content.Headers.ContentType}");
            if (!isFile && answer.Headers.CacheControl?.NoStore != true)
                wrong.Add($"{address}: may be kept");
            wrong.AddRange(MissingHeaders(answer).Select(name => $"{address}: {name}"));
        }
        Assert.Empty(wrong);
        Assert.True(seen > 8, "the pages and the files of the look are there");
    }

    [Fact]
    public async Task Every_address_that_takes_something_refuses_a_request_without_a_token()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        var wrong = new List<string>();
        var seen = 0;
        foreach (var endpoint in Routes(app).Where(endpoint => Methods(endpoint).Contains("POST")))
        {
            var address = "/" + endpoint.RoutePattern.RawText!.TrimStart('/');
            if (address.Contains('{', StringComparison.Ordinal))
                continue;
            seen++;
            using var answer = await RunningApp.PostAsync(browser, address, ("anything", "1"));
            // What takes only JSON refuses a form before it looks for a token.
            if (answer.StatusCode is not (HttpStatusCode.BadRequest or HttpStatusCode.UnsupportedMediaType))
                wrong.Add($"{address}: {(int)answer.StatusCode}");
            wrong.AddRange(MissingHeaders(answer).Select(name => $"{address}: {name}"));
        }
        Assert.Empty(wrong);
        Assert.True(seen >= 1);
    }

    [Fact]
    public async Task Every_page_takes_no_post()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        using var answer = await RunningApp.PostAsync(browser, "/club");
        Assert.Equal(HttpStatusCode.MethodNotAllowed, answer.StatusCode);
    }

    [Theory]
    [InlineData("/no-such-page", 404)]
    [InlineData("/css/none.css", 404)]
    [InlineData("/surprise", 500)]
    [InlineData("/refusal", 409)]
    public async Task Errors_carry_all_headers_and_are_not_kept(string address, int status)
    {
        await using var app = await WithTroubleAsync();
        using var browser = app.Browser();
        using var answer = await browser.GetAsync(address, Stop);
        Assert.Equal(status, (int)answer.StatusCode);
        Assert.Empty(MissingHeaders(answer));
        Assert.True(answer.Headers.CacheControl?.NoStore);
        Assert.Equal("text/html; charset=utf-8", answer.Content.Headers.ContentType?.ToString());
    }

    [Fact]
    public async Task A_surprise_tells_the_browser_nothing_of_its_details()
    {
        await using var app = await WithTroubleAsync();
        using var browser = app.Browser();
        using var answer = await browser.GetAsync("/surprise", Stop);
        var html = await answer.Content.ReadAsStringAsync(Stop);
        Assert.Contains("Something went wrong here", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Wren", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refusal_is_a_sentence_on_a_page_and_for_a_script_in_JSON()
    {
        await using var app = await WithTroubleAsync();
        using var browser = app.Browser();
        Assert.Contains("The evening is closed.", await (await browser.GetAsync("/refusal", Stop)).Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        browser.DefaultRequestHeaders.Add("Accept", "application/json");
        using var answer = await browser.GetAsync("/refusal", Stop);
        Assert.Equal("application/json", answer.Content.Headers.ContentType?.MediaType);
        Assert.Equal("""{"problem":"That cannot be done. The evening is closed."}""", await answer.Content.ReadAsStringAsync(Stop));
    }

    [Fact]
    public async Task A_fingerprinted_file_may_be_kept_for_ever_and_a_plain_one_is_asked_for_again()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        var html = await browser.GetStringAsync("/club", Stop);
        var start = html.IndexOf("/css/tokens.", StringComparison.Ordinal);
        var address = html[start..html.IndexOf('"', start)];
        Assert.NotEqual("/css/tokens.css", address);
        using var kept = await browser.GetAsync(address, Stop);
        Assert.Equal("max-age=31536000, immutable", kept.Headers.CacheControl?.ToString());
        using var plain = await browser.GetAsync("/css/tokens.css", Stop);
        Assert.Equal("no-cache", plain.Headers.CacheControl?.ToString());
    }

    [Fact]
    public void An_address_that_does_not_say_who_may_see_it_stops_the_start()
    {
        var folder = Directory.CreateTempSubdirectory("keikocho-test-").FullName;
        var e = Assert.Throws<InvalidOperationException>(() => KeikochoHost.Build(
            new ServedClub(Path.Combine(folder, "club.keikocho"), folder, true), IPAddress.Loopback, 0,
            add: app => app.MapGet("/forgotten", () => "").WithDisplayName("forgotten")));
        Assert.Contains("forgotten", e.Message, StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void Another_address_than_this_machines_own_cannot_be_built() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => KeikochoHost.Build(new ServedClub("x", "y", true), IPAddress.Any, 0));

    private static Task<RunningApp> WithTroubleAsync() => RunningApp.StartAsync(add: app =>
    {
        var anyone = new SeenByAttribute(Role.Anyone, Device.Any);
        app.MapGet("/surprise", string () => throw new InvalidOperationException("Wren was not expected")).WithMetadata(anyone);
        app.MapGet("/refusal", string () => throw new Keikocho.App.Commands.RefusalException("The evening is closed.")).WithMetadata(anyone);
    });

    private static IEnumerable<RouteEndpoint> Routes(RunningApp app) =>
        app.App.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().Where(endpoint => !EndpointRules.IsTheFrameworks(endpoint));

    private static IEnumerable<RouteEndpoint> Readable(RunningApp app) => Routes(app)
        .Where(endpoint => Methods(endpoint).Contains("GET") && !endpoint.RoutePattern.RawText!.Contains('{', StringComparison.Ordinal))
        .DistinctBy(endpoint => endpoint.RoutePattern.RawText);

    private static IReadOnlyList<string> Methods(RouteEndpoint endpoint) =>
        endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? ["GET", "POST"];

    private static IEnumerable<string> MissingHeaders(HttpResponseMessage answer)
    {
        (string Name, string Value)[] expected =
        [
            ("Content-Security-Policy", Policy),
            ("X-Content-Type-Options", "nosniff"),
            ("Referrer-Policy", "no-referrer"),
            ("Permissions-Policy", "camera=(), display-capture=(), geolocation=(), microphone=(), payment=(), usb=()"),
            ("Cross-Origin-Opener-Policy", "same-origin"),
            ("Cross-Origin-Resource-Policy", "same-origin"),
        ];
        foreach (var (name, value) in expected)
        {
            if (!answer.Headers.TryGetValues(name, out var values) || string.Join("|", values) != value)
                yield return name;
        }
        if (answer.Headers.Contains("Server"))
            yield return "names its server";
    }
}
