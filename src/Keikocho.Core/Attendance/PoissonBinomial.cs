namespace Keikocho.Core.Attendance;

/// <summary>The smallest range of numbers that is likely enough.</summary>
/// <param name="From">Smallest number.</param>
/// <param name="To">Largest number, included.</param>
/// <param name="Chance">The chance of a number in the range.</param>
public sealed record LikelyRange(int From, int To, double Chance);

/// <summary>How many of several people come, each with a chance of its own. Exact.</summary>
public sealed class PoissonBinomial
{
    /// <summary>More people than any evening has.</summary>
    public const int MostPeople = 5000;

    private readonly double[] chances;

    private PoissonBinomial(double[] chances) => this.chances = chances;

    /// <summary>The chance of each number, from 0 to the number of people.</summary>
    public IReadOnlyList<double> Chances => chances;

    /// <summary>The mean number.</summary>
    public double Mean { get; private init; }

    /// <summary>The variance of the number.</summary>
    public double Variance { get; private init; }

    /// <summary>
    /// Adds one person after the other: n(n+1)/2 steps, only sums of positive terms, so nothing cancels. People are taken in order of their
    /// chance, so that the same people in another order give the same last digit.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">More than 5,000 people or a chance outside 0 to 1.</exception>
    public static PoissonBinomial Of(IReadOnlyList<double> comes)
    {
        ArgumentNullException.ThrowIfNull(comes);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(comes.Count, MostPeople, nameof(comes));
        var sorted = comes.Order().ToArray();
        var chances = new double[sorted.Length + 1];
        chances[0] = 1;
        double mean = 0, variance = 0;
        for (var i = 0; i < sorted.Length; i++)
        {
            var p = sorted[i];
            if (!(p >= 0 && p <= 1))
                throw new ArgumentOutOfRangeException(nameof(comes), p, "A chance is from 0 to 1.");
            for (var k = i + 1; k > 0; k--)
                chances[k] = (chances[k] * (1 - p)) + (chances[k - 1] * p);
            chances[0] *= 1 - p;
            mean += p;
            variance += p * (1 - p);
        }

        return new PoissonBinomial(chances) { Mean = mean, Variance = variance };
    }

    /// <summary>The chance of at most <paramref name="number"/>.</summary>
    public double AtMost(int number)
    {
        if (number < 0)
            return 0;
        if (number >= chances.Length - 1)
            return 1;
        double sum = 0;
        for (var k = 0; k <= number; k++)
            sum += chances[k];
        return Math.Min(1, sum);
    }

    /// <summary>
    /// The shortest range of numbers whose chance is at least <paramref name="percent"/> percent; of equally short ones the likelier, then the
    /// lower.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Not from 1 to 99.</exception>
    public LikelyRange Likely(int percent)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(percent, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(percent, 99);
        for (var width = 1; width < chances.Length; width++)
        {
            LikelyRange? best = null;
            for (var from = 0; from + width <= chances.Length; from++)
            {
                double chance = 0;
                for (var k = from; k < from + width; k++)
                    chance += chances[k];
                if (chance * 100 >= percent && (best is null || chance > best.Chance))
                    best = new LikelyRange(from, from + width - 1, Math.Min(1, chance));
            }

            if (best is not null)
                return best;
        }

        return new LikelyRange(0, chances.Length - 1, 1);
    }
}
