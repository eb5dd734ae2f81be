namespace Keikocho.App.Papers;

/// <summary>What was asked of a paper, as the address says it.</summary>
/// <param name="Lesson">Which lesson's register.</param>
/// <param name="Programme">Which programme's blank register.</param>
/// <param name="Span">"month", "term" or "dates".</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="Paper">"a4" or "letter".</param>
/// <param name="Test">Which promotion test.</param>
/// <param name="Children">Whose sheets: "forward", "if" or "all".</param>
/// <param name="Rank">Which rank's copy for the wall.</param>
/// <param name="Unit">Which unit stands on it; empty for the unit of the term.</param>
/// <param name="Child">Which child.</param>
/// <param name="For">What the red folder is for: an evening or a group.</param>
/// <param name="WithoutCare">"yes" prints the red folder without care notes.</param>
public sealed record PaperAsk(
    string? Lesson = null, string? Programme = null, string? Span = null, string? From = null, string? To = null, string? Paper = null,
    string? Test = null, string? Children = null, string? Rank = null, string? Unit = null, string? Child = null, string? For = null, string? WithoutCare = null);
