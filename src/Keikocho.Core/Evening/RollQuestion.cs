using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>Where one person stands at one lesson of the evening.</summary>
/// <param name="Start">The bow of that lesson.</param>
/// <param name="State">The folded state.</param>
public sealed record RollLesson(TimeOnly Start, AttendanceState State);

/// <summary>One person of the evening: a child or an adult, in one lesson or several.</summary>
/// <param name="Person">Who.</param>
/// <param name="IsAdult">18 or over on the day.</param>
/// <param name="Lessons">All lessons of this evening that the person is on the register of.</param>
public sealed record RollPerson(PersonId Person, bool IsAdult, IReadOnlyList<RollLesson> Lessons);

/// <summary>The question: everybody of the evening, and the time now.</summary>
/// <param name="Now">Local time of the hall.</param>
/// <param name="People">Everybody on a register of the evening, in the order in which to list them.</param>
public sealed record RollSnapshot(TimeOnly Now, IReadOnlyList<RollPerson> People);
