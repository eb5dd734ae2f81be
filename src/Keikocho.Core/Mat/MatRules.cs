using Keikocho.Core.Kernel;

namespace Keikocho.Core.Mat;

/// <summary>The figures of the mat plan.</summary>
/// <param name="ThrowingPairM2">A pair that throws.</param>
/// <param name="TechniquePairM2">A pair that does not throw far.</param>
/// <param name="ClearStripCm">Nobody works on it: it lies between the line and the main group.</param>
/// <param name="ObstacleMarginCm">As far as this from an obstacle nobody works.</param>
/// <param name="LeastSideCm">No working space is narrower than this.</param>
/// <param name="BeginnerPlaceM2">What a place at the beginners' end is reckoned at when places are planned; only said beside tonight's count.</param>
/// <param name="Floor">Which published rule of the floor's size is the club's.</param>
public sealed record MatRules(
    int ThrowingPairM2 = 9,
    int TechniquePairM2 = 6,
    int ClearStripCm = 100,
    int ObstacleMarginCm = 100,
    int LeastSideCm = 200,
    int BeginnerPlaceM2 = 3,
    FloorRule Floor = FloorRule.PerChild)
{
    /// <summary>Where the rule of so much a child comes from.</summary>
    public const string PerChildSource = "British Judo Association, mat specification (read): pupil to mat area \"1:2m2 minimum\", taken as 2 square metres a pupil";

    /// <summary>Where the rule of so much a pair comes from.</summary>
    public const string PerPairSource = "French Code du sport, article A322-141 (read in a technical sheet of the federation): 25 square metres, and 4 a pair above 6; at least 3.50 m wide";

    private static readonly WholeNumberSetting Throwing = new(
        "mat.throwingPairM2", "Room for a pair that throws", 9, "square metres", 4, 36, "the club's own; 2 x 2 m to 4 x 4 m in coaching practice, from memory");

    private static readonly WholeNumberSetting Technique = new(
        "mat.techniquePairM2", "Room for a pair that does not throw far", 6, "square metres", 4, 36, "the club's own, no source");

    private static readonly WholeNumberSetting Strip = new(
        "mat.clearStripCm", "Clear strip between the ends", 100, "cm", 0, 1_000, "common practice, no source for the strip inside a mat");

    private static readonly WholeNumberSetting Margin = new(
        "mat.obstacleMarginCm", "Nobody works nearer than this to an obstacle", 100, "cm", 0, 500,
        "ours, after the French Code du sport, article A322-141 (read), which has obstacles within 1 m of a mat padded");

    private static readonly WholeNumberSetting Side = new(
        "mat.leastSideCm", "No working space is narrower than this", 200, "cm", 100, 400, "2 x 2 m is the least for a throwing pair in coaching practice, from memory");

    private static readonly WholeNumberSetting Place = new(
        "mat.beginnerPlaceM2", "Room for one beginner when places are planned", 3, "square metres", 1, 20, "the club's own, no source");

    private static readonly ChoiceSetting FloorChoice = new(
        "mat.floor", "Published rule of the floor's size", "perChild", ["perChild", "perPair"], $"perChild: {PerChildSource}; perPair: {PerPairSource}");

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Throwing, Technique, Strip, Margin, Side, Place, FloorChoice];

    /// <summary>The values in use, for the answer that they led to.</summary>
    public IReadOnlyList<SettingUsed> Used() =>
    [
        Throwing.Use(ThrowingPairM2), Technique.Use(TechniquePairM2), Strip.Use(ClearStripCm), Margin.Use(ObstacleMarginCm),
        Side.Use(LeastSideCm), Place.Use(BeginnerPlaceM2), FloorChoice.Use(Floor == FloorRule.PerPair ? "perPair" : "perChild"),
    ];

    internal int PairM2(MatWork work) => work == MatWork.Throwing ? ThrowingPairM2 : TechniquePairM2;

    internal void Guard()
    {
        Throwing.Guard(ThrowingPairM2, nameof(ThrowingPairM2));
        Technique.Guard(TechniquePairM2, nameof(TechniquePairM2));
        Strip.Guard(ClearStripCm, nameof(ClearStripCm));
        Margin.Guard(ObstacleMarginCm, nameof(ObstacleMarginCm));
        Side.Guard(LeastSideCm, nameof(LeastSideCm));
        Place.Guard(BeginnerPlaceM2, nameof(BeginnerPlaceM2));
    }
}
