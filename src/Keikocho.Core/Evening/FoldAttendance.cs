using System.Runtime.InteropServices;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>
/// Folds the marks of one person at one lesson into a state. The state depends on the set of marks alone:
/// neither the order of arrival nor any clock decides between two devices.
/// </summary>
/// <remarks>
/// Within one device the last word holds. Across devices: left stands over present; present over excused and absent; the
/// later arrival over the earlier; excused over absent; any word over none. For the falls, shut wins: an unknown leaving or a
/// "late" without a time is not an ukemi evening.
/// </remarks>
public static class FoldAttendance
{
    /// <summary>The state that all <paramref name="marks"/> together say, whatever order they arrived in.</summary>
    /// <exception cref="ArgumentException">A mark that is not about presence, two marks with one id, or times out of order.</exception>
    public static AttendanceState Fold(IReadOnlyList<AttendanceMark> marks, LessonTimes times, AttendanceRules rules)
    {
        ArgumentNullException.ThrowIfNull(marks);
        ArgumentNullException.ThrowIfNull(times);
        ArgumentNullException.ThrowIfNull(rules);
        times.Guard();
        rules.Guard();
        if (marks.Count == 0)
            return AttendanceState.Untouched;

        // Nearly every child has exactly one mark an evening; folding ten years of them must not allocate lists.
        if (marks.Count == 1)
        {
            var only = marks[0];
            SpokenMarks.GuardMark(only);
            var word = new DeviceWord();
            if (only.Kind != MarkKind.Confirmed && (only.Kind != MarkKind.Cleared || only.Replaces is null))
                word.Hear(only.Kind == MarkKind.Corrected ? only.CorrectedTo!.Value : only.Kind, only);
            return Combine(MemoryMarshal.CreateReadOnlySpan(ref word, 1), times, rules);
        }

        var words = new List<DeviceWord>(2);
        DeviceId? device = null;
        foreach (var spoken in SpokenMarks.Of(marks))
        {
            if (device != spoken.Device)
                words.Add(new DeviceWord());
            device = spoken.Device;
            CollectionsMarshal.AsSpan(words)[^1].Hear(spoken.Kind, spoken.Mark);
        }

        return Combine(CollectionsMarshal.AsSpan(words), times, rules);
    }

    /// <summary>The state with what became of every mark and why the state is what it is.</summary>
    public static FoldedAttendance Explain(IReadOnlyList<AttendanceMark> marks, LessonTimes times, AttendanceRules rules)
    {
        var state = Fold(marks, times, rules);
        var trail = SpokenMarks.Traces(marks)
            .OrderBy(t => t.Mark.Device.Value).ThenBy(t => t.Mark.Sequence).ThenBy(t => t.Mark.Id.Value)
            .Select(t => new MarkTrace(t.Mark, t.Fate, t.By))
            .ToArray();
        return new FoldedAttendance(state, trail, AttendanceReasons.For(state, times, rules), rules.Used());
    }

    /// <summary>Everyone who made one of the <paramref name="marks"/>: a register begun by one adult and finished by another has both names.</summary>
    public static IReadOnlyList<PersonId> MarkedBy(IEnumerable<AttendanceMark> marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        return [.. marks.Select(m => m.By).Distinct().OrderBy(p => p.Value)];
    }

    private static AttendanceState Combine(ReadOnlySpan<DeviceWord> words, LessonTimes times, AttendanceRules rules)
    {
        var lateAfter = times.Start.ToTimeSpan() + TimeSpan.FromMinutes(rules.LateAfterMinutes);
        bool left = false, present = false, absent = false, excused = false, onTime = false, late = false, lateWithoutTime = false;
        TimeOnly? latest = null, latestLate = null, leftAt = null;
        foreach (ref readonly var word in words)
        {
            left |= word.Word == AttendanceWord.Left;
            present |= word.Word == AttendanceWord.Present;
            absent |= word.Word == AttendanceWord.Absent;
            excused |= word.Word == AttendanceWord.Excused;
            if (word.Word == AttendanceWord.Left && word.LeftAt is { } gone && (leftAt is null || gone < leftAt))
                leftAt = gone;
            if (word.Arrival is not { } arrival || word.Word is not (AttendanceWord.Left or AttendanceWord.Present))
                continue;
            var isLate = arrival.LateWithoutTime || arrival.At?.ToTimeSpan() > lateAfter;
            lateWithoutTime |= arrival.LateWithoutTime;
            late |= isLate;
            onTime |= !isLate;
            latest = Later(latest, arrival.At);
            if (isLate)
                latestLate = Later(latestLate, arrival.At);
        }

        if (!left && !present)
            return excused ? new AttendanceState(AttendanceWord.Excused)
                : absent ? new AttendanceState(AttendanceWord.Absent)
                : AttendanceState.Untouched;

        var arrived = late ? latestLate : latest;
        var leftEarly = left && leftAt < times.HalfTime;
        var counts = (arrived is null || arrived < times.HalfTime) && (!leftEarly || rules.LeavingEarlyCounts);
        var ukemi = counts && !lateWithoutTime
            && (arrived is null || arrived <= times.UkemiFrom)
            && (!left || leftAt >= times.UkemiTo);
        var clash = absent || excused ? AttendanceClash.PresentAndAbsent
            : late && onTime ? AttendanceClash.OnTimeAndLate
            : AttendanceClash.None;
        return new AttendanceState(
            left ? AttendanceWord.Left : AttendanceWord.Present, arrived, leftAt, late, counts, ukemi, leftEarly, clash);
    }

    private static TimeOnly? Later(TimeOnly? a, TimeOnly? b) => a is null || b > a ? b : a;

    /// <summary>When somebody came, as one mark says it.</summary>
    private readonly record struct Arrival(TimeOnly? At, bool LateWithoutTime)
    {
        /// <summary>Unknown is in time and so the earliest; then by the clock; "late" without a time is the latest.</summary>
        public bool IsBefore(Arrival other) => Rank != other.Rank
            ? Rank < other.Rank
            : At is { } mine && other.At is { } its && (mine != its ? mine < its : !LateWithoutTime && other.LateWithoutTime);

        private int Rank => At is not null ? 1 : LateWithoutTime ? 2 : 0;
    }

    /// <summary>What one device says, after hearing its words in its own order.</summary>
    private struct DeviceWord
    {
        public AttendanceWord Word { get; private set; }
        public Arrival? Arrival { get; private set; }
        public TimeOnly? LeftAt { get; private set; }

        public void Hear(MarkKind kind, AttendanceMark mark)
        {
            switch (kind)
            {
                case MarkKind.Present:
                    var arrival = new Arrival(mark.At, mark.LateWithoutTime);
                    if (Arrival is not { } first || arrival.IsBefore(first))
                        Arrival = arrival;
                    Word = AttendanceWord.Present;
                    LeftAt = null;
                    break;
                case MarkKind.Left:
                    Word = AttendanceWord.Left;
                    LeftAt = mark.At;
                    break;
                case MarkKind.Absent:
                    this = new DeviceWord { Word = AttendanceWord.Absent };
                    break;
                case MarkKind.Excused:
                    this = new DeviceWord { Word = AttendanceWord.Excused };
                    break;
                default:
                    this = new DeviceWord();
                    break;
            }
        }
    }
}

/// <summary>A folded state with its trail and reasons.</summary>
/// <param name="State">The state.</param>
/// <param name="Trail">Every mark, by device and the device's own order, with what became of it.</param>
/// <param name="Reasons">Why the state is what it is.</param>
/// <param name="Settings">The settings used.</param>
public sealed record FoldedAttendance(
    AttendanceState State, IReadOnlyList<MarkTrace> Trail, IReadOnlyList<Reason> Reasons, IReadOnlyList<SettingUsed> Settings);
