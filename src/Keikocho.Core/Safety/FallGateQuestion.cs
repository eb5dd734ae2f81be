using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>The rule of the fall gate. A club's own; proposed values are ours, no source.</summary>
/// <param name="CleanEvenings">Clean evenings that open a stage. Proposed 2.</param>
/// <param name="FreshDays">The latest of them is at most so many days old. Proposed 21.</param>
/// <param name="AwayDays">So many days off the mat shut everything. Proposed 21.</param>
public sealed record FallGateRule(int CleanEvenings = 2, int FreshDays = 21, int AwayDays = 21)
{
    private static readonly WholeNumberSetting Evenings = new("fallGate.cleanEvenings", "Clean evenings that open a stage", 2, "evenings", 1, 10, Setting.Ours);
    private static readonly WholeNumberSetting Fresh = new("fallGate.freshDays", "The latest clean evening is at most so many days old", 21, "days", 1, 365, Setting.Ours);
    private static readonly WholeNumberSetting Away = new("fallGate.awayDays", "So many days off the mat shut every gate", 21, "days", 1, 365, Setting.Ours);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Evenings, Fresh, Away];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() => [Evenings.Use(CleanEvenings), Fresh.Use(FreshDays), Away.Use(AwayDays)];

    internal void Guard()
    {
        Evenings.Guard(CleanEvenings, nameof(CleanEvenings));
        Fresh.Guard(FreshDays, nameof(FreshDays));
        Away.Guard(AwayDays, nameof(AwayDays));
    }
}

/// <summary>A throw that is planned for a drill: what it asks of the one who falls.</summary>
/// <param name="Name">The technique.</param>
/// <param name="Ways">Ways in which the partner may fall, from the fall table for the hand or hands that are drilled; all must be open.</param>
/// <param name="Stage">Stage that the drill asks.</param>
public sealed record PlannedThrow(string Name, IReadOnlyList<FallWay> Ways, int Stage);

/// <summary>The question: one child's gates tonight.</summary>
/// <param name="Tonight">The evening.</param>
/// <param name="Falls">Every fall that was marked, in any order.</param>
/// <param name="OnTheMat">Days on which the child was on the mat, tonight too where the child is here; in any order.</param>
/// <param name="StandDowns">Every stand-down, lifted ones too.</param>
/// <param name="Rule">The rule.</param>
/// <param name="Planned">Throws that are planned; may be empty.</param>
public sealed record FallGateSnapshot(
    DateOnly Tonight,
    IReadOnlyList<FallMark> Falls,
    IReadOnlyList<DateOnly> OnTheMat,
    IReadOnlyList<StandDown> StandDowns,
    FallGateRule Rule,
    IReadOnlyList<PlannedThrow> Planned);

/// <summary>State of one gate at one stage.</summary>
public enum GateState
{
    /// <summary>Shut.</summary>
    Shut = 0,
    /// <summary>Complete but not fresh: look again. Blocks like shut.</summary>
    LookAgain = 1,
    /// <summary>Open.</summary>
    Open = 2,
}

/// <summary>One way at one stage.</summary>
/// <param name="Stage">1 to 6.</param>
/// <param name="State">Open, look again or shut.</param>
/// <param name="MayBeTried">May be tried tonight with a named instructor watching.</param>
/// <param name="CleanEvenings">Clean evenings that count now.</param>
/// <param name="LatestClean">The latest of them; null for none.</param>
/// <param name="OpensWith">What would open it, in plain words; null when open.</param>
/// <param name="Because">The rule with its figures and dates.</param>
public sealed record StageGate(
    int Stage, GateState State, bool MayBeTried, int CleanEvenings, DateOnly? LatestClean, string? OpensWith, Reason Because);

/// <summary>One way at all stages.</summary>
/// <param name="Way">Direction and side.</param>
/// <param name="Stages">Stage 1 to 6.</param>
/// <param name="OpenTo">Highest open stage; 0 when all are shut.</param>
public sealed record WayGate(FallWay Way, IReadOnlyList<StageGate> Stages, int OpenTo);

/// <summary>Whether a planned throw may be done on this child.</summary>
/// <param name="Name">The technique.</param>
/// <param name="MayBeThrown">Every way that it asks is open at its stage.</param>
/// <param name="Because">Why.</param>
public sealed record ThrowAnswer(string Name, bool MayBeThrown, Reason Because);

/// <summary>One child's gates.</summary>
/// <param name="Ways">Every way, in the order of <see cref="FallWay.All"/>.</param>
/// <param name="Throws">The planned throws, in the order of the question.</param>
/// <param name="Role">What the child does tonight, as a card prints it, without any reason: "throws and is thrown", "tori only", "holds and words".</param>
/// <param name="Suggestions">Falls that wait for somebody who may confirm them.</param>
/// <param name="Reasons">Every rule, figure and date used.</param>
/// <param name="Settings">The settings used.</param>
public sealed record FallGateAnswer(
    IReadOnlyList<WayGate> Ways,
    IReadOnlyList<ThrowAnswer> Throws,
    string Role,
    int Suggestions,
    IReadOnlyList<Reason> Reasons,
    IReadOnlyList<SettingUsed> Settings)
{
    /// <summary>The gate of one way.</summary>
    public WayGate Of(FallWay way) => Ways.First(w => w.Way == way);
}
