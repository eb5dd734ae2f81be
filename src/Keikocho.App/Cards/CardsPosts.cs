using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.Core.Kernel;
using Keikocho.Store.Evening;
using Keikocho.Store.Kernel;
using Microsoft.AspNetCore.Mvc;

namespace Keikocho.App.Cards;

/// <summary>What the cards' page posts: an end goes to its next slot, or back.</summary>
public static class CardsPosts
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        app.MapPost(CardsAddress.Slot, SlotAsync).WithMetadata(new SeenByAttribute(Role.Teaching | Role.JuniorLeader, Device.Laptop | Device.Tablet));
        app.MapGet(CardsAddress.Paper, CardPaper.Answer).WithMetadata(new SeenByAttribute(Role.Teaching, Device.Laptop));
    }

    private static async Task<IResult> SlotAsync(HttpContext http, OpenClub club, [FromForm] SlotForm form, CancellationToken cancel)
    {
        if (club.Book.Lesson(form.Lesson) is not { ClosureId: null } lesson || lesson.Date > club.Today)
            return Redirects.SeeOther(CardsAddress.Page, new FlashMessage("Not stored.", "That lesson was closed, is still to come, or is not on the calendar.", NeedsALook: true));
        // A tablet speaks of the evening that it joined.
        if (SeenAs.Of(http).Join is { } join && (join.Date != lesson.Date || club.Book.HallOf(lesson)?.Id != join.HallId)) return Results.BadRequest();
        var plan = CardsAddress.ReadPlan(form.Plan);
        var back = CardsAddress.Of(lesson.Id, plan);
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(back));
        if (form.Command is not { } command || form.End is < 0 or > 1 || form.Slot is < 1 or > 20) return Results.BadRequest();
        var outcome = ShowingOutcome.AlreadyStored;
        // Joined ends work on the same: it is shown at both.
        int[] ends = form.Both == "yes" ? [(int)MatEnd.Beginners, (int)MatEnd.Main] : [form.End];
        foreach (var end in ends)
            outcome = await club.House.Showings.ShowAsync(AnotherId.Of(command, $"{end} {form.Slot} {form.Item:D}"), lesson.Id, end, form.Slot, form.Item, acting.Id, club.Device, cancel);
        return outcome == ShowingOutcome.Unknown
            ? Redirects.SeeOther(back, new FlashMessage("Not stored.", "That item is not in this club’s file any more. Look at the card and try once more.", NeedsALook: true))
            : Redirects.SeeOther(back);
    }
}

/// <summary>A slot as the form sends it.</summary>
public sealed class SlotForm
{
    /// <summary>Which lesson.</summary>
    public Guid Lesson { get; set; }
    /// <summary>Made with the form.</summary>
    public Guid? Command { get; set; }
    /// <summary>Which end.</summary>
    public int End { get; set; }
    /// <summary>Which slot.</summary>
    public int Slot { get; set; }
    /// <summary>What is shown; nothing takes the slot back.</summary>
    public Guid? Item { get; set; }
    /// <summary>"yes" for both ends.</summary>
    public string? Both { get; set; }
    /// <summary>The plan that was chosen.</summary>
    public string? Plan { get; set; }
}
