using System.Data.Common;
using System.Runtime.ExceptionServices;
using System.Threading.Channels;

namespace Keikocho.Store.Engines;

/// <summary>
/// The one writer of this process. Works wait in a queue; those that wait together are committed together, each inside a savepoint of
/// its own, so that one that fails takes nothing else with it. A caller is answered only after the commit is on disk.
/// </summary>
public sealed class WriterQueue : IAsyncDisposable
{
    private const int MostInOneCommit = 64;

    private readonly Engine engine;
    private readonly TimeProvider time;
    private readonly Channel<Work> works = Channel.CreateUnbounded<Work>(new UnboundedChannelOptions { SingleReader = true });
    private readonly Thread thread;
    private readonly Dictionary<string, DbCommand> commands = new(StringComparer.Ordinal);
    private readonly TaskCompletionSource ended = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Starts the writer's thread; it opens its connection at the first work.</summary>
    public WriterQueue(Engine engine, TimeProvider time)
    {
        this.engine = engine;
        this.time = time;
        // SQLite has no asynchronous writing: a thread of its own keeps the pool free.
        thread = new Thread(Run) { IsBackground = true, Name = "Keikocho writer" };
        thread.Start();
    }

    /// <summary>Does one piece of work in a write transaction and answers when it is on disk.</summary>
    /// <param name="work">Reads and writes through the session; it must neither wait for anything else nor keep the session.</param>
    /// <param name="cancel">Counts only while the work still waits.</param>
    public async Task<T> RunAsync<T>(Func<WriteSession, T> work, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(work);
        cancel.ThrowIfCancellationRequested();
        var waiting = new Work<T>(work);
        ObjectDisposedException.ThrowIf(!works.Writer.TryWrite(waiting), this);
        // Who gives up is answered at once, even while the writer is held up by something else.
        using var giveUp = cancel.UnsafeRegister(_ =>
        {
            if (waiting.GiveUp()) waiting.Done.TrySetCanceled(cancel);
        }, null);
        return await waiting.Done.Task.ConfigureAwait(false);
    }

    /// <summary>Does what still waits, then ends.</summary>
    public async ValueTask DisposeAsync()
    {
        works.Writer.TryComplete();
        await ended.Task.ConfigureAwait(false);
    }

    private void Run()
    {
        DbConnection? connection = null;
        var group = new List<Work>(MostInOneCommit);
        try
        {
            while (Next(group))
            {
                try
                {
                    connection ??= engine.OpenConnection();
                    Commit(connection, group);
                }
#pragma warning disable CA1031 // Whatever it was, it is handed to everybody who waits for this group, and the writer goes on.
                catch (Exception cause)
#pragma warning restore CA1031
                {
                    // The commit itself failed (disk full, file gone, server gone): nobody in this group was answered, so everybody hears of it.
                    foreach (var work in group) work.Fail(cause);
                    // A full disk may have ended the transaction under the connection: the next group starts with a fresh one.
                    Close(connection);
                    connection = null;
                }
            }
        }
        finally
        {
            Close(connection);
            ended.TrySetResult();
        }
    }

    private void Close(DbConnection? connection)
    {
        foreach (var command in commands.Values) command.Dispose();
        commands.Clear();
        connection?.Dispose();
    }

    private bool Next(List<Work> group)
    {
        group.Clear();
        var reader = works.Reader;
        while (group.Count == 0)
        {
            while (group.Count < MostInOneCommit && reader.TryRead(out var work))
                if (work.Start()) group.Add(work);
            if (group.Count > 0) return true;
            if (!reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult()) return false;
        }

        return true;
    }

    private void Commit(DbConnection connection, List<Work> group)
    {
        using var transaction = engine.BeginWriting(connection);
        foreach (var work in group)
        {
            const string point = "work";
            if (group.Count > 1) transaction.Save(point);
            try
            {
                using var session = new WriteSession(engine, connection, transaction, WholeMilliseconds(time.GetUtcNow()), commands);
                work.Do(session);
                if (group.Count > 1) transaction.Release(point);
            }
            catch (Exception cause) when (cause is not OutOfMemoryException)
            {
                work.Fail(cause);
                if (group.Count == 1)
                {
                    transaction.Rollback();
                    return;
                }

                try
                {
                    transaction.Rollback(point);
                    transaction.Release(point);
                }
                catch (Exception ended) when (ended is InvalidOperationException or DbException)
                {
                    // A full disk ends the whole transaction: nobody's work is left, and everybody of the group hears the first cause.
                    ExceptionDispatchInfo.Throw(cause);
                }
            }
        }

        transaction.Commit();
        foreach (var work in group) work.Answer();
    }

    /// <summary>What is written is what is read back: an instant has whole milliseconds.</summary>
    private static DateTimeOffset WholeMilliseconds(DateTimeOffset now) => DateTimeOffset.FromUnixTimeMilliseconds(now.ToUnixTimeMilliseconds());

    private abstract class Work
    {
        private const int Waiting = 0, Started = 1, GivenUp = 2;
        private int stage;

        /// <summary>True when the writer may do it: from then on it cannot be cancelled.</summary>
        public bool Start() => Interlocked.CompareExchange(ref stage, Started, Waiting) == Waiting;

        /// <summary>True when it still waited: then it is never done.</summary>
        public bool GiveUp() => Interlocked.CompareExchange(ref stage, GivenUp, Waiting) == Waiting;

        public abstract void Do(WriteSession session);
        public abstract void Answer();
        public abstract void Fail(Exception cause);
    }

    private sealed class Work<T>(Func<WriteSession, T> work) : Work
    {
        private T answer = default!;

        public TaskCompletionSource<T> Done { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public override void Do(WriteSession session) => answer = work(session);
        public override void Answer() => Done.TrySetResult(answer);
        public override void Fail(Exception cause) => Done.TrySetException(cause);
    }
}
