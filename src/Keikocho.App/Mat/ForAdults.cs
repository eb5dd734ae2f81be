using Keikocho.App.Club;
using Keikocho.App.Hall;
using Keikocho.App.Hosting;
using Keikocho.App.Shared;
using Keikocho.App.Sightings;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Hall;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Microsoft.AspNetCore.Mvc;

namespace Keikocho.App.Mat;

/// <summary>
/// What only adults may see of one child, opened on an instructor's tablet with that adult's own code: whom to ring, what stands and on
/// whose word, and the care notes while the lock is open on the laptop. The page shuts it after ten seconds and keeps nothing of it.
/// </summary>
public static class ForAdults
{
    /// <summary>Seconds that it stays open.</summary>
    public const int Seconds = 10;

    /// <summary>Adds the endpoint.</summary>
    public static void Map(WebApplication app) =>
        app.MapPost(MatAddress.Adult, Open).WithMetadata(new SeenByAttribute(Role.Teaching, Device.Tablet));

    private static IResult Open(OpenClub club, WrongCodes wrong, [FromBody] AdultAsks asks)
    {
        if (club.Acting is not { } adult || club.Book.Person(asks.Child) is not { IsErased: false } child) return Problem("Nobody acts on this tablet, or that child is gone. Load the page again.");
        if (!wrong.MayTry(adult.Id)) return Problem("Too many wrong codes. Wait a minute.");
        if (!AdultCodeStore.Opens(club.Reading, adult.Id, asks.Code))
            return Problem($"That is not {adult.CallName}’s code. A code is set on the laptop, on the page Tablets.");
        wrong.Right(adult.Id);
        var standing = EvidenceReader.Of(club.Reading, [child.Id], null, club.Today)[child.Id].StandDowns
            .Where(s => s.LiftedOn is not { } lifted || lifted > club.Today)
            .Select(s => $"{WaitingView.Scope(s.Scope)} since {s.From.Full()}{(s.WhoseWord is { } word ? $", until {word}" : "")}").ToList();
        var contacts = club.Db.Contacts.Where(c => c.PersonId == child.Id).OrderBy(c => c.Position).AsEnumerable()
            .Select(c => new AdultContact(Seal.Open(c.Name) ?? "", Seal.Open(c.Relation) ?? "", Seal.Open(c.Phone) ?? "", c.BarredFromCollecting)).ToList();
        var (care, locked) = CareOf(club, child.Id);
        return Results.Json(new AdultSees(child.FullName, contacts, standing, Seconds, null) { Care = care, CareLocked = locked }, WebJson.Options);
    }

    // In words only while the lock is open on the laptop; else what to do to read them.
    private static (IReadOnlyList<AdultCare> Care, string? Locked) CareOf(OpenClub club, Guid child)
    {
        const string Locked = "There are care notes. Unlock the laptop to read them; they are in the red folder too.";
        if (!CareNoteReader.Stands(club.Reading, [child])[child].HasNote) return ([], null);
        if (club.House.Lock.Now(club.Reading).Key is not { } key) return ([], Locked);
        try
        {
            return ([.. CareNoteReader.Of(club.Reading, [child], key)[child].Select(n => new AdultCare(
                CareHeadings.Words(n.Heading), n.Text ?? "This note does not open with the club’s lock. Ask the family."))], null);
        }
        catch (ObjectDisposedException)
        {
            return ([], Locked);
        }
    }

    private static IResult Problem(string sentence) =>
        Results.Json(new AdultSees("", [], [], 0, sentence), WebJson.Options, statusCode: StatusCodes.Status403Forbidden);
}

/// <summary>An adult asks about one child.</summary>
public sealed record AdultAsks(Guid Child, string? Code);

/// <summary>What that adult sees.</summary>
/// <param name="Name">The child.</param>
/// <param name="Contacts">Whom to ring, in their order.</param>
/// <param name="Standing">What stands, and until whose word.</param>
/// <param name="Seconds">How long it stays open.</param>
/// <param name="Problem">Why nothing is shown; null otherwise.</param>
public sealed record AdultSees(string Name, IReadOnlyList<AdultContact> Contacts, IReadOnlyList<string> Standing, int Seconds, string? Problem)
{
    /// <summary>The care notes, in the order in which they are read out.</summary>
    public IReadOnlyList<AdultCare> Care { get; init; } = [];

    /// <summary>Why care notes that there are do not show; null otherwise.</summary>
    public string? CareLocked { get; init; }
}

/// <summary>A care note.</summary>
/// <param name="Heading">Its heading.</param>
/// <param name="Text">Its words.</param>
public sealed record AdultCare(string Heading, string Text);

/// <summary>Whom to ring.</summary>
/// <param name="Name">Who.</param>
/// <param name="Relation">What they are to the child.</param>
/// <param name="Phone">The number.</param>
/// <param name="AskFirst">Check with the instructor before that person collects the child.</param>
public sealed record AdultContact(string Name, string Relation, string Phone, bool AskFirst);
