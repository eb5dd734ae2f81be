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

    /// <summary>Everybody for whom a registration was entered, whether it has run out or not.</summary>
    public static HashSet<Guid> WithARegistration(KeikochoDb db)
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.Registrations.Select(r => r.PersonId).ToHashSet();
    }
}
