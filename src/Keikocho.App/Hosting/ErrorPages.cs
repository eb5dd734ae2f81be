using Keikocho.App.Commands;
using Keikocho.App.Shared.Problems;

namespace Keikocho.App.Hosting;

/// <summary>Turns what went wrong into a page that says so in plain words, or into a JSON sentence for a script.</summary>
public static partial class ErrorPages
{
    /// <summary>Adds it outermost, inside the headers only.</summary>
    public static void Use(WebApplication app)
    {
        var log = app.Services.GetRequiredService<ILoggerFactory>().CreateLogger("Keikocho");
        app.Use(async (context, next) =>
        {
            Problem? problem = null;
            try
            {
                await next(context);
                if (context.Response is { StatusCode: >= 400, HasStarted: false, ContentType: null, ContentLength: null or 0 })
                    problem = Problem.ForStatus(context.Response.StatusCode, context.Features.Get<StalePage>() is not null);
            }
            catch (BadHttpRequestException e) when (!context.Response.HasStarted)
            {
                problem = Problem.ForStatus(e.StatusCode, stale: false);
            }
            catch (Exception e) when (!context.Response.HasStarted && Refusals.Of(e) is not null)
            {
                problem = Problem.ForRefusal(Refusals.Of(e)!.Message);
            }
            catch (Exception e) when (e is OperationCanceledException or ObjectDisposedException
                && context.RequestAborted.IsCancellationRequested && !context.Response.HasStarted)
            {
                // The browser went away, or the program closed in the middle of it: there is nobody to tell.
                context.Response.StatusCode = StatusCodes.Status499ClientClosedRequest;
            }
#pragma warning disable CA1031 // The edge of the program: whatever it was, a person gets a page and the log the details.
            catch (Exception e) when (!context.Response.HasStarted)
#pragma warning restore CA1031
            {
                problem = Problem.ForSurprise(context.TraceIdentifier);
                Surprise(log, context.TraceIdentifier, e);
            }
            if (problem is not null)
                await TellAsync(context, problem, log);
        });
    }

    private static async Task TellAsync(HttpContext context, Problem problem, ILogger log)
    {
        var response = context.Response;
        var allow = response.Headers.Allow;
        response.Clear();
        response.StatusCode = problem.Status;
        response.Headers.Allow = allow;
        if (context.Request.Headers.Accept.ToString().Contains("application/json", StringComparison.OrdinalIgnoreCase))
        {
            await response.WriteAsJsonAsync(new { problem = $"{problem.Title}. {problem.Text}" }, WebJson.Options, context.RequestAborted);
            return;
        }
        var before = context.RequestServices;
        try
        {
            // What was being rendered when it went wrong has left its traces in the request's own scope.
            await using var scope = before.GetRequiredService<IServiceScopeFactory>().CreateAsyncScope();
            context.RequestServices = scope.ServiceProvider;
            await ProblemPage.Answer(problem, await TypedFields.ReadAsync(context, problem)).ExecuteAsync(context);
        }
#pragma warning disable CA1031 // The page of the error may not itself be the error that nobody sees.
        catch (Exception e) when (!response.HasStarted)
#pragma warning restore CA1031
        {
            // The program is closing and has put its services away: that is no surprise, and plain words need none of them.
            if (e is not ObjectDisposedException) Surprise(log, context.TraceIdentifier, e);
            response.Clear();
            response.StatusCode = problem.Status;
            response.ContentType = "text/plain; charset=utf-8";
            await response.WriteAsync($"{problem.Title}. {problem.Text}\n", context.RequestAborted);
        }
        finally
        {
            context.RequestServices = before;
        }
    }

    // No address and no form field in the log: they may name a child.
    [LoggerMessage(Level = LogLevel.Error, Message = "Something unexpected, number {Number}")]
    private static partial void Surprise(ILogger log, string number, Exception e);
}
