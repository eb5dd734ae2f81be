using System.Globalization;
using System.Text;
using Keikocho.App.Club.Feed;
using Keikocho.App.Shared;

namespace Keikocho.App.Tests.Club;

/// <summary>The calendar feed against RFC 5545 (text read from memory, sections named at each check).</summary>
public sealed class CalendarFeedTests
{
    private static readonly Guid Id = new("01a03524-d028-7f56-b029-6a708f6b0604");
    private static readonly DateTimeOffset Now = new(2026, 11, 25, 17, 0, 30, TimeSpan.Zero);

    // Section 3.3.5, examples of form 3: the same moments in New York, in UTC; and the two that the clocks leave out and repeat.
    [Theory]
    [InlineData("1997-07-14", "13:30", "19970714T173000Z")]
    [InlineData("1998-01-19", "02:00", "19980119T070000Z")]
    // "DTSTART;TZID=America/New_York:20070311T023000 indicates March 11, 2007 at 3:30 A.M. EDT (UTC-04:00)".
    [InlineData("2007-03-11", "02:30", "20070311T073000Z")]
    // "DTSTART;TZID=America/New_York:20071104T013000 indicates November 4, 2007 at 1:30 A.M. EDT (UTC-04:00)".
    [InlineData("2007-11-04", "01:30", "20071104T053000Z")]
    public void A_local_time_in_New_York_is_the_instant_that_the_RFC_says(string day, string time, string utc)
    {
        var clock = new ClubClock(TimeProvider.System, "America/New_York");
        var start = clock.ToInstant(DateOnly.Parse(day, CultureInfo.InvariantCulture), TimeOnly.Parse(time, CultureInfo.InvariantCulture));
        Assert.Contains($"\r\nDTSTART:{utc}\r\n", Write(lesson: Lesson(start, start.AddHours(1))), StringComparison.Ordinal);
    }

    // Section 3.6.1: "June 28th, 2007 to July 8th, 2007 inclusively ... the DTEND is set to July 9th, 2007".
    [Fact]
    public void A_closure_ends_on_the_day_after_its_last()
    {
        var text = Write(closure: new FeedClosure(Id, "Festival", null, new DateOnly(2007, 6, 28), new DateOnly(2007, 7, 8)));
        Assert.Contains("\r\nDTSTART;VALUE=DATE:20070628\r\n", text, StringComparison.Ordinal);
        Assert.Contains("\r\nDTEND;VALUE=DATE:20070709\r\n", text, StringComparison.Ordinal);
        Assert.Contains("\r\nTRANSP:TRANSPARENT\r\n", text, StringComparison.Ordinal);
    }

    // Section 3.3.11: backslash, semicolon, comma and line end are escaped.
    [Fact]
    public void What_a_club_types_is_escaped()
    {
        var text = Unfold(Write(club: "Project XYZ; Final, Review\nConference Room - 3B \\ 2"));
        Assert.Contains("X-WR-CALNAME:Project XYZ\\; Final\\, Review\\nConference Room - 3B \\\\ 2\r\n", text, StringComparison.Ordinal);
        Assert.Contains("SUMMARY:Promotion test\\, Juniors\\, Project XYZ\\; Final\\, Review\\nConference Room - 3B \\\\ 2\r\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_end_in_a_name_begins_no_event_of_its_own()
    {
        var text = Unfold(Write(club: "A\r\nEND:VEVENT\r\nBEGIN:VEVENT\rSUMMARY:B"));
        Assert.Equal(3, text.Split("\r\n").Count(line => line == "BEGIN:VEVENT"));
        Assert.DoesNotContain("\r\nSUMMARY:B", text, StringComparison.Ordinal);
    }

    // Section 3.1: lines of at most 75 octets, without the line end; a long one goes on after CR LF and one blank.
    [Fact]
    public void Long_lines_are_folded_at_75_octets_and_never_inside_a_character()
    {
        var club = string.Concat(Enumerable.Repeat("柔道クラブ Šárka ", 12)).Trim();
        var text = Write(club: club);
        Assert.All(text.Split("\r\n"), line => Assert.True(Encoding.UTF8.GetByteCount(line) <= 75, line));
        Assert.Contains($"X-WR-CALNAME:{club}\r\n", Unfold(text), StringComparison.Ordinal);
        Assert.DoesNotContain('\uFFFD', text);
    }

    // Section 3.8.7.2 (DTSTAMP in UTC), 3.8.4.7 (UID), 3.7.3 and 3.7.4 (PRODID and VERSION, once each).
    [Fact]
    public void Every_event_has_its_lasting_id_and_the_moment_from_the_clock()
    {
        var text = Write();
        Assert.Equal(3, Lines(text, "DTSTAMP:20261125T170030Z"));
        Assert.Equal(3, text.Split("\r\n").Count(line => line.StartsWith("UID:", StringComparison.Ordinal) && line.EndsWith("@keikocho", StringComparison.Ordinal)));
        Assert.Equal(1, Lines(text, "VERSION:2.0"));
        Assert.Equal(1, Lines(text, "PRODID:-//Keikocho//Calendar of the club//EN"));
        Assert.Equal(text, Write());
    }

    [Fact]
    public async Task The_feed_has_every_lesson_that_is_held_on_both_sides_of_a_change_of_the_clocks()
    {
        await using var desk = await ClubDesk.FreshAsync();
        // The clocks in London go forward on 28 March 2027.
        await desk.TakenAsync("/club/terms/add", ("term-name", "Spring 2027"), ("term-from", "2027-03-01"), ("term-to", "2027-04-10"));
        await desk.TakenAsync("/club/closures/add", ("closure-name", "Hall lost"), ("closure-from", "2027-03-17"), ("closure-to", "2027-03-17"));
        await desk.TakenAsync("/club/tests/add", ("test-programme", desk.Book().Programmes[0].Id.ToString()), ("test-date", "2027-04-03"));
        using var answer = await desk.Browser.GetAsync("/club/calendar.ics", TestContext.Current.CancellationToken);
        Assert.Equal("text/calendar; charset=utf-8", answer.Content.Headers.ContentType?.ToString());
        Assert.True(answer.Headers.CacheControl?.NoStore);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        // 17:30 is 17:30 UTC in winter and 16:30 UTC in summer.
        Assert.Equal(1, Lines(text, "DTSTART:20270324T173000Z"));
        Assert.Equal(1, Lines(text, "DTSTART:20270331T163000Z"));
        Assert.Equal(1, Lines(text, "DTEND:20270331T174500Z"));
        Assert.Equal(0, Lines(text, "DTSTART:20270317T173000Z"));
        Assert.Equal(1, Lines(text, "DTSTART;VALUE=DATE:20270317"));
        Assert.Equal(1, Lines(text, "DTSTART;VALUE=DATE:20270403"));
        var held = desk.Book().LessonsOf(desk.Book().Programmes[0].Id).Where(l => l.ClosureId is null).ToList();
        Assert.All(held, l => Assert.Equal(1, Lines(text, $"UID:{l.Id:D}@keikocho")));
        // Its reader is the library's own; it finds what was written, no more and no less.
        var read = Ical.Net.Calendar.Load(text)!;
        Assert.Equal(held.Count + 2, read.Events.Count);
    }

    [Fact]
    public async Task No_persons_name_is_in_the_feed()
    {
        await using var desk = await ClubDesk.FreshAsync();
        await desk.AddChildAsync(desk.Book().LessonsOn(ClubDesk.Today).Single().Id, "Wren", "Abernathy");
        var text = await desk.PageAsync("/club/calendar.ics");
        foreach (var name in new[] { "Wren", "Abernathy", "Maren", "Holt" })
            Assert.DoesNotContain(name, text, StringComparison.OrdinalIgnoreCase);
    }

    private static int Lines(string text, string line) => text.Split("\r\n").Count(l => l == line);

    private static string Unfold(string text) => text.Replace("\r\n ", "", StringComparison.Ordinal);

    private static FeedLesson Lesson(DateTimeOffset start, DateTimeOffset end) => new(Id, "Juniors", "Quay Hall", start, end);

    private static string Write(string club = "Osier Quay", FeedLesson? lesson = null, FeedClosure? closure = null) => CalendarFeed.Write(
        new FeedContent(
            club,
            [lesson ?? Lesson(Now, Now.AddMinutes(75))],
            [new FeedTest(new("01a03524-d028-7f56-b029-6a708f6b0605"), "Juniors", new DateOnly(2026, 12, 5))],
            [closure ?? new FeedClosure(new("01a03524-d028-7f56-b029-6a708f6b0606"), "Half-term", "Juniors", new DateOnly(2026, 10, 24), new DateOnly(2026, 11, 1))]),
        Now);
}
