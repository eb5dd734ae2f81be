using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>Nobody is at this end.</summary>
public sealed record NobodyAtThisEnd(MatEnd End) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => End == MatEnd.Beginners ? "Nobody is at the beginners' end tonight, so there is no card." : "Nobody is in the main group tonight, so there is no card.";
}

/// <summary>What the children present need of one item.</summary>
/// <param name="Name">The item.</param>
/// <param name="Score">The sum.</param>
/// <param name="Never">Never shown to so many.</param>
/// <param name="NotSigned">Shown to so many and not signed.</param>
/// <param name="Stale">Signed for so many and not worked on of late.</param>
/// <param name="Urgent">How many of those who need it are near their test.</param>
/// <param name="HeldBack">Shown at the last two lessons.</param>
/// <param name="LastShown">So many lessons ago at this end; null for never.</param>
public sealed record ItemNeeded(string Name, decimal Score, int Never, int NotSigned, int Stale, int Urgent, bool HeldBack, int? LastShown) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            string[] parts =
            [
                .. Never > 0 ? [$"never shown to {Never}"] : Array.Empty<string>(),
                .. NotSigned > 0 ? [$"shown to {NotSigned} and not signed"] : Array.Empty<string>(),
                .. Stale > 0 ? [$"signed for {Stale} and not worked on of late"] : Array.Empty<string>(),
            ];
            return $"{Name}: {(parts.Length == 0 ? "nobody here needs it" : string.Join(", ", parts))}"
                + (Urgent > 0 ? $"; {Urgent} of them near the test, counted double" : "")
                + $"; together {Score.ToString("0.#", CultureInfo.InvariantCulture)}; "
                + LastShown switch { null => "never shown at this end", 1 => "shown at this end last time", { } ago => $"last shown at this end {ago} lessons ago" }
                + (HeldBack ? "; held back, since it was shown at the last two lessons." : ".");
        }
    }
}

/// <summary>The last slot went to somebody whom no other slot served.</summary>
/// <param name="Item">What it is.</param>
/// <param name="For">Names of those whom it serves.</param>
/// <param name="InPlaceOf">What the numbers alone would have put there.</param>
public sealed record SlotServes(string Item, IReadOnlyList<string> For, string InPlaceOf) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"The last slot is {Item} and not {InPlaceOf}: without it nothing tonight would be for {Words.List(For)}.";
}

/// <summary>A slot was done, or chosen by hand.</summary>
/// <param name="Slot">Which.</param>
/// <param name="Item">What.</param>
public sealed record SlotIsTaken(int Slot, string Item) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"Slot {Slot} is {Item}: it was shown tonight.";
}

/// <summary>Nobody here may be thrown with a throw of the card.</summary>
/// <param name="Item">The throw.</param>
public sealed record NobodyToThrow(string Item) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{Item}: no gate is open for it here, so everybody turns in only and nobody is thrown.";
}

/// <summary>An adult is missing.</summary>
/// <param name="Plan">The card that is made.</param>
/// <param name="ShortBy">How many are missing.</param>
/// <param name="NobodyLeads">Nobody of 18 or over may lead this end.</param>
/// <param name="Chosen">Somebody chose this plan.</param>
public sealed record AdultMissing(CardPlan Plan, int ShortBy, bool NobodyLeads, bool Chosen) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        (NobodyLeads ? "Nobody of 18 or over who counts is free to lead this end" : ShortBy > 0 ? $"The hall is short by {Words.Count(ShortBy, "adult")}" : "It was chosen so")
        + Plan switch
        {
            CardPlan.EndsJoined => ": the ends are joined, and nothing is thrown.",
            CardPlan.NoThrowing => ": nothing is thrown at this end.",
            _ when Chosen => "; the card as planned was chosen all the same.",
            _ => ".",
        };
}
