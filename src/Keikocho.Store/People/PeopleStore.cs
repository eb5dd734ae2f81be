using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.Promotion;
using Keikocho.Store.Syllabus;

namespace Keikocho.Store.People;

/// <summary>A child who has just walked in: what is asked in ten seconds.</summary>
/// <param name="PersonId">Made when the form was shown, so that a form sent twice adds one child.</param>
/// <param name="Given">First name.</param>
/// <param name="Initial">Family name or its initial; may be empty.</param>
/// <param name="Phone">An adult's telephone; may be empty, and then the register says that nobody can be rung.</param>
/// <param name="LessonId">Tonight's lesson.</param>
/// <param name="At">Arrival; null when the register is taken afterwards.</param>
public sealed record NewTonight(Guid PersonId, string Given, string Initial, string Phone, Guid LessonId, TimeOnly? At);

/// <summary>A person's details as they are typed; null or blank where not known.</summary>
public sealed record PersonDetails(string Given, string? Family, string? Called, DateOnly? Born);

/// <summary>An adult or leader as typed.</summary>
public sealed record NewDuty(
    Guid PersonId, string Given, string? Family, DateOnly? Born, DutyKind Kind, DateOnly? VettedUntil, DateOnly? FirstAidUntil);

/// <summary>Children, adults, contacts and ranks.</summary>
public sealed partial class PeopleStore(WriterQueue writer)
{
    /// <summary>
    /// Adds the child who has just walked in: on the register, at the end, present tonight. The same form again adds nothing; a form that
    /// was gone back to and names another child adds that one.
    /// </summary>
    /// <returns>False when the lesson does not exist.</returns>
    public Task<bool> AddNewTonightAsync(NewTonight asked, AttendanceRules rules, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        if (db.People.FirstOrDefault(p => p.Id == asked.PersonId) is { } known)
        {
            if (IsOf(known, asked)) return true;
            // The id is derived, so that this form sent twice adds one child too.
            asked = asked with { PersonId = AnotherId.Of(asked.PersonId, $"{asked.Given.Trim()}\n{asked.Initial.Trim()}") };
            if (db.People.Any(p => p.Id == asked.PersonId)) return true;
        }

        var lesson = db.Lessons.FirstOrDefault(l => l.Id == asked.LessonId);
        if (lesson is null) return false;
        db.People.Add(new PersonRow
        {
            Club = session.Club,
            Id = asked.PersonId,
            Given = Seal.Close(asked.Given.Trim()),
            Family = Seal.CloseIfAny(asked.Initial),
            MadeAt = session.Now,
        });
        db.SaveChanges();
        if (Seal.CloseIfAny(asked.Phone) is { } phone)
            db.Contacts.Add(new ContactRow { Club = session.Club, Id = session.NewId(), PersonId = asked.PersonId, Position = 1, Phone = phone });
        Enrol(session, asked.PersonId, lesson.ProgrammeId, lesson.Date);
        MarksStore.Append(session, lesson, new Tap(session.NewId(), device, null, lesson.Id, asked.PersonId, by, session.Now, MarkKind.Present, asked.At), rules);
        Revise.People(session);
        session.Note(TrailKind.PersonAdded, asked.PersonId, by, device);
        return true;
    }, cancel);

    /// <summary>Changes a person's name and birth date.</summary>
    public Task<bool> ChangeDetailsAsync(Guid person, PersonDetails details, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var row = session.Db.People.FirstOrDefault(p => p.Id == person && p.ErasedAt == null);
        if (row is null) return false;
        row.Given = Seal.Close(details.Given.Trim());
        row.Family = Seal.CloseIfAny(details.Family);
        row.Called = Seal.CloseIfAny(details.Called);
        row.Born = details.Born is { } born ? Seal.Close(born) : null;
        Revise.People(session);
        session.Note(TrailKind.PersonChanged, person, by, device);
        return true;
    }, cancel);

    /// <summary>Adds an adult or leader with a duty. The same id again changes nothing.</summary>
    public Task<bool> AddDutyAsync(NewDuty asked, DateOnly today, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        if (db.People.Any(p => p.Id == asked.PersonId)) return false;
        db.People.Add(new PersonRow
        {
            Club = session.Club,
            Id = asked.PersonId,
            Given = Seal.Close(asked.Given.Trim()),
            Family = Seal.CloseIfAny(asked.Family),
            Born = asked.Born is { } born ? Seal.Close(born) : null,
            // Without a birth date an adult is one because an adult says so; a junior leader never is.
            AdultSeenById = asked.Born is null && asked.Kind != DutyKind.JuniorLeader ? by : null,
            AdultSeenOn = asked.Born is null && asked.Kind != DutyKind.JuniorLeader ? today : null,
            MadeAt = session.Now,
        });
        db.SaveChanges();
        db.Duties.Add(new DutyRow
        {
            Club = session.Club,
            Id = session.NewId(),
            PersonId = asked.PersonId,
            Kind = asked.Kind,
            From = today,
            VettedUntil = asked.VettedUntil,
            FirstAidUntil = asked.FirstAidUntil,
            MayConfirmFalls = asked.Kind is DutyKind.HeadInstructor or DutyKind.Instructor,
        });
        Revise.People(session);
        session.Note(TrailKind.DutyChanged, asked.PersonId, by, device);
        return true;
    }, cancel);

    /// <summary>Changes the dates of a duty, or ends it.</summary>
    public Task<bool> ChangeDutyAsync(Guid duty, DateOnly? vettedUntil, DateOnly? firstAidUntil, DateOnly? to, Guid? by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            var row = session.Db.Duties.FirstOrDefault(d => d.Id == duty);
            if (row is null) return false;
            (row.VettedUntil, row.FirstAidUntil, row.To) = (vettedUntil, firstAidUntil, to);
            Revise.People(session);
            session.Note(TrailKind.DutyChanged, row.PersonId, by, device);
            return true;
        }, cancel);

    /// <summary>
    /// Gives an adult the right to confirm falls, or takes it from him or her. Only a duty that teaches can have it, and only from 18 on;
    /// what was confirmed before stays confirmed.
    /// </summary>
    /// <param name="duty">The duty.</param>
    /// <param name="may">Whether it holds from now on.</param>
    /// <param name="today">The day on which the age is judged.</param>
    /// <param name="by">Who gives it.</param>
    /// <param name="device">Where.</param>
    /// <param name="cancel">Stops waiting.</param>
    /// <returns>False where there is no such duty, or where it cannot have the right; nothing is changed then.</returns>
    public Task<bool> LetConfirmFallsAsync(Guid duty, bool may, DateOnly today, Guid? by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            var row = session.Db.Duties.FirstOrDefault(d => d.Id == duty);
            if (row is null) return false;
            if (may)
            {
                var person = session.Db.People.First(p => p.Id == row.PersonId);
                if (row.Kind is not (DutyKind.HeadInstructor or DutyKind.Instructor or DutyKind.Assistant)
                    || !SignOff.IsAdult(person.Born is { } born ? Seal.Open(born) : null, person.AdultSeenOn is not null, today))
                    return false;
            }

            row.MayConfirmFalls = may;
            Revise.People(session);
            session.Note(TrailKind.DutyChanged, row.PersonId, by, device);
            return true;
        }, cancel);

    /// <summary>Takes a child off a programme's register after a day, or puts it back on with null.</summary>
    public Task<bool> EndEnrolmentAsync(Guid person, Guid programme, DateOnly? last, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var row = session.Db.Enrolments.Where(e => e.PersonId == person && e.ProgrammeId == programme).OrderByDescending(e => e.From).FirstOrDefault();
        if (row is null) return false;
        row.To = last;
        Revise.People(session);
        session.Note(TrailKind.PersonChanged, person, by, device);
        return true;
    }, cancel);

    /// <summary>Records the end at which a child works from a day on, or for one lesson only.</summary>
    public Task<bool> CrossAsync(Guid person, Guid programme, MatEnd end, DateOnly on, Guid? lesson, Guid? by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            session.Db.Crossings.Add(new CrossingRow
            {
                Club = session.Club,
                Id = session.NewId(),
                PersonId = person,
                ProgrammeId = programme,
                End = end,
                On = on,
                LessonId = lesson,
                ById = by,
                MadeAt = session.Now,
            });
            Revise.People(session);
            session.Note(TrailKind.Crossed, person, by, device);
            return true;
        }, cancel);

    private static bool IsOf(PersonRow row, NewTonight asked) =>
        Seal.Open(row.Given) == asked.Given.Trim() && (row.Family is { } family ? Seal.Open(family) : "") == asked.Initial.Trim();

    internal static void Enrol(WriteSession session, Guid person, Guid programme, DateOnly from)
    {
        var last = session.Db.Enrolments.Where(e => e.ProgrammeId == programme).Select(e => (int?)e.Position).Max() ?? 0;
        session.Db.Enrolments.Add(new EnrolmentRow
        {
            Club = session.Club,
            Id = session.NewId(),
            PersonId = person,
            ProgrammeId = programme,
            From = from,
            Position = last + 1,
            CountsFrom = from,
        });
        session.Db.SaveChanges();
    }

    /// <summary>Records a rank and lets the child's lessons count from the day after it.</summary>
    internal static void RecordRank(WriteSession session, Guid person, RankRow rank, DateOnly? on, AwardSource source, Guid? by)
    {
        var db = session.Db;
        db.Awards.Add(new AwardRow
        {
            Club = session.Club,
            Id = session.NewId(),
            PersonId = person,
            LadderId = rank.LadderId,
            RankId = rank.Id,
            On = on,
            Source = source,
            ById = by,
            MadeAt = session.Now,
        });
        if (on is not { } day) return;
        var programmes = db.Programmes.Where(p => p.LadderId == rank.LadderId).Select(p => p.Id).ToList();
        // A lesson on the day of a promotion does not count toward the next rank.
        foreach (var enrolment in db.Enrolments.Where(e => e.PersonId == person && programmes.Contains(e.ProgrammeId)))
            if (day.AddDays(1) > enrolment.CountsFrom) enrolment.CountsFrom = day.AddDays(1);
        db.SaveChanges();
    }
}
