using Keikocho.Core.Intake;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;

namespace Keikocho.Store.Intake;

/// <summary>Saves a settled roster: new children with all that the file says of them, and the accepted differences of those already here.</summary>
internal sealed class SaveRoster(WriteSession session, ReadingRow reading, ReadingView view, ClubFacts facts, DateOnly today)
{
    private readonly ReadingTraces traces = new(session, reading.Id);
    private readonly SummaryDraft said = new();
    private readonly List<PersonRow> people = [];
    private readonly List<ContactRow> contacts = [];
    private readonly List<RegistrationRow> registrations = [];
    private readonly List<ConsentRow> consents = [];
    private readonly List<EnrolmentRow> enrolments = [];
    private readonly List<AwardRow> awards = [];
    private int position;

    public ReadingSummary Save()
    {
        var roster = view.Roster ?? throw new InvalidOperationException("A roster is saved from a roster.");
        var ladder = new SaveLadder(session, view, facts, traces, said);
        position = session.Db.Enrolments.Where(e => e.ProgrammeId == facts.Programme.Id).Max(e => (int?)e.Position) ?? 0;
        var changes = new ChangeKnown(session, facts, traces, said, today, ladder, Enrol);
        foreach (var line in roster.Lines)
        {
            switch (line.Standing)
            {
                case LineStanding.New: Add(line.Child, ladder); break;
                case LineStanding.Known: changes.Change(line); break;
                case LineStanding.SetAside: said.Count("setAside"); break;
                default: throw new InvalidOperationException("An open line is not saved.");
            }
        }

        using (var writer = BulkWriter.For(session.Db, session.Transaction.Connection!, session.Transaction))
        {
            session.Db.SaveChanges();
            // Each kind after those that it points to.
            writer.Write(people);
            writer.Write(contacts);
            writer.Write(registrations);
            writer.Write(consents);
            writer.Write(enrolments);
            writer.Write(awards);
            traces.Write(writer);
        }

        changes.CountAgain();
        Revise.People(session);
        if (ladder.HasChanged) Revise.Calendar(session);
        said.Say("new", "1 child is new and stands at the end of the register.", "# children are new and stand at the end of the register, in the file's order.");
        said.Say("unchanged", "1 child was here already, with nothing to change.", "# children were here already, with nothing to change.");
        said.Say("changed", "1 child was here already and some values were taken from the file.", "# children were here already and some values were taken from the file.");
        said.Say("left", "1 child was here already and stays as it is here, where the file says otherwise.", "# children were here already and stay as they are here, where the file says otherwise.");
        said.Say("enrolled", "1 child who was here already was put on this register.", "# children who were here already were put on this register.");
        said.Say("offRegister", "1 child is in the file but has left this register; it was left so.", "# children are in the file but have left this register; they were left so.");
        said.Say("ranks", "1 rank was recorded.", "# ranks were recorded.");
        said.Say("barred", "1 contact who may not collect was kept, although the file does not name it.", "# contacts who may not collect were kept, although the file does not name them.");
        said.Say("setAside", "1 line was set aside.", "# lines were set aside.");
        return said.Done();
    }

    private void Add(RosterChild child, SaveLadder ladder)
    {
        var id = session.NewId();
        var hasGiven = child.GivenName.Length > 0;
        people.Add(new PersonRow
        {
            Club = session.Club,
            Id = id,
            // A person always has a name to be called by, even where the file knows only the family name.
            Given = Seal.CloseIfAny(hasGiven ? child.GivenName : child.FamilyName),
            Family = hasGiven ? Seal.CloseIfAny(child.FamilyName) : null,
            Called = Seal.CloseIfAny(child.CalledName),
            Born = child.BirthDate is { } born ? Seal.Close(born) : null,
            Sex = Seal.CloseIfAny(child.Sex),
            MadeAt = session.Now,
        });
        traces.Made("People", id);
        foreach (var contact in ContactRows.Of(session, id, child.Contacts))
        {
            contacts.Add(contact);
            traces.Made("Contacts", contact.Id);
        }

        if (child.RegistrationNumber.Length > 0 || child.RegistrationExpiry is not null)
        {
            registrations.Add(new RegistrationRow
            {
                Club = session.Club,
                Id = session.NewId(),
                PersonId = id,
                Number = Seal.CloseIfAny(child.RegistrationNumber),
                Expires = child.RegistrationExpiry,
                MadeAt = session.Now,
            });
            traces.Made("Registrations", registrations[^1].Id);
        }

        if (child.PhotoConsent is { } given)
        {
            consents.Add(new ConsentRow { Club = session.Club, Id = session.NewId(), PersonId = id, Use = ConsentUse.Photo, Given = given, On = today, MadeAt = session.Now });
            traces.Made("Consents", consents[^1].Id);
        }

        var rank = ladder.RankOf(child.Rank);
        if (rank is not null)
        {
            awards.Add(new AwardRow
            {
                Club = session.Club,
                Id = session.NewId(),
                PersonId = id,
                LadderId = rank.LadderId,
                RankId = rank.Id,
                On = child.LastPromotion,
                Source = AwardSource.Imported,
                MadeAt = session.Now,
            });
            traces.Made("Awards", awards[^1].Id);
            said.Count("ranks");
        }

        Enrol(id, child.FirstClass ?? (child.LastPromotion < today ? child.LastPromotion.Value : today), rank is null ? null : child.LastPromotion);
        said.Count("new");
    }

    private void Enrol(Guid person, DateOnly from, DateOnly? promoted)
    {
        enrolments.Add(new EnrolmentRow
        {
            Club = session.Club,
            Id = session.NewId(),
            PersonId = person,
            ProgrammeId = facts.Programme.Id,
            From = from,
            Position = ++position,
            CountsFrom = CountsFrom(from, promoted),
        });
        traces.Made("Enrolments", enrolments[^1].Id);
    }

    /// <summary>The first lesson, or the day after the last promotion: a lesson on the day of a promotion does not count.</summary>
    public static DateOnly CountsFrom(DateOnly from, DateOnly? promoted) => promoted is { } day && day.AddDays(1) > from ? day.AddDays(1) : from;
}

/// <summary>A contact with several numbers is several rows, one after the other; each row has one telephone and one address.</summary>
internal static class ContactRows
{
    public static List<ContactRow> Of(WriteSession session, Guid person, IReadOnlyList<RosterContact> contacts)
    {
        var rows = new List<ContactRow>();
        foreach (var contact in contacts)
            for (var i = 0; i < Math.Max(1, Math.Max(contact.Phones.Count, contact.Emails.Count)); i++)
                rows.Add(new ContactRow
                {
                    Club = session.Club,
                    Id = session.NewId(),
                    PersonId = person,
                    Position = rows.Count + 1,
                    Name = Seal.CloseIfAny(contact.Name),
                    Relation = Seal.CloseIfAny(contact.Relation),
                    Phone = i < contact.Phones.Count ? Seal.CloseIfAny(contact.Phones[i]) : null,
                    Email = i < contact.Emails.Count ? Seal.CloseIfAny(contact.Emails[i]) : null,
                });
        return rows;
    }
}
