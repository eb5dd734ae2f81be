namespace Keikocho.Core.Attendance;

/// <summary>One child of the programme.</summary>
/// <param name="Child">Key or name by which the answer refers to the child.</param>
/// <param name="Held">Lessons held for this child in the last 12 months.</param>
/// <param name="Attended">Lessons attended of those.</param>
/// <param name="Needed">Lessons still needed before a test; null when not asked.</param>
/// <param name="Left">Lessons left before that test; null when not asked.</param>
/// <param name="Tonight">False when the child is known not to come tonight (excused, off the mat).</param>
public sealed record AttendanceChild(string Child, int Held, int Attended, int? Needed = null, int? Left = null, bool Tonight = true);

/// <summary>The question: a programme's children and their lessons.</summary>
/// <param name="Children">All children of the programme, in register order.</param>
/// <param name="Rule">The settings; null for the proposed ones.</param>
public sealed record AttendanceSnapshot(IReadOnlyList<AttendanceChild> Children, PriorRule? Rule = null);
