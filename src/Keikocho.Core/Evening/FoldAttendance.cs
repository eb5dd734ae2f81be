namespace Keikocho.Core.Evening;

/// <summary>Folds the marks of one person at one lesson into a state (C1, C23).</summary>
public static class FoldAttendance
{
    /// <summary>The state that all <paramref name="marks"/> together say, whatever order they arrived in.</summary>
    public static AttendanceState Fold(IReadOnlyList<AttendanceMark> marks, LessonTimes times, AttendanceRules rules)
        => throw new NotSupportedException();
}
