namespace Keikocho.Core.Safety;

/// <summary>Judges one child's gates by living through every day: counts rise, fall back and wait to be shown again as the evenings come.</summary>
public static class FallGateCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(FallGateSnapshot snapshot, FallGateAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        void Expect(bool holds, string what)
        {
            if (!holds)
                objections.Add(what);
        }

        var stood = StoodDownTonight(snapshot);
        Expect(answer.Ways.Select(w => w.Way).SequenceEqual(FallWay.All), "Every way is there, in order.");
        foreach (var way in answer.Ways)
        {
            Expect(way.Stages.Select(s => s.Stage).SequenceEqual([1, 2, 3, 4, 5, 6]), "Every stage is there, in order.");
            var (below, belowTried) = (GateState.Open, true);
            var openTo = 0;
            var touchedTonight = snapshot.Falls.Any(f => f.On == snapshot.Tonight && !f.Clean && (f.Direction, f.Side) == (way.Way.Direction, way.Way.Side));
            foreach (var gate in way.Stages)
            {
                var name = $"{FallWords.Of(way.Way)} at stage {gate.Stage}";
                var (clean, owes) = Live(snapshot, way.Way, gate.Stage);
                var closed = stood || touchedTonight;
                var complete = clean.Count >= snapshot.Rule.CleanEvenings;
                var state = closed || owes || !complete ? GateState.Shut
                    : clean[^1].AddDays(snapshot.Rule.FreshDays) < snapshot.Tonight ? GateState.LookAgain
                    : GateState.Open;
                Expect(gate.State == state, $"{name} is {state}, not {gate.State}.");
                Expect(gate.CleanEvenings == clean.Count, $"{name} has {clean.Count} clean evenings, not {gate.CleanEvenings}.");
                Expect(gate.LatestClean == (clean.Count == 0 ? null : clean[^1]), $"{name}: the latest clean evening.");
                var tried = !closed && (gate.Stage == 1 || state == GateState.Open || below == GateState.Open || (owes && complete && belowTried));
                Expect(gate.MayBeTried == tried, $"{name}: may be tried is {tried}.");
                Expect(gate.OpensWith is null == (state == GateState.Open), $"{name}: what opens it is said when it is not open.");
                (below, belowTried) = (state, tried);
                openTo = state == GateState.Open ? gate.Stage : openTo;
            }

            Expect(way.OpenTo == openTo, $"{FallWords.Of(way.Way)} is open to {openTo}, not {way.OpenTo}.");
        }

        Expect(answer.Throws.Count == snapshot.Planned.Count, "Every planned throw has its answer.");
        foreach (var (planned, judged) in snapshot.Planned.Zip(answer.Throws))
        {
            var may = planned.Ways.Count > 0 && planned.Ways.All(w => answer.Of(w).Stages.Single(s => s.Stage == planned.Stage).State == GateState.Open);
            Expect(judged.Name == planned.Name && judged.MayBeThrown == may, $"{planned.Name}: may be thrown is {may}.");
        }

        var thrown = answer.Throws.Count > 0 ? answer.Throws.Any(t => t.MayBeThrown) : answer.Ways.Any(w => w.OpenTo > 3 && w.Way.Direction != FallDirection.Front);
        Expect(answer.Role.Contains("thrown", StringComparison.Ordinal) == thrown, "The role says thrown when some throw may be done on the child.");
        var everyWay = answer.Throws.Count > 0 ? answer.Throws.All(t => t.MayBeThrown) : answer.Ways.All(w => w.OpenTo > 3 || w.Way.Direction == FallDirection.Front);
        Expect(answer.Role != RoleWords.ThrowsAndIsThrown || everyWay, "The role says thrown without a word only when nothing is shut.");
        Expect(answer.Suggestions == snapshot.Falls.Count(f => !f.Confirmed && f.On <= snapshot.Tonight), "Falls that wait are counted.");
        Expect(answer.Reasons.Count > 0 && answer.Reasons.All(r => r.Sentence.EndsWith('.')), "Every reason is a sentence.");
        return objections;
    }

    private static bool StoodDownTonight(FallGateSnapshot snapshot) => snapshot.StandDowns.Any(s =>
        s.Scope != StandDownScope.SpareTheNeck && s.From <= snapshot.Tonight && !(s.LiftedOn <= snapshot.Tonight));

    /// <summary>The clean evenings that count tonight, and whether the fall is still to be shown again.</summary>
    private static (List<DateOnly> Clean, bool Owes) Live(FallGateSnapshot snapshot, FallWay way, int stage)
    {
        var clean = new List<DateOnly>();
        var owes = false;
        var away = (int?)null;
        var days = snapshot.OnTheMat.Concat(snapshot.Falls.Select(f => f.On)).Concat(snapshot.StandDowns.Select(s => s.LiftedOn ?? s.From)).Append(snapshot.Tonight);
        for (var day = days.Min(); day <= snapshot.Tonight; day = day.AddDays(1))
        {
            away++;
            if (snapshot.OnTheMat.Contains(day) || day == snapshot.Tonight)
            {
                // Before the first day on the mat nothing is known; tonight is then a return.
                owes |= away is { } so ? so >= snapshot.Rule.AwayDays : !snapshot.OnTheMat.Contains(day);
                away = 0;
            }

            // Lifted, and entered by then: falls of the days between were done while the stand-down was still read as standing.
            owes |= snapshot.StandDowns.Any(s => s.Scope != StandDownScope.SpareTheNeck && s.LiftedOn <= day && (s.LiftEnteredOn > day || s.LiftedOn == day || s.LiftEnteredOn == day));
            var seen = snapshot.Falls.Where(f => f.On == day && f.Direction == way.Direction && f.Side == way.Side).ToArray();
            if (seen.Any(f => !f.Clean))
            {
                if (seen.Any(f => !f.Clean && f.Stage <= stage))
                    clean.Clear();
                continue;
            }

            var sure = seen.Where(f => f.Confirmed).ToArray();
            if (!sure.Any(f => f.Stage >= stage))
                continue;
            clean.Add(day);
            foreach (var device in sure.GroupBy(f => f.Device))
            {
                var lower = stage == 1 ? int.MinValue : device.Where(f => f.Stage == stage - 1).Select(f => (int?)f.Sequence).Min();
                if (lower is { } first && device.Any(f => f.Stage >= stage && (stage == 1 || f.Sequence > first)))
                    owes = snapshot.StandDowns.Any(s => s.Scope != StandDownScope.SpareTheNeck && s.LiftedOn <= day && s.LiftEnteredOn > day);
            }
        }

        return (clean, owes);
    }
}
