using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>The sum of one place.</summary>
/// <param name="Place">"In the hall", "At the beginners' end", "In the main group".</param>
/// <param name="Bands">Each band that has children, with their number.</param>
/// <param name="UnknownAges">Children of unknown age among them.</param>
/// <param name="Method">The method.</param>
/// <param name="Sum">The exact sum of the fractions.</param>
/// <param name="Least">The minimum of the hall; null at an end.</param>
/// <param name="Extra">Adults named for needs.</param>
/// <param name="Count">The count.</param>
public sealed record AdultsNeeded(
    string Place, IReadOnlyList<(AgeBand Band, int Children)> Bands, int UnknownAges, RatioMethod Method, Fraction Sum, int? Least, int Extra, AdultCount Count)
    : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            if (Count.Children == 0)
                return $"{Place}: no children, so no adult is needed; {Count.Have} there.";
            var bands = Words.List([.. Bands.Select(b => $"{b.Children} aged {b.Band.From} to {b.Band.To} at 1 adult to {b.Band.ChildrenPerAdult}")]);
            var rounding = Method == RatioMethod.SumOfFractions
                ? $"added {Sum}, rounded up {Sum.Ceiling}"
                : $"each rounded up, added {Bands.Sum(b => new Fraction(b.Children, b.Band.ChildrenPerAdult).Ceiling)}";
            var unknown = UnknownAges == 0 ? "" : $" ({UnknownAges} of unknown age)";
            var least = Least is { } n ? $"; at least {n}" : "";
            var extra = Extra == 0 ? "" : $"; {Extra} more named for needs";
            var shortBy = Count.ShortBy == 0 ? "" : $", short by {Count.ShortBy}";
            return $"{Place}: {bands}{unknown}, {rounding}{least}{extra}: needed {Count.Needed}, have {Count.Have}{shortBy}.";
        }
    }
}

/// <summary>Where the ratios come from, and that stricter rules win.</summary>
/// <param name="Source">The source line.</param>
public sealed record RatiosFrom(string Source) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"Ratios: {Source}; a stricter rule of the sport's body or the law of the place goes first.";
}

/// <summary>Somebody does not count.</summary>
/// <param name="Name">Who.</param>
/// <param name="Why">Why not.</param>
/// <param name="Until">End of the lapsed vetting; null otherwise.</param>
public sealed record DoesNotCount(string Name, NotCountedWhy Why, DateOnly? Until) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Why switch
    {
        NotCountedWhy.Under18 => $"{Name} is under 18 and is not counted.",
        NotCountedWhy.VettingLapsed => $"{Name} is not counted: the vetting ended on {Until!.Value.Full()}.",
        _ => $"{Name} is not counted: no vetting is held.",
    };
}

/// <summary>First-aiders present.</summary>
/// <param name="Names">Who; empty when none.</param>
public sealed record FirstAidPresent(IReadOnlyList<string> Names) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Names.Count == 0
        ? "No first-aider is here among the adults who count: settle it before the bow."
        : $"First aid: {Words.List(Names)}.";
}

/// <summary>A paper of a counted adult that has run out.</summary>
/// <param name="Name">Who.</param>
/// <param name="Paper">"first aid" or "qualification".</param>
/// <param name="Until">Last day on which it held.</param>
public sealed record PaperLapsed(string Name, string Paper, DateOnly Until) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{Name} is counted, but the {Paper} ended on {Until.Full()}.";
}

/// <summary>Adults who watch no end in particular.</summary>
/// <param name="Names">Who.</param>
public sealed record AtNoEnd(IReadOnlyList<string> Names) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{Words.List(Names)} {Words.Is(Names.Count)} counted for the hall and at neither end.";
}

/// <summary>Enough, but with nobody to spare.</summary>
/// <param name="Needed">Needed, and there.</param>
public sealed record NobodyIsFree(int Needed) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"All {Words.Count(Needed, "adult")} are needed: nobody is free for first aid or the toilet.";
}
