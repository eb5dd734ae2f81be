namespace Keikocho.Paper.Register;

/// <summary>All that the register of one evening shows; there is no place in it for anything else.</summary>
/// <param name="Club">Name of the club.</param>
/// <param name="Programme">Name of the programme ("Juniors").</param>
/// <param name="Date">The lesson's date.</param>
/// <param name="Start">The bow.</param>
/// <param name="End">The bow out.</param>
/// <param name="Hall">Where; null for none.</param>
/// <param name="Edition">Edition of the syllabus, as a line; null for none.</param>
/// <param name="Adults">Adults on the evening, in the order to print.</param>
/// <param name="AdultsNeeded">How many the numbers ask for; null when it was not worked out.</param>
/// <param name="Children">In register order.</param>
/// <param name="Remarks">Lines under the register.</param>
/// <param name="Signatures">Who began it, who finished it; empty leaves a line to sign on.</param>
/// <param name="PrintedOn">Today.</param>
public sealed record RegisterSheetContent(
    string Club,
    string Programme,
    DateOnly Date,
    TimeOnly Start,
    TimeOnly End,
    string? Hall,
    string? Edition,
    IReadOnlyList<RegisterAdult> Adults,
    int? AdultsNeeded,
    IReadOnlyList<RegisterChild> Children,
    IReadOnlyList<string> Remarks,
    IReadOnlyList<RegisterSignature> Signatures,
    DateOnly PrintedOn);
