using System.Net;
using Keikocho.App.Commands;

namespace Keikocho.App.Hosting;

/// <summary>
/// Until there is sign-in, the laptop's own pages are for this machine only: whoever reaches the address may read children's data. So no
/// other address can be given for them, neither by an option nor by a setting of the environment. Tablets have a door of their own.
/// </summary>
public static class LoopbackAddress
{
    private static readonly string[] UrlVariables = ["ASPNETCORE_URLS", "DOTNET_URLS", "URLS"];

    /// <summary>Reads 127.0.0.1, ::1 or localhost.</summary>
    /// <exception cref="RefusalException">Any other address.</exception>
    public static IPAddress Read(string text) => text switch
    {
        "127.0.0.1" => IPAddress.Loopback,
        "::1" or "[::1]" => IPAddress.IPv6Loopback,
        _ when string.Equals(text, "localhost", StringComparison.OrdinalIgnoreCase) => IPAddress.Loopback,
        _ => throw Elsewhere($"--address {text}", "leave it out"),
    };

    /// <summary>Refuses the usual settings by which a web server is told to open another address.</summary>
    /// <param name="read">Reads an environment variable; null when it is not set.</param>
    /// <exception cref="RefusalException">One of them names an address that is not this machine's own.</exception>
    public static void RefuseOthersFromEnvironment(Func<string, string?> read)
    {
        ArgumentNullException.ThrowIfNull(read);
        foreach (var name in UrlVariables)
        {
            var urls = (read(name) ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            if (urls.FirstOrDefault(url => !IsOwn(url)) is { } other)
                throw Elsewhere($"{name}={other}", "clear it");
        }
    }

    private static bool IsOwn(string url) =>
        Uri.TryCreate(url, UriKind.Absolute, out var parsed) && parsed.Host is ("127.0.0.1" or "[::1]" or "localhost");

    private static RefusalException Elsewhere(string what, string todo) => new(
        $"{what} is refused: these pages open on this machine only (127.0.0.1), because whoever reaches them can read children's data; tablets come in by the page Tablets, over TLS, when an adult lets them in; {todo}.");
}
