using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;

namespace Keikocho.Store.Evening;

/// <summary>What stands at a mat, as it is typed; in centimetres from the corner where the length begins.</summary>
/// <param name="Id">Made with the form; the same id again changes nothing.</param>
/// <param name="HallId">The hall.</param>
/// <param name="Name">As the club calls it.</param>
/// <param name="FromLengthCm">Along the length.</param>
/// <param name="FromWidthCm">Along the width.</param>
/// <param name="LengthCm">How long.</param>
/// <param name="WidthCm">How wide.</param>
public sealed record NewObstacle(Guid Id, Guid HallId, string Name, int FromLengthCm, int FromWidthCm, int LengthCm, int WidthCm);

/// <summary>What stands on or beside the mats.</summary>
public sealed class ObstacleStore(WriterQueue writer)
{
    /// <summary>Adds one; false where the hall is not there.</summary>
    public Task<bool> AddAsync(NewObstacle asked, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (session.Db.Obstacles.Any(o => o.Id == asked.Id)) return true;
        if (!session.Db.Halls.Any(h => h.Id == asked.HallId)) return false;
        session.Db.Obstacles.Add(new ObstacleRow
        {
            Club = session.Club,
            Id = asked.Id,
            HallId = asked.HallId,
            Name = asked.Name.Trim(),
            FromLengthCm = asked.FromLengthCm,
            FromWidthCm = asked.FromWidthCm,
            LengthCm = asked.LengthCm,
            WidthCm = asked.WidthCm,
        });
        session.Db.SaveChanges();
        session.Note(TrailKind.ObstacleChanged, asked.Id, by, device);
        return true;
    }, cancel);

    /// <summary>Takes one away; false where it is not there.</summary>
    public Task<bool> RemoveAsync(Guid obstacle, Guid? by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (session.Db.Obstacles.FirstOrDefault(o => o.Id == obstacle) is not { } row) return false;
        session.Db.Obstacles.Remove(row);
        session.Db.SaveChanges();
        session.Note(TrailKind.ObstacleChanged, obstacle, by, device);
        return true;
    }, cancel);
}

/// <summary>Reads what stands at the mats.</summary>
public static class ObstacleReader
{
    /// <summary>That of one hall, or of all; along the length, then along the width.</summary>
    public static IReadOnlyList<ObstacleRow> Of(ReadSession reading, Guid? hall)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return
        [
            .. reading.Rows(
                """SELECT "Id", "HallId", "Name", "FromLengthCm", "FromWidthCm", "LengthCm", "WidthCm" FROM "Obstacles" WHERE "Club" = @club""",
                row => new ObstacleRow
                {
                    Club = row.Club,
                    Id = row.Id(),
                    HallId = row.Id(),
                    Name = row.Text(),
                    FromLengthCm = row.Whole(),
                    FromWidthCm = row.Whole(),
                    LengthCm = row.Whole(),
                    WidthCm = row.Whole(),
                }).Where(o => hall is null || o.HallId == hall).OrderBy(o => o.FromLengthCm).ThenBy(o => o.FromWidthCm).ThenBy(o => o.Id),
        ];
    }
}
