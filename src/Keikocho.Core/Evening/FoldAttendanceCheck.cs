using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>
/// Judges a state without folding: it asks of every claim in the state whether some mark, or the want of one, bears it out.
/// </summary>
public static class FoldAttendanceCheck
{
    /// <summary>What is wrong with <paramref name="state"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(
        IReadOnlyList<AttendanceMark> marks, LessonTimes times, AttendanceRules rules, AttendanceState state)
    {
        ArgumentNullException.ThrowIfNull(marks);
        ArgumentNullException.ThrowIfNull(times);
        ArgumentNullException.ThrowIfNull(rules);
        ArgumentNullException.ThrowIfNull(state);
        var all = marks.Distinct().ToArray();
        var words = all.Where(m => Speaks(m, all)).Select(m => (Mark: m, Place: Place(m, all), Kind: Said(m))).ToArray();

        // The last word of each device: no other word of that device comes after it.
        var last = words.Where(w => !words.Any(o => o.Place.Device == w.Place.Device && IsAfter(o, w))).ToArray();
        var here = last.Where(w => w.Kind is MarkKind.Present or MarkKind.Left).ToArray();
        var left = last.Where(w => w.Kind == MarkKind.Left).ToArray();
        var away = last.Where(w => w.Kind is MarkKind.Absent or MarkKind.Excused).ToArray();
        var objections = new List<string>();
        void Expect(bool holds, string what)
        {
            if (!holds)
                objections.Add(what);
        }

        var word = left.Length > 0 ? AttendanceWord.Left
            : here.Length > 0 ? AttendanceWord.Present
            : away.Any(w => w.Kind == MarkKind.Excused) ? AttendanceWord.Excused
            : away.Length > 0 ? AttendanceWord.Absent
            : AttendanceWord.Untouched;
        Expect(state.Word == word, $"The word is {word}, not {state.Word}.");
        if (here.Length == 0)
        {
            Expect(state == new AttendanceState(state.Word), "Who is not here has no times, counts nowhere and clashes with nobody.");
            return objections;
        }

        // For each device that says here: its presents since it last said away or nothing, and of these the earliest.
        var arrivals = here
            .Select(h => words
                .Where(w => w.Place.Device == h.Place.Device && w.Kind == MarkKind.Present
                    && !words.Any(b => b.Place.Device == h.Place.Device && IsAfter(b, w)
                        && b.Kind is MarkKind.Absent or MarkKind.Excused or MarkKind.Cleared))
                .Select(w => (w.Mark.At, w.Mark.LateWithoutTime))
                .OrderBy(a => a.At is null && !a.LateWithoutTime ? 0 : a.At is not null ? 1 : 2)
                .ThenBy(a => a.At).ThenBy(a => a.LateWithoutTime)
                .Take(1).ToArray())
            .Where(a => a.Length == 1).Select(a => a[0]).ToArray();
        bool IsLate((TimeOnly? At, bool LateWithoutTime) a) =>
            a.LateWithoutTime || (a.At is { } at && (at.ToTimeSpan() - times.Start.ToTimeSpan()).TotalMinutes > rules.LateAfterMinutes);
        var late = arrivals.Any(IsLate);
        Expect(state.Late == late, $"Late is {late}.");
        var arrived = arrivals.Where(a => IsLate(a) == late).Max(a => a.At);
        Expect(state.Arrived == arrived, $"The arrival is {arrived?.Plain() ?? "unknown"}.");
        var leftAt = left.Min(w => w.Mark.At);
        Expect(state.LeftAt == leftAt, $"The leaving is {leftAt?.Plain() ?? "unknown"}.");
        var leftEarly = leftAt is { } gone && gone < times.HalfTime;
        Expect(state.LeftEarly == leftEarly, $"Left early is {leftEarly}.");
        var tooLate = arrived is { } came && came >= times.HalfTime;
        Expect(state.Counts == !(tooLate || (leftEarly && !rules.LeavingEarlyCounts)), "The lesson counts for who was here before half time.");
        var missedFalls = arrivals.Any(a => a.LateWithoutTime)
            || (arrived is { } a1 && a1 > times.UkemiFrom)
            || (left.Length > 0 && (leftAt is not { } l1 || l1 < times.UkemiTo));
        Expect(state.Ukemi == (state.Counts && !missedFalls), "An ukemi evening asks for all of the falls practice.");
        var clash = away.Length > 0 ? AttendanceClash.PresentAndAbsent
            : arrivals.Select(IsLate).Distinct().Count() > 1 ? AttendanceClash.OnTimeAndLate
            : AttendanceClash.None;
        Expect(state.Clash == clash, $"The clash is {clash}.");
        return objections;
    }

    private static MarkKind Said(AttendanceMark mark) => mark.Kind == MarkKind.Corrected ? mark.CorrectedTo!.Value : mark.Kind;

    private static bool IsAfter(
        (AttendanceMark Mark, AttendanceMark Place, MarkKind Kind) a, (AttendanceMark Mark, AttendanceMark Place, MarkKind Kind) b) =>
        (a.Place.Sequence, Strength(a.Kind), a.Mark.At ?? TimeOnly.MinValue, a.Mark.At.HasValue, a.Mark.Id.Value)
            .CompareTo((b.Place.Sequence, Strength(b.Kind), b.Mark.At ?? TimeOnly.MinValue, b.Mark.At.HasValue, b.Mark.Id.Value)) > 0;

    private static int Strength(MarkKind kind) => Array.IndexOf(
        [MarkKind.Cleared, MarkKind.Absent, MarkKind.Excused, MarkKind.Present, MarkKind.Left], kind);

    private static bool Speaks(AttendanceMark mark, AttendanceMark[] all) =>
        mark.Kind != MarkKind.Confirmed
        && !(mark.Kind == MarkKind.Cleared && mark.Replaces is not null)
        && !Replacers(mark, all).Any(r => Holds(r, all));

    private static bool Holds(AttendanceMark mark, AttendanceMark[] all)
    {
        var replacers = Replacers(mark, all).Where(r => Holds(r, all)).ToArray();
        return replacers.All(r => r.Kind != MarkKind.Cleared) || replacers.Any(r => r.Kind != MarkKind.Cleared);
    }

    private static IEnumerable<AttendanceMark> Replacers(AttendanceMark mark, AttendanceMark[] all) =>
        all.Where(m => m.Kind != MarkKind.Confirmed && m.Replaces == mark.Id && !Below(m, all).Contains(m));

    private static AttendanceMark Place(AttendanceMark mark, AttendanceMark[] all)
    {
        if (mark.Kind is not (MarkKind.Corrected or MarkKind.Cleared) || Below(mark, all).Contains(mark))
            return mark;
        var target = all.FirstOrDefault(m => m.Id == mark.Replaces);
        return target is null ? mark : Place(target, all);
    }

    /// <summary>All that the mark replaces, step by step; contains the mark itself when it stands in a circle.</summary>
    private static List<AttendanceMark> Below(AttendanceMark mark, AttendanceMark[] all)
    {
        var below = new List<AttendanceMark>();
        for (var next = all.FirstOrDefault(m => m.Id == mark.Replaces);
            next is not null && !below.Contains(next);
            next = all.FirstOrDefault(m => m.Id == below[^1].Replaces))
            below.Add(next);
        return below;
    }
}
