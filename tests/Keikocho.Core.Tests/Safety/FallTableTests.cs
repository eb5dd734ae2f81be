using Keikocho.Core.Safety;
using Keikocho.Testing;
using static Keikocho.Core.Tests.Safety.Gates;

namespace Keikocho.Core.Tests.Safety;

public sealed class FallTableTests
{
    private static readonly FallTable Table = new(
        [.. from way in new[] { Back, Left, Right } from stage in Enumerable.Range(1, 6) select new FallThatIs(way, stage, "shown", "ours, no source")],
        [
            new("O-soto-gari", null, ThrowHand.Right, [Back], 5, 6, true, "ours, no source"),
            new("Uki-goshi", null, ThrowHand.Right, [Left], 4, 6, false, "ours, no source"),
            new("Uki-goshi", null, ThrowHand.Left, [Right], 4, 6, false, "ours, no source"),
            new("Uki-goshi", "O-soto-gari", ThrowHand.Right, [Back, Left], 5, 6, true, "ours, no source"),
        ]);

    [Fact]
    public void A_table_that_is_sound_has_no_objection() => Assert.Empty(Table.Objections());

    [Fact]
    public void What_contradicts_itself_is_said()
    {
        Assert.Single((Table with { Throws = [.. Table.Throws, Table.Throws[0]] }).Objections());
        Assert.Single((Table with { Throws = [Table.Throws[0] with { Ways = [] }] }).Objections());
        Assert.Single((Table with { Throws = [Table.Throws[0] with { Ways = [Front] }] }).Objections());
        Assert.Single((Table with { Throws = [Table.Throws[0] with { FreeDrill = 4 }] }).Objections());
        Assert.Single((Table with { Falls = [.. Table.Falls, Table.Falls[0]] }).Objections());
        Assert.Single((Table with { Falls = [.. Table.Falls, new FallThatIs(Front, 2, "shown", "ours, no source")] }).Objections());
    }

    [Fact, Statement(13)]
    public void A_throw_that_is_drilled_freely_asks_its_own_stage_and_is_not_done_after_one_evening()
    {
        var planned = Table.Plan("O-soto-gari", [ThrowHand.Right], freely: true);
        Assert.Equal(6, planned.Stage);
        var one = Child(Day(3, 12), [Falls(Day(3, 3), "5"), Falls(Day(3, 10), "6")]) with { Planned = [planned] };
        Assert.False(Reckon(one).Throws[0].MayBeThrown);
        Assert.True(Reckon(one).Of(Back).Stages[5].MayBeTried);
        Assert.True(Reckon(one with { Planned = [Table.Plan("O-soto-gari", [ThrowHand.Right], freely: false)] }).Throws[0].MayBeThrown);
    }

    [Fact, Statement(17)]
    public void A_combination_is_done_only_where_the_falls_of_both_throws_are_open()
    {
        var child = Child(Day(3, 12), [Falls(Day(3, 3), "6"), Falls(Day(3, 10), "6")]) with
        {
            Planned =
            [
                Table.Plan("o-soto-gari", [ThrowHand.Right], freely: true), Table.Plan("Uki-goshi", [ThrowHand.Right], freely: true),
                Table.Plan("Uki-goshi", [ThrowHand.Right], freely: true, then: "O-soto-gari"), Table.Plan("O-soto-gari", [ThrowHand.Left], freely: true),
            ],
        };
        Assert.Equal([true, false, false, false], Reckon(child).Throws.Select(t => t.MayBeThrown));
        Assert.Equal("O-soto-gari: is not thrown; the fall table does not say which way one falls from it.", Reckon(child).Throws[3].Because.Sentence);
    }

    [Fact]
    public void A_hand_is_named() => Assert.Throws<ArgumentException>(() => Table.Plan("Uki-goshi", [], freely: true));
}
