using Keikocho.App.Club;
using Keikocho.App.Knocks;
using Keikocho.App.People;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.App.Sightings;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.Safety;
using Microsoft.AspNetCore.Mvc;

namespace Keikocho.App.Students;

/// <summary>What the forms about falls, sightings, stand-downs and agreed ways on one child's page post.</summary>
public static class SeenPosts
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Teaching, Device.Laptop);
        app.MapPost($"{StudentAddress.ChildRoute}/fall", FallAsync).WithMetadata(seen);
        app.MapPost($"{StudentAddress.ChildRoute}/sighting", SightingAsync).WithMetadata(seen);
        app.MapPost($"{StudentAddress.ChildRoute}/confirm", ConfirmAsync).WithMetadata(seen);
        app.MapPost($"{StudentAddress.ChildRoute}/correct-seen", CorrectAsync).WithMetadata(seen);
        app.MapPost($"{StudentAddress.ChildRoute}/stand-down", StandDownAsync).WithMetadata(seen);
        app.MapPost($"{StudentAddress.ChildRoute}/move-review", MoveAsync).WithMetadata(seen);
        app.MapPost($"{StudentAddress.ChildRoute}/lift", LiftAsync).WithMetadata(seen);
        app.MapPost($"{StudentAddress.ChildRoute}/way", WayAsync).WithMetadata(seen);
    }

    private static async Task<IResult> FallAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] SeenFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return NobodyActs(view);
        var errors = new List<FieldError>();
        var lesson = Lesson(club, view, form.FallLesson, "fallLesson", errors);
        if (FallForms.Way(form.Way) is not { } way) errors.Add(new("way", "Choose which way the child fell."));
        else if (FallForms.Stage(form.Stage) is not { } stage) errors.Add(new("stage", "Choose the stage."));
        else if (!FallForms.Exists(way, stage)) errors.Add(new("stage", $"{FallForms.Heading(way)} there is no {FallWords.Stage(stage)}. Choose a lower stage."));
        WasThere(club, view, lesson, "fallLesson", errors);
        if (form.Outcome is not ("clean" or "touched")) errors.Add(new("outcome", "Say whether the fall was clean or the head touched."));
        if (errors.Count > 0) return Refuse(view, errors, form);
        var tap = SeenTap.OfFall(Command(club, form, $"{id:D} fall"), lesson!.Value, id, FallForms.Way(form.Way)!.Value, FallForms.Stage(form.Stage)!.Value, form.Outcome == "clean");
        return Done(view, SightingsPosts.Said(await club.House.Sightings.AddAsync([tap], club.Today, acting.Id, club.Device, cancel)), "falls");
    }

    private static async Task<IResult> SightingAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] SeenFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return NobodyActs(view);
        var errors = new List<FieldError>();
        var lesson = Lesson(club, view, form.SeenLesson, "seenLesson", errors);
        WasThere(club, view, lesson, "seenLesson", errors);
        var item = view.Seen.Choices.FirstOrDefault(c => c.Item.Key == form.Item);
        if (item is null) errors.Add(new("item", "Choose the item."));
        var word = SeenWords.Read(form.Word);
        if (word is null) errors.Add(new("word", "Say what was seen: good, prompted or not yet."));
        if (errors.Count > 0) return Refuse(view, errors, form);
        var cell = new SeenCell(id, item!.Id, SeenWords.MarkOf(item.Item.Kind), EvidenceCode.OfWord(word!.Value));
        return Done(view, SightingsPosts.Said(await club.House.Sightings.SetAsync(Command(club, form, $"{id:D} seen"), lesson!.Value, [cell], club.Today, acting.Id, club.Device, cancel)), "sightings");
    }

    private static async Task<IResult> ConfirmAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] SeenFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return NobodyActs(view);
        // Only what the page showed is confirmed, and only of this child.
        var waiting = view.Seen.Waiting.Select(w => w.Mark).ToHashSet();
        IReadOnlyList<Guid> marks = form.Mark == "all" ? [.. (form.Shown ?? []).Where(waiting.Contains)] : Guid.TryParse(form.Mark, out var one) && waiting.Contains(one) ? [one] : [];
        if (marks.Count == 0) return Done(view, new FlashMessage("Nothing was changed.", "That suggestion does not wait any more. Look at the list."), "suggestions");
        var answer = await club.House.Sightings.ConfirmAsync(Command(club, form, $"{id:D} confirm"), marks, club.Today, acting.Id, club.Device, cancel);
        return Done(view, answer.Outcome == EvidenceOutcome.Stored ? new FlashMessage($"Confirmed: {Counted.Of(answer.Marks, "mark")}.") : SightingsPosts.Said(answer), "suggestions");
    }

    private static async Task<IResult> CorrectAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] SeenFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return NobodyActs(view);
        var standing = Guid.TryParse(form.Mark, out var asked) ? EvidenceReader.HistoryOf(club.Reading, id).Standing.FirstOrDefault(m => m.Mark.Mark.Id == asked).Mark : null;
        if (standing is null) return Done(view, new FlashMessage("Nothing was changed.", "That mark does not stand any more. Look at the list."), "marks-seen");
        if (CodeOf(standing, form.To) is not { } code) return Results.BadRequest();
        // The same words a second time, such as there and back again, are another correction: each has the mark that it is about in its id.
        var answer = await club.House.Sightings.CorrectAsync(Command(club, form, $"{asked:D} to {form.To}"), asked, code, club.Today, acting.Id, club.Device, cancel);
        return Done(view, answer.Outcome == EvidenceOutcome.Stored ? new FlashMessage(code == 0 ? "Taken back." : "Put right.", "The first mark stays in the file, with who made it and who put it right.") : SightingsPosts.Said(answer), "marks-seen");
    }

    private static int? CodeOf(StandingMark standing, string? to)
    {
        if (to == SeenWords.Nothing) return 0;
        if (standing.Kind != MarkKind.Fall) return SeenWords.Read(to) is { } word ? EvidenceCode.OfWord(word) : null;
        var (way, stage, _) = EvidenceCode.FallOf(standing.Code);
        return to is "clean" or "touched" ? EvidenceCode.OfFall(way, stage, to == "clean") : null;
    }

    private static async Task<IResult> StandDownAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] SeenFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return NobodyActs(view);
        var errors = new List<FieldError>();
        if (StandDownForms.Scope(form.Scope) is not { } scope) errors.Add(new("scope", "Choose what the child may not do for now."));
        else
        {
            var from = StandDownForms.Day(form.StandFrom, "standFrom", club.Today, errors);
            if (from is null && string.IsNullOrWhiteSpace(form.StandFrom)) errors.Add(new("standFrom", "The first day is missing."));
            var review = StandDownForms.Day(form.ReviewOn, "reviewOn", club.Today, errors);
            if (from is { } first && review < first) errors.Add(new("reviewOn", $"{review!.Value.Full()} is before the first day, {first.Full()}."));
            if (errors.Count == 0)
            {
                var asked = new NewStandDown(Command(club, form, $"{id:D} stand-down"), id, scope, from!.Value, review, form.WhoseWord);
                return Done(view, StandDownForms.Said(await club.House.StandDowns.EnterAsync(asked, acting.Id, club.Device, cancel), $"{view.Person.CallName}: {WaitingView.Scope(scope)} from {from.Value.Full()}."), "stand-downs");
            }
        }

        return Refuse(view, errors, form);
    }

    private static async Task<IResult> MoveAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] SeenFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return NobodyActs(view);
        var errors = new List<FieldError>();
        if (!Guid.TryParse(form.MoveWhich, out var which) || view.Seen.StandDowns.All(s => s.Id != which)) errors.Add(new("moveWhich", "Choose the stand-down."));
        var to = StandDownForms.Day(form.MoveTo, "moveTo", club.Today, errors);
        if (to is null && string.IsNullOrWhiteSpace(form.MoveTo)) errors.Add(new("moveTo", "The new review day is missing."));
        if (to <= club.Today) errors.Add(new("moveTo", $"{to!.Value.Full()} is not after today. Choose a day to come, or lift the stand-down."));
        if (errors.Count > 0) return Refuse(view, errors, form);
        return Done(view, StandDownForms.Said(await club.House.StandDowns.MoveReviewAsync(which, id, to, acting.Id, club.Device, cancel), $"To be looked at again on {to!.Value.Full()}."), "stand-downs");
    }

    private static async Task<IResult> LiftAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] SeenFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return NobodyActs(view);
        var errors = new List<FieldError>();
        if (!Guid.TryParse(form.LiftWhich, out var which) || view.Seen.StandDowns.All(s => s.Id != which)) errors.Add(new("liftWhich", "Choose the stand-down."));
        if (!Guid.TryParse(form.LiftBy, out var adult) || view.Seen.Adults.All(a => a.Value != adult.ToString("D"))) errors.Add(new("liftBy", "Choose the adult who lifts it."));
        var on = StandDownForms.Day(form.LiftOn, "liftOn", club.Today, errors);
        if (on is null && string.IsNullOrWhiteSpace(form.LiftOn)) errors.Add(new("liftOn", "The day is missing."));
        if (on > club.Today) errors.Add(new("liftOn", $"{on.Value.Full()} is still to come. A stand-down is lifted on the day."));
        if (string.IsNullOrWhiteSpace(form.LiftWhy)) errors.Add(new("liftWhy", "The reason is missing. Write whose word it rests on, not what is wrong with the child."));
        if (errors.Count > 0) return Refuse(view, errors, form);
        var outcome = await club.House.StandDowns.LiftAsync(which, id, adult, on!.Value, form.LiftWhy, club.Today, acting.Id, club.Device, cancel);
        if (outcome == StandDownOutcome.NotSaid) return Refuse(view, [new("liftOn", $"{on.Value.Full()} is before the stand-down began.")], form);
        if (outcome == StandDownOutcome.KnockNotYet) return Refuse(view, [new("liftWhich", KnockSum.WhyNotLifted(club, id))], form);
        if (outcome == StandDownOutcome.NoAdult) return Refuse(view, [new("liftBy", "That adult had no duty in the club on that day, or was not 18. Choose another, or another day.")], form);
        return Done(view, StandDownForms.Said(outcome, on < club.Today
            ? $"Lifted from {on.Value.Full()}, entered today: falls count from today on, and are shown again first; the old entry stays in the history."
            : "Lifted. The falls are shown again first; the old entry stays in the history."), "stand-downs");
    }

    private static async Task<IResult> WayAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] SeenFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return NobodyActs(view);
        var errors = new List<FieldError>();
        var item = view.Seen.Choices.FirstOrDefault(c => c.Item.Key == form.WayItem);
        if (item is null) errors.Add(new("wayItem", "Choose the item."));
        if (form.Wording?.Length > 200) errors.Add(new("wording", "That is longer than 200 characters. Write one line."));
        if (errors.Count > 0) return Refuse(view, errors, form);
        var isStored = await club.House.Ways.AgreeAsync(Command(club, form, $"{id:D} way"), id, item!.Id, form.Wording, club.Today, acting.Id, club.Device, cancel);
        return Done(view, isStored
            ? new FlashMessage(string.IsNullOrWhiteSpace(form.Wording) ? $"{item.Item.Name} is shown in the usual way again." : $"Stored: {item.Item.Name} is shown as agreed.", "Sheets made from now on say so, and no reason.")
            : new FlashMessage("Nothing was changed.", "That item is not in this club’s file any more.", NeedsALook: true), "ways");
    }

    private static Guid? Lesson(OpenClub club, StudentView view, string? typed, string field, List<FieldError> errors)
    {
        if (Guid.TryParse(typed, out var asked) && LessonChoice.Of(club, asked) is { } lesson && lesson.ProgrammeId == view.Programme.Id) return lesson.Id;
        errors.Add(new(field, "Choose the evening: a lesson of this programme that was held."));
        return null;
    }

    private static void WasThere(OpenClub club, StudentView view, Guid? lesson, string field, List<FieldError> errors)
    {
        if (lesson is not { } id || club.Book.Lesson(id) is not { } row) return;
        var child = view.Person;
        if (ThereThatEvening.WhyNot(club, row, child.Id, child.CallName, EvidenceReader.Of(club.Reading, [child.Id], null, club.Today)[child.Id]) is { } why) errors.Add(new(field, why));
    }

    private static Guid Command(OpenClub club, SeenFields form, string use) => AnotherId.Of(form.Command ?? Guid.CreateVersion7(club.Clock.Now), use);

    private static IResult Refuse(StudentView view, IReadOnlyList<FieldError> errors, SeenFields form) => OnePage.Of<StudentBody>(new Dictionary<string, object?>
    {
        [nameof(StudentBody.View)] = view,
        [nameof(StudentBody.Errors)] = errors,
        [nameof(StudentBody.Seen)] = form,
    });

    private static IResult Done(StudentView view, FlashMessage message, string part) =>
        Redirects.SeeOther($"{StudentAddress.Of(view.Person.Id, view.Programme.Id)}#{part}", message);

    private static IResult NobodyActs(StudentView view) => Redirects.SeeOther(ActingAddress.From(StudentAddress.Of(view.Person.Id, view.Programme.Id)));
}
