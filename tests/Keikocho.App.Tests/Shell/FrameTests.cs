using System.Net;
using Keikocho.App.Commands;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace Keikocho.App.Tests.Shell;

public sealed class FrameTests
{
    private static readonly SeenByAttribute Anyone = new(Role.Anyone, Device.Any);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_contents_list_only_pages_that_exist_in_their_fixed_order()
    {
        await using var app = await RunningApp.StartAsync(add: a =>
        {
            a.MapGet("/students", () => "").WithMetadata(Anyone);
            a.MapGet("/rotation/{unit}", () => "").WithMetadata(Anyone);
        });
        var lines = app.App.Services.GetRequiredService<Contents>().LinesFor(SeenAs.Laptop).Select(line => line.Word).ToList();
        Assert.Equal(1, lines.Count(word => word == "Students"));
        Assert.Equal(1, lines.Count(word => word == "Club"));
        Assert.DoesNotContain("Rotation", lines);
        Assert.True(lines.IndexOf("Students") < lines.IndexOf("Club"));
    }

    [Fact]
    public async Task Every_line_of_the_contents_leads_to_a_page()
    {
        await using var app = await RunningApp.StartAsync();
        using var browser = app.Browser();
        foreach (var line in app.App.Services.GetRequiredService<Contents>().LinesFor(SeenAs.Laptop))
        {
            using var answer = await browser.GetAsync(line.Address, Stop);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Contains($"<a href=\"{line.Address}\" aria-current=\"page\">", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("/club", true)]
    [InlineData("/club/import", true)]
    [InlineData("/clubhouse", false)]
    [InlineData("/", false)]
    public void A_page_belongs_to_the_line_it_lies_under(string path, bool holds) =>
        Assert.Equal(holds, Contents.Holds(new ContentsLine("Club", "/club"), path));

    [Fact]
    public async Task The_clubs_name_stands_in_the_masthead_and_in_the_title()
    {
        await using var app = await RunningApp.StartAsync(services => services.AddSingleton<IClubHeading>(new Named()));
        using var browser = app.Browser();
        var html = await browser.GetStringAsync("/club", Stop);
        Assert.Contains("<p class=\"club\">Judo-klub Šárka &amp; 道場</p>", html, StringComparison.Ordinal);
        Assert.Contains("<title>Club – Judo-klub Šárka &amp; 道場 – Keikocho</title>", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_that_is_not_taken_comes_back_in_the_frame_with_422()
    {
        await using var app = await RunningApp.StartAsync(add: a =>
            a.MapPost("/again", () => OnePage.Of<PartsPage>(new Dictionary<string, object?>())).WithMetadata(Anyone));
        using var browser = app.Browser();
        var token = await RunningApp.TokenAsync(browser, "/club");
        using var answer = await RunningApp.PostAsync(browser, "/again", ("page-token", token));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var html = await answer.Content.ReadAsStringAsync(Stop);
        Assert.Contains("<header class=\"masthead\">", html, StringComparison.Ordinal);
        Assert.Contains("<a href=\"#born\">31 June does not exist.", html, StringComparison.Ordinal);
        Assert.Contains("id=\"born\" name=\"born\" aria-invalid=\"true\" aria-describedby=\"born-error\"", html, StringComparison.Ordinal);
        Assert.Contains("aria-describedby=\"first-hint\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_part_that_refuses_to_start_keeps_the_port_closed()
    {
        var refused = await Assert.ThrowsAsync<RefusalException>(() =>
            RunningApp.StartAsync(services => services.AddSingleton<IHostedService>(new Unwilling())));
        Assert.Equal("The club's file was made by a newer Keikocho; install that one.", refused.Message);
    }

    [Theory]
    [InlineData("https://elsewhere.example")]
    [InlineData("//elsewhere.example")]
    [InlineData("")]
    [InlineData("/students/Łucja")]
    public void A_redirect_to_elsewhere_is_misuse(string address) => Assert.Throws<ArgumentException>(() => Redirects.SeeOther(address));

    private sealed class Named : IClubHeading
    {
        public string Name => "Judo-klub Šárka & 道場";

        public string ZoneId => "Europe/Prague";
    }

    private sealed class Unwilling : IHostedService
    {
        public Task StartAsync(CancellationToken cancellationToken) =>
            throw new RefusalException("The club's file was made by a newer Keikocho; install that one.");

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
