using Microsoft.AspNetCore.Connections;

namespace Keikocho.App.Shared;

/// <summary>The mark of a connection that came in by the hall's door, whatever address it came from.</summary>
public sealed class HallDoor
{
    private static readonly HallDoor Mark = new();

    private HallDoor()
    {
    }

    /// <summary>Marks a connection.</summary>
    public static void Let(ConnectionContext connection)
    {
        ArgumentNullException.ThrowIfNull(connection);
        connection.Features.Set(Mark);
    }

    /// <summary>Whether a request came in by that door.</summary>
    public static bool Is(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return context.Features.Get<HallDoor>() is not null;
    }
}
