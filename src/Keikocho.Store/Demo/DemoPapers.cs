using System.Globalization;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;

namespace Keikocho.Store.Demo;

/// <summary>Families, contacts, registrations, consents and duties.</summary>
internal sealed class DemoPapers
{
    private static readonly string[] Relations = ["Mother", "Father", "Grandmother", "Carer"];
    private readonly DemoMaking making;
    private readonly DemoCast cast;

    public DemoPapers(DemoMaking making, DemoCast cast)
    {
        this.making = making;
        this.cast = cast;
        var trainees = cast.Stays.GroupBy(s => s.Person.Id).Select(g => g.Last()).ToList();
        MakeFamilies(trainees);
        foreach (var stay in trainees)
        {
            AddContacts(stay);
            if (cast.WithoutPapers.Contains(stay.Person.Id)) continue;
            AddRegistration(stay);
            AddConsents(stay);
        }

        MakeDuties();
        if (making.Size == DemoSize.Small) KeepApart("Oscar", "Daniyal");
    }

    public List<FamilyRow> Families { get; } = [];
    public List<FamilyMemberRow> Members { get; } = [];
    public List<ContactRow> Contacts { get; } = [];
    public List<RegistrationRow> Registrations { get; } = [];
    public List<ConsentRow> Consents { get; } = [];
    public List<DutyRow> Duties { get; } = [];
    public List<KeepApartRow> KeepAparts { get; } = [];

    private static string Given(PersonRow person) => Seal.Open(person.Given)!;
    private static string Family(PersonRow person) => Seal.Open(person.Family)!;

    private void MakeFamilies(List<Stay> trainees)
    {
        // Whoever shares a family name: the demo gives it to nobody else. In the large club within one programme and among those of today.
        var groups = making.Size == DemoSize.Small
            ? trainees.Select(s => s.Person).Concat(cast.Adults).GroupBy(Family).Select(g => g.ToList())
            : trainees.Where(s => s.To is null).GroupBy(s => (s.Programme, Family(s.Person))).Select(g => g.Select(s => s.Person).ToList());
        foreach (var group in groups.Where(g => g.Count > 1))
        {
            var number = Families.Count;
            var family = new FamilyRow { Club = 1, Id = making.Ids.Of(DemoPart.Family, making.MadeAt, number), TogetherAsked = number == 1 };
            Families.Add(family);
            Members.AddRange(group.Select(p => new FamilyMemberRow { Club = 1, FamilyId = family.Id, PersonId = p.Id }));
        }
    }

    private void AddContacts(Stay stay)
    {
        var draw = Draw.About(making.Seed, DemoPart.Papers, stay.Number);
        var person = stay.Person;
        var family = Family(person);
        if (family.Length == 1)
        {
            Contacts.Add(Contact(stay, 1, null, null, null));
            return;
        }

        var parent = making.Size == DemoSize.Small ? cast.Adults.Find(a => Family(a) == family) : null;
        var first = draw.Below(Relations.Length);
        Contacts.Add(parent is null
            ? Contact(stay, 1, DemoNames.Given[draw.Below(DemoNames.Given.Length)] + " " + family, Relations[first], null)
            : Contact(stay, 1, Given(parent) + " " + family, "Parent", parent.Id));
        if (making.Size == DemoSize.Large || !(draw.Chance(600) || Given(person) == "Finn")) return;
        var second = Contact(stay, 2, DemoNames.Given[draw.Below(DemoNames.Given.Length)] + " " + family, Relations[(first + 1) % Relations.Length], null);
        second.BarredFromCollecting = Given(person) == "Finn";
        Contacts.Add(second);
    }

    private ContactRow Contact(Stay stay, int position, string? name, string? relation, Guid? person)
    {
        var number = (stay.Number * 2 + position) % 1000;
        var range = position == 1 ? "07700 900" : "01632 960";
        return new ContactRow
        {
            Club = 1,
            Id = making.Ids.Of(DemoPart.Contact, stay.Person.MadeAt, stay.Number, position),
            PersonId = stay.Person.Id,
            ContactPersonId = person,
            Position = position,
            Name = Seal.CloseIfAny(name),
            Relation = Seal.CloseIfAny(relation),
            // Reserved for drama; see DemoNames.
            Phone = Seal.Close(string.Create(CultureInfo.InvariantCulture, $"{range}{number:D3}")),
            Email = name is null ? null : Seal.Close(string.Create(CultureInfo.InvariantCulture, $"family{stay.Number}.{position}@example.org")),
        };
    }

    private void AddRegistration(Stay stay)
    {
        var draw = Draw.About(making.Seed, DemoPart.Registration, stay.Number);
        var expires = stay.To is { } left ? left.AddDays(draw.Between(-60, 200))
            : making.Size == DemoSize.Small && Given(stay.Person) == "Nia" ? making.Today.AddDays(5)
            : making.Today.AddDays(draw.Between(30, 350));
        var entered = LondonTime.At(expires.AddDays(-365), 10 * 60);
        if (entered < stay.Person.MadeAt) entered = stay.Person.MadeAt;
        Registrations.Add(new RegistrationRow
        {
            Club = 1,
            Id = making.Ids.Of(DemoPart.Registration, entered, stay.Number),
            PersonId = stay.Person.Id,
            Number = Seal.Close(string.Create(CultureInfo.InvariantCulture, $"N{20000 + stay.Number * 7}")),
            Expires = expires,
            MadeAt = entered,
        });
    }

    private void AddConsents(Stay stay)
    {
        var madeAt = stay.Person.MadeAt;
        var given = stay.Number % 9 != 4;
        Consents.Add(Consent(stay, given, madeAt, 0));
        // Taken back at the start of this term.
        if (making.Size == DemoSize.Small && Given(stay.Person) == "Grace") Consents.Add(Consent(stay, false, LondonTime.At(making.Terms[^1].From, 17 * 60), 1));
    }

    private ConsentRow Consent(Stay stay, bool given, DateTimeOffset madeAt, int number) => new()
    {
        Club = 1,
        Id = making.Ids.Of(DemoPart.Consent, madeAt, stay.Number, number),
        PersonId = stay.Person.Id,
        Use = ConsentUse.Photo,
        Given = given,
        On = DateOnly.FromDateTime(madeAt.UtcDateTime),
        MadeAt = madeAt,
    };

    private void MakeDuties()
    {
        var today = making.Today;
        for (var i = 0; i < cast.Adults.Count; i++)
        {
            var kind = i == 0 ? DutyKind.HeadInstructor : (i % 5) switch
            {
                0 or 1 => DutyKind.Instructor,
                2 or 3 => DutyKind.Assistant,
                _ => DutyKind.Registrar,
            };
            // The second one's first aid lapses in three weeks; the registrar holds none.
            DateOnly? firstAid = kind == DutyKind.Registrar ? null : today.AddDays(i == 1 ? 20 : 200 + 37 * (i % 9));
            AddDuty(cast.Adults[i], kind, today.AddDays(120 + 91 * (i % 7)), firstAid, i % 5 < 3);
        }

        AddDuty(cast.Adults[^1], DutyKind.WelfareOfficer, today.AddDays(480), null, false);
        foreach (var leader in cast.Leaders) AddDuty(leader, DutyKind.JuniorLeader, null, null, false);
    }

    private void AddDuty(PersonRow person, DutyKind kind, DateOnly? vettedUntil, DateOnly? firstAidUntil, bool mayConfirmFalls) => Duties.Add(new DutyRow
    {
        Club = 1,
        Id = making.Ids.Of(DemoPart.Duty, making.MadeAt, Duties.Count),
        PersonId = person.Id,
        Kind = kind,
        From = making.Terms[0].From,
        VettedUntil = vettedUntil,
        FirstAidUntil = firstAidUntil,
        MayConfirmFalls = mayConfirmFalls,
    });

    private void KeepApart(string first, string second) => KeepAparts.Add(new KeepApartRow
    {
        Club = 1,
        Id = making.Ids.Of(DemoPart.KeepApart, making.MadeAt, 0),
        FirstId = cast.Children.First(c => Given(c) == first).Id,
        SecondId = cast.Children.First(c => Given(c) == second).Id,
        From = making.Terms[^1].From,
    });
}
