using System.Collections.Concurrent;

namespace Keikocho.App.Hall;

/// <summary>When a tablet was last heard, and what it said that it holds.</summary>
/// <param name="At">When.</param>
/// <param name="Waiting">Marks that waited on it then.</param>
/// <param name="Refused">Marks on it that the laptop did not take.</param>
public sealed record TabletHeard(DateTimeOffset At, int Waiting, int Refused);

/// <summary>
/// What tablets say of themselves whenever they ask how things stand. It is in memory alone: a program that was started anew knows when it
/// was started, and has heard nothing yet.
/// </summary>
public sealed class TabletsHeard(TimeProvider time)
{
    /// <summary>Header in which a tablet says how many marks wait on it.</summary>
    public const string Waiting = "Marks-Waiting";
    /// <summary>Header in which it says how many of its marks were not taken.</summary>
    public const string Refused = "Marks-Refused";

    private const int Most = 1000;
    private const int MostMarks = 100_000;
    private readonly ConcurrentDictionary<(Guid Device, DateOnly Evening), TabletHeard> heard = new();

    /// <summary>Since when it listens.</summary>
    public DateTimeOffset Since { get; } = time.GetUtcNow();

    /// <summary>A tablet was heard on an evening that it has joined.</summary>
    public void Note(Guid device, DateOnly evening, IHeaderDictionary headers)
    {
        ArgumentNullException.ThrowIfNull(headers);
        if (heard.Count > Most) heard.Clear();
        heard[(device, evening)] = new TabletHeard(time.GetUtcNow(), Count(headers[Waiting]), Count(headers[Refused]));
    }

    /// <summary>The last that was heard of a tablet on an evening; null where nothing was.</summary>
    public TabletHeard? Last(Guid device, DateOnly evening) => heard.GetValueOrDefault((device, evening));

    private static int Count(string? said) => int.TryParse(said, out var count) ? Math.Clamp(count, 0, MostMarks) : 0;
}
