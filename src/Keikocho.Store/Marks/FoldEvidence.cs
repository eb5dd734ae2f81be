using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;

namespace Keikocho.Store.Marks;

/// <summary>Folds the marks of what was seen into the packed states; the states are never patched.</summary>
internal static class FoldEvidence
{
    /// <summary>The evenings of one child and one item, packed; empty where nothing speaks any more.</summary>
    /// <exception cref="ArgumentException">The marks contradict each other in a way that only damage makes.</exception>
    public static string Evenings(IReadOnlyCollection<DatedMark> marks) => SeenPack.Pack(FoldSightings.Fold([.. marks.Select(AsSighting)]));

    /// <summary>The falls of one child, packed; empty where nothing speaks any more.</summary>
    /// <exception cref="ArgumentException">As above.</exception>
    public static string Falls(IReadOnlyCollection<DatedMark> marks) => FallPack.Pack(FoldFalls.Fold([.. marks.Select(AsFall)]));

    private static SightingMark AsSighting(DatedMark dated)
    {
        var mark = dated.Mark;
        var code = EvidenceCode.Says(mark)?.Code ?? 0;
        return new SightingMark(
            new MarkId(mark.Id),
            new DeviceId(mark.DeviceId),
            mark.Sequence,
            dated.On,
            mark.Kind,
            EvidenceCode.WordOf(code),
            (code & MarkCode.Settled) != 0,
            mark.Replaces is { } replaced ? new MarkId(replaced) : null,
            mark.ById is { } by ? new PersonId(by) : null,
            EvidenceCode.SignsOff(mark));
    }

    private static FallTap AsFall(DatedMark dated)
    {
        var mark = dated.Mark;
        FallShown? shown = null;
        if (EvidenceCode.Says(mark) is { Code: not 0 } says)
        {
            var (way, stage, clean) = EvidenceCode.FallOf(says.Code);
            shown = new FallShown(way.Direction, way.Side, stage, clean);
        }

        return new FallTap(
            new MarkId(mark.Id),
            new DeviceId(mark.DeviceId),
            mark.Sequence,
            dated.On,
            mark.Kind,
            shown,
            mark.Replaces is { } replaced ? new MarkId(replaced) : null,
            null,
            EvidenceCode.SignsOff(mark));
    }
}
