namespace Keikocho.Paper.Cards;

/// <summary>All that the card of one end shows on paper. No reason of anything that a child may not do stands in it.</summary>
/// <param name="Club">Name of the club.</param>
/// <param name="Title">"Beginners' end", "Main group".</param>
/// <param name="Date">The evening.</param>
/// <param name="Start">When the lesson begins.</param>
/// <param name="End">When it ends.</param>
/// <param name="Edition">The edition of the syllabus; null before there is one.</param>
/// <param name="Lead">Who leads; empty on an empty card.</param>
/// <param name="Drills">Who holds a drill; empty for nobody.</param>
/// <param name="Unit">The unit of the term; null for none.</param>
/// <param name="Empty">Why there is no card; null where there is one.</param>
/// <param name="Parts">The parts of the lesson in order.</param>
/// <param name="Falls">Falls to work on, a line each.</param>
/// <param name="Children">In register order.</param>
/// <param name="LookAt">Names to look at; empty for nobody.</param>
/// <param name="Words">Words of tonight; empty for none.</param>
/// <param name="PlanB">When an adult is missing.</param>
/// <param name="FirstAider">Whom to call.</param>
public sealed record EndCardContent(
    string Club, string Title, DateOnly Date, TimeOnly Start, TimeOnly End, string? Edition, string Lead, string Drills, string? Unit, string? Empty,
    IReadOnlyList<CardPaperPart> Parts, IReadOnlyList<string> Falls, IReadOnlyList<CardPaperChild> Children, string LookAt, string Words,
    IReadOnlyList<string> PlanB, string FirstAider);

/// <summary>A part of the lesson.</summary>
/// <param name="From">By the clock.</param>
/// <param name="Minutes">Its length.</param>
/// <param name="Title">What it is.</param>
/// <param name="Lines">What stands under it: cue, fault, easier and harder, who does what.</param>
public sealed record CardPaperPart(TimeOnly From, int Minutes, string Title, IReadOnlyList<string> Lines);

/// <summary>A child on the card.</summary>
/// <param name="Name">As called.</param>
/// <param name="Belt">The rank in words.</param>
/// <param name="Mark">"new", "back", or nothing.</param>
/// <param name="Role">What it does tonight.</param>
public sealed record CardPaperChild(string Name, string Belt, string Mark, string Role);
