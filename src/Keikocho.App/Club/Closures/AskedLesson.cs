namespace Keikocho.App.Club.Closures;

/// <summary>A lesson with marks that a new closure covers.</summary>
/// <param name="Field">The field of its answer.</param>
/// <param name="Words">Which it is, and how many were there.</param>
/// <param name="Question">What is asked of it again when it was left unanswered.</param>
/// <param name="Answer">"held", "closed", or null while nobody has said.</param>
public sealed record AskedLesson(string Field, string Words, string Question, string? Answer);
