using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Intake;

/// <summary>Takes the accepted differences of children who are already here; each old value stays in the trace.</summary>
internal sealed class ChangeKnown(
    WriteSession session, ClubFacts facts, ReadingTraces traces, SummaryDraft said, DateOnly today, SaveLadder ladder, Action<Guid, DateOnly, DateOnly?> enrol)
{
    private readonly Lazy<Dictionary<Guid, AwardRow>> standing = new(() => KnownPeople.Standing(session.Db, facts.Programme.LadderId, facts.Ranks));
    private readonly Lazy<ILookup<Guid, Calendar.EnrolmentRow>> enrolled = new(() =>
        session.Db.Enrolments.AsNoTracking().Where(e => e.ProgrammeId == facts.Programme.Id).ToLookup(e => e.PersonId));
    private readonly HashSet<Guid> recount = [];

    public void Change(RosterLine line)
    {
        var id = line.Person!.Value.Value;
        var taken = line.Differences.Where(difference => difference.Take == true).Select(difference => difference.Field).ToHashSet(StringComparer.Ordinal);
        said.Count(line.Differences.Count == 0 ? "unchanged" : taken.Count == 0 ? "left" : "changed");
        if (taken.Count > 0)
        {
            Person(id, line.Child, taken);
            Papers(id, line.Child, taken);
            Contacts(id, line.Child, taken);
            Rank(id, line.Child, taken);
        }

        if (!enrolled.Value[id].Any())
        {
            enrol(id, line.Child.FirstClass ?? today, standing.Value.GetValueOrDefault(id)?.On);
            said.Count("enrolled");
            return;
        }

        if (enrolled.Value[id].All(e => e.To < today)) said.Count("offRegister");
        if (taken.Contains("first lesson")) Move(id, line.Child.FirstClass!.Value);
    }

    /// <summary>Lets lessons count from the first lesson or the day after the newest promotion, where one of them moved.</summary>
    public void CountAgain()
    {
        if (recount.Count == 0) return;
        session.Db.SaveChanges();
        EnrolmentStarts.CountAgain(session, facts.Programme.Id, recount);
    }

    private void Person(Guid id, RosterChild child, HashSet<string> taken)
    {
        if (!taken.Overlaps(["given name", "family name", "called name", "birth date", "sex"])) return;
        var row = session.Db.People.Single(p => p.Id == id);
        var changes = new List<ChangedValue>();
        Take(taken, "given name", nameof(row.Given), Seal.Open(row.Given), child.GivenName, () => row.Given = Seal.CloseIfAny(child.GivenName), changes);
        Take(taken, "family name", nameof(row.Family), Seal.Open(row.Family), child.FamilyName, () => row.Family = Seal.CloseIfAny(child.FamilyName), changes);
        Take(taken, "called name", nameof(row.Called), Seal.Open(row.Called), child.CalledName, () => row.Called = Seal.CloseIfAny(child.CalledName), changes);
        Take(taken, "birth date", nameof(row.Born), Seal.Open(row.Born)?.Iso(), child.BirthDate?.Iso(), () => row.Born = Seal.Close(child.BirthDate!.Value), changes);
        Take(taken, "sex", nameof(row.Sex), Seal.Open(row.Sex), child.Sex, () => row.Sex = Seal.CloseIfAny(child.Sex), changes);
        traces.Changed("People", id, changes);
    }

    private void Papers(Guid id, RosterChild child, HashSet<string> taken)
    {
        var db = session.Db;
        if (taken.Contains("photo consent"))
        {
            var row = new ConsentRow { Club = session.Club, Id = session.NewId(), PersonId = id, Use = ConsentUse.Photo, Given = child.PhotoConsent!.Value, On = today, MadeAt = session.Now };
            db.Consents.Add(row);
            traces.Made("Consents", row.Id);
        }

        if (!taken.Overlaps(["registration number", "registration expiry"])) return;
        var held = db.Registrations.Where(r => r.PersonId == id).ToList();
        if (held.Count == 0)
        {
            var row = new RegistrationRow
            {
                Club = session.Club,
                Id = session.NewId(),
                PersonId = id,
                Number = taken.Contains("registration number") ? Seal.CloseIfAny(child.RegistrationNumber) : null,
                Expires = taken.Contains("registration expiry") ? child.RegistrationExpiry : null,
                MadeAt = session.Now,
            };
            db.Registrations.Add(row);
            traces.Made("Registrations", row.Id);
            return;
        }

        var newest = KnownPeople.Newest(held);
        var changes = new List<ChangedValue>();
        Take(taken, "registration number", nameof(newest.Number), Seal.Open(newest.Number), child.RegistrationNumber, () => newest.Number = Seal.CloseIfAny(child.RegistrationNumber), changes);
        Take(taken, "registration expiry", nameof(newest.Expires), newest.Expires?.Iso(), child.RegistrationExpiry?.Iso(), () => newest.Expires = child.RegistrationExpiry, changes);
        traces.Changed("Registrations", newest.Id, changes);
    }

    private void Contacts(Guid id, RosterChild child, HashSet<string> taken)
    {
        if (!taken.Contains("contacts")) return;
        var db = session.Db;
        foreach (var row in db.Contacts.Where(c => c.PersonId == id).ToList())
        {
            // Who may not collect a child is never forgotten because a list does not say so.
            if (row.BarredFromCollecting)
            {
                said.Count("barred");
                continue;
            }

            traces.Changed("Contacts", id: row.Id, new ChangedValue(ReadingTraces.WholeRow, "there", null), new ChangedValue(nameof(row.PersonId), id.ToString("D"), null),
                new ChangedValue(nameof(row.Position), row.Position.ToString(System.Globalization.CultureInfo.InvariantCulture), null), new ChangedValue(nameof(row.Name), Seal.Open(row.Name), null),
                new ChangedValue(nameof(row.Relation), Seal.Open(row.Relation), null), new ChangedValue(nameof(row.Phone), Seal.Open(row.Phone), null), new ChangedValue(nameof(row.Email), Seal.Open(row.Email), null),
                new ChangedValue(nameof(row.ContactPersonId), row.ContactPersonId?.ToString("D"), null));
            db.Contacts.Remove(row);
        }

        foreach (var row in ContactRows.Of(session, id, child.Contacts))
        {
            db.Contacts.Add(row);
            traces.Made("Contacts", row.Id);
        }
    }

    private void Rank(Guid id, RosterChild child, HashSet<string> taken)
    {
        if (!taken.Overlaps(["rank", "last promotion"])) return;
        var held = standing.Value.GetValueOrDefault(id);
        var rank = taken.Contains("rank") ? ladder.RankOf(child.Rank) : facts.Ranks.FirstOrDefault(r => r.Id == held?.RankId);
        if (rank is null) return;
        var row = new AwardRow
        {
            Club = session.Club,
            Id = session.NewId(),
            PersonId = id,
            LadderId = rank.LadderId,
            RankId = rank.Id,
            On = child.LastPromotion ?? (taken.Contains("rank") ? null : held?.On),
            Source = AwardSource.Imported,
            // The day of the rank that is held was wrong, or the rank itself is; awards are only replaced.
            Replaces = held?.Id,
            MadeAt = session.Now,
        };
        // A later day is another promotion: what was given before stays.
        if (taken.Contains("rank") && (held?.On is null || row.On > held.On)) row.Replaces = row.On is null ? held?.Id : null;
        session.Db.Awards.Add(row);
        traces.Made("Awards", row.Id);
        said.Count("ranks");
        recount.Add(id);
        Trace(id);
    }

    private void Move(Guid id, DateOnly from)
    {
        var first = session.Db.Enrolments.Where(e => e.ProgrammeId == facts.Programme.Id && e.PersonId == id).OrderBy(e => e.From).ThenBy(e => e.Id).First();
        traces.Changed("Enrolments", first.Id, new ChangedValue(nameof(first.From), first.From.Iso(), from.Iso()));
        first.From = from;
        recount.Add(id);
        Trace(id);
    }

    // What counts from when follows from lessons and awards; an undo lets it be reckoned again.
    private void Trace(Guid id) => traces.Changed("Reckon", id, new ChangedValue("CountsFrom", null, facts.Programme.Id.ToString("D")));

    private static void Take(HashSet<string> taken, string field, string column, string? was, string? now, Action set, List<ChangedValue> changes)
    {
        if (!taken.Contains(field)) return;
        set();
        changes.Add(new ChangedValue(column, was, now));
    }
}
