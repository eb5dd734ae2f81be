using Keikocho.Store.Engines;

namespace Keikocho.Store.People;

/// <summary>Reads who is of one family.</summary>
public static class FamilyReader
{
    /// <summary>A name for the family of each of these people, the same for all who hang together by any family; nobody without one is there.</summary>
    public static Dictionary<Guid, string> Of(ReadSession reading, IReadOnlyCollection<Guid> people)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (people.Count == 0) return [];
        var ids = new IdList([.. people.Distinct()]);
        var rows = reading.Rows(
            $"""SELECT "FamilyId", "PersonId" FROM "FamilyMembers" WHERE "Club" = @club AND "PersonId" IN ({ids.Names})""",
            row => (Family: row.Id(), Person: row.Id()), [.. ids.Values]);
        // Children of separated parents may be in two families: whoever shares one is kin.
        var name = rows.Select(r => r.Person).Distinct().ToDictionary(p => p, p => p);
        foreach (var family in rows.GroupBy(r => r.Family))
        {
            var names = family.Select(r => name[r.Person]).ToHashSet();
            var least = names.Min();
            foreach (var person in name.Where(n => names.Contains(n.Value)).Select(n => n.Key).ToList()) name[person] = least;
        }

        return name.ToDictionary(n => n.Key, n => n.Value.ToString("N"));
    }
}
