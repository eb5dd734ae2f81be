using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;

namespace Keikocho.Store.Evening;

/// <summary>What came of saying that an item is shown.</summary>
public enum ShowingOutcome
{
    /// <summary>Stored, and on disk.</summary>
    Stored,
    /// <summary>It stands so already; nothing was changed.</summary>
    AlreadyStored,
    /// <summary>There is no such lesson or item. Nothing was changed.</summary>
    Unknown,
}

/// <summary>What each end of the mat worked on, slot by slot. A showing is never deleted: it is taken back.</summary>
public sealed class ShowingStore(WriterQueue writer)
{
    /// <summary>Says that an end works on an item in a slot; what was said of that slot before is taken back.</summary>
    /// <param name="id">Made with the form; the same id again changes nothing.</param>
    /// <param name="lesson">The lesson.</param>
    /// <param name="end">The end, as the core numbers it.</param>
    /// <param name="slot">The slot, from 1.</param>
    /// <param name="item">The item; null takes back what was said of the slot.</param>
    /// <param name="by">Who says so.</param>
    /// <param name="device">Where.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    public Task<ShowingOutcome> ShowAsync(Guid id, Guid lesson, int end, int slot, Guid? item, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (slot is < 1 or > 20 || end is < 0 or > 1) return ShowingOutcome.Unknown;
        if (!session.Db.Lessons.Any(l => l.Id == lesson && l.ClosureId == null)) return ShowingOutcome.Unknown;
        if (item is { } known && !session.Db.Items.Any(i => i.Id == known)) return ShowingOutcome.Unknown;
        if (session.Db.Showings.Any(s => s.Id == id)) return ShowingOutcome.AlreadyStored;
        var standing = session.Db.Showings.Where(s => s.LessonId == lesson && s.End == end && s.Slot == slot && s.TakenBackAt == null).ToList();
        if (item is { } same ? standing.Any(s => s.ItemId == same) : standing.Count == 0) return ShowingOutcome.AlreadyStored;
        foreach (var row in standing) row.TakenBackAt = session.Now;
        if (item is { } shown)
            session.Db.Showings.Add(new ShowingRow { Club = session.Club, Id = id, LessonId = lesson, End = end, ItemId = shown, Slot = slot, ById = by, MadeAt = session.Now });
        session.Db.SaveChanges();
        session.Note(TrailKind.ShowingChanged, lesson, by, device);
        return ShowingOutcome.Stored;
    }, cancel);
}
