using System.Globalization;
using Keikocho.Core.Safety;

namespace Keikocho.App.Sightings;

/// <summary>Addresses of what was seen on an evening.</summary>
public static class SightingsAddress
{
    /// <summary>The grid of items.</summary>
    public const string Page = "/sightings";

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

    /// <summary>The grid of one lesson with the same choice of items.</summary>
    public static string Of(Guid lesson, string? from = null, IEnumerable<string>? items = null) =>
        $"{Page}?lesson={lesson:D}{(from is null ? "" : $"&from={Uri.EscapeDataString(from)}")}{string.Concat((items ?? []).Select(i => $"&item={Uri.EscapeDataString(i)}"))}";

    /// <summary>The grid of falls of one lesson.</summary>
    public static string OfFalls(Guid lesson, FallWay way, int stage) =>
        string.Create(CultureInfo.InvariantCulture, $"{Falls}?lesson={lesson:D}&way={FallForms.Value(way)}&stage={stage}");
}
