using Keikocho.App.Club;
using Keikocho.App.People;
using Keikocho.App.Shared;

namespace Keikocho.App.Students;

/// <summary>Takes back, on the laptop, a note that was made on the mat.</summary>
public static class NotePosts
{
    /// <summary>The form.</summary>
    public const string Form = "note-back";

    /// <summary>Adds the endpoint.</summary>
    public static void Map(WebApplication app) =>
        app.MapPost($"{StudentAddress.ChildRoute}/{Form}", BackAsync).WithMetadata(new SeenByAttribute(Role.Teaching, Device.Laptop));

    private static async Task<IResult> BackAsync(Guid id, OpenClub club, IFormCollection form, CancellationToken cancel)
    {
        if (club.Book.Person(id) is not { IsErased: false }) return Results.NotFound();
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(StudentAddress.Of(id)));
        var isBack = Guid.TryParse(form["note"], out var note) && await club.House.PhraseNotes.TakeBackAsync(note, club.Today, acting.Id, club.Device, cancel);
        return Redirects.SeeOther(StudentAddress.Of(id), isBack
            ? new FlashMessage("The note is taken back.", "The file keeps that there was one, and who took it back.")
            : new FlashMessage("Nothing was changed.", "That note does not stand any more, or whoever acts here is no adult with a duty.", NeedsALook: true));
    }
}
