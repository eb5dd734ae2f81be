using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Keikocho.App.Commands;

namespace Keikocho.App.Hosting;

/// <summary>Finds a port that nobody uses.</summary>
public static class FreePort
{
    private const int Tries = 50;

    /// <summary>The port to open.</summary>
    /// <param name="address">Where it will be opened.</param>
    /// <param name="wanted">0 for any (the system chooses when it is opened), a number for exactly that one, null for the usual or the next free one.</param>
    /// <param name="usual">The first to try when none is wanted.</param>
    /// <exception cref="WrongUsageException">The wanted number is not a port.</exception>
    /// <exception cref="RefusalException">The wanted port is taken, or none is free.</exception>
    public static int Find(IPAddress address, int? wanted, int usual)
    {
        switch (wanted)
        {
            case 0:
                return 0;
            case < 0 or > 65_535:
                throw new WrongUsageException("A port is a number from 0 to 65535.");
            case { } port:
                return IsFree(address, port) ? port : throw new RefusalException(string.Create(CultureInfo.InvariantCulture,
                    $"Port {port} cannot be opened on this machine: another program has it or it is reserved; give another with --port, or leave --port out."));
            default:
                for (var port = usual; port < usual + Tries; port++)
                {
                    if (IsFree(address, port))
                        return port;
                }
                throw new RefusalException(string.Create(CultureInfo.InvariantCulture,
                    $"No port from {usual} to {usual + Tries - 1} is free on this machine; give another with --port."));
        }
    }

    /// <summary>A port of the system's choosing that is free now.</summary>
    /// <param name="address">Where it will be opened.</param>
    public static int Any(IPAddress address)
    {
        using var listener = new TcpListener(address, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static bool IsFree(IPAddress address, int port)
    {
        try
        {
            using var listener = new TcpListener(address, port);
            listener.Start();
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
