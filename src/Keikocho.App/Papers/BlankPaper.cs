using Keikocho.App.Club;
using Keikocho.App.Register;
using Keikocho.Core.Kernel;
using Keikocho.Paper.Register;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.People;

namespace Keikocho.App.Papers;

/// <summary>Fills the register to write on with a pen.</summary>
public static class BlankPaper
{
    private const int SpareLines = 6;

    /// <summary>What the paper shows of a programme in a span; null when the span has no lesson.</summary>
    public static BlankRegisterContent? Of(OpenClub club, ProgrammeRow programme, DateOnly from, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(programme);
        var book = club.Book;
        var lessons = book.LessonsOf(programme.Id).Where(l => l.Date >= from && l.Date <= to).ToList();
        if (lessons.Count == 0) return null;
        var dates = lessons.GroupBy(l => l.Date).OrderBy(g => g.Key)
            .Select(g => new BlankRegisterDate(g.Key, g.All(l => l.ClosureId is not null) ? book.Closure(g.First().ClosureId)?.Name : null))
            .ToList();
        var children = book.EnrolmentsOf(programme.Id).Where(e => e.From <= to && (e.To is null || e.To >= from)).Select(e => e.PersonId);
        return new BlankRegisterContent(
            book.Club.Name,
            programme.Name,
            Period(book, from, to),
            Hours(book, lessons),
            Edition: null,
            dates,
            [.. PaperName.Of(book, programme, children).Select(n => new BlankRegisterChild(n.First, n.Second))],
            [.. book.DutiesOn(club.Today).Where(d => d.Kind <= DutyKind.JuniorLeader).DistinctBy(d => d.PersonId)
                .Where(d => book.RegisterOf(programme.Id, club.Today).All(e => e.PersonId != d.PersonId))
                .Select(d => new RegisterAdult(book.Person(d.PersonId)!.FullName, DutyWords.Of(d.Kind)))],
            SpareLines,
            club.Today);
    }

    /// <summary>The term's name, "November 2026", or the two days.</summary>
    public static string Period(ClubBook book, DateOnly from, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(book);
        if (book.Terms.FirstOrDefault(t => t.From == from && t.To == to) is { } term) return term.Name;
        return from == PaperSpan.MonthOf(from).From && to == PaperSpan.MonthOf(from).To
            ? from.ToString("MMMM yyyy", System.Globalization.CultureInfo.InvariantCulture)
            : from == to ? from.Full() : $"{from.Full()} to {to.Full()}";
    }

    // "Tuesdays and Thursdays, 17:30 to 18:45, Quay Hall"; where days differ, each has its own hours.
    private static string Hours(ClubBook book, List<LessonRow> lessons)
    {
        var groups = lessons.Select(l => (l.Date.DayOfWeek, l.Start, l.End)).Distinct()
            .OrderBy(h => ((int)h.DayOfWeek + 6) % 7).ThenBy(h => h.Start)
            .GroupBy(h => (h.Start, h.End))
            .Select(g => $"{InWords([.. g.Select(h => $"{h.DayOfWeek}s")])}, {g.Key.Start.Plain()} to {g.Key.End.Plain()}");
        var halls = lessons.Select(l => book.HallOf(l)?.Name).OfType<string>().Distinct().ToList();
        return string.Join("; ", groups) + (halls.Count == 1 ? $", {halls[0]}" : "");
    }

    private static string InWords(List<string> days) =>
        days.Count == 1 ? days[0] : $"{string.Join(", ", days.Take(days.Count - 1))} and {days[^1]}";
}
