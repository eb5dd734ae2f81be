using CsCheck;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Tests.Evening;

/// <summary>One evening from 17:30 to 18:45, falls from 17:45 to 17:55, half time 18:08.</summary>
internal static class Marks
{
    public static LessonTimes Times { get; } = new(At("17:30"), At("18:45"), At("17:45"), At("17:55"), At("18:08"));

    public static AttendanceRules Rules { get; } = new();

    public static TimeOnly At(string text) => TimeOnly.ParseExact(text, "HH:mm", System.Globalization.CultureInfo.InvariantCulture);

    public static AttendanceMark Mark(
        int id, MarkKind kind, string? at = null, int device = 1, int? replaces = null, MarkKind? to = null, bool late = false, int by = 1) =>
        new(Ids.Mark(id), Ids.Device(device), id, kind, at is null ? null : At(at), late,
            replaces is { } r ? Ids.Mark(r) : null, to, Ids.Person(by), DateTimeOffset.UnixEpoch);

    public static AttendanceState Fold(params AttendanceMark[] marks)
    {
        var state = FoldAttendance.Fold(marks, Times, Rules);
        Assert.Empty(FoldAttendanceCheck.Objections(marks, Times, Rules, state));
        return state;
    }

    private static readonly MarkKind[] Kinds =
    [
        MarkKind.Present, MarkKind.Left, MarkKind.Absent, MarkKind.Excused, MarkKind.Cleared, MarkKind.Corrected, MarkKind.Confirmed,
    ];

    /// <summary>Up to nine marks of three devices that replace one another at random, circles and unknown marks too.</summary>
    public static Gen<AttendanceMark[]> Any { get; } =
        Gen.Select(Gen.Int[1, 3], Gen.Int[1, 5], Gen.Int[0, 6].Select(i => Kinds[i]), Gen.Int[-1, 90], Gen.Int[0, 5], Gen.Int[0, 12], Gen.Int[0, 4].Select(i => Kinds[i]), Gen.Bool)
            .Array[1, 9]
            .Select(parts => parts.Select((p, i) =>
            {
                var (device, sequence, kind, minute, lateDraw, replaces, to, rare) = p;
                var id = i + 1;
                MarkId? target = replaces is > 0 and < 11 && (rare || kind == MarkKind.Corrected) ? Ids.Mark(replaces)
                    : kind == MarkKind.Corrected ? Ids.Mark(99) : null;
                return new AttendanceMark(
                    Ids.Mark(id), Ids.Device(device), sequence, kind,
                    minute < 0 ? null : Times.Start.AddMinutes(minute - 5),
                    lateDraw == 0 && kind == MarkKind.Present, target,
                    kind == MarkKind.Corrected ? to : null, Ids.Person(device), DateTimeOffset.UnixEpoch);
            }).ToArray());
}
