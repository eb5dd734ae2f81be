using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;

namespace Keikocho.App.Club.Feed;

/// <summary>
/// Writes the club's calendar as iCalendar (RFC 5545). Every lesson is an event of its own, at its instant in UTC (section 3.3.5,
/// form 2): no calendar has to know the club's zone, and a change of the clocks between two lessons moves neither.
/// </summary>
public static class CalendarFeed
{
    /// <summary>The text, lines ended by CR LF and folded as section 3.1 asks.</summary>
    /// <param name="content">What is in it.</param>
    /// <param name="now">When it is made: the DTSTAMP of every event.</param>
    public static string Write(FeedContent content, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(content);
        var stamp = At(now);
        var calendar = new Calendar { ProductId = "-//Keikocho//Calendar of the club//EN" };
        // Not in the RFC; every usual calendar reads the feed's name from it.
        calendar.AddProperty("X-WR-CALNAME", content.Club);
        foreach (var lesson in content.Lessons)
        {
            calendar.Events.Add(new CalendarEvent
            {
                Uid = Uid(lesson.Id),
                DtStamp = stamp,
                Start = At(lesson.Start),
                End = At(lesson.End),
                Summary = $"{lesson.Programme}, {content.Club}",
                Location = lesson.Hall,
            });
        }

        foreach (var test in content.Tests)
        {
            calendar.Events.Add(WholeDays(test.Id, stamp, $"Promotion test, {test.Programme}, {content.Club}", test.Date, test.Date));
        }

        foreach (var closure in content.Closures)
        {
            var what = closure.Programme is null ? closure.Name : $"{closure.Name} ({closure.Programme})";
            var days = WholeDays(closure.Id, stamp, $"No lessons: {what}, {content.Club}", closure.From, closure.To);
            // It takes nobody's time: a family's day stays free.
            days.Transparency = TransparencyType.Transparent;
            calendar.Events.Add(days);
        }

        return new CalendarSerializer().SerializeToString(calendar)
            ?? throw new InvalidOperationException("The calendar could not be written.");
    }

    // The end is the day after the last one (section 3.6.1: DTEND is not inclusive).
    private static CalendarEvent WholeDays(Guid id, CalDateTime stamp, string summary, DateOnly first, DateOnly last) => new()
    {
        Uid = Uid(id),
        DtStamp = stamp,
        Start = new CalDateTime(first),
        End = new CalDateTime(last.AddDays(1)),
        Summary = summary,
    };

    private static string Uid(Guid id) => $"{id:D}@keikocho";

    private static CalDateTime At(DateTimeOffset instant) => new(instant.UtcDateTime);
}
