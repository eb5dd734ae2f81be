namespace Keikocho.Core.Mat;

/// <summary>The two published rules of the floor's size.</summary>
public static class FloorRules
{
    private const int LeastM2 = 25;
    private const int PairsInTheLeast = 6;
    private const int MoreM2APair = 4;
    private const int M2AChild = 2;

    /// <summary>The narrowest mat that the rule of so much a pair takes, in centimetres.</summary>
    public const int LeastWidthCm = 350;

    /// <summary>Square metres for so many children, at 2 a child.</summary>
    public static int ForChildren(int children) => M2AChild * children;

    /// <summary>Square metres for so many pairs: 25, and 4 more for each above 6.</summary>
    public static int ForPairs(int pairs) => LeastM2 + (MoreM2APair * Math.Max(0, pairs - PairsInTheLeast));

    /// <summary>The most pairs on so many whole square metres; none below 25.</summary>
    public static int PairsOn(int m2) => m2 < LeastM2 ? 0 : PairsInTheLeast + ((m2 - LeastM2) / MoreM2APair);

    /// <summary>The mat against both rules, the one a child first. A child left over counts as a pair.</summary>
    internal static IReadOnlyList<FloorCheck> Both(int lengthCm, int widthCm, int children, FloorRule clubs)
    {
        var have = (long)lengthCm * widthCm / 10_000m;
        var wide = Math.Min(lengthCm, widthCm) >= LeastWidthCm;
        var perChild = ForChildren(children);
        var perPair = ForPairs((children + 1) / 2);
        return
        [
            new FloorCheck(FloorRule.PerChild, perChild, have, have >= perChild, clubs == FloorRule.PerChild),
            new FloorCheck(FloorRule.PerPair, perPair, have, have >= perPair && wide, clubs == FloorRule.PerPair),
        ];
    }
}
