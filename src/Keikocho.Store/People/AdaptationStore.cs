using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.People;

/// <summary>Agreed other ways of showing an item, without a diagnosis. Rows are only added; the newest of a child and an item holds.</summary>
public sealed class AdaptationStore(WriterQueue writer)
{
    /// <summary>Enters the agreed way of one child and one item; without words, the item is shown in the usual way again.</summary>
    /// <param name="id">Made with the form; the same id again changes nothing.</param>
    /// <param name="person">The child.</param>
    /// <param name="item">The item.</param>
    /// <param name="wording">How it is shown.</param>
    /// <param name="on">When it was agreed.</param>
    /// <param name="by">Who agreed it for the club.</param>
    /// <param name="device">Where.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    /// <returns>False when there is no such child or item; nothing was changed then.</returns>
    public Task<bool> AgreeAsync(Guid id, Guid person, Guid item, string? wording, DateOnly on, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        var db = session.Db;
        if (db.Adaptations.Any(a => a.Id == id)) return true;
        if (!db.People.Any(p => p.Id == person && p.ErasedAt == null) || !db.Items.Any(i => i.Id == item)) return false;
        db.Adaptations.Add(new AdaptationRow
        {
            Club = session.Club,
            Id = id,
            PersonId = person,
            ItemId = item,
            Wording = Seal.CloseIfAny(wording),
            AgreedOn = on,
            ById = by,
        });
        db.SaveChanges();
        Revise.People(session);
        session.Note(TrailKind.AdaptationChanged, person, by, device);
        return true;
    }, cancel);
}
