using CsCheck;
using Keikocho.Core.Kernel;
using Keikocho.Core.Mat;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Mat;

public sealed class PlanMatTests
{
    /// <summary>The evening that is reckoned by hand on the sum's page: 12 x 8 m, 9 beginners, 16 in the main group.</summary>
    private static readonly MatSnapshot ByHand = new(1200, 800, new MatGroup(9), new MatGroup(16));

    private static MatPlan Plan(MatSnapshot snapshot)
    {
        var plan = PlanMat.Plan(snapshot);
        Assert.Empty(PlanMatCheck.Objections(snapshot, plan));
        return plan;
    }

    [Fact]
    public void The_example_by_hand_line_strip_and_seven_pairs()
    {
        var plan = Plan(ByHand);
        Assert.Equal(300, plan.LineCm);
        Assert.Equal(new MatArea(300, 0, 100, 800), plan.ClearStrip);
        Assert.Equal((4, 4, 4), (plan.Beginners!.Pairs, plan.Beginners.ByArea, plan.Beginners.AtOnce));
        Assert.Equal(new MatArea(400, 0, 800, 800), plan.Main!.Area);
        Assert.Equal((8, 7, 7, 7), (plan.Main.Pairs, plan.Main.ByArea, plan.Main.Cells.Count, plan.Main.AtOnce));
        Assert.Equal("the line is 3 m from the beginners' side; beginners: all 4 pairs at once; main group: 7 of 8 pairs at once", plan.Headline);
    }

    [Fact, Statement(46)]
    public void Eight_pairs_and_room_for_seven_take_turns_each_off_one_minute_in_eight()
    {
        var waves = Plan(ByHand).Main!.Waves;
        Assert.Equal([8, 1, 2, 3, 4, 5, 6, 7], waves.Select(w => Assert.Single(w.Resting)));
        Assert.Equal([1, 2, 3, 4, 5, 6, 7], waves[0].Working);
        Assert.Equal([8, 2, 3, 4, 5, 6, 7], waves[1].Working);
        Assert.Contains(Plan(ByHand).Reasons, r => r.Sentence == "Main group: 1 pair rests each minute in register order, each pair 1 minute in 8; nobody rests twice running.");
    }

    [Fact]
    public void The_floor_of_the_example_is_enough_by_both_published_rules()
    {
        var floor = Plan(ByHand).Floor;
        Assert.Equal([(FloorRule.PerChild, 50, 96m, true, true), (FloorRule.PerPair, 53, 96m, true, false)], floor.Select(f => (f.Rule, f.NeededM2, f.HaveM2, f.IsEnough, f.IsTheClubs)));
    }

    [Fact]
    public void Tonights_nine_and_the_eight_of_planning_are_both_said()
    {
        var plan = Plan(ByHand);
        Assert.Equal((9, 8), (plan.Beginners!.Children, plan.BeginnerPlaces!.Value));
        Assert.Contains(plan.Reasons, r => r.Sentence.StartsWith("For planning places, 3 m² a child, the same part counts as 8 places; tonight 9 beginners are there", StringComparison.Ordinal));
    }

    // Area for a number of pairs: reckoned from the rule of the French Code du sport, A322-141, 25 m2 and 4 more a pair above 6, as the
    // federation's technical sheet quotes it (read). The figures themselves are calculated.
    [Theory]
    [InlineData(4, 25)]
    [InlineData(6, 25)]
    [InlineData(7, 29)]
    [InlineData(10, 41)]
    [InlineData(12, 49)]
    [InlineData(20, 81)]
    public void The_rule_a_pair_asks_for_so_many_square_metres(int pairs, int m2)
    {
        Assert.Equal(m2, FloorRules.ForPairs(pairs));
        Assert.Equal(Math.Max(6, pairs), FloorRules.PairsOn(m2));
        Assert.True(FloorRules.PairsOn(m2 - 1) < Math.Max(6, pairs));
    }

    [Fact]
    public void A_hundred_square_metres_take_twenty_four_pairs_by_the_rule_a_pair() => Assert.Equal(24, FloorRules.PairsOn(100));

    // British Judo Association, mat specification (read): 2 m2 a pupil. The comparison of the two rules is calculated.
    [Theory]
    [InlineData(12, 24, 25)]
    [InlineData(24, 48, 49)]
    [InlineData(40, 80, 81)]
    public void The_two_published_rules_differ_by_a_square_metre(int children, int perChild, int perPair)
    {
        Assert.Equal(perChild, FloorRules.ForChildren(children));
        Assert.Equal(perPair, FloorRules.ForPairs(children / 2));
    }

    [Theory]
    [InlineData(0, 10, "There are no beginners: the main group has the whole mat and no clear strip is taken off.")]
    [InlineData(10, 0, "There is no main group: the beginners have the whole mat and no line is needed.")]
    public void One_end_alone_has_the_whole_mat(int beginners, int main, string sentence)
    {
        var plan = Plan(ByHand with { Beginners = new MatGroup(beginners), Main = new MatGroup(main) });
        Assert.Null(plan.LineCm);
        Assert.Equal(96m * 10_000, (plan.Beginners ?? plan.Main)!.Area.LengthCm * (plan.Beginners ?? plan.Main)!.Area.WidthCm);
        Assert.Contains(plan.Reasons, r => r.Sentence == sentence);
    }

    [Fact]
    public void One_beginner_works_with_an_adult_and_counts_as_a_pair_on_a_strip_that_can_be_drawn()
    {
        // 6 m2 on 8 m of width are 0.75 m, 1 m in whole mats; no space 2 m wide can be drawn on that.
        var plan = Plan(ByHand with { Beginners = new MatGroup(1) });
        Assert.Equal((1, 200), (plan.Beginners!.Pairs, plan.LineCm!.Value));
        Assert.Contains(plan.Reasons, r => r.Sentence.EndsWith("their spaces cannot be drawn on that, so the line is at 2 m.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_pillar_and_a_metre_around_it_stay_free()
    {
        var plan = Plan(ByHand with { Obstacles = [new MatObstacle("pillar", 780, 380, 40, 40)] });
        Assert.InRange(plan.Main!.AtOnce, 4, 6);
        Assert.Contains(plan.Reasons, r => r.Sentence == "No space comes nearer than 1 m to pillar.");
        Assert.Contains(plan.Reasons, r => r.Sentence.Contains($", {plan.Main.Cells.Count} can be drawn without overlap", StringComparison.Ordinal));
    }

    [Fact]
    public void A_stage_beside_the_mat_counts_as_far_as_its_metre_reaches() =>
        Assert.All(Plan(ByHand with { Obstacles = [new MatObstacle("stage", 0, -300, 1200, 300)] }).Main!.Cells, c => Assert.True(c.Area.FromWidthCm >= 100));

    [Fact]
    public void A_mat_too_small_for_two_ends_is_used_in_turns()
    {
        var plan = Plan(new MatSnapshot(400, 400, new MatGroup(4), new MatGroup(4)));
        Assert.True(plan.TakeTurns);
        Assert.StartsWith("too small for two ends at once: one works, the other watches", plan.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mat_that_is_too_small_says_so_and_allows_nothing()
    {
        var plan = Plan(new MatSnapshot(600, 600, new MatGroup(8), new MatGroup(12)));
        Assert.EndsWith("; the mat is smaller than the club's rule asks", plan.Headline, StringComparison.Ordinal);
        Assert.DoesNotContain(plan.Reasons, r => r.Sentence.Contains("allowed", StringComparison.Ordinal));
    }

    [Fact]
    public void A_narrow_mat_is_not_enough_by_the_rule_a_pair() =>
        Assert.False(Plan(new MatSnapshot(2000, 300, new MatGroup(0), new MatGroup(12), Rules: new MatRules(Floor: FloorRule.PerPair))).Floor[1].IsEnough);

    [Fact]
    public void A_border_is_left_free_on_all_sides()
    {
        var plan = Plan(ByHand with { BorderCm = 100 });
        Assert.All(plan.Main!.Cells.Concat(plan.Beginners!.Cells), c => Assert.InRange(c.Area.FromWidthCm, 100, 500));
    }

    [Fact]
    public void Technique_takes_less_room_than_throwing() =>
        Assert.Equal(8, Plan(ByHand with { Work = MatWork.Technique }).Main!.AtOnce);

    [Theory]
    [InlineData(99, 800, "The length of the mat is from 100 to 10000 cm.")]
    [InlineData(1200, 20_000, "The width of the mat is from 100 to 10000 cm.")]
    public void A_measure_out_of_range_is_refused(int length, int width, string sentence) =>
        Assert.StartsWith(sentence, Assert.Throws<ArgumentException>(() => PlanMat.Plan(ByHand with { LengthCm = length, WidthCm = width })).Message, StringComparison.Ordinal);

    [Fact]
    public void More_pairs_than_children_are_refused() =>
        Assert.StartsWith("The pairs of main are from 1 to 4", Assert.Throws<ArgumentException>(() => PlanMat.Plan(ByHand with { Main = new MatGroup(4, 5) })).Message, StringComparison.Ordinal);

    [Fact]
    public void A_plan_that_is_wrong_is_found()
    {
        var plan = PlanMat.Plan(ByHand);
        var moved = plan.Main!.Cells[0] with { Area = plan.Main.Cells[1].Area };
        Assert.Contains("No two spaces overlap.", PlanMatCheck.Objections(ByHand, plan with { Main = plan.Main with { Cells = [moved, .. plan.Main.Cells.Skip(1)] } }));
        Assert.Contains("Everybody rests equally often.", PlanMatCheck.Objections(ByHand, plan with { Main = plan.Main with { Waves = [.. plan.Main.Waves.Take(7)] } }));
        Assert.Contains("The line lies where mats meet.", PlanMatCheck.Objections(ByHand, plan with { LineCm = 250 }));
    }

    private static readonly Gen<MatObstacle[]> Obstacles =
        Gen.Select(Gen.Int[-200, 1500], Gen.Int[-200, 1200], Gen.Int[10, 400], Gen.Int[10, 400]).Array[0, 4]
            .Select(all => all.Select((o, i) => new MatObstacle($"obstacle {i + 1}", o.Item1, o.Item2, o.Item3, o.Item4)).ToArray());

    private static readonly Gen<MatSnapshot> AnyMat =
        Gen.Select(Gen.Int[100, 2000], Gen.Int[100, 1500], Gen.Int[0, 24], Gen.Int[0, 40], Gen.Int[0, 3], Gen.Int[0, 1], Obstacles, Gen.Int[0, 1])
            .Select((length, width, beginners, main, module, border, obstacles, work) => new MatSnapshot(
                length, width, new MatGroup(beginners), new MatGroup(main), (MatWork)work, MatWork.Technique,
                module switch { 0 => 50, 1 => 100, 2 => 200, _ => 1 + 99 }, border * 40, obstacles));

    [Fact]
    public void Any_mat_with_any_obstacles_has_a_plan_that_the_check_accepts() =>
        AnyMat.Sample(s => PlanMatCheck.Objections(s, PlanMat.Plan(s)).Count == 0, iter: 400);

    [Fact]
    public void An_obstacle_never_makes_room()
    {
        AnyMat.Sample(
            s => (PlanMat.Plan(s with { Beginners = new MatGroup(0) }).Main?.Cells.Count ?? 0)
                <= (PlanMat.Plan(s with { Beginners = new MatGroup(0), Obstacles = [] }).Main?.Cells.Count ?? 0),
            iter: 200);
    }

    [Fact]
    public void The_same_question_has_the_same_answer() =>
        AnyMat.Sample(s => SumJson.Write(PlanMat.Plan(s)) == SumJson.Write(PlanMat.Plan(s)), iter: 50);
}
