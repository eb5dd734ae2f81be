using Microsoft.Extensions.Primitives;

namespace Keikocho.App.Hosting;

/// <summary>
/// What every answer says to the browser, whatever it is: nothing from elsewhere, no inline script or style, no frame around it, no
/// copy kept. The reasons are in <c>docs/decisions/010-csp.md</c>.
/// </summary>
public static class SecurityHeaders
{
    /// <summary>The content security policy, the same for every answer.</summary>
    public const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; "
        + "form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    /// <summary>Names and values, except for <c>Cache-Control</c>, which static files set themselves.</summary>
    public static IReadOnlyList<KeyValuePair<string, string>> All { get; } =
    [
        new("Content-Security-Policy", Policy),
        new("X-Content-Type-Options", "nosniff"),
        new("Referrer-Policy", "no-referrer"),
        new("Permissions-Policy", "camera=(), display-capture=(), geolocation=(), microphone=(), payment=(), usb=()"),
        new("Cross-Origin-Opener-Policy", "same-origin"),
        new("Cross-Origin-Resource-Policy", "same-origin"),
    ];

    private static readonly (string Name, StringValues Value)[] Ready = [.. All.Select(header => (header.Key, new StringValues(header.Value)))];

    /// <summary>Adds them as the last thing before an answer starts, so that nothing can take them away again.</summary>
    public static void Use(WebApplication app) => app.Use(static (context, next) =>
    {
        context.Response.OnStarting(static state =>
        {
            var response = ((HttpContext)state).Response;
            foreach (var (name, value) in Ready)
                response.Headers[name] = value;
            var isFile = response.HttpContext.GetEndpoint()?.Metadata.GetMetadata<StaticFileMark>() is not null;
            if (!isFile || response.StatusCode >= 400)
                response.Headers.CacheControl = "no-store";
            return Task.CompletedTask;
        }, context);
        return next(context);
    });
}
