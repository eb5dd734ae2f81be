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
    /// <summary>The club's own words.</summary>
    public string Name { get; set; } = "";
    /// <summary>Colour of the cloth as a word of the look (white, yellow ...); null where it is none of them.</summary>
    public string? Cloth { get; set; }
    /// <summary>Red tips, 0 to 2.</summary>
    public int Tips { get; set; }
    /// <summary>From 1, lowest first.</summary>
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
    /// <summary>When it was published; null while it is a draft.</summary>
    public DateTimeOffset? PublishedAt { get; set; }
}

/// <summary>A rank as one edition has it, with its minima.</summary>
public sealed class EditionRankRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The edition.</summary>
    public Guid EditionId { get; set; }
    /// <summary>The rank.</summary>
    public Guid RankId { get; set; }
    /// <summary>Its name in this edition.</summary>
    public string Name { get; set; } = "";
    /// <summary>From 1.</summary>
    public int Position { get; set; }
    /// <summary>Lessons since the last rank.</summary>
    public int? MinimumLessons { get; set; }
    /// <summary>Weeks since the last rank.</summary>
    public int? MinimumWeeks { get; set; }
    /// <summary>Years.</summary>
    public int? MinimumAge { get; set; }
    /// <summary>Whether lessons are counted since the rank before the last one.</summary>
    public bool CountedOverTwoRanks { get; set; }
    /// <summary>Lessons that count on one day; null for all.</summary>
    public int? LessonsCountedADay { get; set; }
    /// <summary>A lesson shorter than this does not count; null for all.</summary>
    public int? ShortestLessonMinutes { get; set; }
    /// <summary>Age is reckoned by calendar year, not by birthday.</summary>
    public bool AgeByCalendarYear { get; set; }
}

/// <summary>A named technique: the Kodokan's, or the club's own and what it is counted as.</summary>
public sealed class TechniqueRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The club's spelling.</summary>
    public string Name { get; set; } = "";
    /// <summary>Kana, the truth of the spelling.</summary>
    public string? Kana { get; set; }
    /// <summary>Kanji.</summary>
    public string? Kanji { get; set; }
    /// <summary>Class of the Kodokan's list.</summary>
    public string? Class { get; set; }
    /// <summary>The technique that it is counted as.</summary>
    public Guid? CountedAsId { get; set; }
}

/// <summary>One thing to show: a technique and its form, or something else. Stable across editions.</summary>
public sealed class ItemRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>Fall, throw, hold-down ... as the core numbers it.</summary>
    public int Kind { get; set; }
    /// <summary>The technique; null for etiquette, words, questions.</summary>
    public Guid? TechniqueId { get; set; }
    /// <summary>The second technique of a combination, counter or sequence.</summary>
    public Guid? SecondTechniqueId { get; set; }
    /// <summary>Still, moving, both sides, A into B ... in the starter format's words.</summary>
    public string Form { get; set; } = "";
    /// <summary>Its name on the sheet.</summary>
    public string Name { get; set; } = "";
}

/// <summary>A harder form meets an easier one.</summary>
public sealed class ItemCoverRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The harder form.</summary>
    public Guid ItemId { get; set; }
    /// <summary>The easier form that it meets.</summary>
    public Guid CoversId { get; set; }
}

/// <summary>What a rank asks in one edition.</summary>
public sealed class RequirementRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The edition.</summary>
    public Guid EditionId { get; set; }
    /// <summary>The rank it leads to; null for the first course.</summary>
    public Guid? RankId { get; set; }
    /// <summary>Order on the sheet.</summary>
    public int Position { get; set; }
    /// <summary>All of, any k of n, k from a pool, k drawn ... as the core numbers it.</summary>
    public int Shape { get; set; }
    /// <summary>k, or a share in percent, by shape.</summary>
    public int Count { get; set; }
    /// <summary>A condition in the starter format's words.</summary>
    public string Condition { get; set; } = "";
    /// <summary>From this age; null for all.</summary>
    public int? AgeFrom { get; set; }
    /// <summary>To this age, inclusive; null for all.</summary>
    public int? AgeTo { get; set; }
    /// <summary>Not good means not promoted.</summary>
    public bool Critical { get; set; }
    /// <summary>Always, this term, once asked stays; as the core numbers it.</summary>
    public int Carry { get; set; }
}

/// <summary>An item of a requirement.</summary>
public sealed class RequirementItemRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The requirement.</summary>
    public Guid RequirementId { get; set; }
    /// <summary>The item.</summary>
    public Guid ItemId { get; set; }
    /// <summary>Order.</summary>
    public int Position { get; set; }
}

/// <summary>A unit of the rotation, or the first course.</summary>
public sealed class UnitRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The edition.</summary>
    public Guid EditionId { get; set; }
    /// <summary>Its name.</summary>
    public string Name { get; set; } = "";
    /// <summary>Order in the rotation from 1; 0 for the first course.</summary>
    public int Position { get; set; }
}

/// <summary>An item of a unit.</summary>
public sealed class UnitItemRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The unit.</summary>
    public Guid UnitId { get; set; }
    /// <summary>The item.</summary>
    public Guid ItemId { get; set; }
    /// <summary>Order.</summary>
    public int Position { get; set; }
}
