using System.Globalization;
using Keikocho.App.Club;
using Keikocho.App.Shared;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.People;
using Keikocho.Store.Sealing;

namespace Keikocho.App.CareNotes;

/// <summary>Takes what a family says of a child's care: all of a form or none of it.</summary>
public static class CarePosts
{
    private static readonly int Years = 5;

    /// <summary>Adds the endpoints.</summary>
    public static void Map(WebApplication app)
    {
        var seen = new SeenByAttribute(Role.Instructor, Device.Laptop);
        app.MapPost($"{CareAddress.ChildRoute}/enter", EnterAsync).WithMetadata(seen);
        app.MapPost($"{CareAddress.ChildRoute}/remove", RemoveAsync).WithMetadata(seen);
    }

    /// <summary>Name of the field of a heading.</summary>
    public static string Field(CareHeading heading) => string.Create(CultureInfo.InvariantCulture, $"care-{(int)heading}");

    private static async Task<IResult> EnterAsync(Guid id, OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        if (CareView.Of(club, id) is not { } view) return Results.NotFound();
        var page = CareAddress.Of(id);
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(page));
        if (club.House.Lock.Now(club.Reading) is not (LockState.Open, { } key)) return Shut(page);
        var sent = new SentForm(fields);
        var asked = sent.Day("asked", "Type the day on which the family was asked.");
        if (asked > club.Today) sent.Refuse("asked", $"{asked.Value.Full()} is still to come. Type the day on which the family was asked.");
        else if (asked < club.Today.AddYears(-Years)) sent.Refuse("asked", $"{asked.Value.Full()} is more than {Years} years ago. Type the day on which the family was asked.");
        var notes = new List<NewCareNote>();
        foreach (var line in view.Lines)
        {
            var field = Field(line.Heading.Heading);
            // A form without a heading leaves that note as it is, and so does an empty answer to one that does not open.
            if (!fields.ContainsKey(field)) continue;
            var text = sent.Text(field).ReplaceLineEndings("\n");
            if (line.DoesNotOpen && text.Length == 0) continue;
            if (text.Length > CareHeadings.LongestNote) sent.Refuse(field, $"{line.Heading.Words}: that is longer than {CareHeadings.LongestNote} characters. Write what is done first, in fewer words.");
            if (text.Contains('\0', StringComparison.Ordinal)) sent.Refuse(field, $"{line.Heading.Words}: there is a sign in it that is no letter. Type it again.");
            notes.Add(new NewCareNote(line.Heading.Heading, text));
        }

        if (!sent.IsTaken)
        {
            return OnePage.Of<CareBody>(new Dictionary<string, object?>
            {
                [nameof(CareBody.View)] = view,
                [nameof(CareBody.Errors)] = sent.Errors,
                [nameof(CareBody.Sent)] = fields.Keys.ToDictionary(k => k, k => fields[k].ToString(), StringComparer.Ordinal),
            });
        }

        try
        {
            return await club.House.CareNotes.EnterAsync(id, notes, asked!.Value, key, acting.Id, club.Device, cancel)
                ? Redirects.SeeOther(page, new FlashMessage("Stored, closed by the club’s lock.", "Print the red folder anew, and shred the old one."))
                : Results.NotFound();
        }
        catch (ObjectDisposedException)
        {
            return Shut(page);
        }
    }

    private static async Task<IResult> RemoveAsync(Guid id, OpenClub club, CancellationToken cancel)
    {
        if (CareView.Of(club, id) is not { } view) return Results.NotFound();
        var page = CareAddress.Of(id);
        if (club.Acting is not { } acting) return Redirects.SeeOther(ActingAddress.From(page));
        return await club.House.CareNotes.RemoveAsync(id, acting.Id, club.Device, cancel)
            ? Redirects.SeeOther(page, new FlashMessage($"The care notes of {view.Person.CallName} are taken out.", "Shred the red folder that still has them."))
            : Redirects.SeeOther(page, new FlashMessage("Nothing was changed.", "There was no care note."));
    }

    private static IResult Shut(string page) => Redirects.SeeOther(
        page, new FlashMessage("Not stored.", "The club’s lock is shut, and a care note is stored only under it. Open the lock first.", NeedsALook: true));
}
