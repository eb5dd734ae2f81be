namespace Keikocho.Core.Attendance;

/// <summary>How many of the lessons left a child will attend, when its rate is itself only believed.</summary>
public static class BetaBinomial
{
    /// <summary>More lessons than any club holds before one test.</summary>
    public const int MostLessons = 1000;

    /// <summary>The chance of each number of lessons attended, from 0 to <paramref name="lessons"/>.</summary>
    /// <remarks>
    /// Lesson after lesson as balls from an urn (Polya): after i lessons of which k were attended the next is attended with chance
    /// (a + k) / (a + b + i). Only sums of positive terms, so nothing cancels: relative error stays near 1e-16 times the lessons.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">More than 1,000 lessons, fewer than none, or a rate without a and b above 0.</exception>
    public static double[] Chances(ChildRate rate, int lessons)
    {
        ArgumentNullException.ThrowIfNull(rate);
        if (!(rate.A > 0 && rate.B > 0) || double.IsInfinity(rate.A + rate.B))
            throw new ArgumentOutOfRangeException(nameof(rate), rate, "Both a and b are above 0.");
        ArgumentOutOfRangeException.ThrowIfNegative(lessons);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(lessons, MostLessons);
        var chances = new double[lessons + 1];
        chances[0] = 1;
        for (var held = 0; held < lessons; held++)
        {
            for (var k = held; k >= 0; k--)
            {
                var comes = (rate.A + k) / (rate.A + rate.B + held);
                chances[k + 1] += chances[k] * comes;
                chances[k] *= (rate.B + held - k) / (rate.A + rate.B + held);
            }
        }

        return chances;
    }

    /// <summary>The chance of at least <paramref name="needed"/> of the <paramref name="left"/> lessons, exactly 1 when none is needed, exactly 0 when too few are left.</summary>
    public static double AtLeast(ChildRate rate, int needed, int left)
    {
        var chances = Chances(rate, left);
        if (needed <= 0)
            return 1;
        if (needed > left)
            return 0;

        // The smaller tail is summed, from its small end, so that neither a tiny nor a nearly certain chance loses digits.
        double above = 0, below = 0;
        for (var k = left; k >= needed; k--)
            above += chances[k];
        for (var k = 0; k < needed; k++)
            below += chances[k];
        return above < below ? above : 1 - below;
    }
}
