using Keikocho.Core.Calendar;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>
/// Put forward, if, or not this time, with every reason. Everything is a gate: time, items, papers, falls. What is missing may be
/// seen on the same evenings, so the evenings needed are the most that any one line lacks. Money never enters: it is nowhere.
/// </summary>
public static class ReckonReadiness
{
    /// <summary>Reckons one child from the whole question.</summary>
    /// <exception cref="ArgumentException">A part of the question contradicts itself.</exception>
    public static ReadinessAnswer Reckon(ReadinessSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        return Reckon(PartsOf(snapshot));
    }

    /// <summary>Reckons one child from parts already reckoned.</summary>
    /// <exception cref="ArgumentException">A part contradicts itself.</exception>
    public static ReadinessAnswer Reckon(ReadinessParts parts)
    {
        var frame = ReadinessFrame.Of(parts);
        if (parts.StandDowns.Count > 0)
            StandDowns.Read(new StandDownsSnapshot(parts.AsOf, parts.StandDowns));
        var time = TimeAndPapers.Of(frame);
        var gates = Asks(parts.Sheet, ItemKind.Fall)
            ? FallGate.Reckon(new FallGateSnapshot(
                parts.AsOf,
                UpTo(parts.Evidence.Falls, f => f.On <= parts.AsOf),
                UpTo(parts.Evidence.OnTheMat, d => d <= parts.AsOf),
                parts.StandDowns, parts.GateRule, []))
            : null;
        var used = new List<StageGate>();
        var lines = new LineReach[parts.Sheet.Lines.Count];
        for (var i = 0; i < lines.Length; i++)
            lines[i] = StandLine.Of(frame, gates, parts.Sheet.Lines[i], used);
        return ReadinessAnswers.Of(frame, time, gates, used, lines, StandDownsAgainst(frame));
    }

    /// <summary>Stand-downs that bear on this test, whether or not they may be lifted in time.</summary>
    private static StandDownStands[] StandDownsAgainst(ReadinessFrame frame)
    {
        if (frame.Blocks.Standing.Count == 0)
            return [];
        var sheet = frame.Parts.Sheet;
        var falls = Asks(sheet, ItemKind.Fall);
        var contact = sheet.Lines.Any(l => l.Items.Any(i => i.Item.Kind is not (ItemKind.Etiquette or ItemKind.Word or ItemKind.Question)));
        var found = new List<StandDownStands>();
        foreach (var stands in frame.Blocks.Standing)
        {
            var bears = stands.Scope switch
            {
                StandDownScope.NoFalls => falls,
                StandDownScope.NoContact => contact,
                StandDownScope.SpareTheNeck => sheet.Lines.Any(l => l.Items.Any(i => i.Item.LoadsTheNeck)),
                _ => true,
            };
            if (!bears)
                continue;
            var until = Blocks.Until(stands, frame.AsOf);
            var after = frame.LessonsAfter(until);
            var clean = falls && stands.Scope != StandDownScope.SpareTheNeck ? frame.Parts.GateRule.CleanEvenings : 0;
            var inTime = stands.Scope != StandDownScope.SpareTheNeck && until < frame.TestOn && frame.EveningsAfter(until) >= clean;
            found.Add(new StandDownStands(
                stands.Scope, StandDowns.LiftCountsFrom(stands) ?? stands.ReviewOn, stands.LiftedOn is null && stands.ReviewOn <= frame.AsOf, stands.WhoseWord, after, clean, inTime, frame.AsOf, frame.TestOn));
        }

        return [.. found];
    }

    private static bool Asks(RequirementSheet sheet, ItemKind kind)
    {
        foreach (var line in sheet.Lines)
        {
            foreach (var on in line.Items)
            {
                if (on.Item.Kind == kind)
                    return true;
            }
        }

        return false;
    }

    // As a rule all of it lies in the past: then nothing is copied.
    private static IReadOnlyList<T> UpTo<T>(IReadOnlyList<T> all, Func<T, bool> past)
    {
        foreach (var one in all)
        {
            if (!past(one))
                return [.. all.Where(past)];
        }

        return all;
    }

    private static ReadinessParts PartsOf(ReadinessSnapshot snapshot)
    {
        if (snapshot.Sheet.Child is not { } child)
            throw ReadinessFrame.Slip("The sheet is the copy on the wall; name the child that it is for.");
        if (snapshot.Clock.TestOn != snapshot.Sheet.TestOn)
            throw ReadinessFrame.Slip(
                $"The clock is for {(snapshot.Clock.TestOn is { } on ? $"a test on {on.Full()}" : "no test")} and the sheet for one on {snapshot.Sheet.TestOn.Full()}; give both the same test.");
        if (child.Born is { } born && snapshot.Papers.Born is { } other && born != other)
            throw ReadinessFrame.Slip($"The birth date is {born.Full()} on the sheet and {other.Full()} on the papers; mend one.");

        // A neck that is spared is spared on the sheet, whoever forgot to say so.
        var sparesTheNeck = Blocks.Of(snapshot.StandDowns, snapshot.Clock.AsOf, snapshot.Sheet.TestOn).SparesTheNeck;
        var sheet = MakeSheet.Make(snapshot.Sheet with
        {
            Child = child with { Born = child.Born ?? snapshot.Papers.Born, SpareTheNeck = child.SpareTheNeck || sparesTheNeck },
        });
        var clock = Clock.Reckon(sheet.Minima.LessonsADay > 0
            ? snapshot.Clock with { Rule = snapshot.Clock.Rule with { LessonsADay = sheet.Minima.LessonsADay } }
            : snapshot.Clock);
        return new ReadinessParts(
            snapshot.Clock.AsOf, snapshot.Sheet.TestOn, snapshot.Clock.NextTestOn, clock, sheet, snapshot.Evidence, snapshot.StandDowns,
            snapshot.Papers with { Born = snapshot.Papers.Born ?? child.Born }, snapshot.Common, snapshot.LessonsLeft, snapshot.Overrule,
            snapshot.GateRule, snapshot.Rule, snapshot.LikelyPercent,
            [.. snapshot.Sheet.Edition.Items.Where(i => i.Covers is { Count: > 0 })]);
    }
}
