using CsCheck;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Tests.Safety;

/// <summary>
/// The rule of the fall gate written a second time, plain and slow, from the rule in words and not from the code: every
/// gate of any history must come out the same.
/// </summary>
public sealed class FallGateSecondOpinion
{
    private static readonly DateOnly Start = new(2026, 1, 6);

    private static readonly Gen<FallMark> AnyFall =
        Gen.Select(Gen.Int[0, 16], Gen.Int[0, 1], Gen.Int[1, 6], Gen.Int[0, 6], Gen.Int[0, 6], Gen.Int[1, 2], Gen.Int[1, 9]).Select(t => new FallMark(
            Evening(t.Item1), FallWay.All[t.Item2].Direction, FallWay.All[t.Item2].Side, t.Item3, t.Item4 != 0, t.Item5 != 0, Ids.Device(t.Item6), t.Item7));

    /// <summary>Clean evenings with falls one after another, one stage higher each time: without them hardly a re-showing is met.</summary>
    private static readonly Gen<FallMark[]> ARun =
        Gen.Select(Gen.Int[0, 16], Gen.Int[0, 1], Gen.Int[1, 4], Gen.Int[1, 3], Gen.Int[1, 2]).Select(t => Enumerable.Range(0, t.Item4).Select(i => new FallMark(
            Evening(t.Item1), FallWay.All[t.Item2].Direction, FallWay.All[t.Item2].Side, t.Item3 + i, true, true, Ids.Device(t.Item5), 10 + i)).ToArray());

    private static readonly Gen<StandDown> AnyStandDown =
        Gen.Select(Gen.Int[1, 4], Gen.Int[0, 70], Gen.Int[0, 25], Gen.Int[0, 3], Gen.Int[0, 35]).Select(t => new StandDown(
            (StandDownScope)t.Item1, Start.AddDays(t.Item2), Start.AddDays(t.Item2 + 3), "the head instructor",
            t.Item4 == 0 ? null : Start.AddDays(t.Item2 + t.Item3), t.Item4 == 0 ? null : "Anna", t.Item4 == 0 ? null : "seen again",
            t.Item4 == 0 || t.Item5 % 3 == 0 ? null : Start.AddDays(t.Item2 + t.Item5)));

    private static readonly Gen<FallGateSnapshot> AnyHistory =
        Gen.Select(
            AnyFall.Array[0, 8], ARun.Array[0, 8], Gen.Int[0, 16].Array[0, 16], Gen.Int[8, 16],
            Gen.Frequency((3, Gen.Const(Array.Empty<StandDown>())), (1, AnyStandDown.Array[1, 2])),
            Gen.Frequency((3, Gen.Const(new FallGateRule())), (1, Gen.Select(Gen.Int[1, 3], Gen.Int[5, 30], Gen.Int[5, 30]).Select(r => new FallGateRule(r.Item1, r.Item2, r.Item3)))),
            (falls, runs, mat, tonight, stood, rule) =>
            {
                FallMark[] all = [.. falls, .. runs.SelectMany(r => r)];
                return new FallGateSnapshot(
                    Evening(tonight), all,
                    // On the mat at most of the falls and at other evenings; every fourth history leaves the evenings with falls out.
                    [.. mat.Select(Evening), .. mat.Length % 4 == 3 ? [] : all.Select(f => f.On)], stood, rule,
                    [new PlannedThrow("O-goshi", [FallWay.All[0], FallWay.All[1]], 3), new PlannedThrow("Uki-goshi", [FallWay.All[0]], 2)]);
            });

    [Fact]
    public void Every_gate_of_any_history_comes_out_the_same_when_reckoned_a_second_way() => AnyHistory.Sample(SameAsWritten, iter: 6_000);

    [Fact]
    public void The_gates_of_other_made_up_children_come_out_the_same_too() => Gates.AnyChild.Sample(SameAsWritten, iter: 2_000);

    [Fact]
    public void Both_answers_of_each_kind_are_met()
    {
        var seen = new Dictionary<(GateState State, bool Try), int>();
        AnyHistory.Sample(s =>
        {
            lock (seen)
            {
                foreach (var g in FallGate.Reckon(s).Ways.SelectMany(w => w.Stages).Where(g => g.Stage > 1))
                    seen[(g.State, g.MayBeTried)] = seen.GetValueOrDefault((g.State, g.MayBeTried)) + 1;
            }
        }, iter: 2_000);
        Assert.All(new[] { (GateState.Open, true), (GateState.Shut, true), (GateState.Shut, false), (GateState.LookAgain, true), (GateState.LookAgain, false) },
            kind => Assert.True(seen.GetValueOrDefault(kind) > 5, $"{kind}: {seen.GetValueOrDefault(kind)}"));
    }

    private static void SameAsWritten(FallGateSnapshot s)
    {
        var answer = FallGate.Reckon(s);
        foreach (var way in FallWay.All)
        {
            for (var stage = 1; stage <= 6; stage++)
            {
                var got = answer.Of(way).Stages[stage - 1];
                var want = new Opinion(s, way).At(stage);
                Assert.True(
                    (got.State, got.MayBeTried) == want,
                    $"{way} stage {stage} tonight {s.Tonight:MM-dd}: the code says {(got.State, got.MayBeTried)}, the second opinion {want}.\n{got.Because.Sentence}\n{Written(s, way)}");
            }
        }

        foreach (var (planned, got) in s.Planned.Zip(answer.Throws))
            Assert.Equal(planned.Ways.All(w => new Opinion(s, w).State(planned.Stage) == GateState.Open), got.MayBeThrown);
    }

    private static DateOnly Evening(int number) => Start.AddDays(number * 5 - number / 2);

    private static string Written(FallGateSnapshot s, FallWay way) =>
        string.Join("\n", s.Falls.Where(f => new FallWay(f.Direction, f.Side) == way).OrderBy(f => f.On).ThenBy(f => f.Device.ToString()).ThenBy(f => f.Sequence)
            .Select(f => $"{f.On:MM-dd} {f.Device} {f.Sequence}: stage {f.Stage} {(f.Clean ? "clean" : "touched")} {(f.Confirmed ? "" : "unconfirmed")}"))
        + $"\nmat {string.Join(" ", s.OnTheMat.Distinct().Order().Select(d => d.ToString("MM-dd", System.Globalization.CultureInfo.InvariantCulture)))}"
        + $"\nstood down {string.Join("; ", s.StandDowns)}\n{s.Rule}";

    /// <summary>One child, one way: the rule as it is told.</summary>
    private sealed class Opinion(FallGateSnapshot s, FallWay way)
    {
        private readonly List<FallMark> _falls = [.. s.Falls.Where(f => f.Direction == way.Direction && f.Side == way.Side && f.On <= s.Tonight)];

        public (GateState State, bool MayBeTried) At(int stage) => (State(stage), MayBeTried(stage));

        public GateState State(int stage)
        {
            // Shut whatever was seen: a stand-down, a head touch tonight this way, a break after which it was not shown again.
            if (StoodDown() || TouchedTonight() || !ShownSinceEveryBreak(stage) || Clean(stage).Count < s.Rule.CleanEvenings)
                return GateState.Shut;
            return s.Tonight.DayNumber - Clean(stage).Max().DayNumber > s.Rule.FreshDays ? GateState.LookAgain : GateState.Open;
        }

        private bool MayBeTried(int stage)
        {
            if (StoodDown() || TouchedTonight())
                return false;
            // What may be drilled freely may be tried too.
            if (stage == 1 || State(stage - 1) == GateState.Open || State(stage) == GateState.Open)
                return true;
            // The showing again after a break is the exception, where its first step, one stage lower, may be tried itself.
            return ShutByTheBreakOnly(stage) && MayBeTried(stage - 1);
        }

        private bool ShutByTheBreakOnly(int stage) => !ShownSinceEveryBreak(stage) && Clean(stage).Count >= s.Rule.CleanEvenings;

        /// <summary>Clean evenings at the stage or higher since the head last touched at the stage or lower.</summary>
        private List<DateOnly> Clean(int stage)
        {
            var count = new List<DateOnly>();
            for (var day = Start.AddDays(-100); day <= s.Tonight; day = day.AddDays(1))
            {
                var evening = _falls.FindAll(f => f.On == day);
                if (evening.Exists(f => !f.Clean && f.Stage <= stage))
                    count.Clear();
                else if (!evening.Exists(f => !f.Clean) && evening.Exists(f => f.Clean && f.Confirmed && f.Stage >= stage))
                    count.Add(day);
            }

            return count;
        }

        private bool TouchedTonight() => _falls.Exists(f => f.On == s.Tonight && !f.Clean);

        private bool StoodDown() => s.StandDowns.Any(d => ForbidsFalls(d) && d.From <= s.Tonight && (d.LiftedOn is null || d.LiftedOn > s.Tonight));

        private static bool ForbidsFalls(StandDown d) => d.Scope is StandDownScope.NoFalls or StandDownScope.NoContact or StandDownScope.OffTheMat;

        /// <summary>Every day on which the child came back to falls.</summary>
        private List<DateOnly> Returns()
        {
            var returns = s.StandDowns.Where(d => ForbidsFalls(d) && d.LiftedOn <= s.Tonight)
                .SelectMany(d => new[] { d.LiftedOn, d.LiftEnteredOn }).OfType<DateOnly>().ToList();
            DateOnly? last = null;
            for (var day = Start.AddDays(-100); day <= s.Tonight; day = day.AddDays(1))
            {
                if (!s.OnTheMat.Contains(day) && day != s.Tonight)
                    continue;
                if (last is { } before && day.DayNumber - before.DayNumber >= s.Rule.AwayDays)
                    returns.Add(day);
                last = day;
            }

            // Falls, yet never on the mat: away for nobody knows how long.
            if (s.Falls.Any(f => f.On <= s.Tonight) && !s.OnTheMat.Any(d => d <= s.Tonight))
                returns.Add(s.Tonight);
            return returns;
        }

        private bool ShownSinceEveryBreak(int stage) => Returns().TrueForAll(back => _falls.Select(f => f.On).Distinct().Any(on => on >= back && ShownAgain(on, stage)));

        private bool ShownAgain(DateOnly on, int stage)
        {
            var evening = _falls.FindAll(f => f.On == on);
            if (evening.Exists(f => !f.Clean))
                return false;
            evening.RemoveAll(f => !f.Confirmed);
            foreach (var upper in evening.Where(f => f.Stage >= stage))
            {
                if (stage == 1)
                    return true;
                foreach (var lower in evening.Where(f => f.Stage == stage - 1))
                {
                    if (lower.Device == upper.Device && lower.Sequence < upper.Sequence)
                        return true;
                }
            }

            return false;
        }
    }
}
