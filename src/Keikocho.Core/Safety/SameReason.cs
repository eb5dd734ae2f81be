using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>A reason about one way at one stage: the place, then what is to be said of it.</summary>
/// <param name="Way">Which way.</param>
/// <param name="Stage">Which stage.</param>
public abstract record GateReason(FallWay Way, int Stage) : Reason
{
    /// <summary>What is said after the place, the full stop included.</summary>
    public abstract string Rest { get; }

    /// <inheritdoc/>
    public override string Sentence => $"{GateWords.Place(Way, Stage)}: {Rest}";
}

/// <summary>The very same of several ways at one stage, said once.</summary>
/// <param name="Ways">The ways, in the order of a list.</param>
/// <param name="Each">What is so of each of them.</param>
public sealed record SameOfSeveralWays(IReadOnlyList<FallWay> Ways, GateReason Each) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{SameReason.Named(Ways)}, {FallWords.Stage(Each.Stage)}: {Each.Rest}";
}

/// <summary>Says once what holds of several ways of falling.</summary>
public static class SameReason
{
    /// <summary>The reasons with those that differ in the way alone made one, where the first of them stood. What is open is left as it is.</summary>
    public static IReadOnlyList<Reason> Together(IEnumerable<Reason> reasons)
    {
        ArgumentNullException.ThrowIfNull(reasons);
        Reason[] all = [.. reasons];
        var groups = all.OfType<GateReason>().Where(r => r is not StageIsOpen).GroupBy(r => (r.Stage, r.Rest)).ToDictionary(g => g.Key, g => g.DistinctBy(r => r.Way).ToArray());
        var said = new List<Reason>(all.Length);
        foreach (var reason in all)
        {
            if (reason is not GateReason gate || reason is StageIsOpen || groups[(gate.Stage, gate.Rest)] is not { Length: > 1 } same)
                said.Add(reason);
            else if (same[0].Way == gate.Way && !said.OfType<SameOfSeveralWays>().Any(s => s.Each == same[0]))
                said.Add(new SameOfSeveralWays([.. same.Select(r => r.Way).OrderBy(w => w.Direction).ThenBy(w => w.Side)], same[0]));
        }

        return said;
    }

    /// <summary>Several ways at the beginning of a sentence: "Rolling falls left and right", "Backward, to both sides and rolling to the left".</summary>
    public static string Named(IReadOnlyList<FallWay> ways)
    {
        ArgumentNullException.ThrowIfNull(ways);
        var name = ways switch
        {
            [{ Direction: FallDirection.Side }, { Direction: FallDirection.Side }] => "side falls left and right",
            [{ Direction: FallDirection.Rolling }, { Direction: FallDirection.Rolling }] => "rolling falls left and right",
            _ => FallWords.Together(ways),
        };
        return string.Concat(name[..1].ToUpper(CultureInfo.InvariantCulture), name[1..]);
    }
}
