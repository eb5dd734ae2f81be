using Keikocho.Store.Kernel;

namespace Keikocho.Store.Promotion;

/// <summary>A rank given. Append-only: a wrong one is replaced, never changed.</summary>
public sealed class AwardRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The person.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The ladder: a person has one rank on each.</summary>
    public Guid LadderId { get; set; }
    /// <summary>The rank.</summary>
    public Guid RankId { get; set; }
    /// <summary>The day; null where only the rank is known.</summary>
    public DateOnly? On { get; set; }
    /// <summary>How the club knows.</summary>
    public AwardSource Source { get; set; }
    /// <summary>The test; null where it was elsewhere.</summary>
    public Guid? TestId { get; set; }
    /// <summary>Who gave it; null where not known.</summary>
    public Guid? ById { get; set; }
    /// <summary>Certificate number.</summary>
    public Sealed<string>? CertificateNumber { get; set; }
    /// <summary>The award that it replaces.</summary>
    public Guid? Replaces { get; set; }
    /// <summary>When it was entered.</summary>
    public DateTimeOffset MadeAt { get; set; }
}

/// <summary>How the club knows of a rank. Stored.</summary>
public enum AwardSource
{
    /// <summary>From the club's own file.</summary>
    Imported = 1,
    /// <summary>Given here.</summary>
    Promoted = 2,
    /// <summary>Brought from another club.</summary>
    Transferred = 3,
}

/// <summary>A result of one child at one test.</summary>
public sealed class ResultRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The test.</summary>
    public Guid TestId { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>Promoted, held over, stopped; as the core numbers it.</summary>
    public int Verdict { get; set; }
    /// <summary>Kept passes hold to this day.</summary>
    public DateOnly? CarriedUntil { get; set; }
    /// <summary>The result that it corrects.</summary>
    public Guid? Replaces { get; set; }
    /// <summary>When it was entered.</summary>
    public DateTimeOffset MadeAt { get; set; }
    /// <summary>By whom.</summary>
    public Guid ById { get; set; }
}

/// <summary>An item that a held-over child keeps.</summary>
public sealed class PartPassRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The result.</summary>
    public Guid ResultId { get; set; }
    /// <summary>The item.</summary>
    public Guid ItemId { get; set; }
}

/// <summary>A verdict that an instructor set against the sum, with a reason. Append-only: the newest of a child and a test holds.</summary>
public sealed class OverruleRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The test.</summary>
    public Guid TestId { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>What holds instead, as the core numbers it; 0 takes an earlier one back.</summary>
    public int Verdict { get; set; }
    /// <summary>The reason.</summary>
    public Sealed<string> Why { get; set; }
    /// <summary>The instructor.</summary>
    public Guid ById { get; set; }
    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; set; }
}

/// <summary>
/// An instructor's decision to take a share off the least time of one rank for one child. Append-only: the newest of a child and a rank
/// holds, and one of 0 percent ends what went before.
/// </summary>
public sealed class TimeOffRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The rank whose least time is meant.</summary>
    public Guid RankId { get; set; }
    /// <summary>The share, 1 to 100; 0 ends an earlier decision.</summary>
    public int Percent { get; set; }
    /// <summary>The reason.</summary>
    public Sealed<string> Why { get; set; }
    /// <summary>The day of the decision.</summary>
    public DateOnly On { get; set; }
    /// <summary>The instructor.</summary>
    public Guid ById { get; set; }
    /// <summary>When it was entered.</summary>
    public DateTimeOffset MadeAt { get; set; }
}

/// <summary>An answer that was closed, printed or told: kept as it was, with the hash of its inputs and the version of the sum.</summary>
public sealed class KeptAnswerRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>Which sum or paper.</summary>
    public string Kind { get; set; } = "";
    /// <summary>The child, lesson or test it is about.</summary>
    public Guid? SubjectId { get; set; }
    /// <summary>SHA-256 of the question.</summary>
    public byte[] InputHash { get; set; } = [];
    /// <summary>Version of the sum.</summary>
    public string SumVersion { get; set; } = "";
    /// <summary>The answer, with the settings it used, as JSON.</summary>
    public Sealed<string> Answer { get; set; }
    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; set; }
    /// <summary>By whom.</summary>
    public Guid? ById { get; set; }
}
