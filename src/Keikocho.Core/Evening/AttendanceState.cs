namespace Keikocho.Core.Evening;

/// <summary>Where one person stands at one lesson. The numbers are stored and never change their meaning.</summary>
public enum AttendanceWord
{
    /// <summary>Nobody has said anything. Not absent, until "the rest are absent".</summary>
    Untouched = 0,
    /// <summary>Here.</summary>
    Present = 1,
    /// <summary>Was here and has gone.</summary>
    Left = 2,
    /// <summary>Did not come, nobody told us.</summary>
    Absent = 3,
    /// <summary>Did not come, told us.</summary>
    Excused = 4,
}

/// <summary>Two devices said different things; both are kept and shown. The numbers are stored.</summary>
public enum AttendanceClash
{
    /// <summary>No disagreement.</summary>
    None = 0,
    /// <summary>Present on one device, absent or excused on another: present stands.</summary>
    PresentAndAbsent = 1,
    /// <summary>On time on one device, late on another: late stands.</summary>
    OnTimeAndLate = 2,
}

/// <summary>The state of one person at one lesson, folded from all its marks.</summary>
/// <param name="Word">Untouched, present, left, absent or excused.</param>
/// <param name="Arrived">Arrival, where known.</param>
/// <param name="LeftAt">Leaving, where known; only when <paramref name="Word"/> is left.</param>
/// <param name="Late">Came after the register was taken, by the clock or by an imported word.</param>
/// <param name="Counts">A lesson attended: on the mat before half time.</param>
/// <param name="Ukemi">An evening at which this person was there for the falls.</param>
/// <param name="LeftEarly">Left before half time; the page says so.</param>
/// <param name="Clash">A disagreement between devices.</param>
public sealed record AttendanceState(
    AttendanceWord Word,
    TimeOnly? Arrived = null,
    TimeOnly? LeftAt = null,
    bool Late = false,
    bool Counts = false,
    bool Ukemi = false,
    bool LeftEarly = false,
    AttendanceClash Clash = AttendanceClash.None)
{
    /// <summary>Nobody has said anything.</summary>
    public static AttendanceState Untouched { get; } =
        new(AttendanceWord.Untouched, null, null, false, false, false, false, AttendanceClash.None);
}
