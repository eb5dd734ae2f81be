using System.Net;
using Keikocho.App.Commands;
using Keikocho.App.Shared;
using Keikocho.Store.Engines;
using Microsoft.AspNetCore.Builder;

namespace Keikocho.App.Tests.Shell;

/// <summary>A refusal of the store is shown as one of ours is: its sentence, and no number of an error.</summary>
public sealed class RefusalPageTests
{
    private const string Sentence = "the club is being restored. Wait for it, then try again.";

    [Theory]
    [InlineData("/ours")]
    [InlineData("/the-stores")]
    public async Task A_refusal_is_a_page_with_its_sentence(string address)
    {
        await using var app = await RunningApp.StartAsync(add: app =>
        {
            var anyone = new SeenByAttribute(Role.Anyone, Device.Any);
            app.MapGet("/ours", string () => throw new RefusalException(Refusals.AtStart(Sentence))).WithMetadata(anyone);
            app.MapGet("/the-stores", string () => throw new StoreRefusal(Sentence)).WithMetadata(anyone);
        });
        using var browser = app.Browser();
        using var page = await browser.GetAsync(address, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Conflict, page.StatusCode);
        Assert.Contains("The club is being restored. Wait for it, then try again.", await page.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public void Only_a_refusal_is_told_as_one() => Assert.Null(Refusals.Of(new InvalidOperationException("out of ink")));
}
