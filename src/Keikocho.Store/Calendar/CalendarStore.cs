using Keikocho.Core.Evening;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Marks;

namespace Keikocho.Store.Calendar;

/// <summary>A weekly hour as it is typed.</summary>
public sealed record NewHour(Guid ProgrammeId, Guid HallId, DayOfWeek Weekday, LessonTimes Times, DateOnly From);

/// <summary>A closure as it is typed.</summary>
public sealed record NewClosure(string Name, DateOnly From, DateOnly To, Guid? ProgrammeId, Guid? HallId);

/// <summary>A held evening on which marks were made and that a new closure would take out.</summary>
public sealed record MarkedLesson(Guid LessonId, Guid ProgrammeId, DateOnly Date, int Marked);

/// <summary>What came of entering a closure.</summary>
/// <param name="Saved">Whether it was saved.</param>
/// <param name="Ask">Lessons with marks: was each held, or closed? Empty when saved.</param>
public sealed record ClosureOutcome(bool Saved, IReadOnlyList<MarkedLesson> Ask);

/// <summary>Programmes, weekly hours, terms, lessons, closures and tests.</summary>
public sealed class CalendarStore(WriterQueue writer)
{
    /// <summary>Adds a programme at the end of the list.</summary>
    public Task<Guid> AddProgrammeAsync(string name, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var position = session.Db.Programmes.Select(p => (int?)p.Position).Max() ?? 0;
        var row = new ProgrammeRow { Club = session.Club, Id = session.NewId(), Name = name.Trim(), Position = position + 1 };
        session.Db.Programmes.Add(row);
        Changed(session, row.Id, by, device);
        return row.Id;
    }, cancel);

    /// <summary>Sets what a programme's first course asks: lessons, weeks, and lessons to try; null where the club has not said.</summary>
    public Task<bool> ChangeProgrammeAsync(Guid programme, string name, int? lessons, int? weeks, int? trials, Guid? by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            var row = session.Db.Programmes.FirstOrDefault(p => p.Id == programme);
            if (row is null) return false;
            (row.Name, row.FirstCourseLessons, row.FirstCourseWeeks, row.TrialLessons) = (name.Trim(), lessons, weeks, trials);
            Changed(session, programme, by, device);
            return true;
        }, cancel);

    /// <summary>Adds a weekly hour and lays its lessons into the terms that are there, from its first day on.</summary>
    public Task<int> AddHourAsync(NewHour asked, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        session.Db.WeeklyHours.Add(new WeeklyHourRow
        {
            Club = session.Club,
            Id = session.NewId(),
            ProgrammeId = asked.ProgrammeId,
            HallId = asked.HallId,
            Weekday = asked.Weekday,
            Start = asked.Times.Start,
            End = asked.Times.End,
            UkemiFrom = asked.Times.UkemiFrom,
            UkemiTo = asked.Times.UkemiTo,
            HalfTime = asked.Times.HalfTime,
            From = asked.From,
        });
        session.Db.SaveChanges();
        var laid = LayLessons.Lay(session);
        Changed(session, asked.ProgrammeId, by, device);
        return laid;
    }, cancel);

    /// <summary>Ends a weekly hour: its lessons after <paramref name="last"/> that nobody has marked go, the others stay.</summary>
    public Task<bool> EndHourAsync(Guid hour, DateOnly last, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var row = session.Db.WeeklyHours.FirstOrDefault(h => h.Id == hour);
        if (row is null) return false;
        row.To = last;
        session.Db.SaveChanges();
        LayLessons.TakeUp(session, row, last);
        Changed(session, row.ProgrammeId, by, device);
        return true;
    }, cancel);

    /// <summary>
    /// Changes the falls and the half time inside a weekly hour: its lessons from <paramref name="first"/> on that nobody has marked
    /// follow; what was marked keeps the hours it was marked under.
    /// </summary>
    public Task<bool> ChangeHourAsync(
        Guid hour, TimeOnly ukemiFrom, TimeOnly ukemiTo, TimeOnly halfTime, DateOnly first, Guid? by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            var row = session.Db.WeeklyHours.FirstOrDefault(h => h.Id == hour);
            if (row is null) return false;
            new LessonTimes(row.Start, row.End, ukemiFrom, ukemiTo, halfTime).Guard();
            (row.UkemiFrom, row.UkemiTo, row.HalfTime) = (ukemiFrom, ukemiTo, halfTime);
            foreach (var lesson in LayLessons.Unmarked(session.Db, row, first))
                (lesson.UkemiFrom, lesson.UkemiTo, lesson.HalfTime) = (ukemiFrom, ukemiTo, halfTime);
            Changed(session, row.ProgrammeId, by, device);
            return true;
        }, cancel);

    /// <summary>Adds a term and lays its lessons. Null when it overlaps another: nothing was changed.</summary>
    public Task<Guid?> AddTermAsync(string name, DateOnly from, DateOnly to, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync<Guid?>(session =>
    {
        if (session.Db.Terms.Any(t => t.From <= to && t.To >= from)) return null;
        var row = new TermRow { Club = session.Club, Id = session.NewId(), Name = name.Trim(), From = from, To = to };
        session.Db.Terms.Add(row);
        session.Db.SaveChanges();
        LayLessons.Lay(session);
        Changed(session, row.Id, by, device);
        return row.Id;
    }, cancel);

    /// <summary>
    /// Enters a closure. Lessons that it covers are out of every count; their marks stay. Where a lesson has marks, nothing is saved
    /// until <paramref name="heldAfterAll"/> or <paramref name="closedAfterAll"/> names it (ruling on statement 2).
    /// </summary>
    public Task<ClosureOutcome> AddClosureAsync(
        NewClosure asked,
        IReadOnlySet<Guid> heldAfterAll,
        IReadOnlySet<Guid> closedAfterAll,
        AttendanceRules rules,
        Guid? by,
        Guid device,
        CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        var covered = LayLessons.Covered(db, asked.From, asked.To, asked.ProgrammeId, asked.HallId).Where(l => l.ClosureId == null).ToList();
        var ask = new List<MarkedLesson>();
        foreach (var lesson in covered.Where(l => !heldAfterAll.Contains(l.Id) && !closedAfterAll.Contains(l.Id)))
        {
            var marked = db.Attendances.Count(a => a.LessonId == lesson.Id && (a.Word == AttendanceWord.Present || a.Word == AttendanceWord.Left));
            if (marked > 0) ask.Add(new MarkedLesson(lesson.Id, lesson.ProgrammeId, lesson.Date, marked));
        }

        if (ask.Count > 0) return new ClosureOutcome(false, ask);
        var closing = covered.Where(l => !heldAfterAll.Contains(l.Id)).ToList();
        // "It was held" about every lesson that the closure covers: there is nothing left to close.
        if (covered.Count > 0 && closing.Count == 0) return new ClosureOutcome(false, []);
        var row = new ClosureRow
        {
            Club = session.Club,
            Id = session.NewId(),
            Name = asked.Name.Trim(),
            From = asked.From,
            To = asked.To,
            ProgrammeId = asked.ProgrammeId,
            HallId = asked.HallId,
            MadeAt = session.Now,
        };
        db.Closures.Add(row);
        db.SaveChanges();
        foreach (var lesson in closing)
        {
            lesson.ClosureId = row.Id;
            db.SaveChanges();
            FoldMarks.StoreAll(session, lesson, rules);
        }

        Revise.Calendar(session);
        Revise.Past(session);
        session.Note(TrailKind.ClosureMade, row.Id, by, device);
        return new ClosureOutcome(true, []);
    }, cancel);

    /// <summary>Takes a closure back: its lessons count again, with the marks that were there all along.</summary>
    public Task<bool> RemoveClosureAsync(Guid closure, AttendanceRules rules, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        var row = db.Closures.FirstOrDefault(c => c.Id == closure);
        if (row is null) return false;
        db.Closures.Remove(row);
        db.SaveChanges();
        LayLessons.Reopen(session, closure, rules);

        Revise.Calendar(session);
        Revise.Past(session);
        session.Note(TrailKind.ClosureRemoved, closure, by, device);
        return true;
    }, cancel);

    /// <summary>Adds a promotion test; false when the programme has one on that day.</summary>
    public Task<bool> AddTestAsync(Guid programme, DateOnly date, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (session.Db.PromotionTests.Any(t => t.ProgrammeId == programme && t.Date == date)) return false;
        var row = new PromotionTestRow { Club = session.Club, Id = session.NewId(), ProgrammeId = programme, Date = date };
        session.Db.PromotionTests.Add(row);
        Changed(session, row.Id, by, device);
        return true;
    }, cancel);

    /// <summary>Removes a promotion test that has no result yet, whose list is open, and for which nobody decided a verdict.</summary>
    public Task<bool> RemoveTestAsync(Guid test, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var row = session.Db.PromotionTests.FirstOrDefault(t => t.Id == test);
        if (row is not { ListClosedAt: null } || session.Db.Results.Any(r => r.TestId == test) || session.Db.Overrules.Any(o => o.TestId == test)) return false;
        session.Db.PromotionTests.Remove(row);
        Changed(session, test, by, device);
        return true;
    }, cancel);

    private static void Changed(WriteSession session, Guid subject, Guid? by, Guid device)
    {
        session.Db.SaveChanges();
        Revise.Calendar(session);
        session.Note(TrailKind.CalendarChanged, subject, by, device);
    }
}
