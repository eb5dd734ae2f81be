namespace Keikocho.Core.Mat;

/// <summary>
/// Judges a plan of the mat by walking over it: measures are counted out, spaces are laid against each other, against the obstacles and
/// against a plain pattern of equal rows, and the waves are counted pair by pair.
/// </summary>
public static class PlanMatCheck
{
    /// <summary>What is wrong with <paramref name="plan"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(MatSnapshot snapshot, MatPlan plan)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(plan);
        var rules = snapshot.Rules ?? new MatRules();
        var objections = new List<string>();
        void Expect(bool holds, string what)
        {
            if (!holds) objections.Add(what);
        }

        var beginners = Pairs(snapshot.Beginners);
        var main = Pairs(snapshot.Main);
        Expect((plan.Beginners is null) == (beginners == 0) && (plan.Main is null) == (main == 0), "An end is planned exactly when somebody is there.");
        Expect(plan.LineCm is null || (beginners > 0 && main > 0), "A line is needed only between two ends.");
        Expect(plan.TakeTurns == (beginners > 0 && main > 0 && plan.LineCm is null), "The ends take turns exactly when both are there and no line divides them.");
        if (plan.LineCm is { } line)
        {
            var deep = line - snapshot.BorderCm;
            Expect(deep % snapshot.ModuleCm == 0, "The line lies where mats meet.");
            var mats = 0;
            while ((long)mats * snapshot.ModuleCm * (snapshot.WidthCm - (2 * snapshot.BorderCm)) < beginners * PairM2(rules, snapshot.BeginnersWork) * 10_000L) mats++;
            var room = snapshot.LengthCm - snapshot.BorderCm - line - rules.ClearStripCm;
            Expect(deep >= mats * snapshot.ModuleCm || room - rules.LeastSideCm < snapshot.ModuleCm, "The beginners' part has the room of its pairs, unless the main group keeps no more than its least.");
            Expect(deep <= mats * snapshot.ModuleCm || plan.Beginners!.AtOnce > 0, "The line is moved for spaces that can be drawn.");
            Expect(room >= rules.LeastSideCm, "The main group keeps room for a space.");
            Expect(plan.ClearStrip is { } c && c.FromLengthCm == line && c.LengthCm == rules.ClearStripCm, "The clear strip lies on the main group's side of the line.");
            Expect(plan.Beginners!.Area.ToLengthCm == line && plan.Main!.Area.FromLengthCm == line + rules.ClearStripCm, "The ends lie on their sides of the line.");
        }

        foreach (var (end, group, work) in new[] { (plan.Beginners, snapshot.Beginners, snapshot.BeginnersWork), (plan.Main, snapshot.Main, snapshot.Work) })
        {
            if (end is null) continue;
            Expect(end.Children == group.Children && end.Pairs == Pairs(group), "The children and pairs of an end are those of the question.");
            Expect(end.PairM2 == PairM2(rules, work), "The square metres a pair are those of its work.");
            Cells(snapshot, rules, end, Expect);
            Waves(end, Expect);
        }

        Expect(plan.BeginnerPlaces == (plan.Beginners is null ? null : (int)Math.Floor(plan.Beginners.Area.M2 / rules.BeginnerPlaceM2)), "The places for planning are the beginners' part by its own figure.");
        Floor(snapshot, rules, plan, Expect);
        return objections;
    }

    private static void Cells(MatSnapshot snapshot, MatRules rules, MatEndPlan end, Action<bool, string> expect)
    {
        var part = end.Area;
        expect(part.FromLengthCm >= snapshot.BorderCm && part.FromWidthCm >= snapshot.BorderCm
            && part.ToLengthCm <= snapshot.LengthCm - snapshot.BorderCm && part.ToWidthCm <= snapshot.WidthCm - snapshot.BorderCm, "An end lies inside the border of the mat.");
        expect(end.ByArea == (int)Math.Floor(part.M2 / end.PairM2), "The number by area is the area over the square metres a pair.");
        expect(end.AtOnce == Math.Min(end.Pairs, end.Cells.Count) && end.Cells.Count(c => c.InUse) == end.AtOnce, "As many work at once as there are pairs and spaces.");
        expect(end.Cells.Count <= end.ByArea, "No more spaces than the area has.");
        expect(end.Cells.Select(c => c.Number).SequenceEqual(Enumerable.Range(1, end.Cells.Count)), "The spaces are numbered from 1.");
        for (var i = 0; i < end.Cells.Count; i++)
        {
            var cell = end.Cells[i];
            var area = cell.Area;
            expect(area.FromLengthCm >= part.FromLengthCm && area.ToLengthCm <= part.ToLengthCm && area.FromWidthCm >= part.FromWidthCm && area.ToWidthCm <= part.ToWidthCm,
                "A space lies inside its end.");
            expect(area.M2 >= end.PairM2, "A space has the square metres of a pair.");
            expect(area.LengthCm >= rules.LeastSideCm && area.WidthCm >= rules.LeastSideCm, "A space is as wide as it must be.");
            expect(cell.Throws == ThrowingWay.AlongTheLine, "Nobody throws toward the line.");
            for (var j = i + 1; j < end.Cells.Count; j++)
            {
                var other = end.Cells[j].Area;
                expect(area.ToLengthCm <= other.FromLengthCm || other.ToLengthCm <= area.FromLengthCm || area.ToWidthCm <= other.FromWidthCm || other.ToWidthCm <= area.FromWidthCm,
                    "No two spaces overlap.");
            }

            foreach (var o in snapshot.Obstacles ?? [])
            {
                var m = rules.ObstacleMarginCm;
                expect(area.ToLengthCm + m <= o.FromLengthCm || o.FromLengthCm + o.LengthCm + m <= area.FromLengthCm
                    || area.ToWidthCm + m <= o.FromWidthCm || o.FromWidthCm + o.WidthCm + m <= area.FromWidthCm, $"A space keeps away from {o.Name}.");
            }
        }

        if (snapshot.Obstacles is not { Count: > 0 })
            expect(end.Cells.Count >= PlainRows(part, end.PairM2 * 10_000L, rules.LeastSideCm), "A plain pattern of equal rows holds no more spaces.");
    }

    /// <summary>The most spaces of one size in equal rows.</summary>
    private static int PlainRows(MatArea part, long cell, int side)
    {
        var most = 0;
        for (var columns = 1; part.WidthCm / columns >= side; columns++)
        {
            var wide = part.WidthCm / columns;
            var deep = Math.Max(side, (int)((cell + wide - 1) / wide));
            most = Math.Max(most, columns * (part.LengthCm / deep));
        }

        return most;
    }

    private static void Waves(MatEndPlan end, Action<bool, string> expect)
    {
        expect(end.Waves.Count == 0 == (end.Pairs == end.AtOnce || end.AtOnce == 0), "There are waves exactly when not all work at once.");
        if (end.Waves.Count == 0) return;
        var all = Enumerable.Range(1, end.Pairs).ToArray();
        foreach (var wave in end.Waves)
        {
            expect(wave.Working.Count == end.AtOnce && wave.Resting.Concat(wave.Working).Order().SequenceEqual(all), "In each minute every pair works or rests.");
        }

        var rests = all.Select(p => end.Waves.Count(w => w.Resting.Contains(p))).Distinct().ToArray();
        expect(rests.Length == 1, "Everybody rests equally often.");
        // Round and round: the first wave follows the last.
        var canRestApart = 2 * (end.Pairs - end.AtOnce) <= end.Pairs;
        var longestRest = canRestApart ? 1 : ((end.Pairs + end.AtOnce - 1) / end.AtOnce) - 1;
        foreach (var pair in all)
        {
            var (longest, running) = (0, 0);
            foreach (var wave in end.Waves.Concat(end.Waves))
            {
                running = wave.Resting.Contains(pair) ? running + 1 : 0;
                longest = Math.Max(longest, running);
            }

            expect(longest <= longestRest, $"Pair {pair} rests longer running than it must.");
        }
    }

    private static void Floor(MatSnapshot snapshot, MatRules rules, MatPlan plan, Action<bool, string> expect)
    {
        var children = snapshot.Beginners.Children + snapshot.Main.Children;
        var have = snapshot.LengthCm / 100m * (snapshot.WidthCm / 100m);
        var twoEach = 0;
        for (var child = 0; child < children; child++) twoEach += 2;
        var pairs = 25;
        for (var child = 13; child <= children; child += 2) pairs += 4;
        expect(plan.Floor.Count == 2 && plan.Floor.Count(f => f.IsTheClubs) == 1 && plan.Floor.All(f => f.HaveM2 == have), "The floor is held against both rules, one of them the club's.");
        foreach (var floor in plan.Floor)
        {
            var needed = floor.Rule == FloorRule.PerChild ? twoEach : pairs;
            var wide = floor.Rule == FloorRule.PerChild || (snapshot.WidthCm >= 350 && snapshot.LengthCm >= 350);
            expect(floor.NeededM2 == needed, $"{floor.Rule} asks for {needed} square metres.");
            expect(floor.IsEnough == (have >= needed && wide), $"{floor.Rule} is judged wrongly.");
            expect(floor.IsTheClubs == (floor.Rule == rules.Floor), $"{floor.Rule} is the club's or is not.");
        }
    }

    private static int Pairs(MatGroup group) => group.Pairs ?? Math.Max(Math.Min(1, group.Children), (group.Children - (group.Children % 2)) / 2);

    private static int PairM2(MatRules rules, MatWork work) => work == MatWork.Throwing ? rules.ThrowingPairM2 : rules.TechniquePairM2;
}
