using System.Net;
using Keikocho.App.Hall;
using Keikocho.App.Shared;

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
        if (IsOwn(context.Request.Host.Host) || (HallDoor.Is(context) && IsOfTheHall(context)))
            return next(context);
        context.Response.StatusCode = StatusCodes.Status400BadRequest;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync("Keikocho answers only at http://127.0.0.1 or http://localhost.\n");
    });

    // By the hall's door: the address that the connection came in at, or this laptop's name there.
    private static bool IsOfTheHall(HttpContext context) =>
        (IPAddress.TryParse(context.Request.Host.Host.Trim('[', ']'), out var named)
            && context.Connection.LocalIpAddress is { } came && named.Equals(came.IsIPv4MappedToIPv6 ? came.MapToIPv4() : came))
        || string.Equals(context.Request.Host.Host, HallAuthority.LaptopName, StringComparison.OrdinalIgnoreCase);

    private static bool IsOwn(string host) =>
        host is "127.0.0.1" or "[::1]" || string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase);
}
