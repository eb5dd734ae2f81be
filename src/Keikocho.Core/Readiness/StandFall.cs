using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>How a fall stands: read from the fall gate, fresh to the day of the test.</summary>
internal static class StandFall
{
    private const int MostDays = 4;

    public static ItemStanding Of(ReadinessFrame frame, FallGateAnswer gates, SheetItem on, List<StageGate> used)
    {
        var item = on.Item;
        var form = item.Fall!;
        var ways = Ways(form);
        var asked = frame.Parts.GateRule.CleanEvenings;
        var stands = frame.Blocks.NoFalls;

        // A pass that was kept does not open a gate; it only spares that an open one is fresh. A touch on any side ends it.
        DateOnly? kept = on.KeptUntil >= frame.TestOn && !stands && !IsTouched(frame, form) ? on.KeptUntil : null;
        int missing = -1, withoutKept = -1, clean = 0, sidesShort = 0;
        bool away = false, tonight = false, anySideTonight = false, isShut = false;
        FallWay? chosen = null;
        foreach (var way in ways)
        {
            var gate = Stage(gates, way, form.Stage);
            used.Add(gate);
            var lacks = Short(frame, gate, asked, stands, kept is not null);
            anySideTonight |= gate.Because is HeadTouchedTonight;
            sidesShort += lacks > 0 ? 1 : 0;
            var plain = Short(frame, gate, asked, stands, false);
            withoutKept = withoutKept < 0 || (form.BothSides ? plain > withoutKept : plain < withoutKept) ? plain : withoutKept;

            // Both sides: the side that lacks most. One side of either: the side that lacks least.
            if (missing < 0 || (form.BothSides ? lacks > missing : lacks < missing))
            {
                missing = lacks;
                clean = gate.CleanEvenings;
                away = gate.Because is NotShownAgain;
                tonight = gate.Because is HeadTouchedTonight;
                isShut = gate.State == GateState.Shut;
                chosen = way;
            }
        }

        // Shut wins: of both sides, either that touched tonight shuts the fall.
        tonight |= form.BothSides && anySideTonight;
        var side = form.BothSides && ways.Length > 1 && sidesShort == 1 && !stands ? chosen!.Value.Side : FallSide.None;
        var shown = form.BothSides && side == FallSide.None ? ways : [chosen!.Value];
        var (cleanOn, touchedOn) = Days(frame, shown, form.Stage);
        var isMet = missing == 0;
        touchedOn = tonight ? frame.AsOf : touchedOn;
        if (touchedOn is { } old && isMet && old < frame.FreshFrom)
            touchedOn = null;
        var isKept = isMet && withoutKept > 0;
        var word = isKept ? ItemStandingWord.Kept : Word(frame, missing, clean, asked, away || stands || tonight, cleanOn, touchedOn, shown, form.Stage);
        var last = cleanOn.Length > MostDays ? cleanOn[^MostDays..] : cleanOn;
        var reason = new FallCounted(
            item.Name, word, form.Stage, asked, clean, cleanOn, touchedOn, frame.FreshFrom, frame.Parts.Rule.CriticalFreshDays, missing, stands, away,
            isKept || !isMet ? kept : null, side, isShut);
        return new ItemStanding(item.Key, item.Name, word, clean, missing, last, Said(frame, last, reason), reason);
    }

    /// <summary>The item's name, with the side that alone is short: "Side breakfall, both sides, to the left".</summary>
    public static string NameOf(ItemStanding standing) =>
        standing is { IsMet: false, Because: FallCounted { Side: not FallSide.None } counted } ? $"{standing.Name}, {ReadinessPhrases.To(counted.Side)}" : standing.Name;

    // The head touched this way, on whichever side, at the stage or lower, or tonight at any.
    private static bool IsTouched(ReadinessFrame frame, FallForm form)
    {
        foreach (var fall in frame.Parts.Evidence.Falls)
        {
            if (!fall.Clean && fall.Direction == form.Direction && fall.On <= frame.AsOf && (fall.Stage <= form.Stage || fall.On == frame.AsOf))
                return true;
        }

        return false;
    }

    private static int Short(ReadinessFrame frame, StageGate gate, int asked, bool stands, bool isKept)
    {
        if (stands)
            return asked;
        if (gate.State == GateState.Shut)
            return Math.Max(1, asked - gate.CleanEvenings);
        return (isKept && gate.State == GateState.Open) || gate.LatestClean >= frame.FreshFrom ? 0 : 1;
    }

    private static FallWay[] Ways(FallForm form) => form.Direction is FallDirection.Back or FallDirection.Front
        ? [new FallWay(form.Direction, FallSide.None)]
        : [new FallWay(form.Direction, FallSide.Left), new FallWay(form.Direction, FallSide.Right)];

    private static StageGate Stage(FallGateAnswer gates, FallWay way, int stage)
    {
        foreach (var one in gates.Of(way).Stages)
        {
            if (one.Stage == stage)
                return one;
        }

        throw ReadinessFrame.Slip($"The fall table has no stage {stage} for a fall that the sheet asks; mend the item.");
    }

    /// <summary>Evenings seen clean since the head last touched at this stage or a lower one, and the evening of that touch.</summary>
    private static (DateOnly[] CleanOn, DateOnly? TouchedOn) Days(ReadinessFrame frame, FallWay[] ways, int stage)
    {
        DateOnly? touched = null;
        var clean = new SortedSet<DateOnly>();
        foreach (var way in ways)
        {
            DateOnly? own = null;
            foreach (var fall in frame.Parts.Evidence.Falls)
            {
                if (Is(fall, way, frame) && !fall.Clean && fall.Stage <= stage && !(fall.On < own))
                    own = fall.On;
            }

            foreach (var fall in frame.Parts.Evidence.Falls)
            {
                if (Is(fall, way, frame) && fall.Clean && fall.Confirmed && fall.Stage >= stage && !(fall.On <= own) && !Touched(frame, way, fall.On))
                    clean.Add(fall.On);
            }

            touched = own is { } day && !(touched > day) ? day : touched;
        }

        return ([.. clean], touched);
    }

    // An evening on which the head touched at any stage of the way is not a clean one.
    private static bool Touched(ReadinessFrame frame, FallWay way, DateOnly on)
    {
        foreach (var fall in frame.Parts.Evidence.Falls)
        {
            if (!fall.Clean && fall.On == on && Is(fall, way, frame))
                return true;
        }

        return false;
    }

    private static bool Is(FallMark fall, FallWay way, ReadinessFrame frame) =>
        fall.Direction == way.Direction && fall.Side == way.Side && fall.On <= frame.AsOf;

    private static ItemStandingWord Word(
        ReadinessFrame frame, int missing, int clean, int asked, bool shut, DateOnly[] cleanOn, DateOnly? touchedOn, FallWay[] ways, int stage)
    {
        if (missing == 0)
            return ItemStandingWord.Good;
        if (shut || (touchedOn is not null && clean < asked))
            return ItemStandingWord.FallShut;
        if (clean >= asked)
            return ItemStandingWord.GoodNotFresh;
        if (clean > 0 || cleanOn.Length > 0)
            return ItemStandingWord.GoodTooFew;
        var suggested = frame.Parts.Evidence.Falls.Any(f => f.Clean && !f.Confirmed && f.Stage >= stage && ways.Any(w => Is(f, w, frame)));
        return suggested ? ItemStandingWord.Suggested : ItemStandingWord.NeverSeen;
    }

    private static string Said(ReadinessFrame frame, DateOnly[] cleanOn, FallCounted counted)
    {
        var missing = counted.Missing;
        if (counted.StandsDown)
            return $"no falls for now; to be shown again first: {ReadinessPhrases.Evenings(missing)}";
        var kept = counted.KeptUntil is { } until ? $"kept until {ReadinessPhrases.Day(until, frame.AsOf)}" : "";
        if (counted.Word == ItemStandingWord.Kept)
            return kept;
        if (kept.Length > 0)
            kept += counted.IsShut ? ", but the gate is shut; " : ", but the gate is not open; ";
        var side = counted.Side == FallSide.None ? "" : $"{ReadinessPhrases.To(counted.Side)} ";
        var touched = counted.TouchedOn is { } day ? $"the head touched on {ReadinessPhrases.Day(day, frame.AsOf)}; " : "";
        if (missing == 0)
            return cleanOn.Length == 0 ? "seen clean" : $"{touched}seen clean on {ReadinessPhrases.Days(cleanOn, frame.AsOf)}";
        if (counted.AwayFirst)
            return $"{kept}{side}{touched}seen clean before the break; to be shown again first: {ReadinessPhrases.Evenings(missing)}";
        var said = kept + side + touched + ReadinessPhrases.Missing(ItemKind.Fall, missing, cleanOn, counted.Word == ItemStandingWord.GoodNotFresh, frame.AsOf);
        return counted.Word == ItemStandingWord.Suggested ? said + "; a leader's mark waits for an instructor" : said;
    }
}
