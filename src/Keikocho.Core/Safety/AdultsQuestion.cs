using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>Children of one age at one end.</summary>
/// <param name="End">Where.</param>
/// <param name="Age">Age in whole years; null when no birth date is held.</param>
/// <param name="Number">How many of that age; 1 or more.</param>
public sealed record ChildrenAtEnd(MatEnd End, int? Age, int Number = 1);

/// <summary>A grown-up or a helper who is present.</summary>
/// <param name="Name">Name by which the answer refers to the person.</param>
/// <param name="End">The end that the person watches; null for no end in particular, which counts for the hall only.</param>
/// <param name="Under18">True for a helper under 18, who never counts.</param>
/// <param name="VettedUntil">Last day on which the vetting holds; null when none is held.</param>
/// <param name="FirstAidUntil">Last day on which the first aid holds; null when none is held.</param>
/// <param name="QualifiedUntil">Last day on which the coaching qualification holds; null when none is held or asked.</param>
public sealed record AdultPresent(
    string Name,
    MatEnd? End = null,
    bool Under18 = false,
    DateOnly? VettedUntil = null,
    DateOnly? FirstAidUntil = null,
    DateOnly? QualifiedUntil = null);

/// <summary>More adults named for children who need them, without saying why.</summary>
/// <param name="End">Where those children are.</param>
/// <param name="Adults">How many more.</param>
public sealed record ExtraForNeeds(MatEnd End, int Adults);

/// <summary>The question: enough adults tonight?</summary>
/// <param name="Today">The day; a paper that ends today still holds.</param>
/// <param name="Children">Children present.</param>
/// <param name="Adults">Adults and helpers present.</param>
/// <param name="Extra">More adults named for needs; counts where there are children.</param>
/// <param name="Rules">The ratios; null for the proposed ones.</param>
public sealed record AdultsSnapshot(
    DateOnly Today,
    IReadOnlyList<ChildrenAtEnd> Children,
    IReadOnlyList<AdultPresent> Adults,
    IReadOnlyList<ExtraForNeeds>? Extra = null,
    AdultRules? Rules = null);
