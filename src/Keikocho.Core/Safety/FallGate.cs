using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>May this child be thrown, which way, at what stage. Shut wins.</summary>
public static class FallGate
{
    /// <summary>Reckons one child's gates. What is dated after tonight is left out.</summary>
    /// <exception cref="ArgumentException">A figure out of range, a fall that does not exist, or a lifting without adult, reason or day.</exception>
    public static FallGateAnswer Reckon(FallGateSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        Guard(snapshot);
        var tonight = snapshot.Tonight;
        var falls = snapshot.Falls.Where(f => f.On <= tonight).ToArray();
        var since = MatBreak.Of(snapshot);
        var ways = FallWay.All.Select(way => Way(way, [.. falls.Where(f => f.Direction == way.Direction && f.Side == way.Side)], snapshot, since)).ToArray();
        var throws = snapshot.Planned.Select(p => Throw(p, ways)).ToArray();
        var suggestions = falls.Count(f => !f.Confirmed);
        var reasons = new List<Reason>();
        if (since.Because is { } why)
            reasons.Add(why);
        reasons.AddRange(ways.SelectMany(w => w.Stages).Where(s => s.State != GateState.Shut || s.CleanEvenings > 0 || s.Because is HeadTouchedTonight).Select(s => s.Because));
        reasons.AddRange(throws.Select(t => t.Because));
        if (suggestions > 0)
            reasons.Add(new FallsToConfirm(suggestions));
        if (reasons.Count == 0)
            reasons.Add(new NoFallSeen());
        return new FallGateAnswer(ways, throws, Role(snapshot, ways, throws), suggestions, reasons, snapshot.Rule.Used());
    }

    private static WayGate Way(FallWay way, FallMark[] falls, FallGateSnapshot snapshot, MatBreak since)
    {
        var evenings = falls.GroupBy(f => f.On).OrderBy(g => g.Key).Select(g => new FallEvening(g.Key, [.. g])).ToArray();
        var stages = new List<StageGate>(FallWords.LastStage);
        StageGate? below = null;
        for (var stage = FallWords.FirstStage; stage <= FallWords.LastStage; stage++)
        {
            var gate = Stage(way, stage, evenings, snapshot, since, below);
            stages.Add(gate);
            below = gate;
        }

        return new WayGate(way, stages, stages.LastOrDefault(s => s.State == GateState.Open)?.Stage ?? 0);
    }

    private static StageGate Stage(FallWay way, int stage, FallEvening[] evenings, FallGateSnapshot snapshot, MatBreak since, StageGate? below)
    {
        var rule = snapshot.Rule;
        var tonight = snapshot.Tonight;
        DateOnly? touched = null;
        foreach (var e in evenings)
            touched = e.LowestTouch <= stage ? e.On : touched;
        DateOnly[] clean = [.. evenings.Where(e => e.IsCleanAt(stage) && !(e.On <= touched)).Select(e => e.On)];
        DateOnly? latest = clean.Length > 0 ? clean[^1] : null;
        var missing = Math.Max(0, rule.CleanEvenings - clean.Length);
        var shownAgain = since.From is not { } from || evenings.Any(e => e.On >= from && e.ShowsAgain(stage));
        var isTonightClean = latest == tonight;

        StageGate Gate(GateState state, bool tried, string? opens, Reason because) => new(stage, state, tried, clean.Length, latest, opens, because);

        if (since.Standing is { } standing)
            return Gate(GateState.Shut, false, "the stand-down is lifted by a named adult, then the falls are shown again", new GateUnderStandDown(way, stage, standing.From));
        if (evenings.Length > 0 && evenings[^1].On == tonight && evenings[^1].LowestTouch is { } height)
        {
            var after = !shownAgain ? "not tonight; then the falls are shown again"
                : missing > 0 ? $"not tonight; {More(missing)} on later days open{(missing == 1 ? "s" : "")} it"
                : "not tonight; the next evening";
            return Gate(GateState.Shut, false, after, new HeadTouchedTonight(way, stage, height));
        }

        var mayBeTried = below is null or { State: GateState.Open };
        var first = $"stage {stage - 1} comes first";
        var few = new TooFewCleanEvenings(way, stage, clean, rule.CleanEvenings, touched);
        if (!shownAgain)
        {
            // The showing begins one stage lower, so that one must be allowed tonight.
            mayBeTried |= missing == 0 && below is null or { MayBeTried: true };
            var opens = !mayBeTried ? first : ShowAgain(stage, missing, isTonightClean);
            return Gate(GateState.Shut, mayBeTried, opens, clean.Length == 0 ? few : new NotShownAgain(way, stage, since.Because!));
        }

        if (missing > 0)
        {
            var opens = !mayBeTried ? first : $"{More(missing)}{(isTonightClean ? " on later days" : "")} open{(missing == 1 ? "s" : "")} it";
            return Gate(GateState.Shut, mayBeTried, opens, few);
        }

        return tonight.DayNumber - latest!.Value.DayNumber > rule.FreshDays
            ? Gate(GateState.LookAgain, mayBeTried, mayBeTried ? "one clean evening opens it" : first, new CleanTooLongAgo(way, stage, latest.Value, tonight, rule.FreshDays))
            : Gate(GateState.Open, true, null, new StageIsOpen(way, stage, clean, tonight));
    }

    /// <summary>What shows a stage again. The evening of the showing is a clean evening itself.</summary>
    private static string ShowAgain(int stage, int missing, bool isTonightClean)
    {
        if (stage == FallWords.FirstStage)
            return missing > 1 ? $"{More(missing)} open it" : "one clean fall at this stage";
        var left = missing - (isTonightClean ? 0 : 1);
        var show = $"one clean fall at stage {stage - 1}, then one at stage {stage} or higher, on one evening and one device";
        return left > 0 ? $"{show}; and {More(left)}" : show;
    }

    private static string More(int evenings) => evenings == 1 ? "one more clean evening" : $"{evenings} more clean evenings";

    private static ThrowAnswer Throw(PlannedThrow planned, WayGate[] ways)
    {
        if (planned.Ways.Count == 0)
            return new ThrowAnswer(planned.Name, false, new NoWayGiven(planned.Name));
        var shut = planned.Ways.Distinct().OrderBy(w => w.Direction).ThenBy(w => w.Side)
            .Where(way => ways.First(w => w.Way == way).Stages[planned.Stage - 1].State != GateState.Open).ToArray();
        return new ThrowAnswer(planned.Name, shut.Length == 0, new PlannedThrowJudged(planned.Name, planned.Stage, shut));
    }

    private static string Role(FallGateSnapshot snapshot, WayGate[] ways, ThrowAnswer[] throws)
    {
        var stands = StandDowns.Read(new StandDownsSnapshot(snapshot.Tonight, snapshot.StandDowns));
        if (!stands.MayFall)
            return stands.Role;
        // Without a plan: somebody else has a hand in every fall from the fourth stage on, and nobody is thrown forward onto the arms.
        if (throws.Length == 0)
        {
            var thrown = ways.Where(w => w.Way.Direction != FallDirection.Front).ToArray();
            var open = thrown.Where(w => w.OpenTo >= 4).Select(w => w.Way).ToArray();
            return open.Length == thrown.Length ? RoleWords.ThrowsAndIsThrown
                : open.Length == 0 ? RoleWords.ToriOnly
                : RoleWords.OneWayOnly(open);
        }

        var may = throws.Where(t => t.MayBeThrown).Select(t => t.Name).ToArray();
        return may.Length == throws.Length ? RoleWords.ThrowsAndIsThrown
            : may.Length == 0 ? RoleWords.ToriOnly
            : $"throws; is thrown with {Words.List(may)} only";
    }

    private static void Guard(FallGateSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot.Rule);
        ArgumentNullException.ThrowIfNull(snapshot.OnTheMat);
        snapshot.Rule.Guard();
        NoGaps.In(snapshot.Falls, "falls");
        NoGaps.In(snapshot.Planned, "planned throws");
        StandDowns.Guard(snapshot.StandDowns);
        foreach (var fall in snapshot.Falls)
            FallWords.Guard(new FallWay(fall.Direction, fall.Side), fall.Stage, $"The fall of {fall.On.Full()}");
        foreach (var planned in snapshot.Planned)
        {
            ArgumentNullException.ThrowIfNull(planned.Ways);
            if (planned.Stage is < FallWords.FirstStage or > FallWords.LastStage)
                throw new ArgumentException($"{planned.Name}: a stage is from {FallWords.FirstStage} to {FallWords.LastStage}.", nameof(snapshot));
            foreach (var way in planned.Ways)
                FallWords.Guard(way, planned.Stage, planned.Name);
        }
    }
}
