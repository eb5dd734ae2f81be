using Keikocho.Core.Kernel;

namespace Keikocho.Core.Mat;

/// <summary>Where the line between the ends goes.</summary>
public sealed record LineGoes(int Children, int Pairs, int PairM2, int WidthCm, int NeededCm, int ModuleCm, int ByRuleCm, int StripCm) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var three = Children > 2 * Pairs ? ", a three counted as one pair" : Children == 1 ? ", with an adult" : "";
            var rule = $"{Words.Count(Children, "beginner")} {Words.Is(Children)} {Words.Count(Pairs, "pair")}{three}: {Pairs} x {PairM2} m² on {MatWords.Metres(WidthCm)} of width is {MatWords.Metres(NeededCm)}"
                + (ByRuleCm == NeededCm ? "" : $", {MatWords.Metres(ByRuleCm)} in whole mats of {MatWords.Metres(ModuleCm)}");
            return StripCm > ByRuleCm ? $"{rule}; their spaces cannot be drawn on that, so the line is at {MatWords.Metres(StripCm)}."
                : StripCm < ByRuleCm ? $"{rule}; the main group needs room too, so the line is at {MatWords.Metres(StripCm)}."
                : $"{rule}: there the line goes.";
        }
    }
}

/// <summary>What is left for the main group.</summary>
public sealed record MainGroupHas(int ClearStripCm, MatArea Part) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => ClearStripCm == 0
        ? $"Without a clear strip the main group has {Size}."
        : $"{MatWords.Metres(ClearStripCm)} beyond the line stays clear; the main group has {Size}.";

    private string Size => $"{MatWords.Metres(Part.LengthCm)} by {MatWords.Metres(Part.WidthCm)}, {MatWords.SquareMetres(Part.M2)}";
}

/// <summary>There is one end, or none.</summary>
public sealed record OneEndOnly(bool Beginners, bool Main) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Beginners ? "There is no main group: the beginners have the whole mat and no line is needed."
        : Main ? "There are no beginners: the main group has the whole mat and no clear strip is taken off."
        : "Nobody is on the mat.";
}

/// <summary>Two ends do not go on the mat.</summary>
public sealed record TooSmallForTwo(MatRules Rules) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"Two ends with {MatWords.Metres(Rules.ClearStripCm)} between them, each with a space at least {MatWords.Metres(Rules.LeastSideCm)} wide, do not go on this mat: let one end work while the other watches.";
}

/// <summary>How many pairs an end has room for.</summary>
public sealed record RoomFor(string Name, MatEndPlan End) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var area = $"{Name}: {MatWords.SquareMetres(End.Area.M2)} at {End.PairM2} m² a pair is room for {Words.Count(End.ByArea, "pair")} by area";
            var drawn = End.Cells.Count == End.ByArea ? ", and as many can be drawn" : $", {End.Cells.Count} can be drawn without overlap";
            return $"{area}{drawn}; {Words.Count(End.Pairs, "pair")} {Words.Is(End.Pairs)} here, {End.AtOnce} at once.";
        }
    }
}

/// <summary>Who rests when.</summary>
public sealed record TheyTakeTurns(string Name, MatEndPlan End) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var off = End.Pairs - End.AtOnce;
            var each = End.Waves.Sum(w => w.Resting.Contains(1) ? 1 : 0);
            var running = 2 * off <= End.Pairs
                ? "nobody rests twice running"
                : "more than half must rest at a time, so some rest longer, everybody equally long";
            return $"{Name}: {off} {(off == 1 ? "pair rests" : "pairs rest")} each minute in register order, each pair {Words.Count(each, "minute")} in {End.Waves.Count}; {running}.";
        }
    }
}

/// <summary>What nobody works near to.</summary>
public sealed record KeepsAway(IReadOnlyList<string> Names, int MarginCm) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => MarginCm == 0
        ? $"No space lies on {Words.List(Names)}."
        : $"No space comes nearer than {MatWords.Metres(MarginCm)} to {Words.List(Names)}.";
}

/// <summary>The border of the mat stays free.</summary>
public sealed record BorderIsFree(int BorderCm) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"Nobody works on the border, {MatWords.Metres(BorderCm)} along all sides.";
}

/// <summary>Which way everybody throws.</summary>
public sealed record NobodyTowardTheLine : Reason
{
    /// <inheritdoc/>
    public override string Sentence => "Everybody throws along the line, across the length of the mat: nobody toward the other end.";
}

/// <summary>The figure that plans places says another number than tonight's.</summary>
public sealed record PlacesForPlanning(int Children, int Places, int PlaceM2) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"For planning places, {PlaceM2} m² a child, the same part counts as {Words.Count(Places, "place")}; tonight {Words.Count(Children, "beginner")} {Words.Is(Children)} there, because tonight counts pairs and a three as one. Both figures stand.";
}

/// <summary>The floor against a published rule.</summary>
public sealed record FloorAgainstRule(FloorCheck Check, int Children, int NarrowCm) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var own = Check.IsTheClubs ? "the club's rule" : "for comparison";
            var verdict = Check.IsEnough ? "enough"
                : Check.Rule == FloorRule.PerPair && Check.HaveM2 >= Check.NeededM2 ? $"not enough, the mat is {MatWords.Metres(NarrowCm)} wide and 3.5 m is the least"
                : "not enough";
            var source = Check.Rule == FloorRule.PerChild
                ? $"{Words.Count(Children, "child", "children")} at 2 m² each ask for {Check.NeededM2} m²"
                : $"{Words.Count((Children + 1) / 2, "pair")} ask for {Check.NeededM2} m², 25 m² and 4 m² a pair above 6";
            var from = Check.Rule == FloorRule.PerChild ? "British Judo Association" : "French Code du sport, A322-141";
            return $"Floor, {own} ({from}): {source}; the mat has {MatWords.SquareMetres(Check.HaveM2)}: {verdict}.";
        }
    }
}
