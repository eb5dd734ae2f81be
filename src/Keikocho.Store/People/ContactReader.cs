using Keikocho.Store.Engines;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.People;

/// <summary>A contact of one of many children, for the red folder.</summary>
/// <param name="PersonId">The child.</param>
/// <param name="Name">Who.</param>
/// <param name="Relation">What they are to the child.</param>
/// <param name="Phone">The number.</param>
/// <param name="Barred">True where this contact may not collect the child.</param>
public sealed record ContactOfChild(Guid PersonId, string? Name, string? Relation, string? Phone, bool Barred);

/// <summary>Reads the contacts of many children in one statement.</summary>
public static class ContactReader
{
    /// <summary>The contacts, each child's in its own order.</summary>
    public static IReadOnlyList<ContactOfChild> Of(ReadSession reading, IReadOnlyCollection<Guid> people)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (people.Count == 0) return [];
        var ids = new IdList([.. people.Distinct()]);
        return reading.Rows(
            $"""
            SELECT "PersonId", "Name", "Relation", "Phone", "BarredFromCollecting" FROM "Contacts"
            WHERE "Club" = @club AND "PersonId" IN ({ids.Names}) ORDER BY "PersonId", "Position", "Id"
            """,
            row => new ContactOfChild(
                row.Id(), Seal.Open(row.SealedIfAny<string>()), Seal.Open(row.SealedIfAny<string>()), Seal.Open(row.SealedIfAny<string>()), row.Yes()), [.. ids.Values]);
    }
}
