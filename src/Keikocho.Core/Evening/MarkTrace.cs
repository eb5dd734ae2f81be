using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>What has become of a mark. No mark is ever thrown away.</summary>
public enum MarkFate
{
    /// <summary>Its word still holds good on its device; a later word may be the stronger.</summary>
    Speaks = 0,
    /// <summary>Taken back by an undo.</summary>
    TakenBack = 1,
    /// <summary>Another mark, mostly a correction, took its place.</summary>
    Replaced = 2,
    /// <summary>It says nothing of presence: an undo or a confirmation.</summary>
    NoWord = 3,
}

/// <summary>One mark and what became of it, for the trail that the head instructor sees.</summary>
/// <param name="Mark">The mark as it was made: who, when, what.</param>
/// <param name="Fate">What became of it.</param>
/// <param name="By">The mark that took it back or took its place; null when none did.</param>
public sealed record MarkTrace(AttendanceMark Mark, MarkFate Fate, MarkId? By);
