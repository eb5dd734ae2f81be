using Keikocho.App.Club;
using Keikocho.App.Hosting;
using Keikocho.App.Shared;
using Keikocho.Store.Hall;

namespace Keikocho.App.Hall;

/// <summary>
/// Stands before every address: the laptop comes in, a tablet only where it has joined tonight and only to what its role may see there.
/// Shut wins: what says nothing is not for a tablet.
/// </summary>
internal static class HallGuard
{
    public static void Use(WebApplication app) => app.Use(static (context, next) =>
    {
        var metadata = context.GetEndpoint()?.Metadata;
        if (!HallDoor.Is(context)) return metadata?.GetMetadata<SeenByAttribute>() is { } own && !SeenAs.Laptop.May(own) ? Forbidden(context) : next(context);
        if (metadata is null || metadata.GetMetadata<StaticFileMark>() is not null) return next(context);
        var time = context.RequestServices.GetRequiredService<TimeProvider>();
        var club = context.RequestServices.GetRequiredService<OpenClub>();
        var join = JoinReader.Last(club.Reading, club.Device);
        var isIn = join is { PutOutAt: null } && join.EndsAt > time.GetUtcNow();
        context.Features.Set(isIn ? SeenAs.Tablet(join!) : SeenAs.Stranger);
        if (metadata.GetMetadata<BeforeJoiningAttribute>() is not null) return next(context);
        if (!isIn)
        {
            if (join is { PutOutAt: null } && metadata.GetMetadata<AfterItsEveningAttribute>() is not null) return next(context);
            return NotIn(context);
        }

        if (metadata.GetMetadata<SeenByAttribute>() is { } seen && SeenAs.Of(context).May(seen)) return next(context);
        return Forbidden(context);
    });

    private static Task Forbidden(HttpContext context)
    {
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        return Task.CompletedTask;
    }

    private static Task NotIn(HttpContext context)
    {
        var isPage = HttpMethods.IsGet(context.Request.Method) && !context.Request.Headers.Accept.ToString().Contains("application/json", StringComparison.OrdinalIgnoreCase);
        context.Response.StatusCode = isPage ? StatusCodes.Status303SeeOther : StatusCodes.Status401Unauthorized;
        if (isPage) context.Response.Headers.Location = JoinAddress.Page;
        return Task.CompletedTask;
    }
}
