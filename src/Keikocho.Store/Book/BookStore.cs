using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Book;

/// <summary>The revisions of a club and who acts on a device: the one question that every page asks first.</summary>
/// <param name="People">Revision of people.</param>
/// <param name="Calendar">Revision of the calendar.</param>
/// <param name="Past">Revision of earlier days' marks.</param>
/// <param name="ActingAdultId">Who acts on the device; null when nobody was chosen.</param>
public sealed record Revisions(long People, long Calendar, long Past, Guid? ActingAdultId);

/// <summary>Reads books.</summary>
public static class BookStore
{
    private static readonly Func<KeikochoDb, Guid, Revisions?> AskRevisions = EF.CompileQuery((KeikochoDb db, Guid device) =>
        db.Clubs.Select(c => new Revisions(
            c.PeopleRevision,
            c.CalendarRevision,
            c.PastRevision,
            db.Devices.Where(d => d.Id == device).Select(d => d.ActingAdultId).FirstOrDefault())).FirstOrDefault());

    /// <summary>The club's revisions; null when the database holds no club yet.</summary>
    public static Revisions? ReadRevisions(KeikochoDb db, Guid device) => AskRevisions(db, device);

    /// <summary>
    /// Reads the book: lessons from <paramref name="from"/> on, and the ranks of those who are on a register or were after that day.
    /// </summary>
    public static ClubBook Read(KeikochoDb db, DateOnly from)
    {
        ArgumentNullException.ThrowIfNull(db);
        var enrolments = db.Enrolments.AsNoTracking().ToList();
        return new ClubBook(new BookRows(
            db.Clubs.AsNoTracking().Single(),
            [.. db.Halls.AsNoTracking().OrderBy(h => h.Name).ThenBy(h => h.Id)],
            db.Programmes.AsNoTracking().ToList(),
            db.WeeklyHours.AsNoTracking().ToList(),
            db.Terms.AsNoTracking().ToList(),
            db.Closures.AsNoTracking().ToList(),
            db.PromotionTests.AsNoTracking().ToList(),
            [.. db.Settings.AsNoTracking()],
            db.Duties.AsNoTracking().ToList(),
            db.Ranks.AsNoTracking().ToList(),
            db.People.AsNoTracking().AsEnumerable().Select(p => new BookPerson(
                p.Id,
                Seal.Open(p.Given) ?? "(erased)",
                Seal.Open(p.Family),
                Seal.Open(p.Called),
                Seal.Open(p.Born),
                p.AdultSeenOn is not null,
                p.ErasedAt is not null)).ToList(),
            db.Lessons.AsNoTracking().Where(l => l.Date >= from).ToList(),
            db.Evenings.AsNoTracking().Where(e => e.Date >= from).ToList(),
            enrolments,
            db.Awards.AsNoTracking().Where(a => db.Enrolments.Any(e => e.PersonId == a.PersonId && (e.To == null || e.To >= from))).ToList(),
            db.Crossings.AsNoTracking().Where(c => db.Enrolments.Any(e => e.PersonId == c.PersonId && (e.To == null || e.To >= from))).ToList(),
            from));
    }
}
