using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>The question: what a family reads about one child and one test.</summary>
/// <param name="Child">The child's name as the family knows it.</param>
/// <param name="Answer">The verdict with its reasons.</param>
/// <param name="Sheet">The sheet.</param>
/// <param name="AsOf">The evening just closed.</param>
/// <param name="Attended">Lessons attended this term.</param>
/// <param name="Held">Lessons held this term for this child.</param>
/// <param name="ListClosedOn">The day the list was closed; null while it is open.</param>
/// <param name="UnitsMissed">Units of terms that the child missed whole, with the term in which each returns; empty for none.</param>
/// <param name="SpeakTo">Name of the instructor to speak to.</param>
/// <param name="OnTheList">Whether the child is on the closed list; null where not told: then the day on which the last thing became secure decides.</param>
/// <param name="LateAddition">What the instructor decided of a child who became ready after the list was closed; null while it is open.</param>
/// <param name="WhichList">By which of two lists the child is tested while the syllabus changes, in sentences; null where there is one only.</param>
public sealed record ParentsPageSnapshot(
    string Child,
    ReadinessAnswer Answer,
    RequirementSheet Sheet,
    DateOnly AsOf,
    int Attended,
    int Held,
    DateOnly? ListClosedOn,
    IReadOnlyList<MissedUnit> UnitsMissed,
    string SpeakTo,
    bool? OnTheList = null,
    bool? LateAddition = null,
    IReadOnlyList<string>? WhichList = null);

/// <summary>A unit that a child did not meet.</summary>
/// <param name="Unit">Name of the unit.</param>
/// <param name="Term">The term that was missed.</param>
/// <param name="ReturnsIn">Name of the term in which it returns; null where none is set.</param>
public sealed record MissedUnit(string Unit, string Term, string? ReturnsIn);

/// <summary>A heading with its sentences.</summary>
/// <param name="Heading">A few plain words.</param>
/// <param name="Sentences">Newest first.</param>
public sealed record PageSection(string Heading, IReadOnlyList<string> Sentences);

/// <summary>One page of facts about one child: no other child, no average, no order, no score, no chance, and never the word "failed".</summary>
/// <param name="Title">The child and the rank.</param>
/// <param name="Opening">Where the child stands, in two or three sentences.</param>
/// <param name="Sections">What is secure; what is not yet, with dates; what would change it; when next; whom to speak to.</param>
/// <param name="SumVersion">Version of the sum, kept with the page.</param>
public sealed record ParentsPageAnswer(string Title, IReadOnlyList<string> Opening, IReadOnlyList<PageSection> Sections, string SumVersion);
