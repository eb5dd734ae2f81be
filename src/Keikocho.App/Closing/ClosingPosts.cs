using Keikocho.App.Club;
using Keikocho.App.Evening;
using Keikocho.App.Shared;
using Keikocho.App.Sightings;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;

namespace Keikocho.App.Closing;

/// <summary>What the page of closing posts.</summary>
public static class ClosingPosts
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Teaching, Device.Laptop);
        app.MapPost(ClosingAddress.Close, CloseAsync).WithMetadata(seen);
        app.MapPost(ClosingAddress.Open, OpenAsync).WithMetadata(seen);
        app.MapPost(ClosingAddress.Confirm, ConfirmAsync).WithMetadata(seen);
    }

    private static async Task<IResult> CloseAsync(OpenClub club, IFormCollection form, CancellationToken cancel)
    {
        if (Lesson(club, form) is not { } lesson) return Gone();
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(ClosingAddress.Of(lesson.Id)));
        var outcome = await club.House.Closing.CloseAsync(lesson.EveningId, club.Today, acting.Id, club.Device, cancel);
        return Redirects.SeeOther(ClosingAddress.Of(lesson.Id), outcome switch
        {
            ClosingOutcome.Done => new FlashMessage("The evening is closed.", "Marks that a tablet still holds are taken when they come."),
            ClosingOutcome.SlipOpen => new FlashMessage("Not closed.", SlipSentence(club, lesson), NeedsALook: true),
            ClosingOutcome.AlreadySo => new FlashMessage("Nothing was changed.", "The evening is closed already."),
            _ => Refused(outcome),
        });
    }

    private static async Task<IResult> OpenAsync(OpenClub club, IFormCollection form, CancellationToken cancel)
    {
        if (Lesson(club, form) is not { } lesson) return Gone();
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(ClosingAddress.Of(lesson.Id)));
        var outcome = await club.House.Closing.OpenAsync(lesson.EveningId, club.Today, acting.Id, club.Device, cancel);
        return Redirects.SeeOther(ClosingAddress.Of(lesson.Id), outcome switch
        {
            ClosingOutcome.Done => new FlashMessage("The evening is open again.", "The file keeps that it was closed, and who opened it."),
            ClosingOutcome.AlreadySo => new FlashMessage("Nothing was changed.", "The evening is open."),
            _ => Refused(outcome),
        });
    }

    private static async Task<IResult> ConfirmAsync(OpenClub club, IFormCollection form, CancellationToken cancel)
    {
        if (Lesson(club, form) is not { } lesson) return Gone();
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(ClosingAddress.Of(lesson.Id)));
        if (!Guid.TryParse(form["command"], out var command)) return Results.BadRequest();
        // Only what waits on this evening is confirmed; what somebody else has settled meanwhile is left as it is.
        var lessons = EveningLesson.SameEvening(club.Book, lesson);
        var waiting = SuggestedOfEvening.Of(club, MarksOfLessons.Of(club.Reading, [.. lessons.Select(l => l.Id)]), new ItemsOfLadders(club.Book, lessons.Select(l => club.Book.Programme(l.ProgrammeId)?.LadderId)), new EveningNames(club, lessons))
            .SelectMany(i => i.Suggestions).Select(s => s.Mark).ToHashSet();
        Guid[] marks = [.. form["mark"].Select(m => Guid.TryParse(m, out var id) ? id : Guid.Empty).Where(waiting.Contains).Distinct()];
        var back = $"{ClosingAddress.Of(lesson.Id)}#suggestions";
        if (marks.Length == 0) return Redirects.SeeOther(back, new FlashMessage("Nothing was changed.", "Nothing was ticked, or it does not wait any more."));
        var answer = await club.House.Sightings.ConfirmAsync(command, marks, club.Today, acting.Id, club.Device, cancel);
        return Redirects.SeeOther(back, answer.Outcome == EvidenceOutcome.Stored ? new FlashMessage($"Confirmed: {Counted.Of(answer.Marks, "mark")}.") : SightingsPosts.Said(answer));
    }

    /// <summary>Whose slip keeps the evening open, and what to do.</summary>
    internal static string SlipSentence(OpenClub club, LessonRow lesson)
    {
        string[] names = [.. ClosingView.SlipsOf(club, lesson).Select(s => s.Name).Distinct()];
        return $"The slip of {Counted.List(names)} has not gone home: hand it over, or ring the family, and write it into the accident record.";
    }

    private static FlashMessage Refused(ClosingOutcome outcome) => outcome == ClosingOutcome.NoAdult
        ? new FlashMessage("Nothing was changed.", "Only an adult of 18 or over with a duty in the club closes an evening. Choose who holds this device.", NeedsALook: true)
        : new FlashMessage("Nothing was changed.", "That evening is still to come, or is not on the calendar.", NeedsALook: true);

    private static LessonRow? Lesson(OpenClub club, IFormCollection form) => Guid.TryParse(form["lesson"], out var id) ? LessonChoice.Of(club, id) : null;

    private static IResult Gone() => Redirects.SeeOther(
        ClosingAddress.Page, new FlashMessage("Nothing was changed.", "That lesson was closed, is still to come, or is not on the calendar. Here is the last evening.", NeedsALook: true));
}
