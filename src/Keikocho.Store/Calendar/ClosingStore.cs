using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Evening;
using Keikocho.Store.Keeping;
using Keikocho.Store.Marks;
using Keikocho.Store.Safety;

namespace Keikocho.Store.Calendar;

/// <summary>What came of closing an evening, or of opening it again.</summary>
public enum ClosingOutcome
{
    /// <summary>Stored.</summary>
    Done,
    /// <summary>It is so already; nothing was changed.</summary>
    AlreadySo,
    /// <summary>A slip has not gone home; nothing was changed.</summary>
    SlipOpen,
    /// <summary>Only an adult of 18 or over with a duty on the day does this.</summary>
    NoAdult,
    /// <summary>There is no such evening, or it is still to come.</summary>
    Unknown,
}

/// <summary>Evenings that are closed, and opened again with trace. Marks that come afterwards are taken all the same.</summary>
public sealed class ClosingStore(WriterQueue writer)
{
    /// <summary>Closes an evening; refused while the slip of a knock of that evening has not gone home.</summary>
    public Task<ClosingOutcome> CloseAsync(Guid evening, DateOnly today, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (session.Db.Evenings.FirstOrDefault(e => e.Id == evening) is not { } row || row.Date > today) return ClosingOutcome.Unknown;
        if (!EvidenceStatements.IsAdultOnDuty(session, by, today)) return ClosingOutcome.NoAdult;
        if (row.ClosedAt is not null) return ClosingOutcome.AlreadySo;
        var lessons = session.Db.Lessons.Where(l => l.EveningId == evening).Select(l => l.Id);
        var isOpen = session.Db.Knocks.Any(k => lessons.Contains(k.LessonId) && !k.NearMiss
            && !session.Db.KnockLines.Any(l => l.KnockId == k.Id && KnockSlips.Settling.Contains(l.Kind)));
        if (isOpen) return ClosingOutcome.SlipOpen;
        (row.ClosedAt, row.ClosedById) = (session.Now, by);
        PhraseNoteStore.EndPast(session, today);
        return Noted(session, evening, TrailKind.EveningClosed, by, device);
    }, cancel);

    /// <summary>Opens a closed evening again; the trail keeps both.</summary>
    public Task<ClosingOutcome> OpenAsync(Guid evening, DateOnly today, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (session.Db.Evenings.FirstOrDefault(e => e.Id == evening) is not { } row) return ClosingOutcome.Unknown;
        if (!EvidenceStatements.IsAdultOnDuty(session, by, today)) return ClosingOutcome.NoAdult;
        if (row.ClosedAt is null) return ClosingOutcome.AlreadySo;
        (row.ClosedAt, row.ClosedById) = (null, null);
        return Noted(session, evening, TrailKind.EveningOpened, by, device);
    }, cancel);

    private static ClosingOutcome Noted(WriteSession session, Guid evening, TrailKind kind, Guid by, Guid device)
    {
        session.Db.SaveChanges();
        Revise.Calendar(session);
        session.Note(kind, evening, by, device);
        return ClosingOutcome.Done;
    }
}
