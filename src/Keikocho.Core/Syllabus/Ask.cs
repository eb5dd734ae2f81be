using System.Text.Json.Serialization;

namespace Keikocho.Core.Syllabus;

/// <summary>Who chooses from a pool.</summary>
public enum Chooser
{
    /// <summary>The child.</summary>
    Child = 1,
    /// <summary>The instructor.</summary>
    Instructor = 2,
}

/// <summary>The shape of a requirement: how many of which items. A closed set; items are named by key.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "is")]
[JsonDerivedType(typeof(AllOf), "allOf")]
[JsonDerivedType(typeof(AnyOf), "anyOf")]
[JsonDerivedType(typeof(FromPool), "fromPool")]
[JsonDerivedType(typeof(ShareOfRank), "shareOfRank")]
[JsonDerivedType(typeof(DrawnFromEarlier), "drawnFromEarlier")]
[JsonDerivedType(typeof(TheOther), "theOther")]
public abstract record Ask
{
    private Ask()
    {
    }

    /// <summary>Every item.</summary>
    /// <param name="Items">At least one.</param>
    public sealed record AllOf(IReadOnlyList<string> Items) : Ask;

    /// <summary>Any k of n; "either of" where k is 1 and n is 2. Met by whichever are good.</summary>
    /// <param name="Count">k, from 1 to n - 1.</param>
    /// <param name="Items">n items.</param>
    public sealed record AnyOf(int Count, IReadOnlyList<string> Items) : Ask;

    /// <summary>k from a pool, chosen beforehand and noted per child; until then any of them count.</summary>
    /// <param name="Count">k.</param>
    /// <param name="ChosenBy">Who chooses.</param>
    /// <param name="Pool">Items to choose from; empty means every item of <paramref name="Kinds"/> that this rank and the ranks below ask.</param>
    /// <param name="Kinds">With an empty pool, the kinds that may be chosen; null for all kinds but falls, words and questions.</param>
    public sealed record FromPool(int Count, Chooser ChosenBy, IReadOnlyList<string> Pool, IReadOnlyList<ItemKind>? Kinds = null) : Ask;

    /// <summary>A share of what a later rank asks: the half belt.</summary>
    /// <param name="Rank">Key of that rank.</param>
    /// <param name="Percent">1 to 99; the count is rounded up.</param>
    /// <param name="Kinds">Only items of these kinds; null for all but falls, which are always asked in full.</param>
    public sealed record ShareOfRank(string Rank, int Percent, IReadOnlyList<ItemKind>? Kinds = null) : Ask;

    /// <summary>k drawn by lot from what earlier ranks asked; the printed number of the draw repeats it.</summary>
    /// <param name="Count">k; fewer where there are fewer.</param>
    /// <param name="Ranks">Keys of the earlier ranks; empty for all below.</param>
    /// <param name="Kinds">Only these kinds; null for all but falls.</param>
    public sealed record DrawnFromEarlier(int Count, IReadOnlyList<string> Ranks, IReadOnlyList<ItemKind>? Kinds = null) : Ask;

    /// <summary>Whatever was not chosen of an "any k of n" at an earlier rank.</summary>
    /// <param name="Rank">Key of the earlier rank.</param>
    /// <param name="Requirement">Key of its requirement, an <see cref="AnyOf"/>.</param>
    public sealed record TheOther(string Rank, string Requirement) : Ask;
}
