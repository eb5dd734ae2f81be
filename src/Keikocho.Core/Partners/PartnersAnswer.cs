using Keikocho.Core.Kernel;

namespace Keikocho.Core.Partners;

/// <summary>How everybody is placed.</summary>
public enum OfferKind
{
    /// <summary>Pairs only.</summary>
    Pairs = 0,
    /// <summary>Pairs, and one child with an adult.</summary>
    Adult = 1,
    /// <summary>Pairs and one three.</summary>
    Three = 2,
    /// <summary>As many pairs as there can be; somebody is left over.</summary>
    Part = 3,
}

/// <summary>One of a pair or three.</summary>
/// <param name="Child">Who.</param>
/// <param name="Name">The name as lists show it.</param>
/// <param name="ToriOnly">Throws and is not thrown; only where the activity throws.</param>
public sealed record GroupMember(PersonId Child, string Name, bool ToriOnly);

/// <summary>A pair, a three or a child with an adult.</summary>
/// <param name="Members">In register order; of a three the middle stands in the middle.</param>
/// <param name="Middle">The middle of a three, who works with both; the outer two do not throw each other. Null of a pair.</param>
/// <param name="Adult">The adult who is the partner; null where none is.</param>
/// <param name="Line">The group in words, as a card prints it.</param>
public sealed record MatGroup(IReadOnlyList<GroupMember> Members, PersonId? Middle, string? Adult, string Line);

/// <summary>Everybody's place.</summary>
/// <param name="Groups">In mat order: that of the register, by the first of each group.</param>
/// <param name="Worst">The dearest pair's cost.</param>
/// <param name="Total">The cost of all pairs; of a three both links.</param>
public sealed record Arrangement(IReadOnlyList<MatGroup> Groups, int Worst, int Total);

/// <summary>One way to place everybody, by both measures.</summary>
/// <param name="Kind">How.</param>
/// <param name="WorstFirst">The worst pair as good as can be, then the sum: the one to use.</param>
/// <param name="BySum">The sum as low as can be.</param>
public sealed record PartnersOffer(OfferKind Kind, Arrangement WorstFirst, Arrangement BySum);

/// <summary>A child who has no partner tonight by a stand-down, with what it does, without the reason.</summary>
/// <param name="Child">Who.</param>
/// <param name="Name">The name.</param>
/// <param name="Role">"movement alone" or "watches".</param>
public sealed record WithoutPartner(PersonId Child, string Name, string Role);

/// <summary>A child who cannot be placed.</summary>
/// <param name="Child">Who.</param>
/// <param name="Name">The name.</param>
/// <param name="Because">Why, for the instructor only.</param>
public sealed record Unplaced(PersonId Child, string Name, Reason Because);

/// <summary>Who works with whom.</summary>
/// <param name="Headline">The top line.</param>
/// <param name="Offers">Ways to place everybody, the one to use first; where there is none, as many as can be placed.</param>
/// <param name="WithoutPartner">In register order.</param>
/// <param name="Unplaced">In register order; for the instructor only.</param>
/// <param name="Help">What would place everybody; for the instructor only.</param>
/// <param name="Reasons">For the instructor only; no size and no order of sizes.</param>
/// <param name="Settings">The settings used.</param>
public sealed record PartnersAnswer(
    string Headline,
    IReadOnlyList<PartnersOffer> Offers,
    IReadOnlyList<WithoutPartner> WithoutPartner,
    IReadOnlyList<Unplaced> Unplaced,
    IReadOnlyList<Reason> Help,
    IReadOnlyList<Reason> Reasons,
    IReadOnlyList<SettingUsed> Settings);
