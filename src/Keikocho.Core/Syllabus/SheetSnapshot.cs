namespace Keikocho.Core.Syllabus;

/// <summary>An agreed other way of showing an item. The wording never names a reason.</summary>
/// <param name="Item">Key.</param>
/// <param name="Wording">How it is shown: "sitting instead of standing".</param>
public sealed record AgreedWay(string Item, string Wording);

/// <summary>An item that a held-over child keeps.</summary>
/// <param name="Item">Key.</param>
/// <param name="Until">Last day on which it is kept.</param>
public sealed record KeptPass(string Item, DateOnly Until);

/// <summary>Items chosen from a pool.</summary>
/// <param name="Requirement">Key of the requirement.</param>
/// <param name="Items">Keys.</param>
public sealed record ChosenItems(string Requirement, IReadOnlyList<string> Items);

/// <summary>The child that a sheet is for, as far as the sheet needs it.</summary>
/// <param name="Born">Birth date; null where not known: judged as the youngest.</param>
/// <param name="Choices">What was chosen from pools.</param>
/// <param name="Kept">Passes kept from an earlier test.</param>
/// <param name="Ways">Agreed other ways of showing.</param>
/// <param name="AskedBefore">Keys of items that this child was asked at a test before; they stay where the requirement says so.</param>
/// <param name="ShownAtRank">Keys of items good when the child was promoted, for "the other one".</param>
/// <param name="SpareTheNeck">Items that load the neck give way to their alternative or to nothing.</param>
/// <param name="Draw">Number of the draw; the same number draws the same items.</param>
public sealed record SheetChild(
    DateOnly? Born,
    IReadOnlyList<ChosenItems> Choices,
    IReadOnlyList<KeptPass> Kept,
    IReadOnlyList<AgreedWay> Ways,
    IReadOnlyList<string> AskedBefore,
    IReadOnlyList<string> ShownAtRank,
    bool SpareTheNeck,
    int Draw)
{
    /// <summary>A child of whom nothing more than the birth date is known.</summary>
    public static SheetChild Plain(DateOnly? born = null) => new(born, [], [], [], [], [], false, 1);
}

/// <summary>The question: what must be shown for one rank at one test, by one child or by anybody (the copy on the wall).</summary>
/// <param name="Edition">The edition that holds.</param>
/// <param name="Rank">Key of the rank that is tested for.</param>
/// <param name="TestOn">Day of the test.</param>
/// <param name="Unit">Key of this term's unit; null where none is set: nothing of a unit is asked.</param>
/// <param name="AgeRules">The club's age rules.</param>
/// <param name="Child">The child; null for the copy on the wall, which shows every age band in words.</param>
public sealed record SheetSnapshot(
    Edition Edition,
    string Rank,
    DateOnly TestOn,
    string? Unit,
    IReadOnlyList<AgeRule> AgeRules,
    SheetChild? Child);
