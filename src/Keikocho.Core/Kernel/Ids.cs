namespace Keikocho.Core.Kernel;

// Every id is a version-7 GUID, made where the thing was made (a tablet makes them while offline).
// A type of its own for each, so that a child's id cannot stand where a lesson's is meant.

/// <summary>A person: child, adult or both at once over the years.</summary>
public readonly record struct PersonId(Guid Value);

/// <summary>A programme of the club (juniors, teens), each with its own ladder and rotation.</summary>
public readonly record struct ProgrammeId(Guid Value);

/// <summary>One dated lesson of one programme. The id, never a clock, names the day of a mark.</summary>
public readonly record struct LessonId(Guid Value);

/// <summary>A term of the club's calendar.</summary>
public readonly record struct TermId(Guid Value);

/// <summary>A device that makes marks: a browser on the laptop, a tablet, or one reading of a file.</summary>
public readonly record struct DeviceId(Guid Value);

/// <summary>One mark, made once and never changed.</summary>
public readonly record struct MarkId(Guid Value);

/// <summary>One thing that can be shown: a fall, a throw, a hold-down, a word; stable across editions.</summary>
public readonly record struct ItemId(Guid Value);
