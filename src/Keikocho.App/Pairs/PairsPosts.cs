using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.Core.Partners;

namespace Keikocho.App.Pairs;

/// <summary>Puts pairs to use.</summary>
public static class PairsPosts
{
    /// <summary>Adds the endpoint.</summary>
    public static void Map(WebApplication app) =>
        app.MapPost(PairsAddress.Use, UseAsync).WithMetadata(new SeenByAttribute(Role.Teaching, Device.Laptop));

    private static async Task<IResult> UseAsync(HttpContext http, OpenClub club, Reckonings reckonings, PairsInHand inHand, CancellationToken cancel)
    {
        var form = await http.Request.ReadFormAsync(cancel);
        var asked = PairsAsked.Read(name => form[name]);
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(asked.LessonId is { } id ? PairsAddress.Of(id) : PairsAddress.Page));
        if (PairsView.Of(club, reckonings, asked) is not { } view) return Redirects.SeeOther(PairsAddress.Page, Changed("That lesson is not on the calendar any more."));
        var page = asked.Address();
        if (view.Find(form["offer"], form["seen"]) is not { Groups.Count: > 0 } offer) return Redirects.SeeOther(page, Changed("Somebody came or left in the meantime. Look at the pairs again."));
        var links = StandingPairs.Links(offer.Groups, name => view.Evening.Adults.Where(a => a.Name == name).Select(a => (Guid?)a.PersonId).FirstOrDefault());
        int? repairs = view.Repairs.Contains(offer) ? view.Standing?.Round : null;
        var lesson = view.Evening.Lesson.Id;
        if (await club.House.Together.UseAsync(lesson, (int)view.Drill.Activity, links, repairs, acting.Id, club.Device, cancel) is null)
            return Redirects.SeeOther(page, Changed("Somebody in them is not in this club’s file any more. Look at the pairs again."));
        if (view.Drill.Activity == PairsActivity.Throwing) inHand.Plan(lesson, view.End, view.Drill);
        return Redirects.SeeOther(page, new FlashMessage(repairs is null ? "These pairs stand." : "The pairs are repaired.", "Tablets show them at their next look."));
    }

    private static FlashMessage Changed(string why) => new("Nothing was changed.", why, NeedsALook: true);
}
