using Keikocho.Core.Safety;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Safety;

/// <summary>A near miss as it is entered: nobody was hurt, and no child is named.</summary>
/// <param name="Id">Made with the form; the same id again changes nothing.</param>
/// <param name="On">The day.</param>
/// <param name="At">About when; null where nobody looked at the clock.</param>
/// <param name="Activity">What was going on.</param>
/// <param name="Words">What happened.</param>
public sealed record NewNearMiss(Guid Id, DateOnly On, TimeOnly? At, KnockActivity Activity, string Words);

/// <summary>A near miss as it is kept.</summary>
/// <param name="Id">Which.</param>
/// <param name="On">The day.</param>
/// <param name="At">About when.</param>
/// <param name="Activity">What was going on.</param>
/// <param name="Words">What happened.</param>
/// <param name="ById">Who wrote it.</param>
public sealed record HeldNearMiss(Guid Id, DateOnly On, TimeOnly? At, KnockActivity Activity, string Words, Guid ById);

/// <summary>Near misses: added, never changed.</summary>
public sealed class NearMissStore(WriterQueue writer)
{
    /// <summary>The longest text.</summary>
    public const int LongestWords = 1000;

    /// <summary>Enters one.</summary>
    public Task<KnockOutcome> EnterAsync(NewNearMiss asked, DateOnly today, Guid by, Guid device, CancellationToken cancel) => writer.RunAsync(session =>
    {
        if (session.Db.NearMisses.Any(n => n.Id == asked.Id)) return KnockOutcome.AlreadyStored;
        if (!Enum.IsDefined(asked.Activity) || asked.On > today || string.IsNullOrWhiteSpace(asked.Words) || asked.Words.Length > LongestWords) return KnockOutcome.NotSaid;
        session.Db.NearMisses.Add(new NearMissRow
        {
            Club = session.Club,
            Id = asked.Id,
            On = asked.On,
            At = asked.At,
            Activity = (int)asked.Activity,
            Words = Seal.Close(asked.Words.Trim()),
            ById = by,
            MadeAt = session.Now,
        });
        session.Db.SaveChanges();
        session.Note(TrailKind.NearMissEntered, asked.Id, by, device);
        return KnockOutcome.Stored;
    }, cancel);
}

/// <summary>Reads near misses.</summary>
public static class NearMissReader
{
    /// <summary>Those from one day to another, newest first.</summary>
    public static IReadOnlyList<HeldNearMiss> Between(ReadSession reading, DateOnly from, DateOnly to)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Rows(
            """
            SELECT "Id", "On", "At", "Activity", "Words", "ById" FROM "NearMisses"
            WHERE "Club" = @club AND "On" >= @from AND "On" <= @to ORDER BY "On" DESC, "MadeAt" DESC, "Id"
            """,
            row => new HeldNearMiss(row.Id(), row.Day(), row.TimeIfAny(), (KnockActivity)row.Whole(), Seal.Open(new Sealed<string>(row.Bytes())), row.Id()), ("@from", from), ("@to", to));
    }
}
