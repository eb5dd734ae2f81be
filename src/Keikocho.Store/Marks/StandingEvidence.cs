using Keikocho.Core.Evening;

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
        var takers = marks.Where(m => m.Replaces is not null).ToLookup(m => m.Replaces!.Value);

        // Marks that replace each other in a circle, as only damage makes them, end after as many steps as there are marks.
        bool Stands(MarkRow mark, int steps) =>
            steps > marks.Count || !takers[mark.Id].Any(t => t.Kind is MarkKind.Cleared or MarkKind.Corrected && Stands(t, steps + 1));

        var standing = new List<StandingMark>();
        foreach (var mark in marks.OrderBy(m => m.DeviceId).ThenBy(m => m.Sequence).ThenBy(m => m.Id))
        {
            if (!EvidenceCode.IsEvidence(mark) || EvidenceCode.Says(mark) is not { } says || !Stands(mark, 0)) continue;
            var confirmed = EvidenceCode.SignsOff(mark)
                || takers[mark.Id].Any(t => t.Kind == MarkKind.Confirmed && EvidenceCode.SignsOff(t) && Stands(t, 1));
            standing.Add(new StandingMark(mark, says.Kind, says.Code, confirmed));
        }

        return standing;
    }
}
