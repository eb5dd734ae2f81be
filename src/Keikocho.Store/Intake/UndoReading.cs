using System.Globalization;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;
using Keikocho.Store.People;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Intake;

/// <summary>
/// Takes a reading back. What only it made goes, with its own marks; where anything newer speaks of a person, a lesson or a closure, that
/// stays, and the reading's marks there are voided by cleared marks. Values that it changed get their old ones where nobody changed them since.
/// </summary>
internal sealed class UndoReading
{
    private readonly WriteSession session;
    private readonly KeikochoDb db;
    private readonly ReadingRow reading;
    private readonly AttendanceRules rules;
    private readonly ILookup<string, ReadingTraceRow> traces;
    private readonly SummaryDraft said = new();
    private readonly List<KeptPerson> kept = [];

    public UndoReading(WriteSession session, ReadingRow reading, AttendanceRules rules)
    {
        (this.session, db, this.reading, this.rules) = (session, session.Db, reading, rules);
        traces = db.ReadingTraces.AsNoTracking().Where(t => t.ReadingId == reading.Id).ToLookup(t => t.Table, StringComparer.Ordinal);
    }

    public ReadingSummary Undo(ReadingSummary saved)
    {
        var people = Made("People");
        var stays = NewerThan.Of(db, reading, people, Made);
        kept.AddRange(people.Where(stays.ContainsKey).Select(id => new KeptPerson(id, stays[id])));
        var goingPeople = people.Where(id => !stays.ContainsKey(id)).ToHashSet();
        var goingLessons = GoingLessons(goingPeople);
        var touched = VoidMarks(goingPeople, goingLessons);
        RemoveClosures();
        ReturnValues();
        RemoveRows(goingPeople, stays.Keys.ToHashSet(), goingLessons);
        using (var writer = BulkWriter.For(db, session.Transaction.Connection!, session.Transaction)) FoldMany.Store(session, writer, touched, rules);
        CountAgain(goingPeople);
        Revise.People(session);
        Revise.Calendar(session);
        Revise.Past(session);
        said.Count("removed", goingPeople.Count);
        said.Count("kept", kept.Count);
        said.Say("removed", "1 child whom it had added was taken out.", "# children whom it had added were taken out.");
        said.Say("kept", "1 child stays, because something newer speaks of the child.", "# children stay, because something newer speaks of them.");
        said.Say("cleared", "1 mark was voided and stays to be seen.", "# marks were voided and stay to be seen.");
        said.Say("marksGone", "1 mark went with the child or lesson that only this file had brought.", "# marks went with the children or lessons that only this file had brought.");
        said.Say("lessonsGone", "1 lesson that it had put into the calendar was taken out.", "# lessons that it had put into the calendar were taken out.");
        said.Say("lessonsKept", "1 lesson that it had put into the calendar stays, because others marked there.", "# lessons that it had put into the calendar stay, because others marked there.");
        said.Say("closuresGone", "1 closure was taken back.", "# closures were taken back.");
        said.Say("returned", "1 value has its old content again.", "# values have their old content again.");
        said.Say("changedSince", "1 value was changed since and stays as it is.", "# values were changed since and stay as they are.");
        var done = said.Done();
        return saved with { Undone = done.Sentences, Kept = kept };
    }

    private List<Guid> Made(string table) => [.. traces[table].Where(t => t.Before is null).Select(t => t.RowId)];

    private HashSet<Guid> GoingLessons(HashSet<Guid> goingPeople)
    {
        var going = new HashSet<Guid>();
        foreach (var part in Made("Lessons").Chunk(500))
        {
            var others = db.Marks.Where(m => part.Contains(m.LessonId) && m.DeviceId != reading.Id).Select(m => m.LessonId).Distinct().ToHashSet();
            var crossings = db.Crossings.Where(c => c.LessonId != null && part.Contains(c.LessonId.Value)).Select(c => new { Lesson = c.LessonId!.Value, c.PersonId }).ToList()
                .Where(c => !goingPeople.Contains(c.PersonId)).Select(c => c.Lesson).ToHashSet();
            foreach (var lesson in db.Lessons.Where(l => part.Contains(l.Id)).Select(l => l.Id).ToList())
                if (others.Contains(lesson) || crossings.Contains(lesson)) said.Count("lessonsKept");
                else going.Add(lesson);
        }

        said.Count("lessonsGone", going.Count);
        return going;
    }

    private List<(Guid, Guid)> VoidMarks(HashSet<Guid> goingPeople, HashSet<Guid> goingLessons)
    {
        var own = db.Marks.AsNoTracking().Where(m => m.DeviceId == reading.Id).OrderBy(m => m.Sequence).ToList();
        if (own.Count == 0) return [];
        var sequence = own[^1].Sequence;
        var gone = own.Where(m => goingPeople.Contains(m.PersonId) || goingLessons.Contains(m.LessonId)).ToList();
        foreach (var part in gone.Select(m => m.Id).Chunk(500)) db.Marks.Where(m => part.Contains(m.Id)).ExecuteDelete();
        foreach (var part in goingLessons.Chunk(500)) db.Attendances.Where(a => part.Contains(a.LessonId)).ExecuteDelete();
        foreach (var part in goingPeople.Chunk(500))
        {
            db.Attendances.Where(a => part.Contains(a.PersonId)).ExecuteDelete();
            db.ItemStates.Where(s => part.Contains(s.PersonId)).ExecuteDelete();
            db.FallStates.Where(s => part.Contains(s.PersonId)).ExecuteDelete();
        }

        said.Count("marksGone", gone.Count);
        var goneIds = gone.Select(m => m.Id).ToHashSet();
        var voided = own.Where(m => !goneIds.Contains(m.Id)).ToList();
        var clearing = voided.Select(m => new MarkRow
        {
            Club = session.Club,
            Id = session.NewId(),
            DeviceId = reading.Id,
            Sequence = ++sequence,
            LessonId = m.LessonId,
            PersonId = m.PersonId,
            ItemId = m.ItemId,
            MadeAt = session.Now,
            ReceivedAt = session.Now,
            Kind = MarkKind.Cleared,
            Replaces = m.Id,
        }).ToList();
        using (var writer = BulkWriter.For(db, session.Transaction.Connection!, session.Transaction)) writer.Write(clearing);
        // What was seen is folded over all lessons of a child, so a lesson that goes may leave less behind.
        foreach (var (person, item) in own.Where(m => m.ItemId is not null && !goingPeople.Contains(m.PersonId)).Select(m => (m.PersonId, m.ItemId!.Value)).Distinct().Order())
            EvidenceStatements.StoreState(session, person, item);
        said.Count("cleared", voided.Count);
        return [.. voided.Select(m => (m.LessonId, m.PersonId))];
    }

    private void RemoveClosures()
    {
        foreach (var id in Made("Closures"))
        {
            if (db.Closures.FirstOrDefault(c => c.Id == id) is not { } row) continue;
            db.Closures.Remove(row);
            db.SaveChanges();
            LayLessons.Reopen(session, id, rules);
            said.Count("closuresGone");
        }
    }

    private void ReturnValues()
    {
        foreach (var trace in traces["People"].Where(t => t.Before is not null))
            if (db.People.FirstOrDefault(p => p.Id == trace.RowId && p.ErasedAt == null) is { } row)
                foreach (var (field, was, now) in ReadingTraces.Values(trace))
                {
                    if (field == nameof(row.Given)) Return(Seal.Open(row.Given), was, now, v => row.Given = Seal.CloseIfAny(v));
                    if (field == nameof(row.Family)) Return(Seal.Open(row.Family), was, now, v => row.Family = Seal.CloseIfAny(v));
                    if (field == nameof(row.Called)) Return(Seal.Open(row.Called), was, now, v => row.Called = Seal.CloseIfAny(v));
                    if (field == nameof(row.Sex)) Return(Seal.Open(row.Sex), was, now, v => row.Sex = Seal.CloseIfAny(v));
                    if (field == nameof(row.Born)) Return(Seal.Open(row.Born)?.Iso(), was, now, v => row.Born = v is null ? null : Seal.Close(Day(v)));
                }

        foreach (var trace in traces["Registrations"].Where(t => t.Before is not null))
            if (db.Registrations.FirstOrDefault(r => r.Id == trace.RowId) is { } row)
                foreach (var (field, was, now) in ReadingTraces.Values(trace))
                {
                    if (field == nameof(row.Number)) Return(Seal.Open(row.Number), was, now, v => row.Number = Seal.CloseIfAny(v));
                    if (field == nameof(row.Expires)) Return(row.Expires?.Iso(), was, now, v => row.Expires = v is null ? null : Day(v));
                }

        foreach (var trace in traces["Enrolments"].Where(t => t.Before is not null))
            if (db.Enrolments.FirstOrDefault(e => e.Id == trace.RowId) is { } row)
                foreach (var (_, was, now) in ReadingTraces.Values(trace)) Return(row.From.Iso(), was, now, v => row.From = Day(v!));
        foreach (var trace in traces["Lessons"].Where(t => t.Before is not null))
            if (db.Lessons.FirstOrDefault(l => l.Id == trace.RowId) is { } row)
                foreach (var (_, was, now) in ReadingTraces.Values(trace)) Return(row.RegisterMissing ? "yes" : "no", was, now, v => row.RegisterMissing = v == "yes");
        db.SaveChanges();
    }

    private void Return(string? held, string? was, string? now, Action<string?> set)
    {
        if ((held ?? "") != (now ?? ""))
        {
            said.Count("changedSince");
            return;
        }

        set(was);
        said.Count("returned");
    }

    private void RemoveRows(HashSet<Guid> goingPeople, HashSet<Guid> keptPeople, HashSet<Guid> goingLessons)
    {
        // What belongs to a kept child stays with it. An award that another replaces stays too: awards are only replaced.
        foreach (var part in Made("Awards").Chunk(500))
            db.Awards.Where(a => part.Contains(a.Id) && !keptPeople.Contains(a.PersonId) && !db.Awards.Any(other => other.Replaces == a.Id)).ExecuteDelete();
        foreach (var part in Made("Consents").Chunk(500)) db.Consents.Where(c => part.Contains(c.Id) && !keptPeople.Contains(c.PersonId)).ExecuteDelete();
        foreach (var part in Made("Registrations").Chunk(500)) db.Registrations.Where(c => part.Contains(c.Id) && !keptPeople.Contains(c.PersonId)).ExecuteDelete();
        ReturnContacts(keptPeople);
        foreach (var part in Made("Enrolments").Chunk(500))
        {
            // A child who was here before stays on this register where lessons here still speak of it.
            var marked = db.Enrolments.Where(e => part.Contains(e.Id) && db.Attendances.Any(a => a.PersonId == e.PersonId && a.ProgrammeId == e.ProgrammeId && a.Word != AttendanceWord.Untouched))
                .Select(e => e.PersonId).ToHashSet();
            db.Enrolments.Where(e => part.Contains(e.Id) && !keptPeople.Contains(e.PersonId) && (goingPeople.Contains(e.PersonId) || !marked.Contains(e.PersonId))).ExecuteDelete();
        }

        foreach (var part in goingPeople.Chunk(500)) db.People.Where(p => part.Contains(p.Id)).ExecuteDelete();
        foreach (var part in goingLessons.Chunk(500)) db.Lessons.Where(l => part.Contains(l.Id)).ExecuteDelete();
        foreach (var part in Made("Evenings").Chunk(500)) db.Evenings.Where(e => part.Contains(e.Id) && !db.Lessons.Any(l => l.EveningId == e.Id)).ExecuteDelete();
        RemoveLadder();
        db.ChangeTracker.Clear();
    }

    private void ReturnContacts(HashSet<Guid> keptPeople)
    {
        var still = new HashSet<Guid>();
        foreach (var part in Made("Contacts").Chunk(500))
        {
            still.UnionWith(db.Contacts.Where(c => part.Contains(c.Id)).Select(c => c.PersonId));
            db.Contacts.Where(c => part.Contains(c.Id) && !keptPeople.Contains(c.PersonId)).ExecuteDelete();
        }

        foreach (var trace in traces["Contacts"].Where(t => t.Before is not null))
        {
            var was = ReadingTraces.Values(trace).ToDictionary(v => v.Field, v => v.Was);
            var person = Guid.Parse(was[nameof(ContactRow.PersonId)]!);
            // Where the file's contacts have been taken out or changed by hand since, the old ones are not brought back.
            if (!still.Contains(person) || !db.People.Any(p => p.Id == person && p.ErasedAt == null))
            {
                said.Count("changedSince");
                continue;
            }

            db.Contacts.Add(new ContactRow
            {
                Club = session.Club,
                Id = trace.RowId,
                PersonId = person,
                Position = int.Parse(was[nameof(ContactRow.Position)]!, CultureInfo.InvariantCulture),
                Name = Seal.CloseIfAny(was.GetValueOrDefault(nameof(ContactRow.Name))),
                Relation = Seal.CloseIfAny(was.GetValueOrDefault(nameof(ContactRow.Relation))),
                Phone = Seal.CloseIfAny(was.GetValueOrDefault(nameof(ContactRow.Phone))),
                Email = Seal.CloseIfAny(was.GetValueOrDefault(nameof(ContactRow.Email))),
                ContactPersonId = was.GetValueOrDefault(nameof(ContactRow.ContactPersonId)) is { } of ? Guid.Parse(of) : null,
            });
            said.Count("returned");
        }

        db.SaveChanges();
    }

    private void RemoveLadder()
    {
        var ranks = Made("Ranks");
        if (ranks.Count == 0 || db.Awards.Any(a => ranks.Contains(a.RankId)) || db.Ranks.Any(r => ranks.Contains(r.Id) && db.Editions.Any(e => e.LadderId == r.LadderId))) return;
        db.Ranks.Where(r => ranks.Contains(r.Id)).ExecuteDelete();
        foreach (var ladder in Made("Ladders"))
        {
            if (db.Ranks.Any(r => r.LadderId == ladder) || db.Editions.Any(e => e.LadderId == ladder)) continue;
            db.Programmes.Where(p => p.LadderId == ladder).ExecuteUpdate(p => p.SetProperty(r => r.LadderId, (Guid?)null));
            db.Ladders.Where(l => l.Id == ladder).ExecuteDelete();
        }
    }

    private void CountAgain(HashSet<Guid> gone)
    {
        foreach (var group in traces["Reckon"].GroupBy(t => Guid.Parse(ReadingTraces.Values(t)[0].Now!)))
            EnrolmentStarts.CountAgain(session, group.Key, [.. group.Select(t => t.RowId).Where(id => !gone.Contains(id)).Distinct()]);
    }

    private static DateOnly Day(string iso) => DateOnly.ParseExact(iso, "yyyy-MM-dd", CultureInfo.InvariantCulture);
}
