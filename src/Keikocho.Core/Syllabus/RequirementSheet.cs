using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>Where a line stands on a sheet, in the order of the sheet. Words and questions stand apart from what is shown.</summary>
public enum SheetPart
{
    /// <summary>Falls.</summary>
    Falls = 1,
    /// <summary>Throws, combinations, counters, grips, movement.</summary>
    Standing = 2,
    /// <summary>Holds, escapes, turnovers, strangles, armlocks.</summary>
    Ground = 3,
    /// <summary>Free practice and exercises.</summary>
    Practice = 4,
    /// <summary>Etiquette.</summary>
    Manners = 5,
    /// <summary>Words.</summary>
    Words = 6,
    /// <summary>Questions.</summary>
    Questions = 7,
}

/// <summary>One item of a line.</summary>
/// <param name="Item">The item, whole.</param>
/// <param name="Way">The agreed other way of showing it; null for the usual one.</param>
/// <param name="InsteadOf">Name of the item that it stands in for under an age rule or for the neck; null otherwise.</param>
/// <param name="KeptUntil">Kept from an earlier test until this day: not shown again; null otherwise.</param>
/// <param name="Chosen">Chosen from the pool, or drawn.</param>
public sealed record SheetItem(Item Item, string? Way = null, string? InsteadOf = null, DateOnly? KeptUntil = null, bool Chosen = false);

/// <summary>One line of a sheet: so many of these items.</summary>
/// <param name="Requirement">Key of the requirement, with its rank's key before a slash where it comes from another rank: "white-1/stop".</param>
/// <param name="Part">Where it stands.</param>
/// <param name="Count">How many must be good.</param>
/// <param name="Items">Of these; as many as <paramref name="Count"/> where all are asked.</param>
/// <param name="Title">The line, in plain words; never empty.</param>
/// <param name="Condition">Condition; null for none.</param>
/// <param name="Critical">Heavy box.</param>
/// <param name="Carry">How long it keeps being asked.</param>
/// <param name="FromRank">Name of the rank that first asked it, where that is another one; null otherwise.</param>
/// <param name="Ages">On the copy on the wall: "from 8 years", null for all ages and on a child's sheet.</param>
public sealed record SheetLine(
    string Requirement,
    SheetPart Part,
    int Count,
    IReadOnlyList<SheetItem> Items,
    string Title,
    string? Condition,
    bool Critical,
    Carry Carry,
    string? FromRank,
    string? Ages)
{
    /// <summary>Every item is asked.</summary>
    public bool IsAll => Count == Items.Count;

    /// <summary>Either of two.</summary>
    public bool IsEither => Count == 1 && Items.Count == 2;
}

/// <summary>What one child, or anybody of a rank, must show at one test.</summary>
/// <param name="Rank">Key of the rank.</param>
/// <param name="RankName">Its name in this edition.</param>
/// <param name="FromRankName">The rank worn before it; null for the first.</param>
/// <param name="EditionName">Name of the edition.</param>
/// <param name="EditionFrom">First day of the edition.</param>
/// <param name="UnitName">Name of the unit; null where none is set.</param>
/// <param name="UnitNumber">Its number in the rotation, from 1.</param>
/// <param name="TestOn">Day of the test.</param>
/// <param name="Lines">In the order of the sheet: by part, then as the edition has them; what is asked again comes after what is new.</param>
/// <param name="Minima">Least time and age, with the figures for this child's age.</param>
/// <param name="Draw">Number of the draw where something was drawn; null otherwise.</param>
/// <param name="LeftOut">What is not asked of this child and why: an age rule, the neck, a kept pass, no unit.</param>
/// <param name="Reasons">Every rule used, in plain sentences.</param>
/// <param name="Settings">The settings used.</param>
public sealed record RequirementSheet(
    string Rank,
    string RankName,
    string? FromRankName,
    string EditionName,
    DateOnly? EditionFrom,
    string? UnitName,
    int? UnitNumber,
    DateOnly TestOn,
    IReadOnlyList<SheetLine> Lines,
    Minima Minima,
    int? Draw,
    IReadOnlyList<Reason> LeftOut,
    IReadOnlyList<Reason> Reasons,
    IReadOnlyList<SettingUsed> Settings);
