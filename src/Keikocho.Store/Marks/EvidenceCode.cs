using Keikocho.Core.Evening;
using Keikocho.Core.Safety;

namespace Keikocho.Store.Marks;

/// <summary>Writes and reads <see cref="MarkRow.Code"/> of what was seen.</summary>
public static class EvidenceCode
{
    private const int SideShift = 4, StageShift = 8;

    /// <summary>The code of a sighting, or of a word or question that was asked.</summary>
    public static int OfWord(SeenWord word, bool settled = false) => (int)word | (settled ? MarkCode.Settled : 0);

    /// <summary>The code of a fall.</summary>
    public static int OfFall(FallWay way, int stage, bool clean) =>
        (int)way.Direction | (int)way.Side << SideShift | stage << StageShift | (clean ? 0 : MarkCode.HeadTouched);

    /// <summary>The code of a correction: what kind of mark holds instead, and its code.</summary>
    public static int OfCorrection(MarkKind kind, int code) => (int)kind | (code & ~MarkCode.ByRight) << MarkCode.CorrectedToShift;

    /// <summary>What a mark itself says: its own kind and code, or those of the mark that holds instead. Null for a mark that only takes back or confirms.</summary>
    public static (MarkKind Kind, int Code)? Says(MarkRow mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        var code = mark.Code & ~MarkCode.ByRight;
        return mark.Kind switch
        {
            MarkKind.Sighting or MarkKind.Words or MarkKind.Fall => (mark.Kind, code),
            MarkKind.Corrected => ((MarkKind)(code & MarkCode.CorrectedToMask), code >> MarkCode.CorrectedToShift),
            _ => null,
        };
    }

    /// <summary>The word of a sighting's code; null for a number that is none.</summary>
    public static SeenWord? WordOf(int code) => (SeenWord)(code & MarkCode.SeenMask) is var word && Enum.IsDefined(word) ? word : null;

    /// <summary>The way, stage and outcome of a fall's code.</summary>
    public static (FallWay Way, int Stage, bool Clean) FallOf(int code) => (
        new FallWay((FallDirection)(code & MarkCode.FallPartMask), (FallSide)(code >> SideShift & MarkCode.FallPartMask)),
        code >> StageShift & MarkCode.FallPartMask,
        (code & MarkCode.HeadTouched) == 0);

    /// <summary>Whether a mark speaks of what was seen: it has an item.</summary>
    public static bool IsEvidence(MarkRow mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        return mark.ItemId is not null;
    }

    /// <summary>
    /// Whether whoever made it could sign it off: by the duties of that day, or, for a sighting only, because an adult saved the file that
    /// it came with.
    /// </summary>
    public static bool SignsOff(MarkRow mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        return (mark.Code & MarkCode.ByRight) != 0 || (mark.ById is null && mark.ItemId != MarkCode.Falls);
    }
}
