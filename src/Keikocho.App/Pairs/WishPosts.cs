using Keikocho.App.Club;
using Keikocho.App.People;
using Keikocho.App.Shared;

namespace Keikocho.App.Pairs;

/// <summary>Enters and ends wishes about two children. No reason is asked, and none is stored.</summary>
public static class WishPosts
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Teaching, Device.Laptop);
        app.MapPost(PairsAddress.WishRoute, EnterAsync).WithMetadata(seen);
        app.MapPost(PairsAddress.EndWishRoute, EndAsync).WithMetadata(seen);
    }

    private static async Task<IResult> EnterAsync(Guid id, HttpContext http, OpenClub club, CancellationToken cancel)
    {
        var form = await http.Request.ReadFormAsync(cancel);
        var page = $"{StudentAddress.Of(id)}#partners";
        if (club.Book.Person(id) is not { IsErased: false } child) return Results.NotFound();
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(StudentAddress.Of(id)));
        if (!Guid.TryParse(form["other"], out var other) || other == id || club.Book.Person(other) is not { IsErased: false } with)
            return Redirects.SeeOther(page, new FlashMessage("Nothing was changed.", "Choose the other child.", NeedsALook: true));
        if (form["wish"].ToString() is not ("apart" or "together")) return Redirects.SeeOther(page, new FlashMessage("Nothing was changed.", "Say whether they are kept apart or together.", NeedsALook: true));
        var apart = form["wish"] == "apart";
        var isStored = await club.House.Wishes.EnterAsync(id, other, apart, club.Today, acting.Id, club.Device, cancel);
        return Redirects.SeeOther(page, isStored
            ? new FlashMessage($"{child.CallName} and {with.CallName}: {(apart ? "kept apart" : "together where no gate forbids it")} from today.", "No list, card or tablet says so.")
            : new FlashMessage("Nothing was changed.", "A wish about these two holds already. End it first.", NeedsALook: true));
    }

    private static async Task<IResult> EndAsync(Guid id, HttpContext http, OpenClub club, CancellationToken cancel)
    {
        var form = await http.Request.ReadFormAsync(cancel);
        var page = $"{StudentAddress.Of(id)}#partners";
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(StudentAddress.Of(id)));
        var ended = Guid.TryParse(form["ends"], out var wish) && await club.House.Wishes.EndAsync(wish, club.Today, acting.Id, club.Device, cancel);
        return Redirects.SeeOther(page, ended ? new FlashMessage("The wish ended.") : new FlashMessage("Nothing was changed.", "That wish does not hold any more.", NeedsALook: true));
    }
}
