using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;
using Microsoft.EntityFrameworkCore;

namespace Keikocho.Store.People;

/// <summary>A contact with the personal values opened.</summary>
/// <param name="Id">The contact.</param>
/// <param name="Name">Name; null where not known.</param>
/// <param name="Relation">Mother, father, carer ...; null where not known.</param>
/// <param name="Phone">Telephone number as it was given; null where not known.</param>
/// <param name="Barred">True where this contact may not collect the child.</param>
public sealed record OpenContact(Guid Id, string? Name, string? Relation, string? Phone, bool Barred);

/// <summary>Registration, photo consent and family of one child.</summary>
/// <param name="IsRegistered">Whether a registration with the national body was ever entered.</param>
/// <param name="RegisteredUntil">Last day of cover by the newest registration; null where that was not said.</param>
/// <param name="Photo">Whether photographs are allowed, by the newest word; null where nobody was asked.</param>
/// <param name="PhotoSaidOn">The day of that word.</param>
/// <param name="Siblings">The other members of the child's families, by id.</param>
public sealed record ChildPapers(bool IsRegistered, DateOnly? RegisteredUntil, bool? Photo, DateOnly? PhotoSaidOn, IReadOnlyList<Guid> Siblings);

/// <summary>Reads what only one child's own page shows; no list does.</summary>
public static class PaperReader
{
    /// <summary>Whom to ring about a child, in the order of ringing; one query.</summary>
    public static IReadOnlyList<OpenContact> ContactsOf(KeikochoDb db, Guid person)
    {
        ArgumentNullException.ThrowIfNull(db);
        return [.. db.Contacts.AsNoTracking().Where(c => c.PersonId == person).OrderBy(c => c.Position).ThenBy(c => c.Id).AsEnumerable()
            .Select(c => new OpenContact(c.Id, Seal.Open(c.Name), Seal.Open(c.Relation), Seal.Open(c.Phone), c.BarredFromCollecting))];
    }

    /// <summary>Registration, photo consent and family; one query. Nothing of a person who does not exist.</summary>
    public static ChildPapers PapersOf(KeikochoDb db, Guid person)
    {
        ArgumentNullException.ThrowIfNull(db);
        // Single values beside each sibling, so that both engines answer it as one question.
        var registrations = db.Registrations.Where(r => r.PersonId == person).OrderByDescending(r => r.MadeAt).ThenByDescending(r => r.Expires);
        var photos = db.Consents.Where(c => c.PersonId == person && c.Use == ConsentUse.Photo).OrderByDescending(c => c.On).ThenByDescending(c => c.MadeAt).ThenBy(c => c.Id);
        var siblings = db.FamilyMembers
            .Where(m => m.PersonId != person && db.FamilyMembers.Any(own => own.PersonId == person && own.FamilyId == m.FamilyId));
        var read = (from p in db.People.Where(p => p.Id == person)
                    from sibling in siblings.DefaultIfEmpty()
                    select new
                    {
                        IsRegistered = registrations.Any(),
                        Until = registrations.Select(r => r.Expires).FirstOrDefault(),
                        Photo = photos.Select(c => (bool?)c.Given).FirstOrDefault(),
                        PhotoOn = photos.Select(c => (DateOnly?)c.On).FirstOrDefault(),
                        Sibling = sibling == null ? (Guid?)null : sibling.PersonId,
                    }).ToList();
        return read.Count == 0
            ? new ChildPapers(false, null, null, null, [])
            : new ChildPapers(read[0].IsRegistered, read[0].Until, read[0].Photo, read[0].PhotoOn, [.. read.Select(r => r.Sibling).OfType<Guid>().Distinct().Order()]);
    }
}
