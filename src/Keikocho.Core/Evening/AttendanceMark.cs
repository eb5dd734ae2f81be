using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>One mark about one person's presence at one lesson, as it was made.</summary>
/// <param name="Id">Its own id.</param>
/// <param name="Device">Where it was made.</param>
/// <param name="Sequence">The device's own count, rising; the only order that is used, and only within one device.</param>
/// <param name="Kind">Present, left, absent, excused, cleared or corrected.</param>
/// <param name="At">Local time of the lesson's place that it speaks of; null when nobody noted it.</param>
/// <param name="LateWithoutTime">True for an imported "late" that came without a time.</param>
/// <param name="Replaces">The mark that it takes back or takes the place of; null otherwise.</param>
/// <param name="CorrectedTo">For a correction, what holds instead; null otherwise.</param>
/// <param name="By">The acting adult.</param>
/// <param name="MadeAt">When it was made, by the device's clock. Shown, never used for order.</param>
public sealed record AttendanceMark(
    MarkId Id,
    DeviceId Device,
    int Sequence,
    MarkKind Kind,
    TimeOnly? At,
    bool LateWithoutTime,
    MarkId? Replaces,
    MarkKind? CorrectedTo,
    PersonId By,
    DateTimeOffset MadeAt);
