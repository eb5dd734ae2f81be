using Keikocho.Store.Kernel;

namespace Keikocho.Store.Evening;

/// <summary>An item that an end worked on at a lesson: what its card counts as shown.</summary>
public sealed class ShowingRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The lesson.</summary>
    public Guid LessonId { get; set; }
    /// <summary>The end: 0 beginners, 1 main group, as the core numbers them.</summary>
    public int End { get; set; }
    /// <summary>The item.</summary>
    public Guid ItemId { get; set; }
    /// <summary>Which slot of the card, from 1.</summary>
    public int Slot { get; set; }
    /// <summary>Who said so.</summary>
    public Guid ById { get; set; }
    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; set; }
    /// <summary>When it was taken back; null while it holds.</summary>
    public DateTimeOffset? TakenBackAt { get; set; }
}

/// <summary>Two children who worked together at a lesson. A three is two such rows, each with its middle.</summary>
public sealed class TogetherRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The lesson.</summary>
    public Guid LessonId { get; set; }
    /// <summary>One of the two.</summary>
    public Guid OneId { get; set; }
    /// <summary>The other.</summary>
    public Guid OtherId { get; set; }
    /// <summary>Which making of pairs of the evening, from 1.</summary>
    public int Round { get; set; }
    /// <summary>The activity, as the core numbers it.</summary>
    public int Activity { get; set; }
    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; set; }
    /// <summary>When they were put with others instead; null while it holds.</summary>
    public DateTimeOffset? UndoneAt { get; set; }
}

/// <summary>Two children who are asked to work together, where no gate forbids it: twins who settle no other way, a buddy.</summary>
public sealed class KeepTogetherRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>One.</summary>
    public Guid FirstId { get; set; }
    /// <summary>The other.</summary>
    public Guid SecondId { get; set; }
    /// <summary>From this day.</summary>
    public DateOnly From { get; set; }
    /// <summary>To this day, inclusive; null while it goes on.</summary>
    public DateOnly? To { get; set; }
}

/// <summary>Something that stands on or at the mat of a hall, seen from above, in centimetres from the corner where the length begins.</summary>
public sealed class ObstacleRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The hall.</summary>
    public Guid HallId { get; set; }
    /// <summary>As the club calls it: pillar, stage, radiator.</summary>
    public string Name { get; set; } = "";
    /// <summary>Along the length.</summary>
    public int FromLengthCm { get; set; }
    /// <summary>Along the width.</summary>
    public int FromWidthCm { get; set; }
    /// <summary>How long.</summary>
    public int LengthCm { get; set; }
    /// <summary>How wide.</summary>
    public int WidthCm { get; set; }
}
