using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.App.Syllabus;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;

namespace Keikocho.App.Sightings;

/// <summary>What the grids of an evening post.</summary>
public static class SightingsPosts
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Teaching, Device.Laptop);
        app.MapPost(SightingsAddress.Set, SetAsync).WithMetadata(seen);
        app.MapPost(SightingsAddress.SetFalls, SetFallsAsync).WithMetadata(seen);
        app.MapPost(SightingsAddress.Undo, UndoAsync).WithMetadata(seen);
    }

    private static async Task<IResult> SetAsync(HttpContext http, OpenClub club, EditionsInHand editions, CancellationToken cancel)
    {
        var form = await http.Request.ReadFormAsync(cancel);
        if (!Guid.TryParse(form["lesson"], out var lessonId) || LessonChoice.Of(club, lessonId) is not { } lesson) return Gone(SightingsAddress.Page);
        var from = form["from"].ToString() is { Length: > 0 } some ? some : null;
        var asked = new GridAsked(GridAsked.Read(form["end"]), form["words"] == "yes", from, [.. form["item"].OfType<string>()]);
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(SightingsAddress.Of(lesson.Id)));
        var view = SightingsView.Of(club, editions, lesson, asked);
        if (!Guid.TryParse(form["command"], out var command) || SightingsForm.ReadItems(form, view) is not { } cells) return Results.BadRequest();
        var back = SightingsAddress.Of(lesson.Id, from is null ? asked : asked with { Keys = null });
        return await StoreAsync(club, command, lesson.Id, cells, acting.Id, back, cancel);
    }

    private static async Task<IResult> SetFallsAsync(HttpContext http, OpenClub club, CancellationToken cancel)
    {
        var form = await http.Request.ReadFormAsync(cancel);
        if (!Guid.TryParse(form["lesson"], out var asked) || LessonChoice.Of(club, asked) is not { } lesson) return Gone(SightingsAddress.Falls);
        if (FallForms.Way(form["way"]) is not { } way || FallForms.Stage(form["stage"]) is not { } stage || !FallForms.Exists(way, stage)) return Results.BadRequest();
        var end = GridAsked.Read(form["end"]);
        var back = SightingsAddress.OfFalls(lesson.Id, way, stage, end);
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(back));
        if (!Guid.TryParse(form["command"], out var command) || SightingsForm.ReadFalls(form, EveningChildren.Of(club, lesson, end), way, stage) is not { } cells) return Results.BadRequest();
        return await StoreAsync(club, command, lesson.Id, cells, acting.Id, back, cancel);
    }

    private static async Task<IResult> StoreAsync(OpenClub club, Guid command, Guid lesson, IReadOnlyList<SeenCell> cells, Guid by, string back, CancellationToken cancel)
    {
        if (cells.Count == 0) return Redirects.SeeOther(back, new FlashMessage("Nothing was changed."));
        var answer = await club.House.Sightings.SetAsync(command, lesson, cells, club.Today, by, club.Device, cancel);
        return Redirects.SeeOther(back, Said(answer));
    }

    private static async Task<IResult> UndoAsync(HttpContext http, OpenClub club, CancellationToken cancel)
    {
        var form = await http.Request.ReadFormAsync(cancel);
        if (!Guid.TryParse(form["lesson"], out var asked) || LessonChoice.Of(club, asked) is not { } lesson) return Gone(SightingsAddress.Page);
        var back = form["back"].ToString();
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(SightingsAddress.Of(lesson.Id)));
        if (!Guid.TryParse(form["command"], out var command)) return Results.BadRequest();
        var people = await club.House.Sightings.UndoAsync(AnotherId.Of(command, "undo"), lesson.Id, club.Today, acting.Id, club.Device, cancel);
        var said = people.Count switch
        {
            0 => new FlashMessage("Nothing to undo on this device.", "Another device’s marks, and those of an adult who may sign off, are corrected on the child’s page."),
            1 => new FlashMessage($"Taken back: {club.Book.Person(people[0])?.CallName}."),
            _ => new FlashMessage($"Taken back: the last entry, for {people.Count} children."),
        };
        return Redirects.Back(back, SightingsAddress.Of(lesson.Id), said);
    }

    /// <summary>What came of marks, in a sentence.</summary>
    public static FlashMessage Said(EvidenceAnswer answer) => answer.Outcome switch
    {
        EvidenceOutcome.Stored when answer.Suggestions > 0 => new FlashMessage(
            $"Stored: {Counted.Of(answer.Marks, "mark")}.", $"{Counted.Of(answer.Suggestions, "suggestion")} until somebody who may sign off confirms it.", NeedsALook: true),
        EvidenceOutcome.Stored => new FlashMessage($"Stored: {Counted.Of(answer.Marks, "mark")}.", "Undo takes back the last entry."),
        EvidenceOutcome.AlreadyStored => new FlashMessage("Nothing was changed.", "It stands so already."),
        EvidenceOutcome.NoRight => new FlashMessage("Nothing was changed.", "Only an adult of 18 or over with that right may do this. Choose who holds this device, or ask one.", NeedsALook: true),
        EvidenceOutcome.Unknown => new FlashMessage("Nothing was changed.", "That lesson, child, item or mark is not in this club’s file any more. Look at the page and try once more.", NeedsALook: true),
        _ => throw new ArgumentOutOfRangeException(nameof(answer), answer.Outcome, "There is no such outcome."),
    };

    private static IResult Gone(string page) => Redirects.SeeOther(
        page, new FlashMessage("Not stored.", "That lesson was closed, is still to come, or is not on the calendar. Here is the last evening.", NeedsALook: true));
}
