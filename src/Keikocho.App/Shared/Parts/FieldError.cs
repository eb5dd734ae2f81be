namespace Keikocho.App.Shared.Parts;

/// <summary>What is wrong with one answer of a form.</summary>
/// <param name="Control">The control's id, which is also the field's name in the form.</param>
/// <param name="Sentence">What is wrong and what may be meant.</param>
public sealed record FieldError(string Control, string Sentence);
