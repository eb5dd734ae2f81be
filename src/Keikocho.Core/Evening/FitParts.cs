namespace Keikocho.Core.Evening;

/// <summary>
/// Fits the parts of a lesson to its length. When time is short the small game goes first, then the warm-up, then the slots and the
/// cool-down give way; falls never do. When there is more, the slots have it.
/// </summary>
public static class FitParts
{
    private const int LeastWarmUp = 5, LeastSlot = 5, LeastWords = 3, LeastEdge = 1;

    /// <summary>The parts with minutes that make the whole.</summary>
    /// <exception cref="ArgumentException">So short that falls and an edge of each part do not fit.</exception>
    public static IReadOnlyList<CardPart> To(IReadOnlyList<CardPart> parts, int minutes)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var fitted = parts.ToArray();
        var over = fitted.Sum(p => p.Minutes) - minutes;
        if (over < 0) Lengthen(fitted, -over);
        over = Cut(fitted, over, CardPartKind.Game, 0);
        over = Cut(fitted, over, CardPartKind.WarmUp, LeastWarmUp);
        over = Cut(fitted, over, CardPartKind.Slot, LeastSlot);
        over = Cut(fitted, over, CardPartKind.Words, LeastWords);
        over = Cut(fitted, over, CardPartKind.Close, LeastEdge);
        over = Cut(fitted, over, CardPartKind.Bow, LeastEdge);
        // A very short lesson has one slot, or none.
        for (var i = fitted.Length - 1; i >= 0 && over > 0; i--)
        {
            if (fitted[i].Kind is not (CardPartKind.Slot or CardPartKind.Words or CardPartKind.WarmUp)) continue;
            var most = Math.Min(over, fitted[i].Minutes);
            fitted[i] = fitted[i] with { Minutes = fitted[i].Minutes - most };
            over -= most;
        }

        if (over > 0)
            throw new ArgumentException($"A lesson of {minutes} minutes is too short for falls and the bows.", nameof(minutes));
        return [.. fitted.Where(p => p.Minutes > 0)];
    }

    // A minute at a time from the longest, the last of those first, so that equal parts stay nearly equal.
    private static int Cut(CardPart[] parts, int over, CardPartKind kind, int least)
    {
        while (over > 0)
        {
            var longest = Longest(parts, kind, least);
            if (longest < 0) break;
            parts[longest] = parts[longest] with { Minutes = parts[longest].Minutes - 1 };
            over--;
        }

        return Math.Max(over, 0);
    }

    private static int Longest(CardPart[] parts, CardPartKind kind, int least)
    {
        var longest = -1;
        for (var i = 0; i < parts.Length; i++)
        {
            if (parts[i].Kind == kind && parts[i].Minutes > least && (longest < 0 || parts[i].Minutes >= parts[longest].Minutes)) longest = i;
        }

        return longest;
    }

    private static void Lengthen(CardPart[] parts, int minutes)
    {
        int[] slots = [.. Enumerable.Range(0, parts.Length).Where(i => parts[i].Kind == CardPartKind.Slot)];
        if (slots.Length == 0) slots = [.. Enumerable.Range(0, parts.Length).Take(1)];
        for (var i = 0; i < minutes && slots.Length > 0; i++)
            parts[slots[i % slots.Length]] = parts[slots[i % slots.Length]] with { Minutes = parts[slots[i % slots.Length]].Minutes + 1 };
    }
}
