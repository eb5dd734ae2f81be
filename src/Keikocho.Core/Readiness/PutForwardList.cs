namespace Keikocho.Core.Readiness;

/// <summary>Where a child stands toward the put-forward list of one test.</summary>
public enum ListStanding
{
    /// <summary>Not put forward, and not on it.</summary>
    NotOnIt = 0,
    /// <summary>On it, or put on it because it is still open.</summary>
    OnIt = 1,
    /// <summary>Ready after it was closed: a late addition that the instructor decides; it is not added by itself.</summary>
    LateAdditionToDecide = 2,
    /// <summary>On the closed list and no longer put forward: the instructor decides; nobody is taken off by itself.</summary>
    NoLongerReadyToDecide = 3,
}

/// <summary>The put-forward list: open it follows the verdicts, closed it stays as it is, and changes are for the instructor to decide.</summary>
public static class PutForwardList
{
    /// <summary>Where a child stands.</summary>
    /// <param name="verdict">The verdict as it holds now.</param>
    /// <param name="isClosed">The list was closed.</param>
    /// <param name="wasOnIt">The child was on it when it was closed, or was added since by an instructor.</param>
    public static ListStanding Of(ReadyWord verdict, bool isClosed, bool wasOnIt) => (isClosed, wasOnIt, verdict == ReadyWord.PutForward) switch
    {
        (false, _, true) or (true, true, true) => ListStanding.OnIt,
        (true, false, true) => ListStanding.LateAdditionToDecide,
        (true, true, false) => ListStanding.NoLongerReadyToDecide,
        _ => ListStanding.NotOnIt,
    };

    /// <summary>The day on which the last thing of the sheet became good; null where nothing that counts has a day.</summary>
    public static DateOnly? BecameGoodOn(IReadOnlyList<LineStanding> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        DateOnly? last = null;
        foreach (var line in lines)
        {
            // Of a choice the earliest that were enough.
            var days = line.Items.Where(i => i.IsMet).Select(BecameGoodOn).Order().Take(line.Line.Count).ToArray();
            if (days.Length > 0 && days[^1] is { } day && !(day <= last))
                last = day;
        }

        return last;
    }

    /// <summary>The day on which one item became good; null where it is kept, credited, or has no day.</summary>
    internal static DateOnly? BecameGoodOn(ItemStanding item) => item.Because switch
    {
        ItemCounted { IsSettled: false } counted when counted.GoodOn.Count >= counted.Asked && counted.Asked > 0 => Later(counted.GoodOn[counted.Asked - 1], counted.GoodOn, counted.FreshFrom),
        ItemCounted { GoodOn.Count: > 0 } settled => settled.GoodOn[0],
        FallCounted { CleanOn.Count: > 0 } fall => fall.CleanOn.Count >= fall.Asked ? Later(fall.CleanOn[fall.Asked - 1], fall.CleanOn, fall.FreshFrom) : fall.CleanOn[^1],
        _ => null,
    };

    // What must be fresh became good on its first fresh evening.
    private static DateOnly Later(DateOnly complete, IReadOnlyList<DateOnly> days, DateOnly? freshFrom) =>
        freshFrom is { } from && complete < from ? days.FirstOrDefault(d => d >= from, complete) : complete;
}
