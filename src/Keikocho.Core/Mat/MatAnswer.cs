using Keikocho.Core.Kernel;

namespace Keikocho.Core.Mat;

/// <summary>A rectangle of the mat, seen from above, in centimetres from the corner where the length begins.</summary>
/// <param name="FromLengthCm">Where it begins along the length.</param>
/// <param name="FromWidthCm">Where it begins along the width.</param>
/// <param name="LengthCm">Its size along the length of the mat.</param>
/// <param name="WidthCm">Its size along the width of the mat.</param>
public sealed record MatArea(int FromLengthCm, int FromWidthCm, int LengthCm, int WidthCm)
{
    internal int ToLengthCm => FromLengthCm + LengthCm;

    internal int ToWidthCm => FromWidthCm + WidthCm;

    internal long Cm2 => (long)LengthCm * WidthCm;

    internal decimal M2 => Cm2 / 10_000m;
}

/// <summary>Which way a pair throws.</summary>
public enum ThrowingWay
{
    /// <summary>Along the line between the ends, across the length: never toward the other end.</summary>
    AlongTheLine = 0,
}

/// <summary>The room of one pair.</summary>
/// <param name="Number">From 1, at each end; the ones furthest from the line first.</param>
/// <param name="Area">Where.</param>
/// <param name="Throws">Which way to throw in it.</param>
/// <param name="InUse">False where there is room left over.</param>
public sealed record MatCell(int Number, MatArea Area, ThrowingWay Throws, bool InUse);

/// <summary>One minute of the rotation.</summary>
/// <param name="Number">From 1; after the last comes the first again.</param>
/// <param name="Resting">The pairs that rest, numbered in register order.</param>
/// <param name="Working">The pair in each working space, by its number.</param>
public sealed record MatWave(int Number, IReadOnlyList<int> Resting, IReadOnlyList<int> Working);

/// <summary>One end of the mat.</summary>
/// <param name="Children">Its children.</param>
/// <param name="Pairs">Their pairs; a three counts as one.</param>
/// <param name="Area">Its part of the mat.</param>
/// <param name="PairM2">Square metres a pair.</param>
/// <param name="ByArea">Pairs that its area alone would take.</param>
/// <param name="Cells">The working spaces that can be drawn.</param>
/// <param name="AtOnce">Pairs that work at once.</param>
/// <param name="Waves">Who rests when; empty where all work at once.</param>
public sealed record MatEndPlan(
    int Children, int Pairs, MatArea Area, int PairM2, int ByArea, IReadOnlyList<MatCell> Cells, int AtOnce, IReadOnlyList<MatWave> Waves);

/// <summary>The floor against one published rule.</summary>
/// <param name="Rule">Which.</param>
/// <param name="NeededM2">What it asks.</param>
/// <param name="HaveM2">The whole mat.</param>
/// <param name="IsEnough">Whether the mat is as large, and as wide where the rule says how wide.</param>
/// <param name="IsTheClubs">Whether it is the rule that the club goes by.</param>
public sealed record FloorCheck(FloorRule Rule, int NeededM2, decimal HaveM2, bool IsEnough, bool IsTheClubs);

/// <summary>The mat, drawn to scale.</summary>
/// <param name="Headline">The top line.</param>
/// <param name="LengthCm">Length of the mat.</param>
/// <param name="WidthCm">Width of the mat.</param>
/// <param name="LineCm">Where the line between the ends goes, from where the length begins; null where there is none.</param>
/// <param name="ClearStrip">The strip on which nobody works; null where there is none.</param>
/// <param name="TakeTurns">The mat is too small for two ends: one works, the other watches.</param>
/// <param name="Beginners">The beginners' end; null where nobody is there.</param>
/// <param name="Main">The main group; null where nobody is there.</param>
/// <param name="Obstacles">What stands in the way.</param>
/// <param name="BeginnerPlaces">Children that the beginners' part holds by the figure that plans places; null without beginners.</param>
/// <param name="Floor">The floor against both published rules.</param>
/// <param name="Reasons">Why, in the order to read.</param>
/// <param name="Settings">The settings used.</param>
public sealed record MatPlan(
    string Headline,
    int LengthCm,
    int WidthCm,
    int? LineCm,
    MatArea? ClearStrip,
    bool TakeTurns,
    MatEndPlan? Beginners,
    MatEndPlan? Main,
    IReadOnlyList<MatObstacle> Obstacles,
    int? BeginnerPlaces,
    IReadOnlyList<FloorCheck> Floor,
    IReadOnlyList<Reason> Reasons,
    IReadOnlyList<SettingUsed> Settings);
