using Keikocho.Core.Safety;
using Keikocho.Store.Club;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;
using Keikocho.Store.Marks;

namespace Keikocho.Store.Safety;

/// <summary>A stand-down that is entered.</summary>
/// <param name="Id">Made with the form; the same id again changes nothing.</param>
/// <param name="PersonId">The child.</param>
/// <param name="Scope">What it forbids.</param>
/// <param name="From">From this day.</param>
/// <param name="ReviewOn">To be looked at again; null where no day is set.</param>
/// <param name="WhoseWord">Whose word is needed to lift it.</param>
public sealed record NewStandDown(Guid Id, Guid PersonId, StandDownScope Scope, DateOnly From, DateOnly? ReviewOn, string? WhoseWord);

/// <summary>What came of it.</summary>
public enum StandDownOutcome
{
    /// <summary>Stored.</summary>
    Stored,
    /// <summary>It stands so already; nothing was changed.</summary>
    AlreadyStored,
    /// <summary>There is no such child or stand-down, or it was lifted before.</summary>
    Unknown,
    /// <summary>Only an adult of 18 or over with a duty in the club lifts one, and an adult enters it.</summary>
    NoAdult,
    /// <summary>A reason is needed, and a day that is not before the first.</summary>
    NotSaid,
    /// <summary>A knock brought it, and the earliest day has not come or advice that counts is missing.</summary>
    KnockNotYet,
}

/// <summary>What children may not do for now. A stand-down is never deleted, and none ends by itself.</summary>
public sealed class StandDownStore(WriterQueue writer)
{
    /// <summary>Enters one.</summary>
    public Task<StandDownOutcome> EnterAsync(NewStandDown asked, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (!Enum.IsDefined(asked.Scope) || asked.ReviewOn < asked.From) return StandDownOutcome.NotSaid;
        if (session.Db.StandDowns.Any(s => s.Id == asked.Id)) return StandDownOutcome.AlreadyStored;
        if (!session.Db.People.Any(p => p.Id == asked.PersonId && p.ErasedAt == null)) return StandDownOutcome.Unknown;
        session.Db.StandDowns.Add(new StandDownRow
        {
            Club = session.Club,
            Id = asked.Id,
            PersonId = asked.PersonId,
            Scope = (int)asked.Scope,
            From = asked.From,
            ReviewOn = asked.ReviewOn,
            WhoseWord = Seal.CloseIfAny(asked.WhoseWord),
            ById = by,
            MadeAt = session.Now,
        });
        return Noted(session, TrailKind.StandDownMade, asked.PersonId, by, device);
    }, cancel);

    /// <summary>Moves the review day of one that stands; null takes the day away, and it stands all the same.</summary>
    public Task<StandDownOutcome> MoveReviewAsync(Guid standDown, Guid person, DateOnly? reviewOn, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (session.Db.StandDowns.FirstOrDefault(s => s.Id == standDown && s.PersonId == person) is not { LiftedOn: null } row) return StandDownOutcome.Unknown;
        if (reviewOn < row.From) return StandDownOutcome.NotSaid;
        if (row.ReviewOn == reviewOn) return StandDownOutcome.AlreadyStored;
        row.ReviewOn = reviewOn;
        return Noted(session, TrailKind.StandDownChanged, person, by, device);
    }, cancel);

    /// <summary>
    /// Lifts one: a named adult of 18 or over, a day and a reason. The row stays in the history. One that a knock brought is not lifted before
    /// its earliest day, nor without written advice.
    /// </summary>
    /// <param name="standDown">Which.</param>
    /// <param name="person">Of whom.</param>
    /// <param name="liftedBy">The adult who lifts it.</param>
    /// <param name="on">The day from which it does not stand any more.</param>
    /// <param name="why">The reason.</param>
    /// <param name="today">The day on which this is entered; falls are shown again from the later of the two days on.</param>
    /// <param name="by">Who enters that; an adult too.</param>
    /// <param name="device">Where.</param>
    /// <param name="cancel">Counts only while it waits.</param>
    public Task<StandDownOutcome> LiftAsync(Guid standDown, Guid person, Guid liftedBy, DateOnly on, string? why, DateOnly today, Guid by, Guid device, CancellationToken cancel) =>
        writer.RunAsync(session =>
        {
            if (session.Db.StandDowns.FirstOrDefault(s => s.Id == standDown && s.PersonId == person) is not { } row) return StandDownOutcome.Unknown;
            if (row.LiftedOn is not null) return row.LiftedOn == on && row.LiftedById == liftedBy ? StandDownOutcome.AlreadyStored : StandDownOutcome.Unknown;
            if (string.IsNullOrWhiteSpace(why) || on < row.From) return StandDownOutcome.NotSaid;
            // Whoever enters it is an adult as well: a teenager who holds the device lifts nothing in an adult's name.
            if (!EvidenceStatements.IsAdultOnDuty(session, liftedBy, on) || !EvidenceStatements.IsAdult(session, by, on)) return StandDownOutcome.NoAdult;
            if (KnockGate.Refuses(session, row, on, today)) return StandDownOutcome.KnockNotYet;
            (row.LiftedOn, row.LiftedById, row.LiftedWhy, row.LiftEnteredOn) = (on, liftedBy, Seal.Close(why.Trim()), today);
            return Noted(session, TrailKind.StandDownChanged, person, by, device);
        }, cancel);

    private static StandDownOutcome Noted(WriteSession session, TrailKind kind, Guid person, Guid by, Guid device)
    {
        session.Db.SaveChanges();
        Revise.People(session);
        session.Note(kind, person, by, device);
        return StandDownOutcome.Stored;
    }
}
