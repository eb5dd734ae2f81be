using Keikocho.App.Club;
using Keikocho.Core.Readiness;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;

namespace Keikocho.App.ParentsPages;

/// <summary>Which lessons were held for one child, and to which of them it came, up to the evening just closed.</summary>
public sealed class LessonsOfChild
{
    private readonly ClubBook book;
    private readonly ProgrammeRow programme;
    private readonly DateOnly asOf;
    private readonly IReadOnlyList<LessonRow> held;
    private readonly HashSet<DateOnly> attended;
    private readonly HashSet<Guid> attendedLessons;

    private LessonsOfChild(ClubBook book, ProgrammeRow programme, DateOnly asOf, IReadOnlyList<LessonRow> held, IEnumerable<PastState> came)
    {
        (this.book, this.programme, this.asOf, this.held) = (book, programme, asOf, held);
        var counting = came.Where(s => s.Counts).ToList();
        attended = [.. counting.Select(s => s.Date)];
        attendedLessons = [.. counting.Select(s => s.LessonId)];
    }

    /// <summary>Reads them: two statements.</summary>
    public static LessonsOfChild Of(OpenClub club, ProgrammeRow programme, Guid person, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(programme);
        var book = club.Book;
        var own = book.EnrolmentsOfPerson(person).Where(e => e.ProgrammeId == programme.Id).ToList();
        var lessons = book.LessonsOf(programme.Id).Where(l => l.Date <= asOf && l.ClosureId is null && own.Any(e => e.IsOn(l.Date))).ToList();
        // A unit that was met long ago was met; so every lesson attended counts, not only those of the book.
        var from = own.Select(e => e.From).Append(asOf).Min();
        var came = PastStates.Read(club.Reading, programme.Id, [person], from, asOf);
        var without = lessons.Count == 0 ? [] : PastStates.WithoutRegister(club.Reading, programme.Id, lessons[0].Date, asOf);
        return new LessonsOfChild(book, programme, asOf, [.. lessons.Where(l => !without.Contains(l.Id))], came);
    }

    /// <summary>Attended and held in the term that is on, or was last.</summary>
    public (int Attended, int Held) ThisTerm()
    {
        if (book.Terms.LastOrDefault(t => t.From <= asOf) is not { } term) return (0, 0);
        var lessons = held.Where(l => l.Date >= term.From && l.Date <= term.To).ToList();
        return (lessons.Count(l => attendedLessons.Contains(l.Id)), lessons.Count);
    }

    /// <summary>
    /// Units of terms that are over in which lessons were held for the child and it came to none, unless it met the same unit in another
    /// term; each once, the latest missed term, with the term in which it is taught again.
    /// </summary>
    public IReadOnlyList<MissedUnit> UnitsMissed()
    {
        var met = book.Terms.Where(t => attended.Any(d => d >= t.From && d <= t.To)).Select(t => book.UnitOf(programme.Id, t.Id)).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return
        [
            .. book.Terms
                .Where(t => t.To <= asOf && held.Any(l => l.Date >= t.From && l.Date <= t.To))
                .Select(t => (Term: t, Unit: book.UnitOf(programme.Id, t.Id)))
                .Where(t => t.Unit is not null && !met.Contains(t.Unit))
                .GroupBy(t => t.Unit!, StringComparer.Ordinal)
                .Select(g => g.Last())
                .OrderBy(t => t.Term.From)
                .Select(t => new MissedUnit(
                    NameOf(t.Unit!, t.Term),
                    t.Term.Name,
                    book.Terms.FirstOrDefault(later => later.From > t.Term.To && later.To > asOf && book.UnitOf(programme.Id, later.Id) == t.Unit)?.Name)),
        ];
    }

    // As the edition of that term called it; a unit that was dropped since keeps its name.
    private string NameOf(string unit, TermRow term) =>
        new[] { book.EditionOn(programme.LadderId, term.To) }.Concat(book.EditionsOf(programme.LadderId).Reverse())
            .Select(e => e?.Edition.Units.FirstOrDefault(u => u.Key == unit)?.Name).FirstOrDefault(n => n is not null) ?? unit;
}
