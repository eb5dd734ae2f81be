using CsCheck;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Tests.Safety;

/// <summary>Evenings of a made-up child, and any evening at all.</summary>
internal static class Gates
{
    public static readonly FallWay Back = new(FallDirection.Back, FallSide.None);

    public static readonly FallWay Front = new(FallDirection.Front, FallSide.None);

    public static readonly FallWay Left = new(FallDirection.Side, FallSide.Left);

    public static readonly FallWay Right = new(FallDirection.Side, FallSide.Right);

    public static DateOnly Day(int month, int day) => new(2026, month, day);

    /// <summary>Backward falls of one day in the order of one tablet: "3" clean at stage 3, "x3" head touched, "?3" clean and unconfirmed, "?x3" both.</summary>
    public static FallMark[] Falls(DateOnly on, string words, FallWay? way = null, int device = 1)
    {
        var w = way ?? Back;
        return
        [
            .. words.Split(' ').Select((word, i) => new FallMark(
                on, w.Direction, w.Side, word[^1] - '0', !word.Contains('x', StringComparison.Ordinal), word[0] != '?', Ids.Device(device), i + 1)),
        ];
    }

    public static FallGateAnswer Reckon(FallGateSnapshot snapshot)
    {
        var answer = FallGate.Reckon(snapshot);
        Assert.Empty(FallGateCheck.Objections(snapshot, answer));
        return answer;
    }

    /// <summary>On the mat on every day that has a fall, on the <paramref name="more"/> days and tonight.</summary>
    public static FallGateSnapshot Child(DateOnly tonight, IEnumerable<FallMark[]> falls, IEnumerable<DateOnly>? more = null, params StandDown[] standDowns)
    {
        FallMark[] all = [.. falls.SelectMany(f => f)];
        return new FallGateSnapshot(
            tonight, all, [.. all.Select(f => f.On).Concat(more ?? []).Append(tonight).Distinct()], standDowns, new FallGateRule(), []);
    }

    private static readonly DateOnly Start = new(2026, 1, 6);

    public static readonly Gen<FallMark> AnyFall =
        Gen.Select(Gen.Int[0, 70], Gen.Int[0, 2], Gen.Int[1, 4], Gen.Int[0, 4], Gen.Int[0, 4], Gen.Int[1, 2], Gen.Int[1, 6]).Select(t => new FallMark(
            Start.AddDays(t.Item1 - (t.Item1 % 7)), FallWay.All[t.Item2].Direction, FallWay.All[t.Item2].Side, t.Item3, t.Item4 != 0, t.Item5 != 0,
            Ids.Device(t.Item6), t.Item7));

    private static readonly Gen<StandDown> AnyStandDown =
        Gen.Select(Gen.Int[1, 4], Gen.Int[0, 80], Gen.Int[0, 40], Gen.Bool, Gen.Int[0, 30]).Select(t => new StandDown(
            (StandDownScope)t.Item1, Start.AddDays(t.Item2), Start.AddDays(t.Item2 + 10), null,
            t.Item4 ? Start.AddDays(t.Item2 + t.Item3) : null, t.Item4 ? "Anna" : null, t.Item4 ? "seen again" : null,
            t.Item4 && t.Item5 % 3 > 0 ? Start.AddDays(t.Item2 + t.Item5) : null));

    public static readonly Gen<FallGateSnapshot> AnyChild =
        Gen.Select(
            AnyFall.Array[0, 24], Gen.Int[0, 11].Array[0, 12], Gen.Int[0, 11],
            Gen.Frequency((3, Gen.Const(Array.Empty<StandDown>())), (1, AnyStandDown.Array[1, 2])),
            Gen.Select(Gen.Int[1, 3], Gen.Int[7, 30], Gen.Int[14, 30]),
            (falls, mat, tonight, stood, rule) => new FallGateSnapshot(
                Start.AddDays(7 * tonight), falls, [.. mat.Select(m => Start.AddDays(7 * m))], stood,
                new FallGateRule(rule.Item1, rule.Item2, rule.Item3),
                [new PlannedThrow("O-goshi", [FallWay.All[0], FallWay.All[1]], 2), new PlannedThrow("Uki-goshi", [FallWay.All[1]], 1)]));
}
