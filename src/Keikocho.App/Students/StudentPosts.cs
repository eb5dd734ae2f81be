using Keikocho.App.Club;
using Keikocho.App.People;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Kernel;
using Keikocho.Store.People;
using Microsoft.AspNetCore.Mvc;

namespace Keikocho.App.Students;

/// <summary>What the forms on one child's page post.</summary>
public static class StudentPosts
{
    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Teaching, Device.Laptop);
        app.MapPost($"{StudentAddress.ChildRoute}/details", DetailsAsync).WithMetadata(seen);
        app.MapPost($"{StudentAddress.ChildRoute}/contact", ContactAsync).WithMetadata(seen);
        app.MapPost($"{StudentAddress.ChildRoute}/rank", RankAsync).WithMetadata(seen);
        app.MapPost($"{StudentAddress.ChildRoute}/end", EndAsync).WithMetadata(seen);
        app.MapPost($"{StudentAddress.ChildRoute}/register", RegisterAsync).WithMetadata(seen);
        LessonMarksPosts.Map(app);
        SeenPosts.Map(app);
        TimeOffPosts.Map(app);
        NotePosts.Map(app);
    }

    private static async Task<IResult> DetailsAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] DetailsFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return NobodyActs(view);
        var (details, errors) = form.Read(club.Today);
        if (details is null) return Refuse(view, errors, nameof(StudentBody.Details), form);
        await club.House.People.ChangeDetailsAsync(id, details, acting.Id, club.Device, cancel);
        return Done(view, $"Stored: {details.Given}.");
    }

    private static async Task<IResult> ContactAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] ContactFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return NobodyActs(view);
        var (details, errors) = form.Read(id);
        if (errors.Count > 0) return Refuse(view, errors, nameof(StudentBody.Contact), form);
        return details is not null && await club.House.People.SaveContactAsync(details, acting.Id, club.Device, cancel)
            ? Done(view, "The contact is stored.")
            : Done(view, "Nothing was stored.", "That contact is not this child’s any more. Look at the list and try once more.", needsALook: true);
    }

    private static async Task<IResult> RankAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] RankFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return NobodyActs(view);
        var (rank, errors) = form.Read(view, club.Today);
        if (rank is null) return Refuse(view, errors, nameof(StudentBody.Rank), form);
        var name = view.Ranks.First(r => r.Id == rank.RankId).Name;
        return await club.House.People.RecordRankAsync(rank, acting.Id, club.Device, cancel) switch
        {
            RankOutcome.Recorded => Done(view, $"Recorded: {name} on {rank.On!.Value.Full()}.", "Lessons count from the day after it."),
            RankOutcome.AlreadyThere => Done(view, $"{name} on {rank.On!.Value.Full()} stands already.", "Nothing was changed."),
            RankOutcome.Unknown => Done(view, "Nothing was recorded.", "The entry to be replaced does not stand any more. Look at the rank history and try once more.", needsALook: true),
            _ => throw new InvalidOperationException("There is no such outcome."),
        };
    }

    private static async Task<IResult> EndAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] EndFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return NobodyActs(view);
        if (form.Read() is not { } end) return Results.BadRequest();
        Guid? lesson = null;
        if (!string.IsNullOrEmpty(form.Lesson))
        {
            if (!Guid.TryParse(form.Lesson, out var asked) || club.Book.Lesson(asked) is not { } found || found.ProgrammeId != view.Programme.Id)
                return Done(view, "Nothing was changed.", "That lesson is not on the calendar any more.", needsALook: true);
            lesson = found.Id;
        }

        await club.House.People.CrossAsync(id, view.Programme.Id, end, lesson is { } one ? club.Book.Lesson(one)!.Date : club.Today, lesson, acting.Id, club.Device, cancel);
        var where = end == MatEnd.Beginners ? "the beginners’ end" : "the main group";
        return Done(view, lesson is null ? $"{view.Person.CallName} works at {where} from today on." : $"{view.Person.CallName} works at {where} at that lesson only.");
    }

    private static async Task<IResult> RegisterAsync(Guid id, OpenClub club, StudentSums sums, [FromForm] OffFields form, CancellationToken cancel)
    {
        if (StudentView.Of(club, sums, id, form.Programme) is not { } view) return Results.NotFound();
        if (club.Acting is not { } acting) return NobodyActs(view);
        DateOnly? last = null;
        if (form.Back != "on")
        {
            var from = club.Book.EnrolmentsOfPerson(id).Where(e => e.ProgrammeId == view.Programme.Id).Max(e => e.From);
            (last, var errors) = form.Read(from, club.Today);
            if (last is null) return Refuse(view, errors, nameof(StudentBody.Off), form);
        }

        await club.House.People.EndEnrolmentAsync(id, view.Programme.Id, last, acting.Id, club.Device, cancel);
        return last is { } day
            ? Done(view, $"{view.Person.CallName} is on this register to {day.Full()}.", "Every mark stays; the child can be put back on.")
            : Done(view, $"{view.Person.CallName} is on this register again.");
    }

    private static IResult Refuse(StudentView view, IReadOnlyList<FieldError> errors, string form, object typed) => OnePage.Of<StudentBody>(new Dictionary<string, object?>
    {
        [nameof(StudentBody.View)] = view,
        [nameof(StudentBody.Errors)] = errors,
        [form] = typed,
    });

    private static IResult Done(StudentView view, string title, string text = "", bool needsALook = false) =>
        Redirects.SeeOther(StudentAddress.Of(view.Person.Id, view.Programme.Id), new FlashMessage(title, text, needsALook));

    private static IResult NobodyActs(StudentView view) =>
        Redirects.SeeOther(ActingAddress.From(StudentAddress.Of(view.Person.Id, view.Programme.Id)));
}
