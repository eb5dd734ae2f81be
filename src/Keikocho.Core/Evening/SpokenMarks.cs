using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>One word that still holds good, at its place in a device's sequence.</summary>
internal readonly record struct SpokenMark(AttendanceMark Mark, DeviceId Device, int Sequence, MarkKind Kind);

/// <summary>
/// Which marks still speak. A mark that another replaces is void, and the rule is about the set of marks alone:
/// <list type="bullet">
/// <item>An undo (cleared with <c>replaces</c>) gives back whatever its target had replaced.</item>
/// <item>Anything else that replaces takes its target's place, and keeps replaced what the target had replaced.</item>
/// <item>Where both happen to one mark, the one that takes its place is the stronger.</item>
/// <item>A mark can only replace an earlier one, so marks that replace each other in a circle are not honest: their
/// <c>replaces</c> is ignored and nothing is hidden by it.</item>
/// <item>A correction speaks at the place of the mark at the root of what it corrects.</item>
/// </list>
/// </summary>
internal static class SpokenMarks
{
    public static List<SpokenMark> Of(IReadOnlyList<AttendanceMark> marks)
    {
        var spoken = new List<SpokenMark>();
        foreach (var trace in Traces(marks))
        {
            if (trace.Fate == MarkFate.Speaks)
                spoken.Add(new SpokenMark(trace.Mark, trace.Device, trace.Sequence, trace.Kind));
        }

        // At one place stand several words only when two corrections of one mark meet: the stronger is heard last, as
        // across devices. The id breaks a tie that changes nothing.
        spoken.Sort(static (a, b) =>
        {
            var order = a.Device.Value.CompareTo(b.Device.Value);
            if (order == 0)
                order = a.Sequence.CompareTo(b.Sequence);
            if (order == 0)
                order = Strength(a.Kind).CompareTo(Strength(b.Kind));
            if (order == 0)
                order = Nullable.Compare(a.Mark.At, b.Mark.At);
            return order != 0 ? order : a.Mark.Id.Value.CompareTo(b.Mark.Id.Value);
        });
        return spoken;
    }

    /// <summary>Left over present over excused over absent over nothing.</summary>
    internal static int Strength(MarkKind kind) => kind switch
    {
        MarkKind.Left => 4,
        MarkKind.Present => 3,
        MarkKind.Excused => 2,
        MarkKind.Absent => 1,
        _ => 0,
    };

    internal readonly record struct Trace(
        AttendanceMark Mark, MarkFate Fate, MarkId? By, DeviceId Device, int Sequence, MarkKind Kind);

    internal static List<Trace> Traces(IReadOnlyList<AttendanceMark> marks)
    {
        var known = new Dictionary<MarkId, AttendanceMark>(marks.Count);
        foreach (var mark in marks)
        {
            GuardMark(mark);
            if (!known.TryAdd(mark.Id, mark) && known[mark.Id] != mark)
                throw new ArgumentException($"Two different marks have the id {mark.Id.Value}.", nameof(marks));
        }

        var targets = new Dictionary<MarkId, AttendanceMark>();
        var replacers = new Dictionary<MarkId, List<AttendanceMark>>();
        foreach (var mark in known.Values)
        {
            if (mark.Kind == MarkKind.Confirmed || mark.Replaces is not { } id
                || !known.TryGetValue(id, out var target) || IsInCircle(mark, known))
                continue;
            targets.Add(mark.Id, target);
            if (!replacers.TryGetValue(id, out var list))
                replacers.Add(id, list = []);
            list.Add(mark);
        }

        var inForce = new Dictionary<MarkId, bool>();
        var traces = new List<Trace>(known.Count);
        foreach (var mark in known.Values)
        {
            var (fate, by) = Fate(mark, replacers, inForce);
            var place = mark;
            while (place.Kind is MarkKind.Corrected or MarkKind.Cleared && targets.TryGetValue(place.Id, out var under))
                place = under;
            var kind = mark.Kind == MarkKind.Corrected ? mark.CorrectedTo!.Value : mark.Kind;
            traces.Add(new Trace(mark, fate, by, place.Device, place.Sequence, kind));
        }

        return traces;
    }

    private static (MarkFate, MarkId?) Fate(
        AttendanceMark mark, Dictionary<MarkId, List<AttendanceMark>> replacers, Dictionary<MarkId, bool> inForce)
    {
        AttendanceMark? instead = null;
        AttendanceMark? undo = null;
        foreach (var other in replacers.GetValueOrDefault(mark.Id) ?? [])
        {
            if (!IsInForce(other, replacers, inForce))
                continue;
            if (other.Kind == MarkKind.Cleared)
                undo = First(undo, other);
            else
                instead = First(instead, other);
        }

        if (instead is not null)
            return (MarkFate.Replaced, instead.Id);
        if (undo is not null)
            return (MarkFate.TakenBack, undo.Id);
        return mark.Kind == MarkKind.Confirmed || (mark.Kind == MarkKind.Cleared && mark.Replaces is not null)
            ? (MarkFate.NoWord, null)
            : (MarkFate.Speaks, null);
    }

    /// <summary>Whether what the mark does to its target still holds. The chain above a mark is a tree: circles were cut.</summary>
    private static bool IsInForce(
        AttendanceMark mark, Dictionary<MarkId, List<AttendanceMark>> replacers, Dictionary<MarkId, bool> inForce)
    {
        if (inForce.TryGetValue(mark.Id, out var known))
            return known;

        var undone = false;
        var keptUp = false;
        foreach (var other in replacers.GetValueOrDefault(mark.Id) ?? [])
        {
            if (!IsInForce(other, replacers, inForce))
                continue;
            if (other.Kind == MarkKind.Cleared)
                undone = true;
            else
                keptUp = true;
        }

        var holds = keptUp || !undone;
        inForce.Add(mark.Id, holds);
        return holds;
    }

    private static AttendanceMark First(AttendanceMark? a, AttendanceMark b) =>
        a is null || b.Id.Value.CompareTo(a.Id.Value) < 0 ? b : a;

    private static bool IsInCircle(AttendanceMark mark, Dictionary<MarkId, AttendanceMark> known)
    {
        var at = mark;
        for (var steps = 0; steps < known.Count; steps++)
        {
            if (at.Replaces is not { } id || !known.TryGetValue(id, out at!))
                return false;
            if (at.Id == mark.Id)
                return true;
        }

        return false;
    }

    internal static void GuardMark(AttendanceMark mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        if (mark.Kind is not (MarkKind.Present or MarkKind.Left or MarkKind.Absent or MarkKind.Excused
            or MarkKind.Cleared or MarkKind.Confirmed or MarkKind.Corrected))
            throw new ArgumentException($"{mark.Kind} is not a word about presence.", nameof(mark));
        if (mark.Kind != MarkKind.Corrected)
            return;
        if (mark.Replaces is null)
            throw new ArgumentException("A correction names the mark that it corrects.", nameof(mark));
        if (mark.CorrectedTo is not (MarkKind.Present or MarkKind.Left or MarkKind.Absent or MarkKind.Excused
            or MarkKind.Cleared))
            throw new ArgumentException("A correction says present, left, absent, excused or cleared.", nameof(mark));
    }
}
