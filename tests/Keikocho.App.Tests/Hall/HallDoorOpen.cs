using System.Net;
using System.Security.Cryptography.X509Certificates;
using Keikocho.App.Club;
using Keikocho.App.Hall;
using Keikocho.App.Tests.Shell;
using Keikocho.Store.People;
using Keikocho.Testing;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Keikocho.App.Tests.Hall;

/// <summary>The demo club twenty minutes before the bow, its door open on a free port, and browsers that trust only its authority.</summary>
internal sealed class HallDoorOpen : IAsyncDisposable
{
    private readonly X509Certificate2 authority;

    private HallDoorOpen(RunningApp app, FixedTime time, int port)
    {
        (App, Time) = (app, time);
        Address = new Uri($"https://127.0.0.1:{port}/");
        authority = X509CertificateLoader.LoadCertificate(Hall.Authority.ForTablets);
    }

    public RunningApp App { get; }

    public FixedTime Time { get; }

    /// <summary>The door.</summary>
    public Uri Address { get; }

    public HallNetwork Hall => App.App.Services.GetRequiredService<HallNetwork>();

    public Invitations Invitations => App.App.Services.GetRequiredService<Invitations>();

    public ClubHouse House => App.App.Services.GetRequiredService<ClubHouse>();

    public static async Task<HallDoorOpen> StartAsync(string at = "2026-11-24T17:10", Action<IServiceCollection>? change = null, Action<WebApplication>? add = null)
    {
        var time = FixedTime.At(at);
        var app = await RunningApp.StartAsync(services =>
        {
            services.AddSingleton<TimeProvider>(time);
            change?.Invoke(services);
        }, add);
        var port = await app.App.Services.GetRequiredService<HallNetwork>().OpenAsync(0, TestContext.Current.CancellationToken);
        return new HallDoorOpen(app, time, port);
    }

    /// <summary>A tablet of its own.</summary>
    public HttpClient Tablet() => new(new SocketsHttpHandler
    {
        AllowAutoRedirect = false,
        UseCookies = true,
        CookieContainer = new CookieContainer(),
        SslOptions = { RemoteCertificateValidationCallback = (_, certificate, _, _) => Trusts(new X509Certificate2(certificate!)) },
    })
    { BaseAddress = Address };

    /// <summary>A tablet let in for the first person with such a duty.</summary>
    public async Task<HttpClient> TabletOfAsync(DutyKind duty)
    {
        var tablet = Tablet();
        var square = Invite(duty).Token;
        var token = await RunningApp.TokenAsync(tablet, $"/join?square={square}");
        var answer = await RunningApp.PostAsync(tablet, "/join", ("page-token", token), ("square", square));
        Assert.Equal("/mat", answer.Headers.Location?.ToString());
        return tablet;
    }

    /// <summary>An invitation as the laptop makes it.</summary>
    public Invitation Invite(DutyKind duty)
    {
        using var db = House.Engine.OpenDb();
        var person = db.Duties.Where(d => d.Kind == duty && d.To == null).OrderBy(d => d.PersonId).Select(d => d.PersonId).First();
        var hall = db.Halls.Select(h => h.Id).First();
        return Invitations.Make(person, DateOnly.FromDateTime(Time.GetUtcNow().UtcDateTime), hall, Time.GetUtcNow().AddHours(4), person);
    }

    /// <summary>Whether a browser that trusts nothing but the authority takes a certificate for this machine.</summary>
    public bool Trusts(X509Certificate2 certificate)
    {
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.Add(authority);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        chain.ChainPolicy.VerificationTime = DateTime.Now;
        return chain.Build(certificate) && certificate.MatchesHostname("127.0.0.1");
    }

    public async ValueTask DisposeAsync()
    {
        authority.Dispose();
        await App.DisposeAsync();
    }
}
