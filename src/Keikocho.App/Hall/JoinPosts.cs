using Keikocho.App.Club;
using Keikocho.App.Evening;
using Keikocho.App.Shared;
using Keikocho.Store.Hall;
using Microsoft.AspNetCore.Mvc;

namespace Keikocho.App.Hall;

/// <summary>What the laptop's page of tablets and a tablet's own page post, and the certificate that a tablet fetches.</summary>
public static class JoinPosts
{
    // A tablet stays in until two hours after the last bow out: time for the mats, the notes and a late parent.
    private static readonly TimeSpan AfterTheLastBow = TimeSpan.FromHours(2);

    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var laptop = new SeenByAttribute(Role.Teaching, Device.Laptop);
        app.MapPost(JoinAddress.Door, DoorAsync).WithMetadata(laptop);
        app.MapPost(JoinAddress.Invite, Invite).WithMetadata(laptop);
        app.MapPost(JoinAddress.PutOut, PutOutAsync).WithMetadata(laptop);
        app.MapPost(JoinAddress.Code, SetCodeAsync).WithMetadata(laptop);
        var before = new SeenByAttribute(Role.Anyone, Device.Tablet);
        app.MapPost(JoinAddress.Page, JoinAsync).WithMetadata(before, new BeforeJoiningAttribute());
        app.MapGet(JoinAddress.Certificate, static (HallNetwork hall) =>
                Results.File(hall.Authority.ForTablets, "application/x-x509-ca-cert", "keikocho-hall.crt"))
            .WithMetadata(new SeenByAttribute(Role.Anyone, Device.Any), new BeforeJoiningAttribute());
    }

    private static async Task<IResult> DoorAsync(HallNetwork hall, [FromForm] string? door, CancellationToken cancel)
    {
        if (door == "shut")
        {
            await hall.ShutAsync(cancel);
            return Redirects.SeeOther(JoinAddress.Tablets, new FlashMessage("The door is shut.", "Tablets keep what they hold and hand it in when it is open again."));
        }

        await hall.OpenAsync(null, cancel);
        return Redirects.SeeOther(JoinAddress.Tablets, new FlashMessage("The laptop is open to tablets of this hall.", "Only those that you let in see anything."));
    }

    private static IResult Invite(OpenClub club, HallNetwork hall, Invitations invitations, [FromForm] Guid who)
    {
        if (!hall.IsOpen) return Redirects.SeeOther(JoinAddress.Tablets, new FlashMessage("Nobody was let in.", "Open the laptop to tablets first.", NeedsALook: true));
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(JoinAddress.Tablets));
        if (EveningLesson.Choose(club.Book, club.Today, club.Clock.LocalTime, null) is not { } lesson || club.Book.HallOf(lesson) is not { } room)
            return Redirects.SeeOther(JoinAddress.Tablets, new FlashMessage("Nobody was let in.", "There is no lesson today: a tablet joins an evening.", NeedsALook: true));
        if (!club.Book.DutiesOn(lesson.Date).Any(d => d.PersonId == who))
            return Redirects.SeeOther(JoinAddress.Tablets, new FlashMessage("Nobody was let in.", "That person has no duty in this club today.", NeedsALook: true));
        var last = EveningLesson.SameEvening(club.Book, lesson).Max(l => l.End);
        var bow = club.Clock.ToInstant(lesson.Date, last);
        var ends = (bow > club.Clock.Now ? bow : club.Clock.Now) + AfterTheLastBow;
        invitations.Make(who, lesson.Date, room.Id, ends, acting.Id);
        return Redirects.SeeOther($"{JoinAddress.Tablets}?for={who:D}#let-in");
    }

    private static async Task<IResult> PutOutAsync(OpenClub club, [FromForm] Guid tablet, CancellationToken cancel) =>
        await club.House.Joins.PutOutAsync(tablet, club.Acting?.Id, club.Device, cancel)
            ? Redirects.SeeOther(JoinAddress.Tablets, new FlashMessage("The tablet is out.", "It shows nothing more at its next touch. Let it in again to take what it still holds."))
            : Redirects.SeeOther(JoinAddress.Tablets, new FlashMessage("Nothing was changed.", "That tablet was out already.", NeedsALook: true));

    private static async Task<IResult> SetCodeAsync(OpenClub club, [FromForm] string? code, [FromForm] string? again, CancellationToken cancel)
    {
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(JoinAddress.Tablets));
        if (code != again) return Redirects.SeeOther(JoinAddress.Tablets + "#own-code", new FlashMessage("No code was set.", "The two are not the same. Type the six digits twice.", NeedsALook: true));
        return await club.House.AdultCodes.SetAsync(acting.Id, code, club.Today, acting.Id, club.Device, cancel) switch
        {
            AdultCodeOutcome.Stored => Redirects.SeeOther(JoinAddress.Tablets + "#own-code", new FlashMessage($"{acting.CallName} has a code.", "On an instructor’s tablet it opens one child’s contacts for ten seconds.")),
            AdultCodeOutcome.NoCode => Redirects.SeeOther(JoinAddress.Tablets + "#own-code", new FlashMessage("No code was set.", "A code is six digits, and not six times the same.", NeedsALook: true)),
            _ => Redirects.SeeOther(JoinAddress.Tablets + "#own-code", new FlashMessage("No code was set.", "Only an adult of 18 or over with a duty in the club has one.", NeedsALook: true)),
        };
    }

    private static async Task<IResult> JoinAsync(OpenClub club, Invitations invitations, [FromForm] string? square, [FromForm] string? digits, CancellationToken cancel)
    {
        var (invitation, outcome) = square is { Length: > 0 }
            ? invitations.TakeSquare(square)
            : invitations.TakeDigits(new string([.. (digits ?? "").Where(char.IsAsciiDigit)]));
        if (invitation is null)
        {
            return Redirects.SeeOther(JoinAddress.Page, outcome == InvitationOutcome.TooMany
                ? new FlashMessage("Too many wrong digits.", "Ask for new ones on the laptop, or scan the square.", NeedsALook: true)
                : new FlashMessage("That does not let this tablet in.", "It may be used up, or older than three minutes. Ask for new digits on the laptop.", NeedsALook: true));
        }

        var join = await club.House.Joins.LetInAsync(
            new NewJoin(club.Device, invitation.PersonId, invitation.Date, invitation.HallId, invitation.EndsAt, invitation.By), club.Device, cancel);
        return join is null
            ? Redirects.SeeOther(JoinAddress.Page, new FlashMessage("That does not let this tablet in.", "The person it was for has no duty in this club any more.", NeedsALook: true))
            : Redirects.SeeOther(JoinAddress.AfterJoining);
    }
}
