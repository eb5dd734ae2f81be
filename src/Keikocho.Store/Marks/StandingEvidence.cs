using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;

namespace Keikocho.Store.Marks;

/// <summary>A mark of something seen that still speaks: neither taken back nor corrected.</summary>
/// <param name="Mark">The mark; a correction where one took another's place.</param>
/// <param name="Kind">Sighting, words or fall.</param>
/// <param name="Code">Its code, as <see cref="EvidenceCode"/> reads it.</param>
/// <param name="Confirmed">Whoever made it could sign it off, or somebody who can stands behind it.</param>
public sealed record StandingMark(MarkRow Mark, MarkKind Kind, int Code, bool Confirmed);

/// <summary>Finds which marks of what was seen still speak, for the pages and for what is undone; the states are folded by the core.</summary>
public static class StandingEvidence
{
    /// <summary>Those of <paramref name="marks"/> that still speak, by device and the device's own count.</summary>
    public static IReadOnlyList<StandingMark> Of(IReadOnlyCollection<MarkRow> marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        var chain = Chain(marks);
        return [.. marks.OrderBy(m => m.DeviceId).ThenBy(m => m.Sequence).ThenBy(m => m.Id)
            .Where(m => EvidenceCode.IsEvidence(m) && EvidenceCode.Says(m) is { Code: not 0 } && chain.Stands(new MarkId(m.Id)))
            .Select(m => (Mark: m, Says: EvidenceCode.Says(m)!.Value))
            .Select(m => new StandingMark(m.Mark, m.Says.Kind, m.Says.Code, chain.IsConfirmed(new MarkId(m.Mark.Id))))];
    }

    /// <summary>What a device entered last at a lesson and nobody has taken back or corrected: the newest of its marks, and those of the same moment.</summary>
    /// <param name="marks">All marks of something seen at the lesson.</param>
    /// <param name="device">The device.</param>
    public static IReadOnlyList<MarkRow> LastGroup(IReadOnlyCollection<MarkRow> marks, Guid device)
    {
        ArgumentNullException.ThrowIfNull(marks);
        var chain = Chain(marks);
        var own = marks.Where(m => m.DeviceId == device && m.Kind != MarkKind.Cleared && chain.Stands(new MarkId(m.Id))).OrderBy(m => m.Sequence).ToList();
        return own.Count == 0 ? [] : [.. own.Where(m => m.MadeAt == own[^1].MadeAt)];
    }

    private static MarkChain Chain(IReadOnlyCollection<MarkRow> marks) => new(marks.Select(m => new MarkLink(
        new MarkId(m.Id), new DeviceId(m.DeviceId), m.Sequence, m.Kind, m.Replaces is { } replaced ? new MarkId(replaced) : null, EvidenceCode.SignsOff(m), EvidenceCode.Says(m) is (MarkKind.Fall, var code) && (code & MarkCode.HeadTouched) != 0)));
}
