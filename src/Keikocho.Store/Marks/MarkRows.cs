using Keikocho.Core.Evening;
using Keikocho.Store.Kernel;

namespace Keikocho.Store.Marks;

/// <summary>One mark as it was made: append-only, without free text. Nothing sorts by its id.</summary>
public sealed class MarkRow : IIdRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <inheritdoc/>
    public Guid Id { get; set; }
    /// <summary>Where it was made.</summary>
    public Guid DeviceId { get; set; }
    /// <summary>The device's own count.</summary>
    public int Sequence { get; set; }
    /// <summary>Which lesson; the id names the day, no clock does.</summary>
    public Guid LessonId { get; set; }
    /// <summary>Whom it speaks of.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The acting adult; null for a mark from a file, whose hand is not known.</summary>
    public Guid? ById { get; set; }
    /// <summary>When it was made, by the device's clock.</summary>
    public DateTimeOffset MadeAt { get; set; }
    /// <summary>When it was received, by ours.</summary>
    public DateTimeOffset ReceivedAt { get; set; }
    /// <summary>What it says.</summary>
    public MarkKind Kind { get; set; }
    /// <summary>Local time it speaks of: arrival, leaving.</summary>
    public TimeOnly? At { get; set; }
    /// <summary>
    /// The item of a sighting or of words, <see cref="MarkCode.Falls"/> for a fall, and the same for whatever takes one of them back,
    /// corrects or confirms it; null for a mark of presence.
    /// </summary>
    public Guid? ItemId { get; set; }
    /// <summary>The rest, coded by kind: see <see cref="MarkCode"/>.</summary>
    public int Code { get; set; }
    /// <summary>The mark that it takes back or takes the place of.</summary>
    public Guid? Replaces { get; set; }
}

/// <summary>How <see cref="MarkRow.Code"/> is read. Stored; the numbers never change their meaning.</summary>
public static class MarkCode
{
    /// <summary>Bit of a present mark: an imported "late" without a time.</summary>
    public const int LateWithoutTime = 0x100;

    /// <summary>Bit of a sighting: a sign-off that is enough by itself.</summary>
    public const int Settled = 0x100;

    /// <summary>Bit of a fall: the head touched.</summary>
    public const int HeadTouched = 0x1000;

    /// <summary>Lowest four bits of a fall: the direction; the next four the side, the next four the stage.</summary>
    public const int FallPartMask = 0xF;

    /// <summary>For a sighting, the low byte is the <see cref="SeenWord"/>.</summary>
    public const int SeenMask = 0xFF;

    /// <summary>For a correction, the low byte is the <see cref="MarkKind"/> that holds instead.</summary>
    public const int CorrectedToMask = 0xFF;

    /// <summary>For a correction of a sighting or a fall, the code that holds instead stands so many bits higher.</summary>
    public const int CorrectedToShift = 8;

    /// <summary>
    /// Bit of a sighting, a fall, a correction or a confirmation: whoever made it might sign off such a thing, by the duties of that day.
    /// The store sets it when the mark comes in, so that a later change of duties changes nothing that was seen.
    /// </summary>
    public const int ByRight = 0x1000000;

    /// <summary>Stands for the item of every fall: the falls of one child are found together, as one item is.</summary>
    public static readonly Guid Falls = Guid.Empty;
}

/// <summary>The state of one person at one lesson: folded from its marks in the same transaction, never patched.</summary>
public sealed class AttendanceRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The lesson.</summary>
    public Guid LessonId { get; set; }
    /// <summary>The person.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The lesson's programme, for counting.</summary>
    public Guid ProgrammeId { get; set; }
    /// <summary>The lesson's date, for counting.</summary>
    public DateOnly Date { get; set; }
    /// <summary>The word.</summary>
    public AttendanceWord Word { get; set; }
    /// <summary>Arrival.</summary>
    public TimeOnly? Arrived { get; set; }
    /// <summary>Leaving.</summary>
    public TimeOnly? LeftAt { get; set; }
    /// <summary>Late.</summary>
    public bool Late { get; set; }
    /// <summary>A lesson attended, at a lesson that was held.</summary>
    public bool Counts { get; set; }
    /// <summary>There for the falls.</summary>
    public bool Ukemi { get; set; }
    /// <summary>Left before half time.</summary>
    public bool LeftEarly { get; set; }
    /// <summary>Two devices disagree.</summary>
    public AttendanceClash Clash { get; set; }
}

/// <summary>What was seen of one child and one item: folded from its marks in the same transaction, never patched.</summary>
public sealed class ItemStateRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>The item.</summary>
    public Guid ItemId { get; set; }
    /// <summary>Its evenings, oldest first, packed; see <see cref="SeenPack"/>.</summary>
    public string Evenings { get; set; } = "";
}

/// <summary>The falls of one child that still stand: folded from its marks in the same transaction, never patched.</summary>
public sealed class FallStateRow : IClubRow
{
    /// <inheritdoc/>
    public int Club { get; set; }
    /// <summary>The child.</summary>
    public Guid PersonId { get; set; }
    /// <summary>Every fall, by day, packed; see <see cref="FallPack"/>.</summary>
    public string Falls { get; set; } = "";
}
