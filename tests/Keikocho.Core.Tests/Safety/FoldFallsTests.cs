using CsCheck;
using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Testing;

namespace Keikocho.Core.Tests.Safety;

public sealed class FoldFallsTests
{
    private static readonly DateOnly Today = new(2026, 3, 3);

    private static FallTap Fall(int id, bool clean = true, int device = 1, bool confirms = true, int stage = 3) => new(
        Ids.Mark(id), Ids.Device(device), id, Today, MarkKind.Fall, new FallShown(FallDirection.Back, FallSide.None, stage, clean), null, "Anna", confirms);

    private static FallTap About(int id, MarkKind kind, int target, bool? clean = null, int device = 1, bool confirms = true) => new(
        Ids.Mark(id), Ids.Device(device), id, Today.AddDays(2), kind, clean is { } c ? new FallShown(FallDirection.Back, FallSide.None, 3, c) : null, Ids.Mark(target), "Ben", confirms);

    [Fact]
    public void A_fall_that_was_taken_back_is_gone() => Assert.Empty(FoldFalls.Fold([Fall(1), About(2, MarkKind.Cleared, 1)]));

    [Fact]
    public void Another_tablet_takes_no_head_touch_back() =>
        Assert.False(Assert.Single(FoldFalls.Fold([Fall(1, clean: false), About(2, MarkKind.Cleared, 1, device: 2)])).Clean);

    [Fact]
    public void A_leader_takes_back_an_own_mark_but_not_an_instructors()
    {
        Assert.Empty(FoldFalls.Fold([Fall(1, clean: false, confirms: false), About(2, MarkKind.Cleared, 1, confirms: false)]));
        Assert.Single(FoldFalls.Fold([Fall(1, clean: false), About(2, MarkKind.Cleared, 1, confirms: false)]));
    }

    [Fact]
    public void A_leader_takes_no_head_touch_back_that_an_instructor_confirmed()
    {
        var touch = Fall(1, clean: false, confirms: false);
        var confirmed = About(2, MarkKind.Confirmed, 1, device: 2);
        var stands = Assert.Single(FoldFalls.Fold([touch, confirmed, About(3, MarkKind.Cleared, 1, confirms: false)]));
        Assert.Equal((false, true), (stands.Clean, stands.Confirmed));
        // Nor by another word in its place; that one is a suggestion beside it.
        var instead = Fall(4, confirms: false) with { Replaces = touch.Id };
        Assert.Equal([false, true], FoldFalls.Fold([touch, confirmed, instead]).Select(f => f.Clean));
        // With the right it is taken back, and a confirmed clean fall is still taken back by whoever tapped it: less is never more.
        Assert.Empty(FoldFalls.Fold([touch, confirmed, About(3, MarkKind.Cleared, 1)]));
        Assert.Empty(FoldFalls.Fold([Fall(1, confirms: false), confirmed, About(3, MarkKind.Cleared, 1, confirms: false)]));
    }

    [Fact]
    public void A_correction_stands_on_the_evening_and_at_the_place_of_the_first_mark() =>
        Assert.Equal(
            new FallMark(Today, FallDirection.Back, FallSide.None, 3, true, true, Ids.Device(1), 1, "Ben"),
            Assert.Single(FoldFalls.Fold([Fall(1, clean: false), About(2, MarkKind.Corrected, 1, clean: true, device: 2)])));

    [Fact]
    public void A_fall_on_the_wrong_child_is_corrected_to_none() => Assert.Empty(FoldFalls.Fold([Fall(1), About(2, MarkKind.Corrected, 1, device: 2)]));

    [Fact]
    public void A_leaders_correction_hides_no_head_touch()
    {
        var falls = FoldFalls.Fold([Fall(1, clean: false), About(2, MarkKind.Corrected, 1, clean: true, confirms: false)]);
        Assert.Equal([(false, true), (true, false)], falls.Select(f => (f.Clean, f.Confirmed)));
    }

    [Fact, Statement(20)]
    public void A_leaders_clean_fall_is_confirmed_only_by_somebody_with_the_right()
    {
        var leaders = Fall(1, confirms: false);
        Assert.False(Assert.Single(FoldFalls.Fold([leaders])).Confirmed);
        Assert.False(Assert.Single(FoldFalls.Fold([leaders, About(2, MarkKind.Confirmed, 1, device: 2, confirms: false)])).Confirmed);
        Assert.True(Assert.Single(FoldFalls.Fold([leaders, About(2, MarkKind.Confirmed, 1, device: 2)])).Confirmed);
        Assert.False(Assert.Single(FoldFalls.Fold([leaders, About(2, MarkKind.Confirmed, 1, device: 2), About(3, MarkKind.Cleared, 2, device: 2)])).Confirmed);
    }

    // Two tablets on one evening, worked by hand: clean on one, head touched on the other.
    [Fact]
    public void Clean_on_one_tablet_and_touched_on_the_other_is_no_clean_evening_and_both_stay()
    {
        var falls = FoldFalls.Fold([Fall(1), Fall(2, clean: false, device: 2)]);
        Assert.Equal(2, falls.Count);
        var gate = Gates.Reckon(new FallGateSnapshot(Today, falls, [Today], [], new FallGateRule(), [])).Of(Gates.Back);
        Assert.Equal((GateState.Shut, 0), (gate.Stages[2].State, gate.Stages[2].CleanEvenings));
    }

    [Fact]
    public void A_mark_that_says_nothing_of_a_fall_is_refused()
    {
        Assert.Throws<ArgumentException>(() => FoldFalls.Fold([Fall(1) with { Kind = MarkKind.Sighting }]));
        Assert.Throws<ArgumentException>(() => FoldFalls.Fold([Fall(1) with { Shown = null }]));
        Assert.Throws<ArgumentException>(() => FoldFalls.Fold([Fall(1, stage: 9)]));
        Assert.Throws<ArgumentException>(() => FoldFalls.Fold([Fall(1), Fall(1, clean: false)]));
    }

    private static readonly Gen<FallTap[]> Any =
        Gen.Select(Gen.Int[0, 7], Gen.Int[1, 2], Gen.Int[1, 8], Gen.Int[1, 9], Gen.Bool, Gen.Bool).Array[0, 9].Select(list => list.Select((t, i) => t.Item1 switch
        {
            < 4 => Fall(i + 1, t.Item5, t.Item2, t.Item6) with { Sequence = t.Item3 },
            4 => About(i + 1, MarkKind.Cleared, t.Item4, null, t.Item2, t.Item6) with { Sequence = t.Item3 },
            5 => About(i + 1, MarkKind.Confirmed, t.Item4, null, t.Item2, t.Item6) with { Sequence = t.Item3 },
            _ => About(i + 1, MarkKind.Corrected, t.Item4, t.Item5, t.Item2, t.Item6) with { Sequence = t.Item3 },
        }).ToArray());

    [Fact]
    public void Every_order_of_arrival_gives_the_same_falls() =>
        Gen.Select(Any, Gen.Int[0, int.MaxValue]).Sample((marks, seed) =>
            FoldFalls.Fold(marks).SequenceEqual(FoldFalls.Fold([.. marks.OrderBy(m => HashCode.Combine(m.Id, seed)), .. marks.Take(2)])), iter: 3_000);

    [Fact]
    public void Every_fold_stands_before_the_check_and_one_that_is_wrong_does_not() =>
        Any.Sample(marks =>
        {
            var falls = FoldFalls.Fold(marks);
            return FoldFallsCheck.Objections(marks, falls).Count == 0
                && (falls.Count == 0 || (FoldFallsCheck.Objections(marks, [.. falls.Skip(1)]).Count > 0
                    && FoldFallsCheck.Objections(marks, [falls[0] with { Clean = !falls[0].Clean, By = "Nobody" }, .. falls.Skip(1)]).Count > 0));
        }, iter: 3_000);

    [Fact]
    public void A_mark_of_another_tablet_without_the_right_removes_no_fall() =>
        Gen.Select(Any, Gen.Int[1, 9], Gen.Int[4, 6]).Sample((marks, target, kind) =>
        {
            var more = About(99, kind switch { 4 => MarkKind.Cleared, 5 => MarkKind.Confirmed, _ => MarkKind.Corrected }, target, kind == 6 ? true : null, device: 3, confirms: false);
            return FoldFalls.Fold(marks).All(FoldFalls.Fold([.. marks, more]).Contains);
        });
}
