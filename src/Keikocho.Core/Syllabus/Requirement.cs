namespace Keikocho.Core.Syllabus;

/// <summary>How long something keeps being asked. The numbers are stored and never change their meaning.</summary>
public enum Carry
{
    /// <summary>For this rank, and not again.</summary>
    ThisRank = 0,
    /// <summary>Only while the unit of this term is the requirement's own; gone from the next term's sheet.</summary>
    ThisTerm = 1,
    /// <summary>At every test of this rank and above.</summary>
    Always = 2,
    /// <summary>Once a child was asked, at every later test of that child.</summary>
    OnceAskedStays = 3,
}

/// <summary>Ages, in whole years on the day of the test.</summary>
/// <param name="From">From this age; null for no lower end.</param>
/// <param name="To">To this age, inclusive; null for no upper end.</param>
public sealed record AgeBand(int? From = null, int? To = null)
{
    /// <summary>Whether an age lies within; an unknown age is judged as the youngest.</summary>
    public bool Holds(int? age) => age is { } years ? (From is not { } f || years >= f) && (To is not { } t || years <= t) : From is null;
}

/// <summary>What a rank asks.</summary>
/// <param name="Key">Key within its rank: "either-throw".</param>
/// <param name="Ask">How many of which items.</param>
/// <param name="Title">The line on the sheet; null to be made from the items.</param>
/// <param name="Condition">Printed with it: "both sides", "moving"; null for none.</param>
/// <param name="Ages">Asked only of these ages; null for all. A club that asks another number of another age writes two requirements.</param>
/// <param name="Critical">Not good means not promoted, whatever the rest.</param>
/// <param name="Carry">How long it keeps being asked.</param>
/// <param name="Unit">Key of the unit in whose term it is asked; null to be asked in every term.</param>
/// <param name="AtOnce">A safety item: asked from the day of publication on, whatever edition is nearer.</param>
public sealed record Requirement(
    string Key,
    Ask Ask,
    string? Title = null,
    string? Condition = null,
    AgeBand? Ages = null,
    bool Critical = false,
    Carry Carry = Carry.ThisRank,
    string? Unit = null,
    bool AtOnce = false);
