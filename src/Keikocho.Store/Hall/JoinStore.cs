using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.People;

namespace Keikocho.Store.Hall;

/// <summary>A tablet that asks to be let in.</summary>
/// <param name="DeviceId">The tablet.</param>
/// <param name="PersonId">Who will act on it; their duty on the day says what may be seen there.</param>
/// <param name="Date">The evening's date.</param>
/// <param name="HallId">The evening's hall.</param>
/// <param name="EndsAt">When its time in the hall is over.</param>
/// <param name="LetInById">Who let it in.</param>
public sealed record NewJoin(Guid DeviceId, Guid PersonId, DateOnly Date, Guid HallId, DateTimeOffset EndsAt, Guid LetInById);

/// <summary>Tablets: let in for one evening, and put out.</summary>
public sealed class JoinStore(WriterQueue writer)
{
    /// <summary>Lets a tablet in; null where that person has no duty on the day.</summary>
    public Task<JoinRow?> LetInAsync(NewJoin asked, Guid by, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var duties = session.Db.Duties
            .Where(d => d.PersonId == asked.PersonId && d.From <= asked.Date && (d.To == null || d.To >= asked.Date)).Select(d => d.Kind).ToList();
        if (duties.Count == 0 || !session.Db.Halls.Any(h => h.Id == asked.HallId)) return null;
        var role = duties.All(d => d == DutyKind.JuniorLeader) ? JoinRole.JuniorLeader : JoinRole.Instructor;
        ClubStore.MeetDevice(session, asked.DeviceId, DeviceKind.Tablet, asked.PersonId);
        session.Db.SaveChanges();
        // The same tablet let in again is the same tablet: its number stays.
        var number = session.Db.Joins.Where(j => j.Date == asked.Date && j.HallId == asked.HallId && j.DeviceId == asked.DeviceId).Select(j => (int?)j.Number).FirstOrDefault()
            ?? 1 + session.Db.Joins.Where(j => j.Date == asked.Date && j.HallId == asked.HallId).Select(j => (int?)j.Number).Max() ?? 1;
        var row = new JoinRow
        {
            Club = session.Club,
            Id = session.NewId(),
            DeviceId = asked.DeviceId,
            PersonId = asked.PersonId,
            Role = role,
            Date = asked.Date,
            HallId = asked.HallId,
            Number = number,
            JoinedAt = session.Now,
            EndsAt = asked.EndsAt,
            LetInById = asked.LetInById,
        };
        session.Db.Joins.Add(row);
        session.Db.SaveChanges();
        session.Note(TrailKind.TabletJoined, row.Id, asked.LetInById, by);
        return row;
    }, cancel);

    /// <summary>Puts a tablet out, at once; false where it is out already or there is no such tablet.</summary>
    public Task<bool> PutOutAsync(Guid join, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (session.Db.Joins.FirstOrDefault(j => j.Id == join && j.PutOutAt == null) is not { } row) return false;
        // Whatever else lets this tablet in on the same evening goes with it.
        foreach (var own in session.Db.Joins.Where(j => j.DeviceId == row.DeviceId && j.Date == row.Date && j.PutOutAt == null).ToList())
            (own.PutOutAt, own.PutOutById) = (session.Now, by);
        session.Db.SaveChanges();
        session.Note(TrailKind.TabletPutOut, join, by, device);
        return true;
    }, cancel);
}
