namespace Keikocho.Paper.Register;

/// <summary>An adult on the evening.</summary>
/// <param name="Name">As the club writes it.</param>
/// <param name="Role">What the adult does tonight ("head instructor", "first-aider"); may be empty.</param>
public sealed record RegisterAdult(string Name, string Role);

/// <summary>A child on the evening's register.</summary>
/// <param name="FirstName">As the club writes it.</param>
/// <param name="Second">What tells two children of one first name apart, or the surname if the club prints it; null for none.</param>
/// <param name="Mark">What the register says.</param>
/// <param name="Lesson">First course or trial lesson; null in the main group.</param>
/// <param name="Collection">The collection box.</param>
public sealed record RegisterChild(string FirstName, string? Second, RegisterMark Mark, LessonNote? Lesson, CollectionBox Collection);

/// <summary>Who stands by the register.</summary>
/// <param name="Name">The acting adult.</param>
/// <param name="At">Local time.</param>
/// <param name="Part">What this adult did ("began the register"); null for none.</param>
public sealed record RegisterSignature(string Name, TimeOnly At, string? Part);
