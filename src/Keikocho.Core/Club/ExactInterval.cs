namespace Keikocho.Core.Club;

/// <summary>
/// The exact interval of a share (Clopper and Pearson): its lower end is the share at which so many or more would be as rare as one half of
/// what is left open, its upper end the same for so many or fewer.
/// </summary>
public static class ExactInterval
{
    /// <summary>The interval.</summary>
    /// <param name="hits">How many.</param>
    /// <param name="of">Of how many, at least 1.</param>
    /// <param name="sure">Between 0 and 1.</param>
    public static (double From, double To) Of(int hits, int of, double sure)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(of, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(hits);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(hits, of);
        if (sure is not (> 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(sure), sure, "How sure is between 0 and 1.");
        var tail = (1 - sure) / 2;
        var from = hits == 0 ? 0 : Where(p => 1 - AtMost(hits - 1, of, p) >= tail);
        var to = hits == of ? 1 : Where(p => AtMost(hits, of, p) <= tail);
        return (from, to);
    }

    /// <summary>The chance of at most <paramref name="hits"/> of <paramref name="of"/> at <paramref name="share"/> each.</summary>
    public static double AtMost(int hits, int of, double share)
    {
        if (hits >= of || share <= 0) return 1;
        if (hits < 0 || share >= 1) return 0;
        // In logarithms: a term of many trials would be lost below the smallest number otherwise.
        var (log, sum) = (of * Math.Log(1 - share), 0.0);
        for (var i = 0; i <= hits; i++)
        {
            sum += Math.Exp(log);
            log += Math.Log(of - i) - Math.Log(i + 1) + Math.Log(share) - Math.Log(1 - share);
        }

        return Math.Min(1, sum);
    }

    /// <summary>The least share for which it holds; it holds for all above it.</summary>
    private static double Where(Func<double, bool> holds)
    {
        var (low, high) = (0.0, 1.0);
        for (var i = 0; i < 100; i++)
        {
            var middle = (low + high) / 2;
            if (holds(middle)) high = middle;
            else low = middle;
        }

        return high;
    }
}
