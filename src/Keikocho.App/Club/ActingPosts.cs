using Keikocho.App.Shared;
using Microsoft.AspNetCore.Mvc;

namespace Keikocho.App.Club;

/// <summary>Takes the choice of the acting adult.</summary>
public static class ActingPosts
{
    /// <summary>Adds the endpoint.</summary>
    public static void Map(WebApplication app) =>
        app.MapPost(ActingAddress.Page, ChooseAsync).WithMetadata(new SeenByAttribute(Role.Teaching, Device.Laptop | Device.Tablet));

    private static async Task<IResult> ChooseAsync(OpenClub club, [FromForm] Guid adult, [FromForm] string? from, CancellationToken cancel) =>
        await club.House.Club.ChooseActingAdultAsync(club.Device, adult, cancel)
            ? Redirects.Back(from, "/tonight")
            : Redirects.SeeOther(ActingAddress.Page, new FlashMessage("Nobody was chosen.", "That adult has no duty in this club any more.", NeedsALook: true));
}
