using System.Collections.Immutable;

namespace Keikocho.App.Pairs;

/// <summary>
/// Pairs of one end and one activity as a tablet gets them: names, places in the register, yes and no. No size, no reason, and no order of
/// preference: an order would tell sizes.
/// </summary>
/// <param name="End">0 beginners' end, 1 main group.</param>
/// <param name="Activity">The activity, as the core numbers it.</param>
/// <param name="Word">"Turn-ins".</param>
/// <param name="Name">What exactly: "throwing: O-goshi".</param>
/// <param name="Thrown">Whether somebody is thrown.</param>
/// <param name="Register">Everybody of the end who may have a partner, in register order; places count from 0.</param>
/// <param name="Here">Places of those who are here.</param>
/// <param name="Groups">The pairs, in mat order; none where the laptop has to be asked.</param>
/// <param name="Ahead">One answer for each single thing that may happen.</param>
/// <param name="May">Who may work with whom: a row for each place, 1 or 0.</param>
/// <param name="Middle">Who may be the middle of a three.</param>
/// <param name="Share">Who may share a three.</param>
/// <param name="Adults">Adults who can partner a child, the first to be asked first.</param>
/// <param name="NeedsAdult">Places of those for whom no child here is a partner; why is not for a tablet.</param>
/// <param name="Says">Why nobody has a place, and what else there is; null where there are pairs.</param>
public sealed record MatPairs(
    int End, int Activity, string Word, string Name, bool Thrown, ImmutableArray<MatPairsChild> Register, ImmutableArray<int> Here, ImmutableArray<MatGroupOf> Groups,
    ImmutableArray<MatAhead> Ahead, IReadOnlyList<string> May, string Middle, IReadOnlyList<string> Share, ImmutableArray<string> Adults,
    ImmutableArray<int> NeedsAdult, string? Says);

/// <summary>A child who may have a partner.</summary>
/// <param name="Id">Who.</param>
/// <param name="Name">As called.</param>
/// <param name="Tori">Throws and is not thrown, where somebody is thrown.</param>
public sealed record MatPairsChild(Guid Id, string Name, bool Tori);

/// <summary>A group by places.</summary>
/// <param name="Places">One with an adult, two, or three with the middle in the middle.</param>
/// <param name="Adult">The adult.</param>
public sealed record MatGroupOf(ImmutableArray<int> Places, string? Adult);

/// <summary>The pairs after one thing that happens.</summary>
/// <param name="Event">0 a child leaves, 1 a child comes, 2 an adult partners.</param>
/// <param name="Place">The child's place; -1 for an adult.</param>
/// <param name="Adult">The adult's name; empty for a child.</param>
/// <param name="Groups">The pairs then.</param>
public sealed record MatAhead(int Event, int Place, string Adult, ImmutableArray<MatGroupOf> Groups);
