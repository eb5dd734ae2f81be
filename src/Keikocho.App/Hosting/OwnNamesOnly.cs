namespace Keikocho.App.Hosting;

/// <summary>
/// Answers only when the browser believes it talks to this machine. A page from elsewhere whose name is pointed at 127.0.0.1 sends
/// its own name as host and gets nothing, not even the club's name.
/// </summary>
public static class OwnNamesOnly
{
    /// <summary>Adds the check.</summary>
    public static void Use(WebApplication app) => app.Use(static (context, next) =>
    {
        if (IsOwn(context.Request.Host.Host))
            return next(context);
        context.Response.StatusCode = StatusCodes.Status400BadRequest;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync("Keikocho answers only at http://127.0.0.1 or http://localhost.\n");
    });

    private static bool IsOwn(string host) =>
        host is "127.0.0.1" or "[::1]" || string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase);
}
