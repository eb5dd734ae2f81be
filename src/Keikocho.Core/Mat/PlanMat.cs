using Keikocho.Core.Kernel;

namespace Keikocho.Core.Mat;

/// <summary>
/// The mat of one evening, to scale: where the line between the ends goes, who works where, how many pairs at once, and who rests
/// when. Everybody throws along the line, never toward it.
/// </summary>
public static class PlanMat
{
    private const int MostChildren = 500;
    private const int MostObstacles = 40;
    private const int LeastCm = 100;
    private const int MostCm = 10_000;
    private const int MostLongerCm = 1_000;

    /// <summary>Plans the mat.</summary>
    /// <exception cref="ArgumentException">A measure out of range, more pairs than children, or an obstacle without a size.</exception>
    public static MatPlan Plan(MatSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var rules = snapshot.Rules ?? new MatRules();
        Guard(snapshot, rules);
        var whole = new MatArea(
            snapshot.BorderCm, snapshot.BorderCm, snapshot.LengthCm - (2 * snapshot.BorderCm), snapshot.WidthCm - (2 * snapshot.BorderCm));
        var obstacles = snapshot.Obstacles ?? [];
        MatArea[] blocks = [.. obstacles.Select(o => Block(o, rules.ObstacleMarginCm))];
        var (beginners, main) = (snapshot.Beginners.PairsInUse, snapshot.Main.PairsInUse);
        var reasons = new List<Reason>();
        int? strip = null;
        if (beginners > 0 && main > 0)
            strip = Strip(snapshot, rules, whole, blocks, reasons);
        var turns = beginners > 0 && main > 0 && strip is null;
        MatArea? clear = null;
        var (beginnersPart, mainPart) = (whole, whole);
        if (strip is { } deep)
        {
            var line = whole.FromLengthCm + deep;
            clear = new MatArea(line, whole.FromWidthCm, rules.ClearStripCm, whole.WidthCm);
            beginnersPart = whole with { LengthCm = deep };
            mainPart = whole with { FromLengthCm = clear.ToLengthCm, LengthCm = whole.ToLengthCm - clear.ToLengthCm };
            reasons.Add(new MainGroupHas(rules.ClearStripCm, mainPart));
        }
        else
        {
            reasons.Add(turns ? new TooSmallForTwo(rules) : new OneEndOnly(beginners > 0, main > 0));
        }

        var first = beginners == 0 ? null : End(snapshot.Beginners, beginnersPart, blocks, snapshot.BeginnersWork, rules, lineAtStart: false);
        var second = main == 0 ? null : End(snapshot.Main, mainPart, blocks, snapshot.Work, rules, lineAtStart: strip is not null);
        foreach (var (end, name) in new[] { (first, "Beginners"), (second, "Main group") })
        {
            if (end is null) continue;
            reasons.Add(new RoomFor(name, end));
            if (end.Waves.Count > 0) reasons.Add(new TheyTakeTurns(name, end));
        }

        if (obstacles.Count > 0) reasons.Add(new KeepsAway([.. obstacles.Select(o => o.Name)], rules.ObstacleMarginCm));
        if (snapshot.BorderCm > 0) reasons.Add(new BorderIsFree(snapshot.BorderCm));
        if (beginners + main > 0) reasons.Add(new NobodyTowardTheLine());
        int? places = first is null ? null : (int)(beginnersPart.Cm2 / (rules.BeginnerPlaceM2 * 10_000L));
        if (places is { } planned && planned != snapshot.Beginners.Children) reasons.Add(new PlacesForPlanning(snapshot.Beginners.Children, planned, rules.BeginnerPlaceM2));
        var children = snapshot.Beginners.Children + snapshot.Main.Children;
        var floor = FloorRules.Both(snapshot.LengthCm, snapshot.WidthCm, children, rules.Floor);
        reasons.AddRange(floor.Select(f => new FloorAgainstRule(f, children, Math.Min(snapshot.LengthCm, snapshot.WidthCm))));
        return new MatPlan(
            Headline(strip, whole, turns, first, second, floor), snapshot.LengthCm, snapshot.WidthCm, clear?.FromLengthCm, clear, turns,
            first, second, obstacles, places, floor, reasons, rules.Used());
    }

    /// <summary>
    /// How deep the beginners' part is: the least whole number of mats that has the room for their pairs and on which their spaces can
    /// be drawn, as long as the main group keeps a space. Null where the mat is too small for two ends.
    /// </summary>
    private static int? Strip(MatSnapshot snapshot, MatRules rules, MatArea whole, IReadOnlyList<MatArea> blocks, List<Reason> reasons)
    {
        var pairs = snapshot.Beginners.PairsInUse;
        var cell = rules.PairM2(snapshot.BeginnersWork) * 10_000L;
        var most = (whole.LengthCm - rules.ClearStripCm - rules.LeastSideCm) / snapshot.ModuleCm * snapshot.ModuleCm;
        if (most < rules.LeastSideCm) return null;
        var needed = (int)Math.Min(int.MaxValue - MostCm, ((pairs * cell) + whole.WidthCm - 1) / whole.WidthCm);
        var byRule = (needed + snapshot.ModuleCm - 1) / snapshot.ModuleCm * snapshot.ModuleCm;
        var (best, drawn) = (0, -1);
        var longest = Math.Min(most, byRule + MostLongerCm);
        for (var deep = Math.Min(byRule, most); deep <= longest && drawn < pairs; deep += snapshot.ModuleCm)
        {
            // Only a longer part on which more of them work is worth taking from the main group.
            var now = Math.Min(pairs, LayCells.Most(whole with { LengthCm = deep }, blocks, cell, rules.LeastSideCm).Count);
            if (now > drawn) (best, drawn) = (deep, now);
        }

        if (drawn == 0) return null;
        reasons.Add(new LineGoes(snapshot.Beginners.Children, pairs, rules.PairM2(snapshot.BeginnersWork), whole.WidthCm, needed, snapshot.ModuleCm, byRule, best));
        return best;
    }

    private static MatEndPlan End(MatGroup group, MatArea part, IReadOnlyList<MatArea> blocks, MatWork work, MatRules rules, bool lineAtStart)
    {
        var m2 = rules.PairM2(work);
        var pairs = group.PairsInUse;
        var areas = LayCells.Most(part, blocks, m2 * 10_000L, rules.LeastSideCm);
        var ordered = lineAtStart
            ? areas.OrderByDescending(a => a.ToLengthCm).ThenBy(a => a.FromWidthCm)
            : areas.OrderBy(a => a.FromLengthCm).ThenBy(a => a.FromWidthCm);
        var atOnce = Math.Min(pairs, areas.Count);
        MatCell[] cells = [.. ordered.Select((a, i) => new MatCell(i + 1, a, ThrowingWay.AlongTheLine, i < atOnce))];
        return new MatEndPlan(group.Children, pairs, part, m2, (int)(part.Cm2 / (m2 * 10_000L)), cells, atOnce, TakeTurns.Of(pairs, atOnce));
    }

    private static string Headline(int? strip, MatArea whole, bool turns, MatEndPlan? beginners, MatEndPlan? main, IReadOnlyList<FloorCheck> floor)
    {
        var small = floor.First(f => f.IsTheClubs).IsEnough ? "" : "; the mat is smaller than the club's rule asks";
        if (beginners is null && main is null) return "nobody is on the mat";
        if (turns) return $"too small for two ends at once: one works, the other watches{small}";
        var line = strip is { } deep ? $"the line is {MatWords.Metres(whole.FromLengthCm + deep)} from the beginners' side; " : "no line; ";
        string[] ends =
        [
            .. new[] { (End: beginners, Name: "beginners"), (End: main, Name: "main group") }
                .Where(e => e.End is not null)
                .Select(e => e.End!.AtOnce == e.End.Pairs ? $"{e.Name}: all {Words.Count(e.End.Pairs, "pair")} at once" : $"{e.Name}: {e.End.AtOnce} of {e.End.Pairs} pairs at once"),
        ];
        return line + string.Join("; ", ends) + small;
    }

    private static MatArea Block(MatObstacle obstacle, int margin) =>
        new(obstacle.FromLengthCm - margin, obstacle.FromWidthCm - margin, obstacle.LengthCm + (2 * margin), obstacle.WidthCm + (2 * margin));

    private static void Guard(MatSnapshot snapshot, MatRules rules)
    {
        rules.Guard();
        if (!Enum.IsDefined(snapshot.Work) || !Enum.IsDefined(snapshot.BeginnersWork) || !Enum.IsDefined(rules.Floor))
            throw new ArgumentException("The work is throwing or technique, the floor's rule perChild or perPair.", nameof(snapshot));
        Measure(snapshot.LengthCm, "The length of the mat", LeastCm, MostCm);
        Measure(snapshot.WidthCm, "The width of the mat", LeastCm, MostCm);
        Measure(snapshot.ModuleCm, "The side of one mat", 10, 1_000);
        Measure(snapshot.BorderCm, "The border", 0, 500);
        if (2 * snapshot.BorderCm >= Math.Min(snapshot.LengthCm, snapshot.WidthCm))
            throw new ArgumentException($"The border of {MatWords.Metres(snapshot.BorderCm)} leaves nothing of the mat; make it narrower.", nameof(snapshot));
        Group(snapshot.Beginners, "beginners");
        Group(snapshot.Main, "main");
        NoGaps.In(snapshot.Obstacles ?? [], "obstacles");
        if (snapshot.Obstacles?.Count > MostObstacles)
            throw new ArgumentException($"A mat has at most {MostObstacles} obstacles; leave some out.", nameof(snapshot));
        foreach (var obstacle in snapshot.Obstacles ?? [])
        {
            if (string.IsNullOrWhiteSpace(obstacle.Name))
                throw new ArgumentException("An obstacle has a name; call it what the club calls it.", nameof(snapshot));
            Measure(obstacle.LengthCm, $"The length of {obstacle.Name}", 1, MostCm);
            Measure(obstacle.WidthCm, $"The width of {obstacle.Name}", 1, MostCm);
            Measure(obstacle.FromLengthCm, $"Where {obstacle.Name} begins along the length", -MostCm, MostCm);
            Measure(obstacle.FromWidthCm, $"Where {obstacle.Name} begins along the width", -MostCm, MostCm);
        }
    }

    private static void Group(MatGroup group, string name)
    {
        if (group.Children is < 0 or > MostChildren)
            throw new ArgumentException($"The children of {name} are from 0 to {MostChildren}.", nameof(group));
        if (group.Pairs is { } pairs && (pairs < 0 || pairs > group.Children || (pairs == 0 && group.Children > 0)))
            throw new ArgumentException($"The pairs of {name} are from {Math.Min(1, group.Children)} to {group.Children}, as many as its children at the most.", nameof(group));
    }

    private static void Measure(int cm, string what, int least, int most)
    {
        if (cm < least || cm > most)
            throw new ArgumentException($"{what} is from {least} to {most} cm.", nameof(cm));
    }
}
