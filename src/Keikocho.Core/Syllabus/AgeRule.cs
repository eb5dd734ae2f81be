namespace Keikocho.Core.Syllabus;

/// <summary>
/// An age rule that the club entered from its own body, with source and date. None is shipped: a rule is the club's to enter and to
/// keep up to date.
/// </summary>
/// <param name="Name">In the club's words: "no neck grips".</param>
/// <param name="BelowAge">Whoever is younger on the day of the test may not be asked.</param>
/// <param name="AgeBy">What the age is reckoned by.</param>
/// <param name="Items">Keys of items.</param>
/// <param name="Techniques">Techniques, in any spelling that the name library knows.</param>
/// <param name="Kinds">Whole kinds, such as strangles.</param>
/// <param name="Source">Where it stands: body, document, page.</param>
/// <param name="SourceOn">Date of that source.</param>
public sealed record AgeRule(
    string Name,
    int BelowAge,
    AgeBasis AgeBy,
    IReadOnlyList<string> Items,
    IReadOnlyList<string> Techniques,
    IReadOnlyList<ItemKind> Kinds,
    string Source,
    DateOnly SourceOn);
