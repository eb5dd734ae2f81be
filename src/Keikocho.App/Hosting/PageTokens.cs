using Keikocho.App.Shared;
using Microsoft.AspNetCore.Antiforgery;

namespace Keikocho.App.Hosting;

/// <summary>
/// Every request that may change something carries the token of a page of ours: a form in its hidden field, a script in a header.
/// There is no way round it by leaving a form or an attribute out.
/// </summary>
public static class PageTokens
{
    /// <summary>The cookie's name.</summary>
    public const string CookieName = "keikocho-token";

    /// <summary>The hidden field's name.</summary>
    public const string FieldName = "page-token";

    /// <summary>The header's name, for scripts.</summary>
    public const string HeaderName = "Page-Token";

    /// <summary>Adds what makes and reads the tokens.</summary>
    public static void Add(IServiceCollection services) => services.AddAntiforgery(options =>
    {
        options.Cookie.Name = CookieName;
        // Strict would make a second cookie, and so kill the open pages, whenever somebody arrives by a link.
        options.Cookie.SameSite = SameSiteMode.Lax;
        options.Cookie.HttpOnly = true;
        options.Cookie.Path = "/";
        options.FormFieldName = FieldName;
        options.HeaderName = HeaderName;
        options.SuppressXFrameOptionsHeader = true;
    });

    /// <summary>Adds the check, after routing.</summary>
    public static void Use(WebApplication app)
    {
        app.UseAntiforgery();
        app.Use(static async (context, next) =>
        {
            if (!MayChangeSomething(context))
            {
                await next(context);
                return;
            }
            var error = await ErrorOfAsync(context);
            if (error is null)
            {
                await next(context);
                return;
            }
            context.Response.StatusCode = error.InnerException is BadHttpRequestException bad
                ? bad.StatusCode
                : StatusCodes.Status400BadRequest;
            if (context.Response.StatusCode == StatusCodes.Status400BadRequest)
                context.Features.Set(new StalePage());
            // It is refused, and says so above; the page of the refusal may show what was typed, which this would forbid.
            context.Features.Set<IAntiforgeryValidationFeature>(null);
        });
    }

    private static bool MayChangeSomething(HttpContext context) =>
        context.GetEndpoint()?.Metadata.GetMetadata<SeenByAttribute>() is not null
        && !(HttpMethods.IsGet(context.Request.Method) || HttpMethods.IsHead(context.Request.Method));

    private static async Task<AntiforgeryValidationException?> ErrorOfAsync(HttpContext context)
    {
        if (context.Features.Get<IAntiforgeryValidationFeature>() is { } already)
            return already.IsValid ? null : already.Error as AntiforgeryValidationException ?? new AntiforgeryValidationException("No token.");
        try
        {
            await context.RequestServices.GetRequiredService<IAntiforgery>().ValidateRequestAsync(context);
            return null;
        }
        catch (AntiforgeryValidationException e)
        {
            return e;
        }
    }
}
