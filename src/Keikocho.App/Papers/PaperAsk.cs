namespace Keikocho.App.Papers;

/// <summary>What was asked of a paper, as the address says it.</summary>
/// <param name="Lesson">Which lesson's register.</param>
/// <param name="Programme">Which programme's blank register.</param>
/// <param name="Span">"month", "term" or "dates".</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="Paper">"a4" or "letter".</param>
public sealed record PaperAsk(string? Lesson = null, string? Programme = null, string? Span = null, string? From = null, string? To = null, string? Paper = null);
