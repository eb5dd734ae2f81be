using Keikocho.Core.Evening;
using Keikocho.Store.Starter;

namespace Keikocho.Store.Marks;

/// <summary>Which codes a mark of something seen may have.</summary>
public static class EvidenceRules
{
    /// <summary>Whether kind, item and code belong together: a word that there is, a fall that there is.</summary>
    public static bool IsSound(MarkKind kind, Guid item, int code)
    {
        if (kind is MarkKind.Sighting or MarkKind.Words)
            return item != MarkCode.Falls && EvidenceCode.WordOf(code) is not null && (code & ~(MarkCode.SeenMask | MarkCode.Settled)) == 0;
        if (kind != MarkKind.Fall || item != MarkCode.Falls) return false;
        var (way, stage, clean) = EvidenceCode.FallOf(code);
        return StarterFalls.Table.Has(way, stage) && code == EvidenceCode.OfFall(way, stage, clean);
    }

    /// <summary>The way and stage of a fall's code: the code without its outcome.</summary>
    public static int PlaceOf(int code) => code & ~MarkCode.HeadTouched;
}
