namespace Keikocho.App.Pairs;

/// <summary>Addresses of pairs.</summary>
public static class PairsAddress
{
    /// <summary>The pairs of one end.</summary>
    public const string Page = "/pairs";
    /// <summary>Where pairs are put to use.</summary>
    public const string Use = "/pairs/use";
    /// <summary>A wish about two children, as a route.</summary>
    public const string WishRoute = "/students/{id:guid}/pair-wish";
    /// <summary>The end of a wish, as a route.</summary>
    public const string EndWishRoute = "/students/{id:guid}/pair-wish-end";

    /// <summary>The pairs of a lesson.</summary>
    public static string Of(Guid lesson) => $"{Page}?lesson={lesson:D}";
}
