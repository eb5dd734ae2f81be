using Keikocho.Core.Evening;
using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Microsoft.EntityFrameworkCore;
using UsualTimes = Keikocho.Core.Calendar.UsualTimes;

namespace Keikocho.Store.Intake;

/// <summary>Saves a settled register: lessons that were missing, closures, marks by a device that is the reading itself, and the states that follow.</summary>
internal sealed class SaveRegister(WriteSession session, ReadingRow reading, ReadingView view, ClubFacts facts, AttendanceRules rules)
{
    private readonly ReadingTraces traces = new(session, reading.Id);
    private readonly SummaryDraft said = new();
    private readonly Dictionary<DateOnly, LessonRow> lessons = new(facts.Lessons);
    private readonly List<MarkRow> marks = [];
    private int sequence;

    public ReadingSummary Save()
    {
        var register = view.Register ?? throw new InvalidOperationException("A register is saved from a register.");
        session.Db.Devices.Add(new DeviceRow { Club = session.Club, Id = reading.Id, Kind = DeviceKind.Reading, ActingAdultId = reading.ById, FirstSeenAt = session.Now });
        session.Db.SaveChanges();
        LayMissing(register);
        Forgotten(register);
        var people = NewPeople(register);
        Mark(register, people);
        using (var writer = BulkWriter.For(session.Db, session.Transaction.Connection!, session.Transaction))
        {
            session.Db.SaveChanges();
            writer.Write(marks);
            FoldMany.Store(session, writer, [.. marks.Select(m => (m.LessonId, m.PersonId))], rules);
            Close(register);
            Enrolments(register, people);
            session.Db.SaveChanges();
            traces.Write(writer);
        }

        Revise.People(session);
        Revise.Calendar(session);
        Revise.Past(session);
        said.Count("setAside", register.Lines.Count(line => line.SetAside.Length > 0));
        said.Count("leftOut", register.Days.Count(day => day.Standing == DayStanding.LeftOut));
        said.Say("marks", "1 mark is new.", "# marks are new.");
        said.Say("same", "1 mark was here already.", "# marks were here already.");
        said.Say("taken", "1 mark was corrected after the file; the first one stays to be seen.", "# marks were corrected after the file; the first ones stay to be seen.");
        said.Say("left", "1 mark stays as it is here, where the file says otherwise.", "# marks stay as they are here, where the file says otherwise.");
        said.Say("lessons", "1 lesson was missing and was put into the calendar.", "# lessons were missing and were put into the calendar.");
        said.Say("closures", "1 closure was entered.", "# closures were entered.");
        said.Say("forgotten", "1 lesson was held without a register; it is left out of the rates.", "# lessons were held without a register; they are left out of the rates.");
        said.Say("markedHere", "1 date without a mark in the file has marks here and stays as it is.", "# dates without a mark in the file have marks here and stay as they are.");
        said.Say("new", "1 child is new and stands at the end of the register, without a birth date.", "# children are new and stand at the end of the register, without birth dates.");
        said.Say("enrolled", "1 child who was here already was put on this register.", "# children who were here already were put on this register.");
        said.Say("moved", "1 child came before the first lesson that was held here; it was moved to the earliest in the file.", "# children came before the first lesson that was held here; it was moved to the earliest in the file.");
        said.Say("setAside", "1 line was set aside.", "# lines were set aside.");
        said.Say("leftOut", "1 date was left out.", "# dates were left out.");
        return said.Done();
    }

    private void LayMissing(RegisterReading register)
    {
        var hall = session.Db.Halls.AsNoTracking().OrderBy(h => h.Name).ThenBy(h => h.Id).Select(h => h.Id).First();
        foreach (var day in register.Days.Where(day => day.Standing is DayStanding.Held or DayStanding.Forgotten && !lessons.ContainsKey(day.Day)))
        {
            var hour = facts.HourOn(day.Day);
            var times = hour is null ? UsualTimes.Of(view.Hours!.Value.Start, view.Hours.Value.End) : LayLessons.TimesOf(hour);
            var lesson = LayLessons.Put(session, facts.Programme.Id, hour?.HallId ?? hall, day.Day, times);
            traces.Made("Lessons", lesson.Id);
            if (session.Db.Entry(session.Db.Evenings.Local.First(e => e.Id == lesson.EveningId)).State == EntityState.Added) traces.Made("Evenings", lesson.EveningId);
            lessons.Add(day.Day, lesson);
            said.Count("lessons");
        }

        session.Db.SaveChanges();
    }

    private void Forgotten(RegisterReading register)
    {
        foreach (var day in register.Days.Where(day => day.Standing == DayStanding.Forgotten))
        {
            var id = lessons[day.Day].Id;
            if (session.Db.Attendances.Any(a => a.LessonId == id && a.Word != AttendanceWord.Untouched))
            {
                said.Count("markedHere");
                continue;
            }

            var lesson = session.Db.Lessons.Single(l => l.Id == id);
            traces.Changed("Lessons", id, new ChangedValue(nameof(lesson.RegisterMissing), lesson.RegisterMissing ? "yes" : "no", "yes"));
            lesson.RegisterMissing = true;
            said.Count("forgotten");
        }
    }

    private Dictionary<LineWho, Guid> NewPeople(RegisterReading register)
    {
        var people = new Dictionary<LineWho, Guid>();
        foreach (var line in register.Lines)
        {
            if (line.Who is not { } who || people.ContainsKey(who)) continue;
            if (who.Person is { } known)
            {
                people.Add(who, known.Value);
                continue;
            }

            var child = line.New!;
            var hasGiven = child.GivenName.Length > 0;
            var row = new PersonRow
            {
                Club = session.Club,
                Id = session.NewId(),
                Given = Seal.CloseIfAny(hasGiven ? child.GivenName : child.FamilyName),
                Family = hasGiven ? Seal.CloseIfAny(child.FamilyName) : null,
                MadeAt = session.Now,
            };
            session.Db.People.Add(row);
            traces.Made("People", row.Id);
            people.Add(who, row.Id);
            said.Count("new");
        }

        session.Db.SaveChanges();
        return people;
    }

    private void Mark(RegisterReading register, Dictionary<LineWho, Guid> people)
    {
        foreach (var mark in register.Marks)
        {
            var person = people[mark.Who];
            switch (mark.Standing)
            {
                case MarkStanding.New:
                    Append(lessons[mark.Day].Id, person, Kind(mark.Says), mark.Says.Arrived, mark.Says is { Word: RegisterWord.Late, Arrived: null } ? MarkCode.LateWithoutTime : 0, null);
                    said.Count("marks");
                    break;
                case MarkStanding.Take:
                    Correct(lessons[mark.Day], person, mark.Says);
                    said.Count("taken");
                    break;
                case MarkStanding.Same: said.Count("same"); break;
                case MarkStanding.Leave: said.Count("left"); break;
                default: throw new InvalidOperationException("An open mark is not saved.");
            }
        }
    }

    private static MarkKind Kind(RegisterSays says) => says.Word switch
    {
        RegisterWord.Present or RegisterWord.Late => MarkKind.Present,
        RegisterWord.Absent => MarkKind.Absent,
        RegisterWord.Excused => MarkKind.Excused,
        _ => throw new ArgumentOutOfRangeException(nameof(says)),
    };

    // The words that stand are taken back, each by name, and the file's word is said by the reading; an undo gives them back.
    private void Correct(LessonRow lesson, Guid person, RegisterSays says)
    {
        var all = session.Db.Marks.AsNoTracking().Where(m => m.LessonId == lesson.Id && m.PersonId == person).AsEnumerable().Where(m => FoldMarks.SpeaksOfPresence(m.Kind)).ToList();
        var trail = FoldAttendance.Explain([.. all.Select(FoldMarks.AsMark)], FoldMarks.TimesOf(lesson), rules).Trail;
        foreach (var standing in trail.Where(t => t.Fate == MarkFate.Speaks && t.Mark.Kind != MarkKind.Cleared))
            Append(lesson.Id, person, MarkKind.Cleared, null, 0, standing.Mark.Id.Value);
        Append(lesson.Id, person, Kind(says), says.Arrived, says is { Word: RegisterWord.Late, Arrived: null } ? MarkCode.LateWithoutTime : 0, null);
    }

    private void Append(Guid lesson, Guid person, MarkKind kind, TimeOnly? at, int code, Guid? replaces) => marks.Add(new MarkRow
    {
        Club = session.Club,
        Id = session.NewId(),
        DeviceId = reading.Id,
        Sequence = ++sequence,
        LessonId = lesson,
        PersonId = person,
        MadeAt = session.Now,
        ReceivedAt = session.Now,
        Kind = kind,
        At = at,
        Code = code,
        Replaces = replaces,
    });

    // Closed dates in a row are one closure; any other lesson between them parts it.
    private void Close(RegisterReading register)
    {
        var closed = new List<DateOnly>();
        var closures = session.Db.Closures.AsNoTracking().Where(c => (c.ProgrammeId == null || c.ProgrammeId == facts.Programme.Id) && c.HallId == null).ToList();
        foreach (var day in register.Days.Where(day => day.Standing == DayStanding.Closed).Select(day => day.Day))
        {
            if (lessons.TryGetValue(day, out var lesson) && session.Db.Attendances.Any(a => a.LessonId == lesson.Id && a.Word != AttendanceWord.Untouched)) said.Count("markedHere");
            else if (lesson?.ClosureId is null && !closures.Any(c => c.From <= day && c.To >= day)) closed.Add(day);
        }

        var others = lessons.Keys.Except(closed).Order().ToList();
        for (var i = 0; i < closed.Count;)
        {
            var last = i;
            while (last + 1 < closed.Count && closed[last + 1].DayNumber - closed[last].DayNumber <= 14 && !others.Any(day => day > closed[last] && day < closed[last + 1])) last++;
            var row = new ClosureRow
            {
                Club = session.Club,
                Id = session.NewId(),
                Name = "closed (from the register)",
                From = closed[i],
                To = closed[last],
                ProgrammeId = facts.Programme.Id,
                MadeAt = session.Now,
            };
            session.Db.Closures.Add(row);
            session.Db.SaveChanges();
            traces.Made("Closures", row.Id);
            foreach (var lesson in LayLessons.Covered(session.Db, row.From, row.To, row.ProgrammeId, null).Where(l => l.ClosureId == null).ToList())
            {
                lesson.ClosureId = row.Id;
                session.Db.SaveChanges();
                FoldMarks.StoreAll(session, lesson, rules);
            }

            said.Count("closures");
            i = last + 1;
        }
    }

    private void Enrolments(RegisterReading register, Dictionary<LineWho, Guid> people)
    {
        var first = register.Marks.Where(m => m.Standing is MarkStanding.New or MarkStanding.Take && m.Says.Word is RegisterWord.Present or RegisterWord.Late)
            .GroupBy(m => people[m.Who]).ToDictionary(g => g.Key, g => g.Min(m => m.Day));
        var marked = register.Marks.GroupBy(m => people[m.Who]).ToDictionary(g => g.Key, g => g.Min(m => m.Day));
        var there = session.Db.Enrolments.Where(e => e.ProgrammeId == facts.Programme.Id).ToList();
        var earliest = there.GroupBy(e => e.PersonId).ToDictionary(g => g.Key, g => g.OrderBy(e => e.From).ThenBy(e => e.Id).First());
        var position = there.Count == 0 ? 0 : there.Max(e => e.Position);
        var made = new List<Guid>();
        var recount = new List<Guid>();
        foreach (var person in register.Lines.Where(line => line.Who is not null).Select(line => people[line.Who!.Value]).Distinct())
        {
            if (earliest.TryGetValue(person, out var held))
            {
                if (!first.TryGetValue(person, out var earlier) || earlier >= held.From) continue;
                traces.Changed("Enrolments", held.Id, new ChangedValue(nameof(held.From), held.From.Iso(), earlier.Iso()));
                traces.Changed("Reckon", person, new ChangedValue("CountsFrom", null, facts.Programme.Id.ToString("D")));
                held.From = earlier;
                recount.Add(person);
                said.Count("moved");
                continue;
            }

            if (!marked.TryGetValue(person, out var from)) from = register.Days.Where(day => day.Standing == DayStanding.Held).Select(day => day.Day).FirstOrDefault(facts.Lessons.Keys.DefaultIfEmpty().Max());
            if (first.TryGetValue(person, out var came)) from = came;
            var row = new EnrolmentRow { Club = session.Club, Id = session.NewId(), PersonId = person, ProgrammeId = facts.Programme.Id, From = from, Position = ++position, CountsFrom = from };
            session.Db.Enrolments.Add(row);
            traces.Made("Enrolments", row.Id);
            made.Add(person);
            recount.Add(person);
        }

        said.Count("enrolled", Math.Max(0, made.Count - said.Of("new")));
        session.Db.SaveChanges();
        if (recount.Count > 0) EnrolmentStarts.CountAgain(session, facts.Programme.Id, recount);
    }
}
