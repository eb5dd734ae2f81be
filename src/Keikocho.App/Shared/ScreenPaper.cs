using Microsoft.AspNetCore.Mvc;

namespace Keikocho.App.Shared;

/// <summary>
/// Day paper, evening paper or as the device is set: a choice of each browser, kept in its own cookie. It is also the pattern of every
/// form here: a page shows it, an endpoint of its own takes it and answers with a redirect.
/// </summary>
public static class ScreenPaper
{
    /// <summary>The cookie's name.</summary>
    public const string CookieName = "keikocho-paper";

    /// <summary>Where the choice is posted to.</summary>
    public const string Address = "/club/screen";

    /// <summary>What the browser chose: "day", "evening", or null for as the device is set.</summary>
    public static string? Of(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return context.Request.Cookies[CookieName] switch
        {
            "day" => "day",
            "evening" => "evening",
            _ => null,
        };
    }

    /// <summary>Adds the endpoint.</summary>
    public static void Map(WebApplication app) =>
        app.MapPost(Address, Take).WithMetadata(new SeenByAttribute(Role.Anyone, Device.Any));

    private static IResult Take(HttpContext context, [FromForm] string? screen, [FromForm] string? from)
    {
        var options = new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Lax, Path = "/", MaxAge = TimeSpan.FromDays(400), IsEssential = true };
        switch (screen)
        {
            case "day" or "evening":
                context.Response.Cookies.Append(CookieName, screen, options);
                return Redirects.Back(from, "/club", new FlashMessage(screen == "day" ? "Day paper on this device." : "Evening paper on this device."));
            case "device":
                context.Response.Cookies.Delete(CookieName, options);
                return Redirects.Back(from, "/club", new FlashMessage("The paper follows the device."));
            default:
                return Redirects.Back(from, "/club", new FlashMessage("Nothing was changed.", "Choose one of the three papers.", NeedsALook: true));
        }
    }
}
