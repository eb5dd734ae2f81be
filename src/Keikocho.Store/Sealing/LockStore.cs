using System.Security.Cryptography;
using Keikocho.Store.Engines;
using Keikocho.Store.Keeping;

namespace Keikocho.Store.Sealing;

/// <summary>How the club's lock stands in this process.</summary>
public enum LockState
{
    /// <summary>The club has set no passphrase.</summary>
    None,
    /// <summary>It has, and the key is not here.</summary>
    Locked,
    /// <summary>The key is in this process.</summary>
    Open,
}

/// <summary>What came of an attempt.</summary>
public enum LockOutcome
{
    /// <summary>Done.</summary>
    Done,
    /// <summary>It is not the right passphrase or recovery key.</summary>
    Wrong,
    /// <summary>Too soon after a wrong one, or another attempt is under way.</summary>
    TooSoon,
    /// <summary>There is no lock to open, or there is one already.</summary>
    NotNow,
    /// <summary>The passphrase is too short or too long.</summary>
    NotLongEnough,
}

/// <summary>What came of an attempt, and when the next one is taken.</summary>
/// <param name="Outcome">What came of it.</param>
/// <param name="NextAt">From when on another attempt is taken; null for at once.</param>
/// <param name="RecoveryKey">The printed key of a lock just made: shown once, stored nowhere.</param>
public sealed record LockAnswer(LockOutcome Outcome, DateTimeOffset? NextAt = null, string? RecoveryKey = null);

/// <summary>
/// The club's lock: made with a passphrase, opened by it or by the printed recovery key. One attempt at a time, and after each wrong one a
/// wait that doubles. Neither of the two is stored, and the open key is in this process only.
/// </summary>
public sealed class LockStore(WriterQueue writer, Engine engine, TimeProvider time) : IDisposable
{
    private const int LongestWaitSeconds = 300;
    private readonly SemaphoreSlim one = new(1, 1);
    private OpenedLock? opened;
    private int wrong;
    private DateTimeOffset nextAt = DateTimeOffset.MinValue;

    /// <summary>How it stands, and the key while it is open. A lock that another process ended is shut here too.</summary>
    public (LockState State, OpenedLock? Key) Now(ReadSession reading)
    {
        if (LockReader.Id(reading) is not { } id) return (LockState.None, null);
        return Volatile.Read(ref opened) is { IsClosed: false } key && key.Id == id ? (LockState.Open, key) : (LockState.Locked, null);
    }

    /// <summary>Makes the lock and opens it. The recovery key in the answer is not to be had again.</summary>
    public async Task<LockAnswer> MakeAsync(string passphrase, Guid? by, Guid device, CancellationToken cancel)
    {
        if (Passphrases.Refusal(passphrase) is not null) return new LockAnswer(LockOutcome.NotLongEnough);
        if (!await one.WaitAsync(0, cancel).ConfigureAwait(false)) return new LockAnswer(LockOutcome.TooSoon);
        try
        {
            var recovery = RecoveryKey.Make();
            var key = RandomNumberGenerator.GetBytes(AesSeal.KeyBytes);
            var row = new LockRow
            {
                Club = engine.Club,
                Id = Guid.CreateVersion7(time.GetUtcNow()),
                Form = LockKeys.Form,
                Salt = RandomNumberGenerator.GetBytes(LockKeys.SaltBytes),
                MemoryKib = LockKeys.MemoryKib,
                Passes = LockKeys.Passes,
                RecoverySalt = RandomNumberGenerator.GetBytes(LockKeys.SaltBytes),
                ById = by,
            };
            using var reading = engine.OpenReading();
            if (LockReader.ClubId(reading) is not { } club) return new LockAnswer(LockOutcome.NotNow);
            var made = new OpenedLock(row.Id, club, key);
            row.ByPassphrase = await WrapAsync(made, row, passphrase.Trim(), byRecovery: false, cancel).ConfigureAwait(false);
            row.ByRecovery = await WrapAsync(made, row, Sealing.RecoveryKey.Read(recovery)!, byRecovery: true, cancel).ConfigureAwait(false);
            var isStored = await writer.RunAsync(session =>
            {
                // Two at once: the first stays. A second key would leave the first one's values without any.
                if (session.Db.Locks.Any(l => l.EndedAt == null)) return false;
                row.MadeAt = session.Now;
                session.Db.Locks.Add(row);
                session.Db.SaveChanges();
                session.Note(TrailKind.LockChanged, row.Id, by, device);
                return true;
            }, cancel).ConfigureAwait(false);
            if (!isStored)
            {
                made.Dispose();
                return new LockAnswer(LockOutcome.NotNow);
            }

            Take(made);
            return new LockAnswer(LockOutcome.Done, RecoveryKey: recovery);
        }
        finally
        {
            one.Release();
        }
    }

    /// <summary>Opens it by the passphrase or the recovery key.</summary>
    public Task<LockAnswer> OpenAsync(string typed, CancellationToken cancel) => TryAsync(typed, (_, key) =>
    {
        Take(key);
        return Task.CompletedTask;
    }, cancel);

    /// <summary>Sets another passphrase; the old one or the recovery key is asked for. The recovery key and the values stay as they are.</summary>
    public async Task<LockAnswer> ChangeAsync(string typed, string passphrase, Guid? by, Guid device, CancellationToken cancel)
    {
        if (Passphrases.Refusal(passphrase) is not null) return new LockAnswer(LockOutcome.NotLongEnough);
        return await TryAsync(typed, async (row, key) =>
        {
            row.Salt = RandomNumberGenerator.GetBytes(LockKeys.SaltBytes);
            row.ByPassphrase = await WrapAsync(key, row, passphrase.Trim(), byRecovery: false, cancel).ConfigureAwait(false);
            await writer.RunAsync(session =>
            {
                var stored = session.Db.Locks.Single(l => l.Id == row.Id);
                (stored.Salt, stored.ByPassphrase) = (row.Salt, row.ByPassphrase);
                session.Db.SaveChanges();
                session.Note(TrailKind.LockChanged, row.Id, by, device);
                return true;
            }, cancel).ConfigureAwait(false);
            Take(key);
        }, cancel).ConfigureAwait(false);
    }

    /// <summary>Shuts it in this process: the key is overwritten.</summary>
    public void Shut() => Interlocked.Exchange(ref opened, null)?.Dispose();

    /// <inheritdoc/>
    public void Dispose()
    {
        Shut();
        one.Dispose();
    }

    private async Task<LockAnswer> TryAsync(string typed, Func<LockRow, OpenedLock, Task> done, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(typed);
        if (!await one.WaitAsync(0, cancel).ConfigureAwait(false)) return new LockAnswer(LockOutcome.TooSoon);
        try
        {
            if (time.GetUtcNow() < nextAt) return new LockAnswer(LockOutcome.TooSoon, nextAt);
            using var reading = engine.OpenReading();
            if (LockReader.Current(reading) is not { Form: LockKeys.Form } row || LockReader.ClubId(reading) is not { } club) return new LockAnswer(LockOutcome.NotNow);
            if (await UnwrapAsync(row, club, typed, cancel).ConfigureAwait(false) is not { } key)
            {
                nextAt = time.GetUtcNow().AddSeconds(Math.Min(LongestWaitSeconds, Math.Pow(2, wrong++)));
                return new LockAnswer(LockOutcome.Wrong, nextAt);
            }

            wrong = 0;
            await done(row, new OpenedLock(row.Id, club, key)).ConfigureAwait(false);
            return new LockAnswer(LockOutcome.Done);
        }
        finally
        {
            one.Release();
        }
    }

    // A recovery key is told by its form, so that each attempt costs one derivation.
    private static Task<byte[]?> UnwrapAsync(LockRow row, Guid club, string typed, CancellationToken cancel) => Task.Run(() =>
    {
        var recovery = RecoveryKey.Read(typed);
        var wrapping = LockKeys.Derive(recovery ?? typed.Trim(), recovery is null ? row.Salt : row.RecoverySalt, row.MemoryKib, row.Passes);
        var key = AesSeal.Open(wrapping, recovery is null ? row.ByPassphrase : row.ByRecovery, LockKeys.About(club, row.Id, recovery is not null));
        CryptographicOperations.ZeroMemory(wrapping);
        return key;
    }, cancel);

    private static Task<byte[]> WrapAsync(OpenedLock key, LockRow row, string typed, bool byRecovery, CancellationToken cancel) => Task.Run(() =>
    {
        var wrapping = LockKeys.Derive(typed, byRecovery ? row.RecoverySalt : row.Salt, row.MemoryKib, row.Passes);
        var wrapped = key.WrapBy(wrapping, LockKeys.About(key.ClubId, row.Id, byRecovery));
        CryptographicOperations.ZeroMemory(wrapping);
        return wrapped;
    }, cancel);

    private void Take(OpenedLock key) => Interlocked.Exchange(ref opened, key)?.Dispose();
}
