namespace Keikocho.Paper.Register;

/// <summary>One evening of a blank register.</summary>
/// <param name="Date">Its date.</param>
/// <param name="Closure">Why there is no lesson ("half-term"); null for a lesson.</param>
public sealed record BlankRegisterDate(DateOnly Date, string? Closure);

/// <summary>One child of a blank register.</summary>
/// <param name="FirstName">As the club writes it.</param>
/// <param name="Second">What tells two children of one first name apart; null for none.</param>
public sealed record BlankRegisterChild(string FirstName, string? Second);

/// <summary>All that a register to fill in with a pen shows.</summary>
/// <param name="Club">Name of the club.</param>
/// <param name="Programme">Name of the programme ("Juniors").</param>
/// <param name="Period">Which month or term ("Autumn term 2026").</param>
/// <param name="Hours">When and where ("Tuesdays and Thursdays, 17:30 to 18:45, Quay Hall"); null for none.</param>
/// <param name="Edition">Edition of the syllabus, as a line; null for none.</param>
/// <param name="Dates">Rising, each once. Up to 12 stand upright; about 26 go on one sheet on its side; more make further sheets.</param>
/// <param name="Children">In register order.</param>
/// <param name="Adults">Adults who usually come.</param>
/// <param name="SpareLines">Empty lines for newcomers, 0 to 40.</param>
/// <param name="PrintedOn">Today.</param>
public sealed record BlankRegisterContent(
    string Club,
    string Programme,
    string Period,
    string? Hours,
    string? Edition,
    IReadOnlyList<BlankRegisterDate> Dates,
    IReadOnlyList<BlankRegisterChild> Children,
    IReadOnlyList<RegisterAdult> Adults,
    int SpareLines,
    DateOnly PrintedOn);
