using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.AspNetCore.DataProtection;

namespace Keikocho.App.Shared;

/// <summary>Carries one message over one redirect in a cookie that lives for seconds and that only this application can read.</summary>
public sealed class Flash(IDataProtectionProvider protection)
{
    /// <summary>The cookie's name.</summary>
    public const string CookieName = "keikocho-flash";

    private const int MostCharacters = 1_000;
    private static readonly TimeSpan Life = TimeSpan.FromSeconds(30);
    private readonly ITimeLimitedDataProtector _protector = protection.CreateProtector("Keikocho.Flash.1").ToTimeLimitedDataProtector();

    /// <summary>Leaves a message for the next page.</summary>
    /// <exception cref="ArgumentException">It is longer than a cookie can carry.</exception>
    public void Put(HttpContext context, FlashMessage message)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(message);
        if (message.Title.Length + message.Text.Length > MostCharacters)
            throw new ArgumentException("A message over a redirect has at most 1,000 characters; show more on the page itself.", nameof(message));
        context.Response.Cookies.Append(CookieName, _protector.Protect(JsonSerializer.Serialize(message), Life), Options(Life));
    }

    /// <summary>Takes the message that was left, once; null if there is none. The answer must not have started.</summary>
    public FlashMessage? Take(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (context.Request.Cookies[CookieName] is not { Length: > 0 } cookie)
            return null;
        context.Response.Cookies.Delete(CookieName, Options(null));
        try
        {
            return JsonSerializer.Deserialize<FlashMessage>(_protector.Unprotect(cookie));
        }
        catch (CryptographicException)
        {
            // Too old, or from another set of keys: a message that is late says nothing.
            return null;
        }
    }

    private static CookieOptions Options(TimeSpan? life) =>
        new() { HttpOnly = true, SameSite = SameSiteMode.Lax, Path = "/", MaxAge = life, IsEssential = true };
}
