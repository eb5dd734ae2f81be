using Keikocho.Core.Safety;
using Keikocho.Store.Starter;

namespace Keikocho.Store.Tests.Starter;

public sealed class StarterFallsTests
{
    private const string Stages = "direction,side,stage,how,source\nback,none,1,sitting,x\nback,none,2,squat,x\nside,left,1,lying,x\n";

    private const string Throws = "technique,then,hand,falls,first drill,free drill,backward reap,source\nO-soto-gari,,right,back,1,2,yes,x\n";

    private static FallTable Read(string stages, string throws)
    {
        using var one = new StringReader(stages);
        using var two = new StringReader(throws);
        return StarterFalls.Read(one, "fall-stages.csv", two, "falls.csv");
    }

    [Fact]
    public void The_table_that_is_shipped_contradicts_nothing()
    {
        var table = StarterFalls.Table;
        Assert.Empty(table.Objections());
        Assert.Equal(33, table.Falls.Count);
        Assert.Equal(73, table.Throws.Count(t => t.Hand == ThrowHand.Right));
    }

    [Fact]
    public void Every_line_says_that_nobody_published_or_reviewed_it()
    {
        const string Said = "common practice, no source; not reviewed by a graded instructor";
        Assert.All(StarterFalls.Table.Throws, t => Assert.Equal(Said, t.Source));
        Assert.All(StarterFalls.Table.Falls, f => Assert.Equal(Said, f.Source));
    }

    [Fact]
    public void The_left_hand_is_the_mirror_of_the_right()
    {
        foreach (var right in StarterFalls.Table.Throws.Where(t => t.Hand == ThrowHand.Right))
        {
            var left = StarterFalls.Table.Of(right.Technique, ThrowHand.Left, right.Then)!;
            Assert.Equal(right.Ways.Select(Mirror).ToHashSet(), left.Ways.ToHashSet());
            Assert.Equal((right.FirstDrill, right.FreeDrill, right.BackwardReap), (left.FirstDrill, left.FreeDrill, left.BackwardReap));
        }

        static FallWay Mirror(FallWay way) => way.Side == FallSide.None ? way : way with { Side = way.Side == FallSide.Left ? FallSide.Right : FallSide.Left };
    }

    [Fact]
    public void Every_throw_that_reaps_backward_asks_the_backward_fall() =>
        Assert.All(StarterFalls.Table.Throws.Where(t => t.BackwardReap), t => Assert.Contains(new FallWay(FallDirection.Back, FallSide.None), t.Ways));

    [Fact]
    public void A_combination_asks_every_fall_of_both_its_throws() =>
        Assert.All(StarterFalls.Table.Throws.Where(t => t.Then is not null), t =>
        {
            foreach (var part in new[] { StarterFalls.Table.Of(t.Technique, t.Hand)!, StarterFalls.Table.Of(t.Then!, t.Hand)! })
            {
                Assert.Subset(t.Ways.ToHashSet(), part.Ways.ToHashSet());
                Assert.True(t.FirstDrill >= part.FirstDrill);
            }
        });

    [Theory]
    [InlineData("direction,side,stage,how,source\nback,left,1,sitting,x\n", Throws, "fall-stages.csv, line 2, column direction: \"back left\" is not a fall; write back, side left, side right, front, rolling left or rolling right.")]
    [InlineData("direction,side,stage,how,source\nback,none,2,squat,x\n", Throws, "fall-stages.csv, line 2, column stage: stage 2 comes after stage 1 of the same fall; add that line above, or put it there.")]
    [InlineData("direction,side,stage,how,source\nback,none,1,a,x\nback,none,1,b,x\n", Throws, "fall-stages.csv, line 3, column stage: this fall is there twice; take one out.")]
    [InlineData("direction,side,stage,how,source\nback,none,7,a,x\n", Throws, "fall-stages.csv, line 2, column stage: \"7\" is not a stage; write a number from 1 to 6.")]
    [InlineData("direction,side,stage,how,source\nback,none,1,,x\n", Throws, "fall-stages.csv, line 2, column how: the cell is empty; fill it.")]
    [InlineData("direction,side,stage,how\nback,none,1,a\n", Throws, "fall-stages.csv, line 1, column source: the column must be there once; add it, or take the second out.")]
    [InlineData("", Throws, "fall-stages.csv, line 1, column direction: the file is empty; write the line of columns.")]
    [InlineData(Stages, Throws + "O-soto-gari,,right,back,1,2,yes,x\n", "falls.csv, line 3, column technique: O-soto-gari is there twice for this hand; take one out.")]
    [InlineData(Stages, Throws + "O-goshi,,right,side left,1,2,no,x\n", "falls.csv, line 3, column free drill: there is no fall to the left side at stage 2 in the list of falls; add it there or change the stage.")]
    [InlineData(Stages, Throws + "O-goshi,,both,side left,1,1,no,x\n", "falls.csv, line 3, column hand: say right or left.")]
    [InlineData(Stages, Throws + "O-goshi,,right,over,1,1,no,x\n", "falls.csv, line 3, column falls: \"over\" is not a fall; write back, side left, side right, front, rolling left or rolling right.")]
    [InlineData(Stages, Throws + "O-goshi,,right,back; back,1,1,no,x\n", "falls.csv, line 3, column falls: one way is there twice; take one out.")]
    [InlineData(Stages, Throws + "O-goshi,,right,back,2,1,no,x\n", "falls.csv, line 3, column free drill: a free drill asks at least the stage 2 of the first drill.")]
    [InlineData(Stages, Throws + "O-goshi,,right,back,1,1,maybe,x\n", "falls.csv, line 3, column backward reap: say yes or no.")]
    [InlineData(Stages, Throws + "O-goshi,,right\n", "falls.csv, line 3: the line has a stray quotation mark, or more or fewer cells than there are columns; mend it.")]
    public void A_fault_names_the_file_the_line_and_the_column_and_nothing_is_read(string stages, string throws, string sentence) =>
        Assert.Equal(sentence, Assert.Throws<InvalidDataException>(() => Read(stages, throws)).Message);

    [Fact]
    public void A_throw_that_is_not_in_the_table_is_thrown_by_nobody()
    {
        var table = StarterFalls.Table;
        Assert.Empty(table.Plan("Own throw", [ThrowHand.Right], freely: false).Ways);
        Assert.Empty(Read(Stages, Throws).Plan("O-soto-gari", [ThrowHand.Right, ThrowHand.Left], freely: true).Ways);
    }

    [Fact]
    public void Both_hands_together_ask_the_falls_of_both()
    {
        var plan = StarterFalls.Table.Plan("uki-goshi", [ThrowHand.Right, ThrowHand.Left], freely: true);
        Assert.Equal([new(FallDirection.Side, FallSide.Left), new(FallDirection.Side, FallSide.Right)], plan.Ways);
        Assert.Equal(6, plan.Stage);
        Assert.Equal(4, StarterFalls.Table.Plan("O-uchi-gari", [ThrowHand.Right], freely: false, then: "Ko-uchi-gari").Stage);
    }
}
