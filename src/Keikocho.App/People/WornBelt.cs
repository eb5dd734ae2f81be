using Keikocho.App.Shared.Parts;
using Keikocho.Store.Book;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.People;

/// <summary>A rank as it is drawn and said.</summary>
/// <param name="Cloth">The colour; null where the look has no drawing for it, and then only the words stand there.</param>
/// <param name="Tips">Red tips, 0 to 2.</param>
/// <param name="Words">The club's own words.</param>
public sealed record WornBelt(BeltCloth? Cloth, int Tips, string Words)
{
    /// <summary>No rank is recorded.</summary>
    public static WornBelt None { get; } = new(null, 0, "no rank recorded");

    /// <summary>The belt of a rank.</summary>
    public static WornBelt Of(RankRow rank)
    {
        ArgumentNullException.ThrowIfNull(rank);
        return new WornBelt(ClothOf(rank.Cloth), Math.Clamp(rank.Tips, 0, 2), rank.Name);
    }

    /// <summary>What a person wears on a ladder.</summary>
    public static WornBelt Of(ClubBook book, Guid person, Guid? ladder)
    {
        ArgumentNullException.ThrowIfNull(book);
        return (book.RankOf(person, ladder) ?? StartOf(book, ladder)) is { } rank ? Of(rank) : None;
    }

    /// <summary>What everybody wears before the first award: the plain white belt, where the ladder begins with it; null otherwise.</summary>
    public static RankRow? StartOf(ClubBook book, Guid? ladder)
    {
        ArgumentNullException.ThrowIfNull(book);
        return book.Ranks.FirstOrDefault(r => r.LadderId == ladder) is { Tips: 0 } first && ClothOf(first.Cloth) == BeltCloth.White ? first : null;
    }

    private static BeltCloth? ClothOf(string? word) =>
        Enum.TryParse<BeltCloth>(word, ignoreCase: true, out var cloth) && Enum.IsDefined(cloth) ? cloth : null;
}
