using Keikocho.Core.Kernel;

namespace Keikocho.Core.Partners;

/// <summary>What is done in pairs. The numbers are stored and never change their meaning.</summary>
public enum PairsActivity
{
    /// <summary>Turning in for a throw, nobody falls.</summary>
    TurnIns = 1,
    /// <summary>Throwing.</summary>
    Throwing = 2,
    /// <summary>Hold-downs and the way out of them.</summary>
    Holds = 3,
    /// <summary>Free practice, standing: anybody may be thrown any way.</summary>
    FreePractice = 4,
}

/// <summary>How far apart in size two may be in each activity. A club's own.</summary>
/// <param name="TurnIns">Per cent. Proposed 25 (a club's).</param>
/// <param name="Throwing">Per cent. Proposed 15 (a club's; common practice is 10 to 15).</param>
/// <param name="Holds">Per cent. Proposed 25 (as for turn-ins; ours, no source).</param>
/// <param name="FreePractice">Per cent. Proposed 15 (as for throwing; ours, no source).</param>
public sealed record ActivityLimits(int TurnIns = 25, int Throwing = 15, int Holds = 25, int FreePractice = 15)
{
    private const string Practice = "common practice, no source";

    private static readonly WholeNumberSetting Turning = Of("limitTurnIns", "Turn-ins: the heavier is above the lighter by at most", 25, Practice);
    private static readonly WholeNumberSetting Thrown = Of("limitThrowing", "Throwing: the heavier is above the lighter by at most", 15, Practice);
    private static readonly WholeNumberSetting Holding = Of("limitHolds", "Holds: the heavier is above the lighter by at most", 25, Setting.Ours);
    private static readonly WholeNumberSetting Free = Of("limitFreePractice", "Free practice: the heavier is above the lighter by at most", 15, Setting.Ours);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Turning, Thrown, Holding, Free];

    /// <summary>The activity as the sum takes it.</summary>
    public PartnersActivity Of(PairsActivity activity) => activity switch
    {
        PairsActivity.TurnIns => new PartnersActivity("turn-ins", Thrown: false, TurnIns),
        PairsActivity.Throwing => new PartnersActivity("throwing", Thrown: true, Throwing),
        PairsActivity.Holds => new PartnersActivity("holds", Thrown: false, Holds),
        PairsActivity.FreePractice => new PartnersActivity("free practice", Thrown: true, FreePractice),
        _ => throw new ArgumentOutOfRangeException(nameof(activity), activity, "There is no such activity."),
    };

    private static WholeNumberSetting Of(string key, string meaning, int proposed, string source) => new($"partners.{key}", meaning, proposed, "%", 0, 100, source);
}
