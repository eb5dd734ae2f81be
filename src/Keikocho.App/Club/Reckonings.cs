using System.Collections.Concurrent;
using System.Collections.Frozen;
using Keikocho.Core.Attendance;
using Keikocho.Core.Calendar;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;
using Keikocho.Store.Marks;

namespace Keikocho.App.Club;

/// <summary>
/// The clocks and rates of each programme, reckoned once after an evening and kept until something that they rest on changes: people,
/// calendar, settings, or a mark of an evening that is over. Taps during tonight's lesson leave them alone.
/// </summary>
public sealed class Reckonings
{
    private readonly ConcurrentDictionary<(Guid Programme, DateOnly? TestOn), Kept> kept = new();

    /// <summary>The reckoning of a programme as of the evening just closed, for its next test.</summary>
    public ProgrammeReckoning Of(OpenClub club, ProgrammeRow programme) => Of(club, programme, null);

    /// <summary>The same for one test that is not over: its day, or a later test than the next.</summary>
    /// <param name="club">The club.</param>
    /// <param name="programme">The programme.</param>
    /// <param name="testOn">The day of the test; null for the next.</param>
    public ProgrammeReckoning Of(OpenClub club, ProgrammeRow programme, DateOnly? testOn)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(programme);
        var asOf = AsOf(club.Book, programme.Id, club.Today, club.Clock.LocalTime);
        if (testOn is { } asked)
        {
            // On the day of the test the evening before it is the last that counts.
            if (asked <= asOf) asOf = asked.AddDays(-1);
            else if (NextTests(club.Book, programme.Id, asOf) is [var next, ..] && next == asked) testOn = null;
        }

        var revisions = club.Revisions;
        // A register is often filled in after the bow out: today's marks are in the count by then, and move no revision.
        var marks = asOf == club.Today ? PastStates.MarksAt(club.Reading, [.. club.Book.LessonsOn(asOf).Where(l => l.ProgrammeId == programme.Id).Select(l => l.Id)]) : 0;
        if (kept.TryGetValue((programme.Id, testOn), out var at)
            && (at.People, at.Calendar, at.Past, at.Marks, at.Reckoning.AsOf) == (revisions.People, revisions.Calendar, revisions.Past, marks, asOf))
            return at.Reckoning;
        var reckoning = Reckon(club.Book, club.Reading, programme, asOf, testOn);
        kept[(programme.Id, testOn)] = new Kept(revisions.People, revisions.Calendar, revisions.Past, marks, reckoning);
        return reckoning;
    }

    /// <summary>The evening just closed: today once the last lesson of today is over, else yesterday.</summary>
    public static DateOnly AsOf(ClubBook book, Guid programme, DateOnly today, TimeOnly now)
    {
        ArgumentNullException.ThrowIfNull(book);
        return book.LessonsOn(today).Any(l => l.ProgrammeId == programme && l.ClosureId is null && l.End > now) ? today.AddDays(-1) : today;
    }

    private static ProgrammeReckoning Reckon(ClubBook book, ReadSession reading, ProgrammeRow programme, DateOnly asOf, DateOnly? testOn)
    {
        var register = book.RegisterOf(programme.Id, asOf.AddDays(1)).DistinctBy(e => e.PersonId).ToList();
        var people = register.Select(e => e.PersonId).ToList();
        var year = asOf.AddYears(-1).AddDays(1);
        var tests = NextTests(book, programme.Id, testOn?.AddDays(-1) ?? asOf);
        DateOnly? test = tests.Count > 0 ? tests[0] : null;
        DateOnly? later = tests.Count > 1 ? tests[1] : null;
        var (edition, older) = (book.EditionOn(programme.LadderId, test ?? asOf), book.OlderBeside(programme.LadderId, test ?? asOf));
        var times = register.Select(e => ChildTime.Of(book, programme, e, edition, test ?? asOf, asOf)).ToList();
        var byOlder = older is null ? null : register.Select(e => ChildTime.Of(book, programme, e, older, test ?? asOf, asOf)).ToList();
        var from = register.Select(e => e.CountsFrom).Concat(times.Select(t => t.First)).Concat(byOlder?.Select(t => t.First) ?? []).Append(year).Min();
        var states = PastStates.Read(reading, programme.Id, people, from, asOf)
            .GroupBy(s => s.PersonId).ToDictionary(g => g.Key, g => g.ToDictionary(s => s.LessonId));
        var ever = PastStates.LessonsEver(reading, people, asOf);
        var missing = PastStates.WithoutRegister(reading, programme.Id, from, asOf);
        // Some counts began before the lessons that the book holds.
        IReadOnlyList<LessonRow> lessons = from >= book.LessonsFrom
            ? book.LessonsOf(programme.Id)
            : [.. PastStates.LessonsBefore(reading, programme.Id, from, book.LessonsFrom), .. book.LessonsOf(programme.Id)];

        var byList = PastStates.EnrolledByAList(reading, programme.Id);
        var clocks = new List<(EnrolmentRow Enrolment, ClockAnswer Clock, ChildTime Time, OlderClock? Older)>(register.Count);
        var counts = new List<AttendanceChild>(register.Count);
        foreach (var (enrolment, i) in register.Select((e, i) => (e, i)))
        {
            var own = states.GetValueOrDefault(enrolment.PersonId) ?? [];
            var time = FromList(enrolment, times[i]);
            var clock = ClockOf(enrolment, time);
            clocks.Add((enrolment, clock, time, byOlder is null ? null : byOlder[i] == times[i] ? new OlderClock(time, clock) : OlderOf(enrolment, FromList(enrolment, byOlder[i]))));
            var held = lessons.Where(l => l.Date >= year && l.Date >= enrolment.From && l.Date <= asOf && l.ClosureId is null && !missing.Contains(l.Id)).ToList();
            var attended = held.Count(l => own.TryGetValue(l.Id, out var state) && state.Counts);
            counts.Add(new AttendanceChild(
                enrolment.PersonId.ToString("D"), held.Count, attended, clock.Left is null ? null : clock.Needed, clock.Left));
        }

        var attendance = ReckonAttendance.Reckon(new AttendanceSnapshot(counts, ClubRules.Prior(book, asOf)));
        var children = clocks.Zip(attendance.Children, (c, chance) => new ChildReckoning(
            c.Enrolment.PersonId,
            c.Clock,
            chance,
            ever.GetValueOrDefault(c.Enrolment.PersonId),
            (states.GetValueOrDefault(c.Enrolment.PersonId) ?? []).Values.Where(s => s.Counts).Select(s => (DateOnly?)s.Date).Max(),
            c.Time.StartOn,
            c.Time.Start == ClockStart.Promotion,
            c.Time,
            c.Older,
            c.Time.Start == ClockStart.Joined)).ToFrozenDictionary(c => c.PersonId);
        return new ProgrammeReckoning(asOf, test, children, attendance, later);

        OlderClock OlderOf(EnrolmentRow enrolment, ChildTime time) => new(time, ClockOf(enrolment, time));

        // A list says when a child joined; only a mark of that day says that it was the first lesson.
        ChildTime FromList(EnrolmentRow enrolment, ChildTime time) =>
            time.Start == ClockStart.FirstLesson && byList.Contains(enrolment.Id)
                && (states.GetValueOrDefault(enrolment.PersonId) ?? []).Values.All(s => s.Date != time.StartOn || !s.Counts)
                ? time with { Start = ClockStart.Joined }
                : time;

        ClockAnswer ClockOf(EnrolmentRow enrolment, ChildTime time)
        {
            var own = states.GetValueOrDefault(enrolment.PersonId) ?? [];
            return Clock.Reckon(new ClockSnapshot(
                asOf < time.StartOn ? time.StartOn : asOf,
                time.StartOn,
                time.Start,
                time.Rule,
                [.. lessons.Where(l => l.Date >= time.First && (test is null ? l.Date <= asOf : l.Date <= test)).Select(l => new ClockLesson(
                    l.Date,
                    l.Date <= asOf && own.TryGetValue(l.Id, out var state) ? StateOf(state) : null,
                    book.Closure(l.ClosureId)?.Name,
                    l.Date <= asOf && missing.Contains(l.Id),
                    new LessonId(l.Id),
                    ChildTime.MinutesOf(l)))],
                test is { } t && t < time.StartOn ? null : test,
                test is { } u && u < time.StartOn ? null : later,
                time.LessonsFrom,
                time.Off));
        }
    }

    private static List<DateOnly> NextTests(ClubBook book, Guid programme, DateOnly after) =>
        [.. book.Tests.Where(t => t.ProgrammeId == programme && t.Date > after).Select(t => t.Date).Distinct().Take(2)];

    private static AttendanceState StateOf(PastState state) =>
        AttendanceState.Untouched with { Word = state.Word, Counts = state.Counts, Ukemi = state.Ukemi };

    private sealed record Kept(long People, long Calendar, long Past, int Marks, ProgrammeReckoning Reckoning);
}
