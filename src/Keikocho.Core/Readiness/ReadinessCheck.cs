using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>
/// Judges a verdict by trying it out: for every choice of the evenings left (beyond eight of them for the last ones) it plays that the
/// child was there and showed everything cleanly, and then asks whether the sheet is met. It shares no code with the sum; falls are judged
/// by the fall gate on the evening that was played.
/// </summary>
public static class ReadinessCheck
{
    private const int MostPlayed = 8;

    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(ReadinessParts question, ReadinessAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        void Expect(bool holds, string what)
        {
            if (!holds)
                objections.Add(what);
        }

        var played = new PlayedEvenings(question);
        int? least = null;
        foreach (var evenings in Choices([.. question.LessonsLeft.Distinct().Order()]))
        {
            if (!(evenings.Length >= least) && question.Sheet.Lines.All(l => played.IsMet(l, evenings)))
                least = evenings.Length;
        }

        var now = question.Sheet.Lines.Select(l => played.IsMet(l, [])).ToArray();
        Expect(answer.Lines.Select(l => l.Met).SequenceEqual(now), "A line is met exactly when so many of its items are good now.");
        Expect(answer.LinesMet == now.Count(m => m), $"Lines met {now.Count(m => m)}, not {answer.LinesMet}.");
        Expect(answer.Lines.All(l => l.Met == (l.EveningsMissing == 0) && l.Met == (l.Said is null)), "A line that is met lacks nothing, and only such a line.");
        Expect(least is null || answer.EveningsNeeded == least, $"Evenings needed {least}, not {answer.EveningsNeeded}.");

        var (needed, canBe, isNow) = TimeNow(question);
        Expect(answer.LessonsNeeded == needed, $"Lessons needed {needed}, not {answer.LessonsNeeded}.");
        var bearing = Bearing(question).ToArray();
        var feasible = least is not null && canBe && bearing.All(s => InTime(question, s));
        var expected = !feasible ? ReadyWord.NotThisTime : least == 0 && isNow && bearing.Length == 0 && question.AfterKnock is null ? ReadyWord.PutForward : ReadyWord.If;
        Expect(answer.Reckoned == expected, $"The sum says {VerdictWords.Of(expected)}, not {VerdictWords.Of(answer.Reckoned)}.");

        var safetyNow = bearing.Length == 0 && question.AfterKnock is null && question.Sheet.Lines.Zip(now).All(l => l.Second || !IsSafety(l.First));
        Expect(answer.Verdict != ReadyWord.PutForward || safetyNow, "Nobody is put forward past a safety gate.");
        Expect(answer.Overrule is null ? answer.Verdict == answer.Reckoned : answer.Verdict == answer.Overrule.To, "The verdict is the sum's, or that of an overrule that holds.");
        Expect(answer.Overrule is null || (answer.Overrule == question.Overrule && answer.Overrule.Why.Trim().Length > 0), "An overrule that holds was given, with a reason.");
        Expect((answer.OverruleRefused is not null) == (question.Overrule is not null && answer.Overrule is null), "An overrule holds or is refused.");
        Expect((answer.Conditions.Count == 0) == (answer.Reckoned == ReadyWord.PutForward), "Whatever is not put forward says what is missing.");
        Expect(question.AfterKnock is not { } after || (answer.Reasons.Contains(after) && answer.Conditions.Contains(after)), "A test that is too early after a knock is said so, with the day and the next test.");
        Expect(answer.Gates.Count == 0 || answer.Reckoned == ReadyWord.NotThisTime, "A gate that would not open in time is not this time.");
        Expect(answer.Reasons.Concat(answer.Conditions).Concat(answer.Gates).Concat(answer.Time).All(r => r.Sentence.EndsWith('.')), "Every reason is a sentence.");
        Expect(answer.Forecast.Days.Zip(answer.Forecast.Days.Skip(1)).All(d => d.First.On < d.Second.On && d.First.Chance <= d.Second.Chance + 1e-12), "The chance grows from lesson to lesson.");
        return objections;
    }

    private static IEnumerable<DateOnly[]> Choices(DateOnly[] evenings)
    {
        if (evenings.Length > MostPlayed)
        {
            for (var last = 0; last <= evenings.Length; last++)
                yield return evenings[^last..];
            yield break;
        }

        for (var choice = 0; choice < 1 << evenings.Length; choice++)
            yield return [.. evenings.Where((_, i) => (choice >> i & 1) == 1)];
    }

    private static bool IsSafety(SheetLine line) => line.Critical || line.Items.Any(i => i.Item.Kind == ItemKind.Fall);

    /// <summary>Lessons needed, whether time and papers can be right by the test, and whether they are now.</summary>
    private static (int Needed, bool CanBe, bool IsNow) TimeNow(ReadinessParts q)
    {
        var m = q.Sheet.Minima;
        var share = 1 - (Math.Min(q.Papers.ReductionPercent, m.MostReductionPercent) / 100m);
        int Figure(int figure) => (int)Math.Ceiling(figure * share);
        int needed = 0, weeks = 0, months = 0;
        var canBe = true;
        var start = q.Clock.Reasons.OfType<Calendar.CountedFrom>().Select(c => (DateOnly?)c.StartOn).FirstOrDefault();
        if (m.Lessons + m.Weeks + m.Months > 0)
        {
            (weeks, months) = (Figure(m.Weeks), Figure(m.Months));
            for (var attended = q.Clock.Attended; attended < Figure(m.Lessons); attended++)
                needed++;
            canBe = start is not { } from || (from.AddDays(7 * weeks) <= q.TestOn && from.AddMonths(months) <= q.TestOn);
        }
        else
        {
            needed = q.Clock.Needed;
            canBe = q.Clock.WeeksFullOn <= q.TestOn;
        }

        var mat = q.StandDowns.Where(s => s.Scope == StandDownScope.OffTheMat && Stands(q, s)).Select(s => Until(q, s)).DefaultIfEmpty(DateOnly.MinValue).Max();
        canBe &= needed <= Math.Min(q.Clock.Left ?? int.MaxValue, q.LessonsLeft.Count(d => d > mat));
        var papers = !q.Papers.RegistrationAsked || q.Papers.RegisteredUntil >= q.TestOn;
        if (m.Age is { } age)
        {
            if (q.Papers.Born is not { } born)
                papers = false;
            else if (m.AgeBy == AgeBasis.CalendarYear)
                canBe &= q.TestOn.Year - born.Year >= age;
            else
                canBe &= (q.TestOn.Year - born.Year, q.TestOn.Month, q.TestOn.Day).CompareTo((age, born.Month, born.Day)) >= 0;
        }

        return (needed, canBe && (papers || q.AsOf < q.TestOn), canBe && papers && needed == 0);
    }

    private static IEnumerable<StandDown> Bearing(ReadinessParts q) => q.StandDowns.Where(s => Stands(q, s)).Where(s => s.Scope switch
    {
        StandDownScope.NoFalls => AsksFalls(q),
        StandDownScope.NoContact => q.Sheet.Lines.Any(l => l.Items.Any(i => !IsOral(i.Item.Kind))),
        StandDownScope.SpareTheNeck => q.Sheet.Lines.Any(l => l.Items.Any(i => i.Item.LoadsTheNeck)),
        _ => true,
    });

    private static bool InTime(ReadinessParts q, StandDown s)
    {
        var until = Until(q, s);
        return s.Scope != StandDownScope.SpareTheNeck && until < q.TestOn
            && (!AsksFalls(q) || q.LessonsLeft.Distinct().Count(d => d > until) >= q.GateRule.CleanEvenings);
    }

    private static bool AsksFalls(ReadinessParts q) => q.Sheet.Lines.Any(l => l.Items.Any(i => i.Item.Kind == ItemKind.Fall));

    private static bool IsOral(ItemKind kind) => kind is ItemKind.Etiquette or ItemKind.Word or ItemKind.Question;

    private static bool Stands(ReadinessParts q, StandDown s) => s.From <= q.TestOn && !(s.LiftedOn <= q.AsOf && (s.LiftEnteredOn is null || s.LiftEnteredOn <= q.AsOf));

    private static DateOnly Until(ReadinessParts q, StandDown s)
    {
        DateOnly? lifted = s.LiftedOn is { } on && s.LiftEnteredOn is { } entered && entered > on ? entered : s.LiftedOn;
        var day = lifted?.AddDays(-1) ?? s.ReviewOn;
        return day is null ? DateOnly.MaxValue : day > q.AsOf ? day.Value : q.AsOf;
    }

    /// <summary>The evenings left, played.</summary>
    private sealed class PlayedEvenings(ReadinessParts q)
    {
        private readonly Dictionary<string, FallGateAnswer> gates = [];

        public bool IsMet(SheetLine line, DateOnly[] evenings) => line.Items.Count(i => IsGood(line, i, evenings)) >= line.Count;

        private bool IsGood(SheetLine line, SheetItem on, DateOnly[] evenings)
        {
            var until = q.StandDowns.Where(s => Stands(q, s) && Forbids(s.Scope, on.Item.Kind)).Select(s => Until(q, s)).DefaultIfEmpty(DateOnly.MinValue).Max();
            DateOnly[] shown = [.. evenings.Where(d => d > until)];
            if (on.Item.Kind == ItemKind.Fall)
                return IsGoodFall(on, shown, until);
            return on.KeptUntil >= q.TestOn || IsGoodBy(line, on, shown);
        }

        private bool IsGoodBy(SheetLine line, SheetItem on, DateOnly[] shown)
        {
            if (!line.Critical && q.Evidence.CreditedItems.Contains(on.Item.Key))
                return true;
            HashSet<string> keys = [on.Item.Key];
            var all = (q.HarderForms ?? []).Concat(q.Sheet.Lines.SelectMany(l => l.Items).Select(i => i.Item)).Where(i => i.Kind != ItemKind.Fall).ToArray();
            for (var before = 0; before < keys.Count;)
            {
                before = keys.Count;
                foreach (var item in all)
                {
                    if (item.Covers is { } covers && covers.Any(keys.Contains))
                        keys.Add(item.Key);
                }
            }

            var once = IsOral(on.Item.Kind);
            var everCounts = once && line.Carry == Carry.ThisRank;
            var good = q.Evidence.Seen.Where(s => keys.Contains(s.Item)).SelectMany(s => s.Evenings)
                .Where(e => e.Confirmed && e.Word == SeenWord.Good && e.On <= q.AsOf && (everCounts || !(e.On <= q.Evidence.PromotedOn))).ToArray();
            var days = good.Select(e => e.On).Concat(shown).Distinct().ToArray();
            var enough = good.Any(e => e.Settled) || days.Length >= (once ? q.Rule.WordEvenings : q.Rule.TechniqueEvenings);
            return enough && (!line.Critical || days.Any(d => d.AddDays(q.Rule.CriticalFreshDays) >= q.TestOn));
        }

        private bool IsGoodFall(SheetItem on, DateOnly[] shown, DateOnly until)
        {
            var form = on.Item.Fall!;
            var sides = FallWay.All.Where(w => w.Direction == form.Direction).ToArray();
            if (shown.Length == 0 && until > DateOnly.MinValue)
                return false;
            var gates = Gates(shown, until > DateOnly.MinValue);
            bool Good(FallWay way)
            {
                var gate = gates.Of(way).Stages.First(s => s.Stage == form.Stage);
                return gate.State != GateState.Shut && gate.LatestClean is { } latest && latest.AddDays(q.Rule.CriticalFreshDays) >= q.TestOn;
            }

            if (form.BothSides ? sides.All(Good) : sides.Any(Good))
                return true;

            // A kept pass stands for what is fresh, never for what is open; and whatever must be shown still is shown fresh.
            bool Stands(FallWay way) => gates.Of(way).Stages.First(s => s.Stage == form.Stage).State == GateState.Open;
            return until == DateOnly.MinValue && on.KeptUntil >= q.TestOn && !q.Evidence.Falls.Any(f => !f.Clean && f.Direction == form.Direction && f.On <= q.AsOf && (f.Stage <= form.Stage || f.On == q.AsOf))
                && (form.BothSides ? sides.All(way => Stands(way) || Good(way)) : sides.Any(Stands))
                && (shown.Length == 0 || shown[^1].AddDays(q.Rule.CriticalFreshDays) >= q.TestOn);
        }

        /// <summary>The gates on the last evening played; after a stand-down nothing from before it counts.</summary>
        private FallGateAnswer Gates(DateOnly[] shown, bool afresh)
        {
            var key = $"{afresh} {string.Join(' ', shown.Select(d => d.DayNumber))}";
            if (gates.TryGetValue(key, out var known))
                return known;
            var marks = new List<FallMark>(afresh ? [] : q.Evidence.Falls.Where(f => f.On <= q.AsOf));
            foreach (var day in shown)
            {
                var sequence = 1_000_000;
                foreach (var way in FallWay.All)
                {
                    for (var stage = 1; stage <= 6; stage++)
                    {
                        if (q.Sheet.Lines.Any(l => l.Items.Any(i => i.Item.Fall is { } f && f.Direction == way.Direction && (f.Stage == stage || f.Stage == stage + 1))))
                            marks.Add(new FallMark(day, way.Direction, way.Side, stage, true, Sequence: sequence++));
                    }
                }
            }

            var answer = FallGate.Reckon(new FallGateSnapshot(
                shown.Length > 0 ? shown[^1] : q.AsOf, marks, [.. q.Evidence.OnTheMat.Where(d => d <= q.AsOf), .. shown], [], q.GateRule, []));
            if (!afresh && q.StandDowns.Count > 0)
                answer = FallGate.Reckon(new FallGateSnapshot(
                    shown.Length > 0 ? shown[^1] : q.AsOf, marks, [.. q.Evidence.OnTheMat.Where(d => d <= q.AsOf), .. shown],
                    [.. q.StandDowns.Where(s => !Stands(q, s))], q.GateRule, []));
            return gates[key] = answer;
        }

        private static bool Forbids(StandDownScope scope, ItemKind kind) => scope switch
        {
            StandDownScope.OffTheMat => true,
            StandDownScope.NoContact => !IsOral(kind),
            StandDownScope.NoFalls => kind == ItemKind.Fall,
            _ => false,
        };
    }
}
