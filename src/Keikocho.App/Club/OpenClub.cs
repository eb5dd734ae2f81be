using Keikocho.App.Shared;
using Keikocho.Core.Evening;
using Keikocho.Store.Book;
using Keikocho.Store.Engines;
using Keikocho.Store.People;

namespace Keikocho.App.Club;

/// <summary>
/// The club as one request sees it: its book, who acts on this device, the day and the hour. Asks the database once, however many
/// parts of a page look.
/// </summary>
public sealed class OpenClub : IDisposable
{
    private readonly ClubHouse house;
    private readonly ThisDevice device;
    private readonly TimeProvider time;
    private readonly ClubHeading heading;
    private KeikochoDb? db;
    private ReadSession? reading;
    private bool asked;
    private ClubBook? book;
    private Revisions? revisions;

    /// <summary>Opens nothing yet.</summary>
    public OpenClub(ClubHouse house, ThisDevice device, TimeProvider time, ClubHeading heading)
    {
        this.house = house;
        this.device = device;
        this.time = time;
        this.heading = heading;
        Clock = new ClubClock(time, heading.ZoneId);
    }

    /// <summary>The stores.</summary>
    public ClubHouse House => house;

    /// <summary>For the statements that are written out, for this request only.</summary>
    public ReadSession Reading => reading ??= house.Engine.OpenReading();

    /// <summary>A context for reading, for this request only; the pages of an evening do without, since the first one takes a while.</summary>
    public KeikochoDb Db => db ??= house.Engine.OpenDb();

    /// <summary>The day and the hour where the club is.</summary>
    public ClubClock Clock { get; private set; }

    /// <summary>Today, where the club is.</summary>
    public DateOnly Today => Clock.Today;

    /// <summary>This device.</summary>
    public Guid Device => device.Id.Value;

    /// <summary>False on the first evening, before a club was made.</summary>
    public bool Exists => Ask() is not null;

    /// <summary>The book.</summary>
    /// <exception cref="InvalidOperationException">There is no club yet; pages are not reached then.</exception>
    public ClubBook Book => Ask() ?? throw new InvalidOperationException("There is no club in this file yet.");

    /// <summary>The revisions that the book was read at.</summary>
    public Revisions Revisions => Ask() is null ? throw new InvalidOperationException("There is no club in this file yet.") : revisions!;

    /// <summary>The adult who acts on this device; null when nobody was chosen, or that adult has no duty any more.</summary>
    public BookPerson? Acting =>
        Revisions.ActingAdultId is { } id && Book.DutiesOn(Today).Any(d => d.PersonId == id) ? Book.Person(id) : null;

    /// <summary>Whether the adult who acts here is an instructor: reads a chance, decides a verdict.</summary>
    public bool InstructorActs => Acting is { } acting
        && Book.DutiesOn(Today).Any(d => d.PersonId == acting.Id && d.Kind is DutyKind.HeadInstructor or DutyKind.Instructor);

    /// <summary>The rules of the fold, as the club has set them.</summary>
    public AttendanceRules AttendanceRules => ClubRules.Attendance(Book, Today);

    private ClubBook? Ask()
    {
        if (asked) return book;
        asked = true;
        if (house.Books.Now(Reading, Device, Clock.Today) is not { } now) return null;
        (book, revisions) = now;
        heading.Take(book.Club.Name, book.Club.Zone);
        // The zone may have been changed by another process since this request began.
        if (Clock.ZoneId != book.Club.Zone && ClubClock.Knows(book.Club.Zone)) Clock = new ClubClock(time, book.Club.Zone);
        return book;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        db?.Dispose();
        reading?.Dispose();
    }
}

/// <summary>Leads to the first evening's page while there is no club, whatever was asked for.</summary>
internal static class FirstEveningFirst
{
    public const string Address = "/start";

    public static void Use(WebApplication app) => app.Use(static (context, next) =>
    {
        if (context.GetEndpoint()?.Metadata is not { } endpoint
            || endpoint.GetMetadata<SeenByAttribute>() is null
            || endpoint.GetMetadata<Hosting.StaticFileMark>() is not null
            || context.Request.Path.StartsWithSegments(Address, StringComparison.Ordinal)
            || context.RequestServices.GetRequiredService<OpenClub>().Exists)
            return next(context);
        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = Address;
        return Task.CompletedTask;
    });
}
