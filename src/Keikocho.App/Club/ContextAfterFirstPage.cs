using Keikocho.Store.Engines;

namespace Keikocho.App.Club;

/// <summary>
/// The first page does without the database context, which takes most of a second to be ready. It is made ready once that page is
/// out, while its reader looks at it: the second page may need it. What fails here fails again at the first question, and is told there.
/// </summary>
internal static class ContextAfterFirstPage
{
    public static void Use(WebApplication app)
    {
        var engine = app.Services.GetRequiredService<Engine>();
        var begun = 0;
        app.Use((context, next) =>
        {
            if (Volatile.Read(ref begun) == 0)
            {
                context.Response.OnCompleted(() =>
                {
                    if (IsPage(context.Response) && Interlocked.Exchange(ref begun, 1) == 0) _ = Task.Run(engine.MakeContextReady);
                    return Task.CompletedTask;
                });
            }

            return next(context);
        });
    }

    private static bool IsPage(HttpResponse response) =>
        response.StatusCode == StatusCodes.Status200OK && response.ContentType?.StartsWith("text/html", StringComparison.OrdinalIgnoreCase) == true;
}
