using Keikocho.Store.Kernel;

namespace Keikocho.Store.Syllabus;

/// <summary>A ladder of ranks.</summary>
public sealed class LadderRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>Its name.</summary>
    public string Name { get; set; } = "";
}

/// <summary>A rank of a ladder, the same through all editions.</summary>
public sealed class RankRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The ladder.</summary>
    public Guid LadderId { get; set; }
    /// <summary>Stable key in every edition; empty until a first edition names it.</summary>
    public string Key { get; set; } = "";
    /// <summary>The club's own words.</summary>
    public string Name { get; set; } = "";
    /// <summary>Colour of the cloth as a word of the look (white, yellow ...); null where it is none of them.</summary>
    public string? Cloth { get; set; }
    /// <summary>Tips, 0 to 4.</summary>
    public int Tips { get; set; }
    /// <summary>From 1, lowest first; 0 for one that the newest edition does not have and nobody on a register wears.</summary>
    public int Position { get; set; }
}

/// <summary>A dated version of the syllabus; once published it never changes.</summary>
public sealed class EditionRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The ladder.</summary>
    public Guid LadderId { get; set; }
    /// <summary>Its name on every sheet.</summary>
    public string Name { get; set; } = "";
    /// <summary>First day on which it holds.</summary>
    public DateOnly? From { get; set; }
    /// <summary>Until this day a child may still be tested by the edition before it; null where this one holds for everybody at once.</summary>
    public DateOnly? Changeover { get; set; }
    /// <summary>When it was published; null while it is a draft.</summary>
    public DateTimeOffset? PublishedAt { get; set; }
    /// <summary>The adult who published it; null while it is a draft.</summary>
    public Guid? PublishedById { get; set; }
    /// <summary>The published edition, whole, as JSON; empty while it is a draft. Never changed.</summary>
    public string Document { get; set; } = "";
}

/// <summary>One step of a draft; taking the last one back is the undo.</summary>
public sealed class EditionDraftRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The edition.</summary>
    public Guid EditionId { get; set; }
    /// <summary>From 1, rising.</summary>
    public int Step { get; set; }
    /// <summary>The whole draft after this step, as JSON.</summary>
    public string Document { get; set; } = "";
    /// <summary>What the step did, in words: "Yellow: O-goshi, moving was added."</summary>
    public string Said { get; set; } = "";
    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; set; }
    /// <summary>By whom.</summary>
    public Guid? ById { get; set; }
}

/// <summary>An item's key with its id, the same through all editions: marks point to the id.</summary>
public sealed class ItemRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The key, the same in every edition of the club.</summary>
    public string Key { get; set; } = "";
    /// <summary>Fall, throw, hold-down ... as the core numbers it.</summary>
    public int Kind { get; set; }
    /// <summary>Its newest name.</summary>
    public string Name { get; set; } = "";
}

/// <summary>An item that was chosen for a child from a pool.</summary>
public sealed class ChosenItemRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>Key of the rank and of its requirement: "yellow/own-choice".</summary>
    public string Requirement { get; set; } = "";
    /// <summary>The item.</summary>
    public Guid ItemId { get; set; }
    /// <summary>Who noted it.</summary>
    public Guid? ById { get; set; }
    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; set; }
}

/// <summary>An age rule that the club entered from its body.</summary>
public sealed class AgeRuleRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The rule, whole, as JSON of the core's own record.</summary>
    public string Document { get; set; } = "";
    /// <summary>Who entered it.</summary>
    public Guid? ById { get; set; }
    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; set; }
    /// <summary>When it was taken out; null while it holds.</summary>
    public DateTimeOffset? EndedAt { get; set; }
}
