using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using Keikocho.App.Commands;
using Keikocho.App.Hosting;
using Keikocho.App.Shared;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Keikocho.App.Hall;

/// <summary>
/// The laptop's second door: TLS on every address of this machine, for tablets that have joined. It is shut until an adult opens it on
/// the laptop, and shut again when the program ends.
/// </summary>
public sealed class HallNetwork : IDisposable
{
    /// <summary>The port that is tried first.</summary>
    public const int UsualPort = 5111;

    private const string Name = "Hall";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private readonly Listening _listening = new();
    private readonly IConfigurationRoot _configuration;
    private readonly Lazy<HallAuthority> _authority;
    private readonly SemaphoreSlim _one = new(1);

    /// <summary>The door of one club, shut.</summary>
    public HallNetwork(ServedClub club, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(club);
        _configuration = new ConfigurationBuilder().Add(_listening).Build();
        _authority = new(() => HallAuthority.Open(Path.Combine(club.DataFolder, "keys"), time));
    }

    /// <summary>The authority, made when it is first asked for.</summary>
    public HallAuthority Authority => _authority.Value;

    /// <summary>Whether tablets can reach the laptop.</summary>
    public bool IsOpen => Port is not null;

    /// <summary>The port; null while it is shut.</summary>
    public int? Port { get; private set; }

    /// <summary>Whether this machine is in any network now; if not, only its own browser finds the door.</summary>
    public static bool IsInANetwork => Own().Any();

    /// <summary>Where a tablet finds the laptop: one address for each network it is on, private ones only; this machine’s own where it is on none.</summary>
    public IReadOnlyList<Uri> Addresses => Port is not { } port
        ? []
        : [.. Own().DefaultIfEmpty(IPAddress.Loopback).Select(address => new Uri($"https://{(address.AddressFamily == AddressFamily.InterNetworkV6 ? $"[{address}]" : address.ToString())}:{port.ToString(CultureInfo.InvariantCulture)}/"))];

    /// <summary>Makes the server listen to the door, which is still shut.</summary>
    internal void Use(KestrelServerOptions server)
    {
        server.ConfigureHttpsDefaults(https => https.ServerCertificateSelector = (connection, _) =>
            Authority.For((connection?.LocalEndPoint as IPEndPoint)?.Address ?? IPAddress.Loopback));
        server.Configure(_configuration, reloadOnChange: true).Endpoint(Name, endpoint =>
        {
            endpoint.ListenOptions.Protocols = HttpProtocols.Http1;
            endpoint.ListenOptions.Use(next => connection =>
            {
                HallDoor.Let(connection);
                return next(connection);
            });
        });
    }

    /// <summary>Opens it; open already, it stays as it is. When this returns, a tablet can come in.</summary>
    /// <param name="port">The port, 0 for any; null for the usual one or the next free one.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="RefusalException">The port could not be opened.</exception>
    public async Task<int> OpenAsync(int? port, CancellationToken cancel)
    {
        await _one.WaitAsync(cancel);
        try
        {
            if (Port is { } open) return open;
            var wanted = FreePort.Find(IPAddress.Any, port, UsualPort);
            var free = wanted == 0 ? FreePort.Any(IPAddress.Any) : wanted;
            _ = Authority;
            _listening.At(free);
            if (!await AnswersAsync(free, cancel))
            {
                _listening.At(null);
                throw new RefusalException(string.Create(CultureInfo.InvariantCulture, $"Port {free} could not be opened to the hall’s network: another program has it, or this machine’s firewall refuses it; allow Keikocho there and open it again."));
            }

            Port = free;
            return free;
        }
        finally
        {
            _one.Release();
        }
    }

    /// <summary>Shuts it: tablets keep what they have and send it when it is open again.</summary>
    public async Task ShutAsync(CancellationToken cancel)
    {
        await _one.WaitAsync(cancel);
        try
        {
            Port = null;
            _listening.At(null);
        }
        finally
        {
            _one.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_authority.IsValueCreated) _authority.Value.Dispose();
        (_configuration as IDisposable)?.Dispose();
        _one.Dispose();
    }

    // The server opens it in its own time after it was told.
    private static async Task<bool> AnswersAsync(int port, CancellationToken cancel)
    {
        var until = Stopwatch.GetTimestamp() + Stopwatch.Frequency * Patience.Ticks / TimeSpan.TicksPerSecond;
        while (Stopwatch.GetTimestamp() < until)
        {
            try
            {
                using var there = new TcpClient();
                await there.ConnectAsync(IPAddress.Loopback, port, cancel);
                return true;
            }
            catch (SocketException)
            {
                await Task.Delay(20, cancel);
            }
        }

        return false;
    }

    private static IEnumerable<IPAddress> Own() => NetworkInterface.GetAllNetworkInterfaces()
        .Where(card => card.OperationalStatus == OperationalStatus.Up && card.NetworkInterfaceType != NetworkInterfaceType.Loopback)
        .SelectMany(card => card.GetIPProperties().UnicastAddresses.Select(a => a.Address))
        .Where(address => address.AddressFamily == AddressFamily.InterNetwork && HallAuthority.IsPrivate(address))
        .OrderBy(address => address.ToString(), StringComparer.Ordinal);

    // Which endpoint the server should have, as the setting that it watches.
    private sealed class Listening : ConfigurationProvider, IConfigurationSource
    {
        public IConfigurationProvider Build(IConfigurationBuilder builder) => this;

        public void At(int? port)
        {
            Data = port is not { } open ? [] : new Dictionary<string, string?>(StringComparer.OrdinalIgnoreCase)
            {
                [$"Endpoints:{Name}:Url"] = $"https://*:{open.ToString(CultureInfo.InvariantCulture)}",
            };
            OnReload();
        }
    }
}
