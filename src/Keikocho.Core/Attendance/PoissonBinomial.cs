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

/// <summary>Judges a Poisson-binomial by its generating function at the roots of unity, which no other distribution shares.</summary>
public static class PoissonBinomialCheck
{
    /// <summary>What is wrong with <paramref name="chances"/>, a sentence each; empty when they are right to <paramref name="tolerance"/>.</summary>
    public static IReadOnlyList<string> Objections(IReadOnlyList<double> comes, IReadOnlyList<double> chances, double tolerance = 1e-12)
    {
        ArgumentNullException.ThrowIfNull(comes);
        ArgumentNullException.ThrowIfNull(chances);
        if (chances.Count != comes.Count + 1)
            return ["There is one chance for each number from none to all."];
        var objections = new List<string>();
        if (chances.Any(c => !(c >= 0 && c <= 1 + tolerance)))
            objections.Add("A chance is not from 0 to 1.");
        for (var j = 0; j < chances.Count; j++)
        {
            var product = System.Numerics.Complex.One;
            foreach (var p in comes)
                product *= 1 - p + (p * Root(j, chances.Count));
            var sum = System.Numerics.Complex.Zero;
            for (var k = 0; k < chances.Count; k++)
                sum += chances[k] * Root((int)((long)j * k % chances.Count), chances.Count);
            if (!(System.Numerics.Complex.Abs(sum - product) <= tolerance * chances.Count))
                objections.Add($"The generating function differs at root {j}.");
        }

        return objections;
    }

    /// <summary>What is wrong with a likely range; empty when it is the shortest, then the likeliest, then the lowest.</summary>
    public static IReadOnlyList<string> Objections(IReadOnlyList<double> chances, int percent, LikelyRange range)
    {
        ArgumentNullException.ThrowIfNull(chances);
        ArgumentNullException.ThrowIfNull(range);
        double Of(int from, int to) => chances.Skip(from).Take(to - from + 1).Sum();
        var objections = new List<string>();
        if (Math.Abs(Of(range.From, range.To) - range.Chance) > 1e-12)
            objections.Add("The range does not have that chance.");
        if (range.Chance * 100 < percent - 1e-9)
            objections.Add("The range is not likely enough.");
        for (var from = 0; from < chances.Count; from++)
        {
            for (var to = from; to < chances.Count && to - from <= range.To - range.From; to++)
            {
                var chance = Of(from, to);
                if (chance * 100 >= percent + 1e-9 && to - from < range.To - range.From)
                    objections.Add($"From {from} to {to} is shorter and likely enough.");
                if (to - from == range.To - range.From && chance > range.Chance + 1e-12)
                    objections.Add($"From {from} to {to} is as short and likelier.");
            }
        }

        return objections;
    }

    private static System.Numerics.Complex Root(int j, int n) => System.Numerics.Complex.FromPolarCoordinates(1, 2 * Math.PI * j / n);
}
