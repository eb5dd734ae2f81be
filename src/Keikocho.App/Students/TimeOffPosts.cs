using Keikocho.App.Club;
using Keikocho.App.People;
using Keikocho.App.Shared;
using Keikocho.Store.Promotion;
using Microsoft.AspNetCore.Mvc;

namespace Keikocho.App.Students;

/// <summary>Takes the decision to take time off, and the one that ends it.</summary>
internal static class TimeOffPosts
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Instructor, Device.Laptop);
        app.MapPost($"{StudentAddress.ChildRoute}/time-off", DecideAsync).WithMetadata(seen);
        app.MapPost($"{StudentAddress.ChildRoute}/end-time-off", EndAsync).WithMetadata(seen);
    }

    private static async Task<IResult> DecideAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] TimeOffFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (!club.InstructorActs) return NotAnInstructor(view);
        if (view.TimeOff is not { Most: > 0 } off || off.Rank.Key != form.OffRank) return Done(view, Gone);
        var (percent, why, on, errors) = form.Read(off.Most, club.Today);
        if (errors.Count > 0)
        {
            return OnePage.Of<StudentBody>(new Dictionary<string, object?>
            {
                [nameof(StudentBody.View)] = view,
                [nameof(StudentBody.Errors)] = errors,
                [nameof(StudentBody.TimeOff)] = form,
            });
        }

        return Done(view, await club.House.TimeOffs.DecideAsync(Command(club, form), id, off.Row.Id, percent, why, on, club.Acting!.Id, club.Device, cancel) switch
        {
            TestOutcome.Stored => new FlashMessage($"Decided: {percent} % less time for {off.Rank.Name}.", "The clock and the verdict count with it from now on, and name it."),
            TestOutcome.AlreadyStored => new FlashMessage("Nothing was changed.", "It stands so already."),
            _ => Gone,
        });
    }

    private static async Task<IResult> EndAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] TimeOffFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (!club.InstructorActs) return NotAnInstructor(view);
        if (view.TimeOff is not { } off || off.Rank.Key != form.OffRank) return Done(view, Gone);
        return Done(view, await club.House.TimeOffs.DecideAsync(Command(club, form), id, off.Row.Id, 0, null, club.Today, club.Acting!.Id, club.Device, cancel) switch
        {
            TestOutcome.Stored => new FlashMessage($"Nothing is taken off for {off.Rank.Name} any more.", "The earlier decision stays in the history."),
            TestOutcome.AlreadyStored => new FlashMessage("Nothing was changed.", "It stands so already."),
            _ => Gone,
        });
    }

    private static FlashMessage Gone => new("Nothing was changed.", "That does not fit the next rank of this child any more. Look at the page as it is now.", NeedsALook: true);

    private static Guid Command(OpenClub club, TimeOffFields form) => form.Command ?? Guid.CreateVersion7(club.Clock.Now);

    private static IResult Done(StudentView view, FlashMessage message) =>
        Redirects.SeeOther($"{StudentAddress.Of(view.Person.Id, view.Programme.Id)}#time-off", message);

    private static IResult NotAnInstructor(StudentView view) =>
        Done(view, new FlashMessage("Nothing was changed.", "An instructor decides this. Choose who holds this device, or ask one.", NeedsALook: true));
}
