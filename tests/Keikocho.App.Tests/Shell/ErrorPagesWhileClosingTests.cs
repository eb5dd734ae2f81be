using Keikocho.App.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.App.Tests.Hosting;

/// <summary>A request that is still being answered when the program has put everything away.</summary>
public sealed class ErrorPagesWhileClosingTests
{
    [Fact]
    public async Task A_request_that_outlives_the_services_is_answered_in_plain_text()
    {
        var (status, text) = await AnswerAsync(browserIsGone: false);
        Assert.Equal(StatusCodes.Status500InternalServerError, status);
        Assert.StartsWith("Something went wrong here.", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_browser_that_has_gone_away_meanwhile_is_told_nothing()
    {
        var (status, text) = await AnswerAsync(browserIsGone: true);
        Assert.Equal(StatusCodes.Status499ClientClosedRequest, status);
        Assert.Empty(text);
    }

    private static async Task<(int Status, string Text)> AnswerAsync(bool browserIsGone)
    {
        var services = new ServiceCollection().BuildServiceProvider();
        await services.DisposeAsync();
        using var body = new MemoryStream();
        var context = new DefaultHttpContext { RequestServices = services, RequestAborted = new CancellationToken(browserIsGone) };
        context.Response.Body = body;
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.WebHost.UseKestrelCore();
        await using var app = builder.Build();
        ErrorPages.Use(app);
        app.Run(_ => throw new ObjectDisposedException(nameof(IServiceProvider)));
        await ((IApplicationBuilder)app).Build()(context);
        return (context.Response.StatusCode, System.Text.Encoding.UTF8.GetString(body.ToArray()));
    }
}
