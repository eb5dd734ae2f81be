using CsCheck;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Tests.Safety;

/// <summary>What is learned later never brings a date nearer, and what is missing opens nothing.</summary>
public sealed class HeadKnockPropertyTests
{
    private static readonly DateOnly Knock = new(2026, 3, 3);

    private static readonly Gen<DateOnly> Day = Gen.Int[0, 60].Select(d => Knock.AddDays(d));

    private static readonly Gen<string> Protocol = Gen.Int[0, KnockProtocols.Keys.Count - 1].Select(i => KnockProtocols.Keys[i]);

    private static readonly Gen<KnockRule> Rule =
        Gen.Select(Protocol, Protocol, Gen.Int[14, 20], Gen.Int[21, 30], Gen.Bool, Gen.Int[24, 60], Gen.Int[1, 28])
            .Select((one, other, free, contest, wait, hours, doctor) => new KnockRule(one, other, free, contest, wait, hours, doctor));

    private static readonly Gen<KnockLifting?> Lifting = Gen.Select(Gen.Bool, Gen.Int[0, 60]).Select((is1, d) => is1 ? new KnockLifting(Knock.AddDays(d), "Anna") : null);

    private static readonly Gen<HeadKnockSnapshot> Any = Gen.Select(
        Gen.Int[60, 100], Day.Array[0, 3], Day.Array[0, 2], Day.Array[0, 2], Gen.Int[0, 3].SelectMany(n => Day.Array[n == 0 ? 1 : 0]), Lifting, Lifting, Rule)
        .Select((today, free, symptoms, advice, further, eased, lifted, rule) => new HeadKnockSnapshot(
            Knock, Knock.AddDays(today), free, symptoms, [.. advice.Select(a => new KnockAdvice(a, "Dr Hale", "Anna"))], further, eased, lifted,
            [.. Enumerable.Range(0, 30).Select(i => Knock.AddDays(i * 7))], [Knock.AddDays(25), Knock.AddDays(90)], rule));

    private static DateOnly?[] Dates(HeadKnockAnswer answer) => [.. answer.Steps.Select(s => s.Earliest)];

    // No date is later than any.
    private static bool NoneNearer(HeadKnockAnswer before, HeadKnockAnswer after) =>
        Dates(before).Zip(Dates(after)).All(p => p.Second is null || (p.First is not null && p.Second >= p.First));

    private static bool NothingOpens(HeadKnockAnswer before, HeadKnockAnswer after) =>
        before.Steps.Zip(after.Steps).All(p => !p.First.IsShut || p.Second.IsShut);

    [Fact]
    public void Every_answer_stands_before_the_check() =>
        Any.Sample(s => HeadKnockCheck.Objections(s, HeadKnock.Reckon(s)).Count == 0, iter: 5_000);

    [Fact]
    public void Some_steps_are_shut_and_some_are_not()
    {
        var open = 0;
        Any.Sample(s => { if (HeadKnock.Reckon(s).Steps.Any(t => !t.IsShut)) Interlocked.Increment(ref open); }, iter: 5_000);
        Assert.InRange(open, 20, 4_500);
    }

    [Fact]
    public void Symptoms_more_never_bring_a_date_nearer_and_open_nothing() =>
        Gen.Select(Any, Day).Sample((s, day) =>
        {
            var (before, after) = (HeadKnock.Reckon(s), HeadKnock.Reckon(s with { SymptomsOn = [.. s.SymptomsOn, day] }));
            return NoneNearer(before, after) && NothingOpens(before, after);
        }, iter: 3_000);

    [Fact]
    public void A_knock_more_never_brings_a_date_nearer_and_opens_nothing() =>
        Gen.Select(Any, Day).Sample((s, day) =>
        {
            var (before, after) = (HeadKnock.Reckon(s), HeadKnock.Reckon(s with { FurtherKnocks = [.. s.FurtherKnocks, day] }));
            return NoneNearer(before, after) && NothingOpens(before, after);
        }, iter: 3_000);

    [Fact]
    public void A_later_first_day_without_symptoms_never_brings_a_date_nearer() =>
        Any.Where(s => HeadKnock.Reckon(s).FreeFrom is not null).Sample(s =>
        {
            var before = HeadKnock.Reckon(s);
            return NoneNearer(before, HeadKnock.Reckon(s with { FreeFrom = [.. s.FreeFrom, before.FreeFrom!.Value.AddDays(before.FreeFrom < s.Today ? 1 : 0)] }));
        }, iter: 3_000);

    [Fact]
    public void A_record_that_lacks_something_opens_nothing() =>
        Any.Sample(s =>
        {
            var before = HeadKnock.Reckon(s);
            HeadKnockSnapshot[] lacking = [s with { FreeFrom = [] }, s with { Advice = [] }, s with { Lifted = null }, s with { Eased = null }, s with { Lifted = null, Eased = null }];
            return lacking.All(l => NothingOpens(before, HeadKnock.Reckon(l)))
                && HeadKnock.Reckon(lacking[0]).Steps.All(t => t.IsShut)
                && HeadKnock.Reckon(lacking[1]).Steps.Skip(1).All(t => t.IsShut)
                && HeadKnock.Reckon(lacking[4]).Steps.All(t => t.IsShut);
        }, iter: 3_000);

    [Fact]
    public void Nothing_lapses_by_itself() =>
        Gen.Select(Any, Gen.Int[0, 2_000]).Sample((s, later) =>
            HeadKnock.Reckon(s with { Lifted = null, Eased = null, Today = s.Today.AddDays(later) }).Steps.All(t => t.IsShut), iter: 2_000);

    [Fact]
    public void Each_step_is_not_before_the_one_below() =>
        Any.Sample(s =>
        {
            var a = HeadKnock.Reckon(s);
            return !(a.NoContactDrills < a.LightMovement) && !(a.FallsAndContact < a.NoContactDrills) && !(a.TestOrContest < a.FallsAndContact);
        }, iter: 3_000);

    [Fact]
    public void A_second_protocol_never_brings_a_date_nearer() =>
        Gen.Select(Any, Protocol).Sample((s, key) =>
            NoneNearer(HeadKnock.Reckon(s with { Rule = s.Rule with { AlsoProtocol = KnockProtocols.None } }), HeadKnock.Reckon(s with { Rule = s.Rule with { AlsoProtocol = key } })), iter: 3_000);

    [Fact]
    public void An_answer_that_is_wrong_is_objected_to() =>
        Any.Sample(s =>
        {
            var a = HeadKnock.Reckon(s);
            HeadKnockAnswer[] wrong =
            [
                a with { DayZero = a.DayZero.AddDays(1) },
                a with { FallsAndContact = a.FallsAndContact?.AddDays(-1) ?? s.Today },
                a with { TestOrContest = a.TestOrContest?.AddDays(-1) ?? s.Today },
                a with { Steps = [.. a.Steps.Select(t => t with { IsShut = !t.IsShut })] },
                a with { Tests = [] },
            ];
            return wrong.All(w => HeadKnockCheck.Objections(s, w).Count > 0);
        }, iter: 1_000);
}
