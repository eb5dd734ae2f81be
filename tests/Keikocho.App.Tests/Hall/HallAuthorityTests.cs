using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Keikocho.App.Hall;
using Keikocho.Testing;

namespace Keikocho.App.Tests.Hall;

/// <summary>The certificates against RFC 5280 as .NET and the system's library read it.</summary>
public sealed class HallAuthorityTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("keikocho-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("192.168.1.20")]
    [InlineData("10.42.0.1")]
    [InlineData("172.20.10.2")]
    [InlineData("127.0.0.1")]
    public void A_certificate_is_good_for_the_address_that_was_come_in_at_and_for_no_other(string address)
    {
        using var authority = HallAuthority.Open(folder, TimeProvider.System);
        var given = authority.For(IPAddress.Parse(address));
        Assert.True(IsTrusted(given, authority));
        Assert.True(given.MatchesHostname(address));
        Assert.False(given.MatchesHostname("192.168.1.21"));
        Assert.True(given.MatchesHostname(HallAuthority.LaptopName));
        Assert.True(given.NotAfter - given.NotBefore < TimeSpan.FromDays(398));
    }

    [Fact]
    public void The_authority_is_kept_and_only_this_user_can_read_its_key()
    {
        string first;
        using (var made = HallAuthority.Open(folder, TimeProvider.System)) first = made.Fingerprint;
        using var kept = HallAuthority.Open(folder, TimeProvider.System);
        Assert.Equal(first, kept.Fingerprint);
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(folder, "hall-authority.pem")));
        Assert.True(IsTrusted(kept.For(IPAddress.Loopback), kept));
    }

    [Fact]
    public void A_stolen_authority_cannot_vouch_for_a_place_on_the_internet()
    {
        using var authority = HallAuthority.Open(folder, TimeProvider.System);
        var path = Path.Combine(folder, "hall-authority.pem");
        using var stolen = X509Certificate2.CreateFromPemFile(path, path);
        foreach (var (name, isFine) in new[] { ("bank.example", false), ("laptop.local", true) })
        {
            using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
            var request = new CertificateRequest("CN=x", key, HashAlgorithmName.SHA256);
            var names = new SubjectAlternativeNameBuilder();
            names.AddDnsName(name);
            request.CertificateExtensions.Add(names.Build());
            using var forged = request.Create(stolen, DateTimeOffset.UtcNow.AddHours(-1), DateTimeOffset.UtcNow.AddDays(10), [1, 2, 3]);
            Assert.Equal(isFine, IsTrusted(forged, authority));
        }

        var constraints = stolen.Extensions.Single(e => e.Oid!.Value == "2.5.29.30");
        Assert.True(constraints.Critical);
    }

    [Fact]
    public void An_authority_near_its_end_is_made_anew()
    {
        string first;
        using (var made = HallAuthority.Open(folder, TimeProvider.System)) first = made.Fingerprint;
        var later = FixedTime.At("2041-06-01T12:00");
        using var next = HallAuthority.Open(folder, later);
        Assert.NotEqual(first, next.Fingerprint);
    }

    [Theory]
    [InlineData("8.8.8.8", false)]
    [InlineData("172.32.0.1", false)]
    [InlineData("172.31.255.1", true)]
    [InlineData("192.168.0.1", true)]
    [InlineData("fe80::1", true)]
    [InlineData("2001:db8::1", false)]
    public void Only_private_addresses_are_vouched_for(string address, bool isPrivate) =>
        Assert.Equal(isPrivate, HallAuthority.IsPrivate(IPAddress.Parse(address)));

    private static bool IsTrusted(X509Certificate2 certificate, HallAuthority authority)
    {
        using var root = X509CertificateLoader.LoadCertificate(authority.ForTablets);
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.Add(root);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        return chain.Build(certificate);
    }
}
