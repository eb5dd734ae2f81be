using System.Collections.Concurrent;
using System.Formats.Asn1;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Keikocho.App.Hall;

/// <summary>
/// The club's own certificate authority, made once and kept in the data folder, and the certificates it gives this laptop. It may only
/// vouch for private addresses and names ending in <c>.local</c> (RFC 5280, name constraints, marked critical): a tablet that trusts it
/// cannot be lied to about any other place with it, even if its key were stolen.
/// </summary>
public sealed class HallAuthority : IDisposable
{
    /// <summary>Years the authority lives: longer than the tablets.</summary>
    public const int YearsOfAuthority = 15;

    /// <summary>Days a certificate of the laptop lives; phones refuse more than 825, and 397 is what every browser takes.</summary>
    public const int DaysOfCertificate = 397;

    private const string ServerAuthentication = "1.3.6.1.5.5.7.3.1";
    private static readonly (string Base, string Mask)[] PrivateNetworks =
    [
        ("10.0.0.0", "255.0.0.0"), ("172.16.0.0", "255.240.0.0"), ("192.168.0.0", "255.255.0.0"), ("169.254.0.0", "255.255.0.0"),
        ("127.0.0.0", "255.0.0.0"), ("::1", "ffff:ffff:ffff:ffff:ffff:ffff:ffff:ffff"), ("fc00::", "fe00::"), ("fe80::", "ffc0::"),
    ];

    private readonly X509Certificate2 _authority;
    private readonly TimeProvider _time;
    private readonly ConcurrentDictionary<string, X509Certificate2> _given = new(StringComparer.Ordinal);

    private HallAuthority(X509Certificate2 authority, TimeProvider time)
    {
        _authority = authority;
        _time = time;
    }

    /// <summary>The authority's certificate as phones and tablets take it (DER); it holds no secret.</summary>
    public byte[] ForTablets => _authority.Export(X509ContentType.Cert);

    /// <summary>SHA-256 of the certificate in pairs, to be compared by eye before it is trusted.</summary>
    public string Fingerprint => string.Join(' ', Convert.ToHexString(_authority.GetCertHash(HashAlgorithmName.SHA256)).Chunk(4).Select(pair => new string(pair)));

    /// <summary>Last day of its life.</summary>
    public DateOnly Until => DateOnly.FromDateTime(_authority.NotAfter.ToUniversalTime());

    /// <summary>Opens the authority in a folder, or makes it there.</summary>
    /// <param name="folder">A folder only this user can read.</param>
    /// <param name="time">The clock.</param>
    public static HallAuthority Open(string folder, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(time);
        Directory.CreateDirectory(folder);
        var path = Path.Combine(folder, "hall-authority.pem");
        if (File.Exists(path))
        {
            var kept = X509Certificate2.CreateFromPemFile(path, path);
            if (kept.NotAfter.ToUniversalTime() > time.GetUtcNow().UtcDateTime.AddDays(DaysOfCertificate)) return new HallAuthority(kept, time);
            kept.Dispose();
        }

        var made = Make(time.GetUtcNow());
        Keep(path, made);
        return new HallAuthority(made, time);
    }

    /// <summary>The certificate for whoever comes in at an address of this laptop; made once a network.</summary>
    /// <param name="address">The laptop's address on which the connection came in.</param>
    public X509Certificate2 For(IPAddress address)
    {
        ArgumentNullException.ThrowIfNull(address);
        var own = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        if (own.AddressFamily == AddressFamily.InterNetworkV6) own = new IPAddress(own.GetAddressBytes());
        var key = own.ToString();
        if (_given.TryGetValue(key, out var held) && held.NotAfter.ToUniversalTime() > _time.GetUtcNow().UtcDateTime.AddDays(1)) return held;
        var fresh = Give(own);
        _given[key] = fresh;
        return fresh;
    }

    /// <summary>Whether the authority may vouch for an address at all.</summary>
    public static bool IsPrivate(IPAddress address)
    {
        ArgumentNullException.ThrowIfNull(address);
        var own = (address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address).GetAddressBytes();
        return PrivateNetworks.Any(network =>
        {
            var (first, mask) = (IPAddress.Parse(network.Base).GetAddressBytes(), IPAddress.Parse(network.Mask).GetAddressBytes());
            return first.Length == own.Length && own.Zip(mask, (a, m) => (byte)(a & m)).SequenceEqual(first);
        });
    }

    /// <summary>The laptop's name on the hall's network.</summary>
    public static string LaptopName { get; } = NameOf(Dns.GetHostName());

    /// <inheritdoc/>
    public void Dispose()
    {
        _authority.Dispose();
        foreach (var certificate in _given.Values) certificate.Dispose();
    }

    private static string NameOf(string host)
    {
        var letters = new string([.. host.Split('.')[0].Where(c => char.IsAsciiLetterOrDigit(c) || c == '-')]);
        return (letters.Length == 0 ? "keikocho" : letters) + ".local";
    }

    private static X509Certificate2 Make(DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=Keikocho in the hall", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, true, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign | X509KeyUsageFlags.CrlSign, true));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, false));
        request.CertificateExtensions.Add(OnlyPrivateNames());
        return request.CreateSelfSigned(now.AddDays(-1), now.AddYears(YearsOfAuthority));
    }

    private X509Certificate2 Give(IPAddress address)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=Keikocho", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        if (IsPrivate(address)) names.AddIpAddress(address);
        names.AddDnsName(LaptopName);
        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid(ServerAuthentication)], false));
        request.CertificateExtensions.Add(X509AuthorityKeyIdentifierExtension.CreateFromCertificate(_authority, true, false));
        var now = _time.GetUtcNow();
        using var bare = request.Create(_authority, now.AddDays(-1), now.AddDays(DaysOfCertificate - 1), RandomNumberGenerator.GetBytes(16));
        using var withKey = bare.CopyWithPrivateKey(key);
        // Through a file of its own in memory: some systems take no key that lives only in this process.
        return X509CertificateLoader.LoadPkcs12(withKey.Export(X509ContentType.Pkcs12), null);
    }

    // RFC 5280, 4.2.1.10: permittedSubtrees [0] of GeneralName; dNSName [2], iPAddress [7] as address and mask.
    private static X509Extension OnlyPrivateNames()
    {
        var writer = new AsnWriter(AsnEncodingRules.DER);
        using (writer.PushSequence())
        using (writer.PushSequence(new Asn1Tag(TagClass.ContextSpecific, 0)))
        {
            using (writer.PushSequence()) writer.WriteCharacterString(UniversalTagNumber.IA5String, "local", new Asn1Tag(TagClass.ContextSpecific, 2));
            foreach (var (first, mask) in PrivateNetworks)
            {
                using (writer.PushSequence())
                    writer.WriteOctetString([.. IPAddress.Parse(first).GetAddressBytes(), .. IPAddress.Parse(mask).GetAddressBytes()], new Asn1Tag(TagClass.ContextSpecific, 7));
            }
        }

        return new X509Extension("2.5.29.30", writer.Encode(), critical: true);
    }

    private static void Keep(string path, X509Certificate2 authority)
    {
        using var key = authority.GetECDsaPrivateKey()!;
        var text = authority.ExportCertificatePem() + "\n" + key.ExportPkcs8PrivateKeyPem() + "\n";
        var beside = path + ".new";
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using (var file = new StreamWriter(beside, options)) file.Write(text);
        File.Move(beside, path, overwrite: true);
    }
}
