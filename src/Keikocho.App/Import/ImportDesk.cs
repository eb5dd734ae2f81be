using System.Collections.Concurrent;
using Keikocho.App.Club;
using Keikocho.Store.Intake;

namespace Keikocho.App.Import;

/// <summary>One file that is being worked on behind the pages.</summary>
/// <param name="Title">What is being done, in words.</param>
/// <param name="Begun">When it began.</param>
public sealed record DeskWork(string Title, DateTimeOffset Begun)
{
    private double share;

    /// <summary>The share done, 0 to 1.</summary>
    public double Share
    {
        get => Volatile.Read(ref share);
        internal set => Volatile.Write(ref share, value);
    }

    /// <summary>What came of it.</summary>
    public Task<string?> Outcome { get; internal set; } = Task.FromResult<string?>(null);

    /// <summary>Why it did not come about; null while it goes on and where all went well.</summary>
    public string? Refusal => Outcome is { IsCompletedSuccessfully: true, Result: { } sentence } ? sentence
        : Outcome.IsFaulted ? "Something went wrong while the file was worked on; nothing was changed. Try once more; if it happens again, start Keikocho anew." : null;

    /// <summary>Still at it.</summary>
    public bool IsRunning => !Outcome.IsCompleted;
}

/// <summary>Works on files behind the pages, so that a large one holds up no request; one work a reading, by its id.</summary>
public sealed partial class ImportDesk(ClubHouse house, TimeProvider time, ILogger<ImportDesk> log)
{
    private static readonly TimeSpan Kept = TimeSpan.FromHours(1);
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(700);
    private readonly ConcurrentDictionary<Guid, DeskWork> works = new();

    /// <summary>The readings.</summary>
    public ReadingStore Readings { get; } = new(house.Writer);

    /// <summary>What is being done with a reading; null where nothing is or was lately.</summary>
    public DeskWork? Find(Guid reading) => works.GetValueOrDefault(reading);

    /// <summary>Begins a work and waits a moment for it, so that a small file needs no page of its own.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="title">What is being done.</param>
    /// <param name="work">Does it; a sentence where it cannot be done.</param>
    public async Task DoAsync(Guid reading, string title, Func<IProgress<double>, Task<string?>> work)
    {
        foreach (var (id, old) in works)
            if (!old.IsRunning && time.GetUtcNow() - old.Begun > Kept) works.TryRemove(id, out _);
        var begun = new DeskWork(title, time.GetUtcNow());
        // A second press while the first is at work waits with it.
        var at = works.AddOrUpdate(reading, begun, (_, other) => other.IsRunning ? other : begun);
        if (ReferenceEquals(at, begun)) begun.Outcome = Task.Run(() => RunAsync(begun, work));
        await Task.WhenAny(at.Outcome, Task.Delay(Patience, time));
    }

    private async Task<string?> RunAsync(DeskWork begun, Func<IProgress<double>, Task<string?>> work)
    {
        try
        {
            return await work(new Shares(begun));
        }
        catch (Exception e)
        {
            WentWrong(log, e);
            throw;
        }
    }

    // Said at once and in order, which the usual progress does not promise.
    private sealed class Shares(DeskWork begun) : IProgress<double>
    {
        public void Report(double value) => begun.Share = value;
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Something unexpected while a file was worked on")]
    private static partial void WentWrong(ILogger log, Exception e);
}
