using Keikocho.Core.Evening;

namespace Keikocho.Store.Demo;

/// <summary>Something seen of one child at one lesson, before it is a mark.</summary>
/// <param name="Item">The item; that of all falls for a fall.</param>
/// <param name="Kind">Sighting, words or fall.</param>
/// <param name="Code">What was seen.</param>
internal readonly record struct DemoSeen(Guid Item, MarkKind Kind, int Code);

/// <summary>Who enters what was seen, and whether that is enough by itself.</summary>
/// <param name="By">The adult or leader.</param>
/// <param name="SignsSightings">May sign off a sighting.</param>
/// <param name="SignsFalls">May confirm a fall.</param>
internal readonly record struct DemoEyes(Guid By, bool SignsSightings, bool SignsFalls)
{
    /// <summary>May sign off a mark of this kind.</summary>
    public bool Signs(MarkKind kind) => kind == MarkKind.Fall ? SignsFalls : SignsSightings;
}

/// <summary>How far a child has come with what the next test asks.</summary>
internal enum DemoProgress
{
    /// <summary>Everything was seen.</summary>
    Done,
    /// <summary>One thing lacks an evening.</summary>
    Nearly,
    /// <summary>Two thirds of it.</summary>
    Some,
    /// <summary>Little of it.</summary>
    Few,
}

/// <summary>One lesson as a child who may be watched was at it.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Falls">There when the falls were done.</param>
/// <param name="Stayed">There to the end.</param>
internal readonly record struct DemoPresence(DemoLesson Lesson, bool Falls, bool Stayed);
