using Keikocho.Store.Kernel;

namespace Keikocho.Store.Hall;

/// <summary>
/// One tablet let in for one evening. It names the day of the tablet's marks, whatever its clock says and however late they arrive; it
/// is never deleted.
/// </summary>
public sealed class JoinRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>The tablet.</summary>
    public Guid DeviceId { get; set; }
    /// <summary>Who acts on it.</summary>
    public Guid PersonId { get; set; }
    /// <summary>What may be seen on it.</summary>
    public JoinRole Role { get; set; }
    /// <summary>The evening's date.</summary>
    public DateOnly Date { get; set; }
    /// <summary>The evening's hall.</summary>
    public Guid HallId { get; set; }
    /// <summary>1, 2, 3 ... on this evening: what the laptop calls it.</summary>
    public int Number { get; set; }
    /// <summary>When it was let in.</summary>
    public DateTimeOffset JoinedAt { get; set; }
    /// <summary>From then on it shows nothing of anybody; what it still holds it may send.</summary>
    public DateTimeOffset EndsAt { get; set; }
    /// <summary>Who let it in.</summary>
    public Guid LetInById { get; set; }
    /// <summary>When it was put out; null while it is in.</summary>
    public DateTimeOffset? PutOutAt { get; set; }
    /// <summary>By whom.</summary>
    public Guid? PutOutById { get; set; }
}

/// <summary>What a tablet is for on one evening. Stored.</summary>
public enum JoinRole
{
    /// <summary>Held by an adult who teaches.</summary>
    Instructor = 1,
    /// <summary>Held by a junior leader.</summary>
    JuniorLeader = 2,
}

/// <summary>The code by which an adult opens, for ten seconds, what only adults may see on a tablet. One a person.</summary>
public sealed class AdultCodeRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The adult.</summary>
    public Guid PersonId { get; set; }
    /// <summary>Chance of its own, 16 bytes.</summary>
    public byte[] Salt { get; set; } = [];
    /// <summary>The code's digest (PBKDF2). Six digits are few whatever digests them: what keeps them is that wrong ones are slowed down.</summary>
    public byte[] Digest { get; set; } = [];
    /// <summary>When it was set.</summary>
    public DateTimeOffset MadeAt { get; set; }
}
