using CsCheck;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Testing;
using static Keikocho.Core.Tests.Readiness.Readies;

namespace Keikocho.Core.Tests.Readiness;

public sealed class ReadinessProperties
{
    private static readonly Item[] Items =
    [
        Throw("a", "Throw A"), Throw("b", "Throw B", "a"), Throw("c", "Throw C", "b"), Thing(ItemKind.Word, "w", "word"), Thing(ItemKind.Etiquette, "e", "tying the belt"),
        Fall("back", "Backward", FallDirection.Back, 3), Fall("roll", "Rolling", FallDirection.Rolling, 2, bothSides: true), Fall("side", "Side", FallDirection.Side, 4),
    ];

    private static readonly Gen<DateOnly> AnyDay = Pick([.. Tuesdays, Day(6, 2), Day(7, 7), Day(10, 26), Day(10, 27)]);

    private static readonly Gen<SheetLine> AnyLine =
        from picked in Gen.Shuffle(Items, 1, 3)
        from count in Gen.Int[1, picked.Length]
        from critical in Gen.Bool
        from carry in Pick(Carry.ThisRank, Carry.Always)
        from kept in Gen.Int[0, 9]
        select Line(count, picked) with
        {
            Critical = critical,
            Carry = carry,
            Items = [.. picked.Select((p, i) => new SheetItem(p, KeptUntil: kept == i ? TestOn.AddDays(kept - 1) : null))],
        };

    private static readonly Gen<SeenEvening> AnyEvening =
        from day in AnyDay
        from word in Gen.Frequency((6, Pick<SeenWord?>(SeenWord.Good)), (1, Pick<SeenWord?>(SeenWord.Prompted)), (1, Pick<SeenWord?>(SeenWord.NotYet)), (1, Pick<SeenWord?>([null])))
        from confirmed in Gen.Int[0, 5]
        from settled in Gen.Int[0, 9]
        select SeenOn(day, word, confirmed > 0, settled == 0);

    private static readonly Gen<FallMark> AnyFall =
        from day in AnyDay
        from way in Pick([.. FallWay.All])
        from stage in Gen.Int[1, 5]
        from clean in Gen.Int[0, 9]
        from confirmed in Gen.Int[0, 9]
        from sequence in Gen.Int[0, 20]
        select new FallMark(day, way.Direction, way.Side, stage, clean > 0, confirmed > 0, Sequence: sequence);

    private static readonly Gen<StandDown> AnyStandDown =
        from scope in Pick(StandDownScope.NoFalls, StandDownScope.NoContact, StandDownScope.OffTheMat, StandDownScope.SpareTheNeck)
        from review in Pick<DateOnly?>(null, Day(10, 20), Day(11, 3), Day(11, 10), Day(11, 17), Day(11, 20), Day(12, 1), TestOn)
        from lifted in Pick<DateOnly?>(null, Day(10, 27), Day(11, 3), Day(11, 12))
        from entered in Pick<DateOnly?>(null, null, Day(11, 3), Day(11, 6), Day(11, 18))
        from day in Pick(Day(10, 6), Day(11, 5))
        select lifted >= day ? new StandDown(scope, day, review, null, lifted, "Ada", "letter seen", entered) : new StandDown(scope, day, review, "Ada");

    internal static readonly Gen<ReadinessParts> Any =
        from lines in AnyLine.Array[0, 4]
        from keys in Gen.Shuffle(Items, 0, Items.Length)
        from seen in AnyEvening.Array[0, 4].Array[Items.Length]
        from falls in AnyFall.Array[0, 14]
        from mat in Gen.Shuffle(Tuesdays, 0, Tuesdays.Length)
        from stand in Gen.Frequency((3, Gen.Int[0, 0].Select(_ => Array.Empty<StandDown>())), (1, AnyStandDown.Array[1, 2]))
        from attended in Gen.Int[5, 12]
        from left in Gen.Shuffle(Left, 0, 4)
        from papers in Pick<DateOnly?>(null, Day(12, 5), new DateOnly(2027, 3, 31), new DateOnly(2027, 3, 31), new DateOnly(2027, 3, 31))
        from age in Pick<int?>(null, null, 9, 11)
        from overrule in Pick<Overrule?>(
            null, null, new Overrule(ReadyWord.PutForward, "Ada", AsOf, "knows it"), new Overrule(ReadyWord.If, "Ada", AsOf, "soon"),
            new Overrule(ReadyWord.PutForward, "Ada", AsOf, " "), new Overrule(ReadyWord.NotThisTime, "Ada", AsOf, "in spring"))
        select Of(lines, keys, seen, falls, mat, stand, attended, [.. left.Order()], papers, age, overrule);

    private static Gen<T> Pick<T>(params T[] from) => Gen.Int[0, from.Length - 1].Select(i => from[i]);

    private static ReadinessParts Of(
        SheetLine[] lines, Item[] keys, SeenEvening[][] seen, FallMark[] falls, DateOnly[] mat, StandDown[] stand, int attended, DateOnly[] left, DateOnly? papers, int? age, Overrule? overrule)
    {
        var parts = Parts(attended, Sheet(lines) with { Minima = new Minima(Lessons: 10, Age: age) }, [.. keys.Where(k => k.Kind != ItemKind.Fall).Select((k, i) => new ItemSeen(k.Key, [.. seen[i].DistinctBy(e => e.On).OrderBy(e => e.On)]))]);
        return parts with
        {
            Clock = Clocked(attended, left: left),
            LessonsLeft = left,
            StandDowns = stand,
            Overrule = overrule,
            HarderForms = [.. Items.Where(i => i.Covers is not null)],
            Evidence = parts.Evidence with { Falls = falls, OnTheMat = mat, CreditedItems = keys.Length > 5 ? [keys[0].Key] : [] },
            Papers = parts.Papers with { RegisteredUntil = papers },
        };
    }

    private static string Told(ReadinessParts parts, ReadinessAnswer answer, IReadOnlyList<string> first) => string.Join(
        '\n', [.. first, $"lessons left: {string.Join(" | ", parts.LessonsLeft)}", .. answer.Reasons.Said(), .. parts.Evidence.Falls.Select(f => f.ToString()), .. parts.StandDowns.Select(d => d.ToString())]);

    [Fact]
    public void Every_verdict_is_the_one_found_by_playing_the_evenings_left() =>
        Any.Sample(parts =>
        {
            var answer = ReckonReadiness.Reckon(parts);
            var objections = ReadinessCheck.Objections(parts, answer);
            Assert.True(objections.Count == 0, objections.Count == 0 ? null : Told(parts, answer, objections));
        }, iter: 5_000);

    [Fact]
    public void A_verdict_that_is_one_off_is_objected_to() =>
        Any.Sample(parts =>
        {
            var a = ReckonReadiness.Reckon(parts);
            var other = a.Reckoned == ReadyWord.If ? ReadyWord.PutForward : ReadyWord.If;
            ReadinessAnswer[] wrong =
            [
                a with { Reckoned = other, Verdict = other, Overrule = null }, a with { LinesMet = a.LinesMet + 1 }, a with { LessonsNeeded = a.LessonsNeeded + 1 },
                a with { Overrule = new Overrule(ReadyWord.If, "Ada", AsOf, "") },
            ];
            return wrong.All(w => ReadinessCheck.Objections(parts, w).Count > 0)
                && (a.Reckoned == ReadyWord.NotThisTime || ReadinessCheck.Objections(parts, a with { EveningsNeeded = a.EveningsNeeded + 1 }).Count > 0);
        }, iter: 300);

    [Fact]
    public void More_good_evidence_never_makes_a_verdict_worse() =>
        Gen.Select(Any, Pick(Items), Pick(Tuesdays)).Sample((parts, item, day) =>
        {
            var before = ReckonReadiness.Reckon(parts);
            var evidence = parts.Evidence;
            if (item.Fall is { } form)
            {
                // A clean evening on which nothing else of that way was seen.
                if (evidence.Falls.Any(f => f.On == day && f.Direction == form.Direction))
                    return;
                var ways = FallWay.All.Where(w => w.Direction == form.Direction);
                evidence = evidence with { Falls = [.. evidence.Falls, .. ways.Select(w => new FallMark(day, w.Direction, w.Side, form.Stage, true))] };
            }
            else
            {
                var own = evidence.Seen.FirstOrDefault(s => s.Item == item.Key)?.Evenings ?? [];
                evidence = evidence with { Seen = [.. evidence.Seen.Where(s => s.Item != item.Key), new ItemSeen(item.Key, [.. own.Where(e => e.On != day), SeenOn(day, SeenWord.Good, settled: own.Any(e => e.On == day && e.Settled))])] };
            }

            var after = ReckonReadiness.Reckon(parts with { Evidence = evidence });
            var isNoWorse = after.Reckoned <= before.Reckoned && after.EveningsNeeded <= before.EveningsNeeded && after.LinesMet >= before.LinesMet;
            Assert.True(isNoWorse, isNoWorse ? null : Told(parts with { Evidence = evidence }, after, before.Reasons.Said()));
        }, iter: 3_000);

    [Fact]
    public void Less_evidence_never_makes_a_verdict_better() =>
        Gen.Select(Any, Gen.Int[0, 100]).Sample((parts, which) =>
        {
            var before = ReckonReadiness.Reckon(parts);
            var good = parts.Evidence.Falls.Where(f => f.Clean).ToArray();
            var evidence = which % 2 == 0 && good.Length > 0
                ? parts.Evidence with { Falls = [.. parts.Evidence.Falls.Where(f => !ReferenceEquals(f, good[which % good.Length]))] }
                : parts.Evidence with { Seen = [.. parts.Evidence.Seen.Skip(1)] };
            return ReckonReadiness.Reckon(parts with { Evidence = evidence }).Reckoned >= before.Reckoned;
        }, iter: 2_000);

    [Fact]
    public void The_order_of_anything_given_never_matters() =>
        Gen.Select(Any, Gen.Int[0, int.MaxValue]).Sample((parts, seed) =>
        {
            T[] Mixed<T>(IReadOnlyList<T> given)
            {
                var copy = given.ToArray();
                new Random(seed).Shuffle(copy);
                return copy;
            }

            var e = parts.Evidence;
            var mixed = parts with
            {
                LessonsLeft = Mixed(parts.LessonsLeft),
                StandDowns = Mixed(parts.StandDowns),
                HarderForms = Mixed(parts.HarderForms!),
                Evidence = e with
                {
                    Seen = Mixed([.. e.Seen.Select(s => s with { Evenings = Mixed(s.Evenings) })]),
                    Falls = Mixed(e.Falls),
                    OnTheMat = Mixed(e.OnTheMat),
                    CreditedItems = Mixed(e.CreditedItems),
                },
            };
            return SumJson.Write(ReckonReadiness.Reckon(parts)) == SumJson.Write(ReckonReadiness.Reckon(mixed));
        }, iter: 500);

    [Fact, Statement(60)]
    public void No_overrule_ever_opens_a_gate() =>
        Any.Sample(parts =>
        {
            var plain = ReckonReadiness.Reckon(parts with { Overrule = null });
            var forced = ReckonReadiness.Reckon(parts with { Overrule = new Overrule(ReadyWord.PutForward, "Ada", AsOf, "because") });
            var isSafe = plain.Lines.All(l => l.Met || !(l.Line.Critical || l.Line.Items.Any(i => i.Item.Kind == ItemKind.Fall))) && !plain.Time.OfType<StandDownStands>().Any();
            return forced.Verdict == ReadyWord.PutForward ? isSafe : !isSafe && forced.OverruleRefused is not null && forced.Verdict == plain.Verdict;
        }, iter: 1_000);

    [Fact, Statement(100)]
    public void Every_figure_and_date_of_a_verdict_is_in_its_reasons() =>
        Any.Sample(parts =>
        {
            var a = ReckonReadiness.Reckon(parts);
            var said = string.Join(' ', a.Reasons.Said());
            Assert.Contains(parts.TestOn.Full(), said, StringComparison.Ordinal);
            Assert.Contains($"{parts.Clock.Attended} of 10 lessons attended", said, StringComparison.Ordinal);
            Assert.True(a.LessonsNeeded == 0 || said.Contains($"{a.LessonsNeeded} of the ", StringComparison.Ordinal) || said.Contains("short.", StringComparison.Ordinal) || said.Contains("all ", StringComparison.Ordinal) || said.Contains("the 1 lesson left", StringComparison.Ordinal));
            Assert.True(parts.Papers.RegisteredUntil is not { } until || said.Contains(until.Full(), StringComparison.Ordinal));
            foreach (var item in a.Lines.SelectMany(l => l.Items))
            {
                Assert.Contains(item.Because.Sentence, said, StringComparison.Ordinal);
                Assert.All(item.Word is ItemStandingWord.Kept ? [] : item.SeenOn, d => Assert.Contains(d.Full(), item.Because.Sentence, StringComparison.Ordinal));
            }

            Assert.All(a.Time, r => Assert.Contains(r.Sentence, said, StringComparison.Ordinal));
            Assert.True(a.Verdict != ReadyWord.NotThisTime || said.Contains(NextTestOn.Full(), StringComparison.Ordinal));
            Assert.True(a.Overrule is not { } o || (said.Contains(o.Why, StringComparison.Ordinal) && said.Contains(o.On.Full(), StringComparison.Ordinal)));
        }, iter: 1_000);
}
