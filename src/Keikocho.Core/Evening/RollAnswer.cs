using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>Somebody who is on the premises.</summary>
/// <param name="Person">Who.</param>
/// <param name="IsAdult">Adult or child.</param>
/// <param name="Since">Earliest known arrival; null when nobody noted it.</param>
/// <param name="Because">Why this person is on the roll.</param>
public sealed record OnPremises(PersonId Person, bool IsAdult, TimeOnly? Since, Reason Because);

/// <summary>Somebody who was here and has gone.</summary>
/// <param name="Person">Who.</param>
/// <param name="IsAdult">Adult or child.</param>
/// <param name="At">When; null when nobody noted it.</param>
/// <param name="Because">Why this person is not on the roll.</param>
public sealed record GoneHome(PersonId Person, bool IsAdult, TimeOnly? At, Reason Because);

/// <summary>The roll: who is on the premises, who has gone, and how many nobody has marked.</summary>
/// <param name="Here">On the premises, in the order of the question.</param>
/// <param name="Gone">Here before and gone, in the order of the question.</param>
/// <param name="ChildrenHere">Children on the premises.</param>
/// <param name="AdultsHere">Adults on the premises.</param>
/// <param name="NotMarked">People whom nobody has marked at any lesson of the evening.</param>
/// <param name="People">Everybody asked about.</param>
/// <param name="Reasons">The counts in words.</param>
public sealed record RollAnswer(
    IReadOnlyList<OnPremises> Here,
    IReadOnlyList<GoneHome> Gone,
    int ChildrenHere,
    int AdultsHere,
    int NotMarked,
    int People,
    IReadOnlyList<Reason> Reasons);
