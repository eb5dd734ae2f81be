using CsCheck;
using Keikocho.Core.Safety;
using static Keikocho.Core.Tests.Safety.Gates;

namespace Keikocho.Core.Tests.Safety;

/// <summary>Opening never follows from less evidence.</summary>
public sealed class FallGatePropertyTests
{
    [Fact]
    public void Every_gate_stands_before_the_check() =>
        AnyChild.Sample(s => FallGateCheck.Objections(s, FallGate.Reckon(s)).Count == 0, iter: 5_000);

    [Fact]
    public void Some_gates_are_open_some_shut_and_some_looked_at_again()
    {
        var seen = new HashSet<GateState>();
        AnyChild.Sample(s =>
        {
            lock (seen)
                seen.UnionWith(FallGate.Reckon(s).Ways.SelectMany(w => w.Stages).Select(g => g.State));
        }, iter: 5_000);
        Assert.Equal(3, seen.Count);
    }

    [Fact]
    public void A_clean_fall_taken_away_never_opens_a_gate() =>
        Gen.Select(AnyChild, Gen.Int[0, 30]).Sample((s, i) =>
        {
            var clean = s.Falls.Where(f => f.Clean).ToArray();
            return clean.Length == 0 || NothingOpened(s, s with { Falls = [.. s.Falls.Except([clean[i % clean.Length]])] });
        }, iter: 3_000);

    [Fact]
    public void A_head_touch_more_never_opens_a_gate() =>
        Gen.Select(AnyChild, AnyFall).Sample((s, fall) => NothingOpened(s, s with { Falls = [.. s.Falls, fall with { Clean = false }] }), iter: 3_000);

    [Fact]
    public void An_unconfirmed_fall_more_never_opens_a_gate() =>
        Gen.Select(AnyChild, AnyFall).Sample((s, fall) => NothingOpened(s, s with { Falls = [.. s.Falls, fall with { Confirmed = false }] }), iter: 3_000);

    [Fact]
    public void An_unconfirmed_clean_fall_more_changes_no_gate() =>
        Gen.Select(AnyChild, AnyFall).Sample((s, fall) =>
        {
            var more = s with { Falls = [.. s.Falls, fall with { Confirmed = false, Clean = true }] };
            return NothingOpened(s, more) && NothingOpened(more, s);
        });

    [Fact]
    public void A_stand_down_more_never_opens_a_gate() =>
        Gen.Select(AnyChild, Gen.Int[0, 80], Gen.Int[1, 4], Gen.Int[-1, 30]).Sample((s, back, scope, lasts) =>
        {
            var from = s.Tonight.AddDays(-back);
            var more = new StandDown((StandDownScope)scope, from, null, null, lasts < 0 ? null : from.AddDays(lasts), lasts < 0 ? null : "Anna", lasts < 0 ? null : "well");
            return NothingOpened(s, s with { StandDowns = [.. s.StandDowns, more] });
        });

    [Fact]
    public void A_head_touch_tonight_shuts_its_way_whatever_else_was_seen() =>
        Gen.Select(AnyChild, AnyFall).Sample((s, fall) =>
        {
            var touched = s with { Falls = [.. s.Falls, fall with { On = s.Tonight, Clean = false }] };
            return FallGate.Reckon(touched).Of(new FallWay(fall.Direction, fall.Side)).Stages.All(g => g is { State: GateState.Shut, MayBeTried: false });
        });

    [Fact]
    public void The_order_of_arrival_does_not_matter() =>
        Gen.Select(AnyChild, Gen.Int[0, int.MaxValue]).Sample((s, seed) =>
        {
            var mixed = s with { Falls = [.. s.Falls.OrderBy(f => HashCode.Combine(f, seed))], OnTheMat = [.. s.OnTheMat.Reverse()], StandDowns = [.. s.StandDowns.Reverse()] };
            return Same(FallGate.Reckon(s), FallGate.Reckon(mixed));
        });

    [Fact]
    public void A_gate_that_is_wrong_is_objected_to() =>
        AnyChild.Sample(s =>
        {
            var a = FallGate.Reckon(s);
            var way = a.Ways[0];
            var gate = way.Stages[1];
            FallGateAnswer With(StageGate other) => a with { Ways = [way with { Stages = [way.Stages[0], other, .. way.Stages.Skip(2)] }, .. a.Ways.Skip(1)] };
            FallGateAnswer[] wrong =
            [
                With(gate with { State = gate.State == GateState.Open ? GateState.Shut : GateState.Open }),
                With(gate with { CleanEvenings = gate.CleanEvenings + 1 }),
                With(gate with { MayBeTried = !gate.MayBeTried }),
                a with { Suggestions = a.Suggestions + 1 },
                a with { Throws = [a.Throws[0] with { MayBeThrown = !a.Throws[0].MayBeThrown }, a.Throws[1]] },
            ];
            return wrong.All(w => FallGateCheck.Objections(s, w).Count > 0);
        });

    private static bool NothingOpened(FallGateSnapshot before, FallGateSnapshot after)
    {
        var was = FallGate.Reckon(before);
        var now = FallGate.Reckon(after);
        return was.Ways.Zip(now.Ways).All(w => w.First.Stages.Zip(w.Second.Stages).All(g => g.Second.State != GateState.Open || g.First.State == GateState.Open))
            && was.Throws.Zip(now.Throws).All(t => !t.Second.MayBeThrown || t.First.MayBeThrown);
    }

    private static bool Same(FallGateAnswer a, FallGateAnswer b) =>
        a.Role == b.Role && a.Suggestions == b.Suggestions && a.Throws.Select(t => t.MayBeThrown).SequenceEqual(b.Throws.Select(t => t.MayBeThrown))
        && a.Reasons.Select(r => r.Sentence).SequenceEqual(b.Reasons.Select(r => r.Sentence))
        && a.Ways.SelectMany(w => w.Stages).Select(g => (g.State, g.MayBeTried, g.CleanEvenings, g.LatestClean, g.OpensWith))
            .SequenceEqual(b.Ways.SelectMany(w => w.Stages).Select(g => (g.State, g.MayBeTried, g.CleanEvenings, g.LatestClean, g.OpensWith)));
}
