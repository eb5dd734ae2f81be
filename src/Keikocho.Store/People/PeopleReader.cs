using Keikocho.Store.Engines;

namespace Keikocho.Store.People;

/// <summary>Reads what the book does not hold about people: never more than a yes or no.</summary>
public static class PeopleReader
{
    /// <summary>The children of whose contacts one may not collect.</summary>
    public static HashSet<Guid> WithSomebodyBarred(KeikochoDb db)
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.Contacts.Where(c => c.BarredFromCollecting).Select(c => c.PersonId).ToHashSet();
    }

    /// <summary>Of these children, those of whose contacts one may not collect; without saying who.</summary>
    public static HashSet<Guid> WithSomebodyBarred(ReadSession reading, IReadOnlyCollection<Guid> people)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (people.Count == 0) return [];
        var ids = new IdList([.. people.Distinct()]);
        return [.. reading.Rows(
            $"""SELECT DISTINCT "PersonId" FROM "Contacts" WHERE "Club" = @club AND "BarredFromCollecting" AND "PersonId" IN ({ids.Names})""",
            row => row.Id(), [.. ids.Values])];
    }

    /// <summary>Everybody for whom a registration was entered, whether it has run out or not.</summary>
    public static HashSet<Guid> WithARegistration(KeikochoDb db)
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.Registrations.Select(r => r.PersonId).ToHashSet();
    }
}
