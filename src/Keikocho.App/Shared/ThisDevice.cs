using System.Buffers.Binary;
using System.Security.Cryptography;
using Keikocho.App.Hosting;
using Keikocho.Core.Kernel;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.WebUtilities;

namespace Keikocho.App.Shared;

/// <summary>
/// The device a request comes from: each browser gets an id on its first visit and keeps it in a cookie that only this application can
/// make. Marks carry it, so that two devices' marks are told apart.
/// </summary>
public sealed class ThisDevice(IHttpContextAccessor accessor)
{
    /// <summary>The cookie's name.</summary>
    public const string CookieName = "keikocho-device";

    // Browsers cut a cookie's life at 400 days; it starts anew once a month.
    private static readonly TimeSpan Life = TimeSpan.FromDays(400);
    private static readonly TimeSpan Fresh = TimeSpan.FromDays(30);
    private static readonly object Key = new();

    /// <summary>The id.</summary>
    /// <exception cref="InvalidOperationException">Asked for outside a request for a page or an endpoint.</exception>
    public DeviceId Id => accessor.HttpContext?.Items[Key] as DeviceId? ?? throw new InvalidOperationException("There is no request from a device here.");

    /// <summary>Recognises the device of every request but those for static files.</summary>
    internal static void Use(WebApplication app)
    {
        var protector = app.Services.GetRequiredService<IDataProtectionProvider>().CreateProtector("Keikocho.Device.1");
        var time = app.Services.GetRequiredService<TimeProvider>();
        app.Use((context, next) =>
        {
            if (context.GetEndpoint()?.Metadata is { } endpoint
                && endpoint.GetMetadata<SeenByAttribute>() is not null && endpoint.GetMetadata<StaticFileMark>() is null)
            {
                var now = time.GetUtcNow();
                var (id, since) = Read(context.Request.Cookies[CookieName], protector) ?? (new DeviceId(Guid.CreateVersion7(now)), DateTimeOffset.MinValue);
                context.Items[Key] = id;
                if (now - since > Fresh)
                {
                    context.Response.Cookies.Append(CookieName, Write(id, now, protector), new CookieOptions
                    {
                        HttpOnly = true,
                        Secure = context.Request.IsHttps,
                        SameSite = SameSiteMode.Lax,
                        Path = "/",
                        MaxAge = Life,
                        IsEssential = true,
                    });
                }
            }
            return next(context);
        });
    }

    private static string Write(DeviceId id, DateTimeOffset now, IDataProtector protector)
    {
        var plain = new byte[24];
        id.Value.TryWriteBytes(plain, bigEndian: true, out _);
        BinaryPrimitives.WriteInt64BigEndian(plain.AsSpan(16), now.ToUnixTimeMilliseconds());
        return WebEncoders.Base64UrlEncode(protector.Protect(plain));
    }

    private static (DeviceId Id, DateTimeOffset Since)? Read(string? cookie, IDataProtector protector)
    {
        if (string.IsNullOrEmpty(cookie))
            return null;
        try
        {
            var plain = protector.Unprotect(WebEncoders.Base64UrlDecode(cookie));
            return plain.Length == 24
                ? (new DeviceId(new Guid(plain.AsSpan(0, 16), bigEndian: true)),
                    DateTimeOffset.FromUnixTimeMilliseconds(BinaryPrimitives.ReadInt64BigEndian(plain.AsSpan(16))))
                : null;
        }
        catch (Exception e) when (e is CryptographicException or FormatException)
        {
            // Made by somebody else, or before the keys were lost: it is a new device to us.
            return null;
        }
    }
}
