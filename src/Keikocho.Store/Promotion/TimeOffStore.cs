using System.Text;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Promotion;

/// <summary>Decisions to take a share off a child's least time for a rank. Rows are only added; the newest of a child and a rank holds.</summary>
public sealed class TimeOffStore(WriterQueue writer)
{
    /// <summary>Enters a decision; 0 percent ends an earlier one.</summary>
    /// <param name="id">Made with the form; the same id again changes nothing.</param>
    /// <param name="person">The child.</param>
    /// <param name="rank">The rank whose least time is meant.</param>
    /// <param name="percent">The share, 1 to 100, or 0.</param>
    /// <param name="why">The reason; needed for a share.</param>
    /// <param name="on">The day of the decision.</param>
    /// <param name="by">The instructor.</param>
    /// <param name="device">Where.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    public Task<TestOutcome> DecideAsync(Guid id, Guid person, Guid rank, int percent, string? why, DateOnly on, Guid by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            var db = session.Db;
            if (percent is < 0 or > 100 || (percent > 0 && string.IsNullOrWhiteSpace(why))) return TestOutcome.NotSaid;
            if (db.TimeOffs.Any(t => t.Id == id)) return TestOutcome.AlreadyStored;
            if (!db.People.Any(p => p.Id == person && p.ErasedAt == null) || !db.Ranks.Any(r => r.Id == rank)) return TestOutcome.Unknown;
            var newest = db.TimeOffs.Where(t => t.PersonId == person && t.RankId == rank).OrderByDescending(t => t.MadeAt).ThenByDescending(t => t.Id).FirstOrDefault();
            if (percent == 0 && newest is not { Percent: > 0 }) return TestOutcome.Unknown;
            // Two decisions of one moment are in the order in which they were stored.
            var at = newest is not null && newest.MadeAt >= session.Now ? newest.MadeAt.AddMilliseconds(1) : session.Now;
            db.TimeOffs.Add(new TimeOffRow
            {
                Club = session.Club,
                Id = id,
                PersonId = person,
                RankId = rank,
                Percent = percent,
                Why = Seal.Close(percent == 0 ? "" : why!.Trim()),
                On = on,
                ById = by,
                MadeAt = at,
            });
            db.SaveChanges();
            Revise.People(session);
            session.Note(TrailKind.TimeTakenOff, person, by, device, Encoding.UTF8.GetBytes(percent.ToString(System.Globalization.CultureInfo.InvariantCulture)));
            return TestOutcome.Stored;
        }, cancel);
}
