namespace Keikocho.Core.Safety;

/// <summary>The falls of one evening, one way.</summary>
internal sealed class FallEvening
{
    private readonly FallMark[] _falls;

    public FallEvening(DateOnly on, FallMark[] falls)
    {
        On = on;
        _falls = falls;
        LowestTouch = falls.Where(f => !f.Clean).Min(f => (int?)f.Stage);
    }

    public DateOnly On { get; }

    /// <summary>Lowest stage at which the head touched, confirmed or not; null when it did not.</summary>
    public int? LowestTouch { get; }

    /// <summary>A confirmed clean fall at the stage or higher, and no head touch this way all evening.</summary>
    public bool IsCleanAt(int stage) => LowestTouch is null && _falls.Any(f => f.Clean && f.Confirmed && f.Stage >= stage);

    /// <summary>Exactly one stage lower first, then the stage or higher, on one device: across devices the order is not known.</summary>
    public bool ShowsAgain(int stage)
    {
        if (!IsCleanAt(stage))
            return false;
        if (stage == FallWords.FirstStage)
            return true;
        var sure = _falls.Where(f => f.Clean && f.Confirmed).ToArray();
        return sure.Any(low => low.Stage == stage - 1
            && sure.Any(high => high.Stage >= stage && high.Device == low.Device && high.Sequence > low.Sequence));
    }
}
