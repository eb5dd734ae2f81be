using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Microsoft.AspNetCore.Mvc;

namespace Keikocho.App.Start;

/// <summary>Takes the first evening's form: the club, its evenings, its term.</summary>
public static class StartPosts
{
    /// <summary>Adds the endpoint.</summary>
    public static void Map(WebApplication app) =>
        app.MapPost("/start", MakeAsync).WithMetadata(new SeenByAttribute(Role.Instructor, Device.Laptop));

    private static async Task<IResult> MakeAsync(OpenClub club, ClubHouse house, TimeProvider time, [FromForm] StartForm form, CancellationToken cancel)
    {
        var (answers, errors) = form.Read();
        if (answers is null)
        {
            return OnePage.Of<StartPage>(new Dictionary<string, object?> { [nameof(StartPage.Typed)] = form, [nameof(StartPage.Errors)] = errors });
        }

        var today = new ClubClock(time, form.Zone!).Today;
        var outcome = await house.Club.MakeAsync(
            new NewClub(form.Club!, form.Given!, form.Family ?? "", form.Programme!, form.Zone!, form.Paper == "letter" ? PaperChoice.Letter : PaperChoice.A4),
            club.Device, today, cancel);
        if (outcome == MakeClubOutcome.AlreadyThere)
            return Redirects.SeeOther("/club", new FlashMessage("This file has its club already.", "Nothing was changed.", NeedsALook: true));

        using var db = house.Engine.OpenDb();
        var programme = db.Programmes.Select(p => p.Id).First();
        var hall = db.Halls.Select(h => h.Id).First();
        var head = db.Duties.Select(d => d.PersonId).First();
        foreach (var (weekday, times) in answers.Hours)
            await house.Calendar.AddHourAsync(new NewHour(programme, hall, weekday, times, answers.Term.From), head, club.Device, cancel);
        await house.Calendar.AddTermAsync(answers.Term.Name, answers.Term.From, answers.Term.To, head, club.Device, cancel);
        return Redirects.SeeOther("/first-evening", new FlashMessage("The notebook is open.", "It is all in one file on this machine."));
    }
}
