using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Evening;
using Keikocho.Store.Keeping;

namespace Keikocho.Store.People;

/// <summary>A wish about two children: apart, or together where no gate forbids it. There is no reason in it.</summary>
/// <param name="Id">Which.</param>
/// <param name="OneId">The one.</param>
/// <param name="OtherId">The other.</param>
/// <param name="Apart">Apart; else together.</param>
/// <param name="From">From this day.</param>
/// <param name="To">To this day, inclusive; null while it goes on.</param>
public sealed record PairWish(Guid Id, Guid OneId, Guid OtherId, bool Apart, DateOnly From, DateOnly? To)
{
    /// <summary>Whether it holds on a day.</summary>
    public bool HoldsOn(DateOnly day) => From <= day && (To is null || To >= day);
}

/// <summary>Wishes about two children.</summary>
public sealed class PairWishStore(WriterQueue writer)
{
    /// <summary>Enters one; false where it stands already, or where the opposite does, or a child is not there.</summary>
    public Task<bool> EnterAsync(Guid one, Guid other, bool apart, DateOnly from, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        if (one == other || db.People.Count(p => (p.Id == one || p.Id == other) && p.ErasedAt == null) != 2) return false;
        if (db.KeepAparts.Any(r => (r.To == null || r.To >= from) && ((r.FirstId == one && r.SecondId == other) || (r.FirstId == other && r.SecondId == one)))
            || db.KeepTogethers.Any(r => (r.To == null || r.To >= from) && ((r.FirstId == one && r.SecondId == other) || (r.FirstId == other && r.SecondId == one))))
            return false;
        if (apart) db.KeepAparts.Add(new KeepApartRow { Club = session.Club, Id = session.NewId(), FirstId = one, SecondId = other, From = from });
        else db.KeepTogethers.Add(new KeepTogetherRow { Club = session.Club, Id = session.NewId(), FirstId = one, SecondId = other, From = from });
        return Noted(session, one, other, by, device);
    }, cancel);

    /// <summary>Ends one: the day before is its last; one that would begin only then is never in force.</summary>
    public Task<bool> EndAsync(Guid wish, DateOnly from, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (session.Db.KeepAparts.FirstOrDefault(r => r.Id == wish && r.To == null) is { } apart)
        {
            apart.To = from.AddDays(-1);
            return Noted(session, apart.FirstId, apart.SecondId, by, device);
        }

        if (session.Db.KeepTogethers.FirstOrDefault(r => r.Id == wish && r.To == null) is not { } together) return false;
        together.To = from.AddDays(-1);
        return Noted(session, together.FirstId, together.SecondId, by, device);
    }, cancel);

    private static bool Noted(WriteSession session, Guid one, Guid other, Guid by, Guid device)
    {
        session.Db.SaveChanges();
        Revise.People(session);
        session.Note(TrailKind.PairWishChanged, one, by, device);
        session.Note(TrailKind.PairWishChanged, other, by, device);
        return true;
    }
}

/// <summary>Reads wishes about two children.</summary>
public static class PairWishReader
{
    /// <summary>Those that hold on a day, apart before together, oldest first; one statement.</summary>
    public static IReadOnlyList<PairWish> On(ReadSession reading, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return
        [
            .. reading.Rows(
                """
                SELECT "Id", "FirstId", "SecondId", TRUE, "From", "To" FROM "KeepAparts" WHERE "Club" = @club AND "From" <= @day AND ("To" IS NULL OR "To" >= @day)
                UNION ALL
                SELECT "Id", "FirstId", "SecondId", FALSE, "From", "To" FROM "KeepTogethers" WHERE "Club" = @club AND "From" <= @day AND ("To" IS NULL OR "To" >= @day)
                """,
                row => new PairWish(row.Id(), row.Id(), row.Id(), row.Yes(), row.Day(), row.DayIfAny()),
                ("@day", day)).OrderByDescending(w => w.Apart).ThenBy(w => w.From).ThenBy(w => w.Id),
        ];
    }
}
