using System.Security.Cryptography;
using System.Text;
using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;
using Keikocho.Store.Syllabus;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.Intake;

/// <summary>The club's people as a reading compares them.</summary>
internal static class KnownPeople
{
    public static IReadOnlyList<KnownPerson> Read(KeikochoDb db, ProgrammeRow programme, IReadOnlyList<RankRow> ranks)
    {
        var contacts = db.Contacts.AsNoTracking().AsEnumerable().OrderBy(c => c.Position).ThenBy(c => c.Id).ToLookup(c => c.PersonId);
        var registrations = db.Registrations.AsNoTracking().AsEnumerable().GroupBy(r => r.PersonId).ToDictionary(g => g.Key, Newest);
        var consents = db.Consents.AsNoTracking().Where(c => c.Use == ConsentUse.Photo).AsEnumerable().GroupBy(c => c.PersonId)
            .ToDictionary(g => g.Key, g => g.OrderBy(c => c.On).ThenBy(c => c.MadeAt).ThenBy(c => c.Id).Last().Given);
        var enrolments = db.Enrolments.AsNoTracking().Where(e => e.ProgrammeId == programme.Id).AsEnumerable().GroupBy(e => e.PersonId)
            .ToDictionary(g => g.Key, g => g.Min(e => e.From));
        var awards = Standing(db, programme.LadderId, ranks);
        var names = ranks.ToDictionary(r => r.Id, r => r.Name);
        return
        [
            .. db.People.AsNoTracking().Where(p => p.ErasedAt == null).AsEnumerable().OrderBy(p => p.Id).Select(p =>
            {
                var registration = registrations.GetValueOrDefault(p.Id);
                var award = awards.GetValueOrDefault(p.Id);
                return new KnownPerson(new PersonId(p.Id), new RosterChild
                {
                    GivenName = Seal.Open(p.Given) ?? "",
                    FamilyName = Seal.Open(p.Family) ?? "",
                    CalledName = Seal.Open(p.Called) ?? "",
                    BirthDate = Seal.Open(p.Born),
                    Sex = Seal.Open(p.Sex) ?? "",
                    Rank = award is null ? "" : names[award.RankId],
                    LastPromotion = award?.On,
                    FirstClass = enrolments.TryGetValue(p.Id, out var from) ? from : null,
                    Contacts = Contacts(contacts[p.Id]),
                    PhotoConsent = consents.TryGetValue(p.Id, out var given) ? given : null,
                    RegistrationNumber = Seal.Open(registration?.Number) ?? "",
                    RegistrationExpiry = registration?.Expires,
                });
            }),
        ];
    }

    public static ErasedPersons Erased(KeikochoDb db)
    {
        var digests = db.Erased.AsNoTracking().AsEnumerable().Select(e => Convert.ToHexString(e.Digest)).ToHashSet(StringComparer.Ordinal);
        if (digests.Count == 0) return ErasedPersons.None;
        var salt = db.Clubs.Select(c => c.Salt).Single();
        return new ErasedPersons(text => Convert.ToHexString(Digest(salt, text)), digests);
    }

    /// <summary>The digest of an erased person's identity, as <see cref="ErasedRow"/> keeps it.</summary>
    public static byte[] Digest(byte[] salt, string identity) => HMACSHA256.HashData(salt, Encoding.UTF8.GetBytes(identity));

    /// <summary>The newest standing award of everybody on a ladder.</summary>
    public static Dictionary<Guid, AwardRow> Standing(KeikochoDb db, Guid? ladder, IReadOnlyList<RankRow> ranks)
    {
        if (ladder is null) return [];
        var places = ranks.ToDictionary(r => r.Id, r => r.Position);
        var all = db.Awards.AsNoTracking().Where(a => a.LadderId == ladder).ToList();
        var replaced = all.Select(a => a.Replaces).OfType<Guid>().ToHashSet();
        return all.Where(a => !replaced.Contains(a.Id) && places.ContainsKey(a.RankId)).GroupBy(a => a.PersonId)
            .ToDictionary(g => g.Key, g => g.OrderBy(a => a.On ?? DateOnly.MinValue).ThenBy(a => places[a.RankId]).ThenBy(a => a.MadeAt).ThenBy(a => a.Id).Last());
    }

    /// <summary>The newest registration of one person.</summary>
    public static RegistrationRow Newest(IEnumerable<RegistrationRow> rows) => rows.OrderBy(r => r.MadeAt).ThenBy(r => r.Id).Last();

    // A contact with several numbers lies in several rows of one name and relation, one after the other.
    private static List<RosterContact> Contacts(IEnumerable<ContactRow> rows)
        => [.. rows.Select(c => new RosterContact(Seal.Open(c.Name) ?? "", Seal.Open(c.Relation) ?? "", One(c.Phone), One(c.Email)))];

    private static string[] One(Sealed<string>? value) => Seal.Open(value) is { } text ? [text] : [];
}
