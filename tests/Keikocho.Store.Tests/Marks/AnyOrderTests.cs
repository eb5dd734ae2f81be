using CsCheck;
using Keikocho.Core.Evening;
using Keikocho.Core.Safety;
using Keikocho.Store.Marks;
using Keikocho.Store.Starter;

namespace Keikocho.Store.Tests.Marks;

/// <summary>Whatever the order in which the marks of two tablets come in, the states are the same.</summary>
public sealed class AnyOrderTests
{
    private static readonly Guid[] Devices = [new(1, 0, 0, new byte[8]), new(2, 0, 0, new byte[8])];
    private static readonly FallWay[] Ways = [.. FallWay.All];

    private sealed record Raw(int Kind, int Device, int Day, int Word, int Way, int Stage, bool Clean, bool Right, int Names);

    private static readonly Gen<Raw> AnyMark = Gen.Select(
        Gen.Int[0, 5], Gen.Int[0, 1], Gen.Int[0, 3], Gen.Int[1, 3], Gen.Int[0, 5], Gen.Int[1, 6], Gen.Bool,
        (kind, device, day, word, way, stage, clean) => (kind, device, day, word, way, stage, clean))
        .Select(Gen.Bool, Gen.Int[0, 11], (m, right, names) => new Raw(m.kind, m.device, m.day, m.word, m.way, m.stage, m.clean, right, names));

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Any_order_of_arrival_gives_the_same_state(bool falls) =>
        AnyMark.List[0, 12].SelectMany(raw => Gen.Shuffle(Enumerable.Range(0, raw.Count).ToArray()).Select(order => (raw, order))).Sample(
            pair =>
            {
                var marks = pair.raw.Select((m, n) => Mark(m, n, falls)).ToList();
                string Fold(IEnumerable<DatedMark> of) => falls ? FoldEvidence.Falls([.. of]) : FoldEvidence.Evenings([.. of]);
                Assert.Equal(Fold(marks), Fold(pair.order.Select(n => marks[n])));
                Assert.Equal(
                    StandingEvidence.Of([.. marks.Select(m => m.Mark)]).Select(m => (m.Mark.Id, m.Confirmed)),
                    StandingEvidence.Of([.. pair.order.Select(n => marks[n].Mark)]).Select(m => (m.Mark.Id, m.Confirmed)));
            });

    [Fact]
    public void What_is_packed_is_read_back() =>
        AnyMark.List[0, 12].Sample(raw =>
        {
            var marks = raw.Select((m, n) => Mark(m, n, falls: true)).ToList();
            var packed = FoldEvidence.Falls(marks);
            Assert.Equal(packed, FallPack.Pack(FallPack.Unpack(packed)));
            packed = FoldEvidence.Evenings([.. raw.Select((m, n) => Mark(m, n, falls: false))]);
            Assert.Equal(packed, SeenPack.Pack(SeenPack.Unpack(packed)));
        });

    [Fact]
    public void A_code_is_read_as_it_was_written()
    {
        foreach (var way in Ways)
            for (var stage = 1; stage <= 6; stage++)
                foreach (var clean in new[] { true, false })
                {
                    var code = EvidenceCode.OfFall(way, stage, clean);
                    Assert.Equal((way, stage, clean), EvidenceCode.FallOf(code));
                    var corrected = new MarkRow { Kind = MarkKind.Corrected, Code = EvidenceCode.OfCorrection(MarkKind.Fall, code) | MarkCode.ByRight };
                    Assert.Equal((MarkKind.Fall, code), EvidenceCode.Says(corrected));
                    Assert.Equal(StarterFalls.Table.Has(way, stage), EvidenceRules.IsSound(MarkKind.Fall, MarkCode.Falls, code));
                }

        Assert.Equal(SeenWord.NotYet, EvidenceCode.WordOf(EvidenceCode.OfWord(SeenWord.NotYet, settled: true)));
        Assert.Null(EvidenceCode.WordOf(0));
    }

    private static DatedMark Mark(Raw raw, int number, bool falls)
    {
        var word = falls ? EvidenceCode.OfFall(Ways[raw.Way], raw.Stage, raw.Clean) : EvidenceCode.OfWord((SeenWord)raw.Word);
        var own = falls ? MarkKind.Fall : MarkKind.Sighting;
        // A mark names an earlier one, as an honest device does.
        var names = number > 0 && raw.Kind > 2 ? raw.Names % number : (int?)null;
        var kind = names is null ? own : raw.Kind switch { 3 => MarkKind.Cleared, 4 => MarkKind.Corrected, _ => MarkKind.Confirmed };
        return new DatedMark(
            new MarkRow
            {
                Club = 1,
                Id = Id(number),
                DeviceId = Devices[raw.Device],
                Sequence = number,
                ById = Devices[0],
                ItemId = falls ? MarkCode.Falls : Devices[1],
                Kind = kind,
                Code = (kind == own ? word : kind == MarkKind.Corrected ? EvidenceCode.OfCorrection(own, word) : 0) | (raw.Right ? MarkCode.ByRight : 0),
                Replaces = names is { } at ? Id(at) : null,
            },
            new DateOnly(2026, 3, 3).AddDays(raw.Day));
    }

    private static Guid Id(int number) => new(number + 1, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, 0);
}
