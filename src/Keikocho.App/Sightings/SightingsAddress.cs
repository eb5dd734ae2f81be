using System.Globalization;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.App.Sightings;

/// <summary>Addresses of what was seen on an evening.</summary>
public static class SightingsAddress
{
    /// <summary>The grid of items.</summary>
    public const string Page = "/sightings";

    /// <summary>The grid of words and questions.</summary>
    public const string Words = "/sightings/words";

    /// <summary>The grid of falls.</summary>
    public const string Falls = "/sightings/falls";

    /// <summary>What waits for an instructor.</summary>
    public const string Waiting = "/sightings/waiting";

    /// <summary>Stores the grid of items.</summary>
    public const string Set = "/sightings/set";

    /// <summary>Stores the grid of falls.</summary>
    public const string SetFalls = "/sightings/falls/set";

    /// <summary>Takes the last entry back.</summary>
    public const string Undo = "/sightings/undo";

    private const int LongestItems = 1_600;

    /// <summary>The grid of one lesson with the same choice of items.</summary>
    public static string Of(Guid lesson, GridAsked? asked = null)
    {
        asked ??= new GridAsked();
        // A list of items that makes the address too long is left out of it.
        var items = string.Concat((asked.Keys ?? []).Select(i => $"&item={Uri.EscapeDataString(i)}"));
        return $"{(asked.Words ? Words : Page)}?lesson={lesson:D}{EndOf(asked.End)}{(asked.From is null ? "" : $"&from={Uri.EscapeDataString(asked.From)}")}{(items.Length > LongestItems ? "" : items)}";
    }

    /// <summary>The grid of falls of one lesson.</summary>
    public static string OfFalls(Guid lesson, FallWay way, int stage, MatEnd? end = null) =>
        string.Create(CultureInfo.InvariantCulture, $"{Falls}?lesson={lesson:D}{EndOf(end)}&way={FallForms.Value(way)}&stage={stage}");

    private static string EndOf(MatEnd? end) => end is { } some ? $"&end={GridAsked.Value(some)}" : "";
}
