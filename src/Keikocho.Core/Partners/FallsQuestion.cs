using Keikocho.Core.Kernel;

namespace Keikocho.Core.Partners;

/// <summary>One drill of tonight.</summary>
/// <param name="Name">What is drilled.</param>
/// <param name="ThrowsEach">Throws of each partner in one round, on each side.</param>
/// <param name="Sides">1 or 2; 5 throws each on two sides are 10.</param>
/// <param name="Rounds">Rounds.</param>
public sealed record FallsDrill(string Name, int ThrowsEach, int Sides, int Rounds);

/// <summary>One who falls or throws.</summary>
/// <param name="Child">Who.</param>
/// <param name="Name">The name.</param>
/// <param name="Register">Place on the register.</param>
/// <param name="ToriOnly">Throws and is not thrown.</param>
public sealed record FallsChild(PersonId Child, string Name, int Register, bool ToriOnly = false);

/// <summary>A group of the drill.</summary>
/// <param name="Members">One with an adult, two, or three with the middle in the middle.</param>
public sealed record FallsGroup(IReadOnlyList<FallsChild> Members);

/// <summary>The question: how many falls each child takes tonight.</summary>
/// <param name="Drills">The drills.</param>
/// <param name="Groups">The groups.</param>
/// <param name="Cap">Falls of one child in an evening at most. Proposed 20 (common practice, no source).</param>
/// <param name="AdultThrows">A child with an adult is thrown as by a partner. Proposed: yes, the larger number.</param>
public sealed record FallsQuestion(IReadOnlyList<FallsDrill> Drills, IReadOnlyList<FallsGroup> Groups, int Cap = 20, bool AdultThrows = true);
