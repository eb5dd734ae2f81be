using Microsoft.AspNetCore.Http.HttpResults;

namespace Keikocho.App.Shared;

/// <summary>
/// The one way from a post to the page that shows what came of it: 303, inside this application only, with a message if there is
/// something to say. Loading the page again then posts nothing twice.
/// </summary>
public static class Redirects
{
    /// <summary>Goes on to a page.</summary>
    /// <param name="address">A local address in ASCII, such as <c>/club#screen</c>.</param>
    /// <param name="message">Shown once on that page; null says nothing.</param>
    /// <exception cref="ArgumentException">The address leads elsewhere.</exception>
    public static IResult SeeOther(string address, FlashMessage? message = null) =>
        IsLocal(address)
            ? new SeeOtherResult(address, message)
            : throw new ArgumentException($"'{address}' does not lead to a page of this application.", nameof(address));

    /// <summary>Goes back to where a form says it stands; if that is not one of our pages, to another.</summary>
    /// <param name="claimed">What the form said; never trusted.</param>
    /// <param name="otherwise">A local address.</param>
    /// <param name="message">Shown once on that page; null says nothing.</param>
    public static IResult Back(string? claimed, string otherwise, FlashMessage? message = null) =>
        SeeOther(IsLocal(claimed) ? claimed! : otherwise, message);

    private static bool IsLocal(string? address) =>
        address is { Length: > 0 and < 2_000 } && address[0] == '/' && address.All(c => c is > ' ' and < (char)127) && RedirectHttpResult.IsLocalUrl(address);

    private sealed class SeeOtherResult(string address, FlashMessage? message) : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            if (message is not null)
                httpContext.RequestServices.GetRequiredService<Flash>().Put(httpContext, message);
            httpContext.Response.StatusCode = StatusCodes.Status303SeeOther;
            httpContext.Response.Headers.Location = address;
            return Task.CompletedTask;
        }
    }
}
