using System.Text;
using Keikocho.Store.Book;

namespace Keikocho.App.Club.Feed;

/// <summary>Hands out the calendar of this term and of those to come.</summary>
internal static class FeedEndpoint
{
    public static IResult Read(OpenClub club, HttpContext http)
    {
        http.Response.Headers.ContentDisposition = "inline; filename=\"calendar.ics\"";
        return Results.Bytes(Encoding.UTF8.GetBytes(CalendarFeed.Write(Content(club), club.Clock.Now)), "text/calendar; charset=utf-8");
    }

    private static FeedContent Content(OpenClub club)
    {
        var book = club.Book;
        var from = book.TermOn(club.Today)?.From ?? club.Today;
        return new FeedContent(book.Club.Name, Lessons(club, book, from), Tests(book, from), Closures(book, from));
    }

    private static List<FeedLesson> Lessons(OpenClub club, ClubBook book, DateOnly from) =>
    [
        .. book.Programmes.SelectMany(p => book.LessonsOf(p.Id)).Where(l => l.Date >= from && l.ClosureId is null)
            .OrderBy(l => l.Date).ThenBy(l => l.Start).ThenBy(l => l.Id)
            .Select(l => new FeedLesson(
                l.Id, book.Programme(l.ProgrammeId)!.Name, book.HallOf(l)?.Name, club.Clock.ToInstant(l.Date, l.Start), club.Clock.ToInstant(l.Date, l.End))),
    ];

    private static List<FeedTest> Tests(ClubBook book, DateOnly from) =>
        [.. book.Tests.Where(t => t.Date >= from).Select(t => new FeedTest(t.Id, book.Programme(t.ProgrammeId)!.Name, t.Date))];

    private static List<FeedClosure> Closures(ClubBook book, DateOnly from) =>
    [
        .. book.Closures.Where(c => c.To >= from)
            .Select(c => new FeedClosure(c.Id, c.Name, c.ProgrammeId is { } id ? book.Programme(id)?.Name : null, c.From, c.To)),
    ];
}
