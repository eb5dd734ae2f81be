using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.Sealing;

namespace Keikocho.Store.People;

/// <summary>A child's size that is entered.</summary>
/// <param name="PersonId">The child.</param>
/// <param name="On">The day.</param>
/// <param name="Grams">Grams.</param>
public sealed record NewSize(Guid PersonId, DateOnly On, int Grams);

/// <summary>A child's size, opened.</summary>
/// <param name="PersonId">The child.</param>
/// <param name="On">The day.</param>
/// <param name="Grams">Grams; null where the club's lock does not open it.</param>
public sealed record HeldSize(Guid PersonId, DateOnly On, int? Grams);

/// <summary>Sizes: stored only while the club's lock is open, and never plain.</summary>
public sealed class SizeStore(WriterQueue writer)
{
    /// <summary>Enters sizes; one of the same child and day takes the place of the one before. Answers how many were stored.</summary>
    public Task<int> EnterAsync(IReadOnlyList<NewSize> sizes, OpenedLock key, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var stored = 0;
        foreach (var size in sizes)
        {
            if (!session.Db.People.Any(p => p.Id == size.PersonId && p.ErasedAt == null)) continue;
            var row = session.Db.Sizes.FirstOrDefault(s => s.PersonId == size.PersonId && s.On == size.On);
            if (row is null)
            {
                row = new SizeRow { Club = session.Club, Id = session.NewId(), PersonId = size.PersonId, On = size.On };
                session.Db.Sizes.Add(row);
            }

            row.Grams = Seal.Close(size.Grams, key, new SealedAbout(row.PersonId, row.Id));
            row.ById = by;
            session.Db.SaveChanges();
            session.Note(TrailKind.SizeEntered, size.PersonId, by, device);
            stored++;
        }

        return stored;
    }, cancel);
}

/// <summary>Reads sizes.</summary>
public static class SizeReader
{
    /// <summary>The newest size of each child on or before a day; a child without one is not there.</summary>
    public static Dictionary<Guid, HeldSize> Newest(ReadSession reading, IReadOnlyCollection<Guid> people, DateOnly day, OpenedLock key)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (people.Count == 0) return [];
        var ids = new IdList([.. people.Distinct()]);
        var rows = reading.Rows(
            $"""SELECT "Id", "PersonId", "On", "Grams" FROM "Sizes" WHERE "Club" = @club AND "On" <= @day AND "PersonId" IN ({ids.Names}) ORDER BY "On", "Id" """,
            row => (Id: row.Id(), Person: row.Id(), On: row.Day(), Grams: new Sealed<int>(row.Bytes())), [("@day", day), .. ids.Values]);
        return rows.GroupBy(r => r.Person).ToDictionary(own => own.Key, own =>
        {
            var newest = own.Last();
            return new HeldSize(own.Key, newest.On, Seal.Open(newest.Grams, key, new SealedAbout(newest.Person, newest.Id)));
        });
    }
}
