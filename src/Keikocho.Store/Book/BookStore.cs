using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;

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
    /// <summary>The club's revisions; null when the database holds no club yet.</summary>
    public static Revisions? ReadRevisions(ReadSession reading, Guid device)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return ReadClub.Revisions(reading, device);
    }

    /// <summary>
    /// Reads the book: lessons from <paramref name="from"/> on, and the ranks of those who are on a register or were after that day.
    /// </summary>
    /// <param name="reading">The session.</param>
    /// <param name="from">The first day.</param>
    /// <param name="today">The day that is shown: ranks have the names of the edition that holds on it. Null for the newest names.</param>
    public static ClubBook Read(ReadSession reading, DateOnly from, DateOnly? today = null)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return new ClubBook(Rows(reading, from), today);
    }

    /// <summary>The rows that the book is made of.</summary>
    internal static BookRows Rows(ReadSession reading, DateOnly from) => new(
        ReadClub.Club(reading),
        [.. ReadClub.Halls(reading)],
        ReadCalendar.Programmes(reading),
        ReadCalendar.Hours(reading),
        ReadCalendar.Terms(reading),
        ReadCalendar.Closures(reading),
        ReadCalendar.Tests(reading),
        [.. ReadClub.Settings(reading)],
        ReadPeople.Duties(reading),
        ReadPeople.Ranks(reading),
        ReadPeople.People(reading),
        ReadLessons.From(reading, from),
        ReadCalendar.Evenings(reading, from),
        ReadPeople.Enrolments(reading),
        ReadPeople.Awards(reading, from),
        ReadPeople.Crossings(reading, from),
        ReadSyllabus.Editions(reading),
        ReadSyllabus.TermUnits(reading),
        ReadSyllabus.AgeRules(reading),
        ReadSyllabus.Items(reading),
        ReadPeople.TimeOffs(reading),
        from);
}
