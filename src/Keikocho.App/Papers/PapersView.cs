using System.Globalization;
using Keikocho.App.Club;
using Keikocho.App.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;

namespace Keikocho.App.Papers;

/// <summary>What the page of papers offers.</summary>
/// <param name="Lessons">Lessons to choose from, the newest first, with their words.</param>
/// <param name="Chosen">The lesson that is proposed; null when there is none.</param>
/// <param name="Programmes">Programmes to choose from.</param>
/// <param name="Term">Name of the term that is on; null between terms.</param>
/// <param name="Paper">"a4" or "letter", the club's usual paper.</param>
/// <param name="MissingGlyphs">Characters in names that papers cannot print.</param>
/// <param name="Tests">Promotion tests to come, the next first; empty where none is set or no syllabus holds on its day.</param>
/// <param name="Ranks">Ranks that ask something, lowest first.</param>
/// <param name="Units">Units that may stand on a copy for the wall.</param>
/// <param name="OfOne">The tests of one programme, for one child's papers.</param>
/// <param name="Children">Children of that programme's register, in register order.</param>
/// <param name="Others">Where several programmes are tested: the next test of each, with the programme's name.</param>
public sealed record PapersView(
    IReadOnlyList<(string Id, string Words)> Lessons,
    string? Chosen,
    IReadOnlyList<(string Id, string Name)> Programmes,
    string? Term,
    string Paper,
    IReadOnlyList<string> MissingGlyphs,
    IReadOnlyList<(string Id, string Words)> Tests,
    IReadOnlyList<(string Key, string Words)> Ranks,
    IReadOnlyList<(string Key, string Words)> Units,
    IReadOnlyList<(string Id, string Words)> OfOne,
    IReadOnlyList<(string Id, string Words)> Children,
    IReadOnlyList<(string Id, string Words)> Others)
{
    private const int LessonsBack = 40;
    private const int LessonsAhead = 12;

    /// <summary>The next test of the programme whose children are shown; null without a test.</summary>
    public string? Programme => Others.Select(o => o.Id).FirstOrDefault(id => OfOne.Any(t => t.Id == id));

    /// <summary>Reads the page.</summary>
    /// <param name="club">The club.</param>
    /// <param name="names">Which characters cannot be printed.</param>
    /// <param name="test">The test that is asked about; the next one without. Its programme's children are offered, and no others.</param>
    public static PapersView Of(OpenClub club, PrintedNames names, string? test = null)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(names);
        var book = club.Book;
        var offered = EveningLesson.Ahead(book, club.Today.AddDays(1)).SelectMany(day => book.LessonsOn(day)).Take(LessonsAhead)
            .Concat(EveningLesson.Back(book, club.Today).SelectMany(day => book.LessonsOn(day).Reverse()).Take(LessonsBack))
            .OrderByDescending(l => l.Date).ThenBy(l => l.Start).ThenBy(l => l.Id);
        var tests = PaperTest.Offered(club).Select(t => PaperTest.Of(club, t)).Where(t => t.Edition is not null).ToList();
        var ladders = tests.DistinctBy(t => t.Edition!.Id).ToList();
        // Where several programmes are tested, each word says of which it is.
        var programmes = tests.DistinctBy(t => t.Programme.Id).ToList();
        var several = programmes.Count > 1;
        var one = (tests.FirstOrDefault(t => t.Test.Id.ToString("D") == test) ?? tests.FirstOrDefault())?.Programme;
        string Whose(PaperTest test, string words) => several ? $"{test.Programme.Name}: {words}" : words;
        return new PapersView(
            [.. offered.Select(l => (l.Id.ToString("D"), Words(club, l)))],
            UsualLesson(club)?.Id.ToString("D"),
            [.. book.Programmes.Select(p => (p.Id.ToString("D"), p.Name))],
            book.TermOn(club.Today)?.Name,
            book.Club.Paper == PaperChoice.Letter ? "letter" : "a4",
            names.MissingGlyphs(book, club.Today),
            [.. tests.Select(t => (t.Test.Id.ToString("D"), t.Words))],
            [.. ladders.SelectMany(t => t.Edition!.Edition.Ranks.Where(r => r.Requirements.Count > 0).Select(r => (r.Key, Whose(t, r.Name)))).DistinctBy(r => r.Key)],
            [.. ladders.SelectMany(t => t.Edition!.Edition.Units.Select(u => (u.Key, Whose(t, u.Name)))).DistinctBy(u => u.Key)],
            [.. tests.Where(t => t.Programme.Id == one?.Id).Select(t => (t.Test.Id.ToString("D"), t.Words))],
            one is null ? [] : [.. PaperName.Of(book, one, book.RegisterOf(one.Id, club.Today).Select(e => e.PersonId))
                .Select(n => (n.PersonId.ToString("D"), n.Second is null ? n.First : $"{n.First} {n.Second}"))],
            several ? [.. programmes.Select(t => (t.Test.Id.ToString("D"), t.Programme.Name))] : []);
    }

    /// <summary>Tonight's lesson, else the last one, else the next; null when there is none at all.</summary>
    public static LessonRow? UsualLesson(OpenClub club)
    {
        ArgumentNullException.ThrowIfNull(club);
        if (EveningLesson.Choose(club.Book, club.Today, club.Clock.LocalTime, null) is { } tonight) return tonight;
        var (last, next) = EveningLesson.Around(club.Book, club.Today);
        return last ?? next;
    }

    private static string Words(OpenClub club, LessonRow lesson)
    {
        var when = $"{lesson.Date.ToString("ddd d MMM yyyy", CultureInfo.InvariantCulture)}, {lesson.Start.Plain()}, {club.Book.Programme(lesson.ProgrammeId)!.Name}";
        return (lesson.Date == club.Today ? $"Tonight: {when}" : when) + (lesson.ClosureId is null ? "" : " (closed)");
    }
}
