namespace Keikocho.Core.Attendance;

/// <summary>Judges chances of a beta-binomial by what defines them, not by how they were found.</summary>
public static class BetaBinomialCheck
{
    /// <summary>What is wrong with <paramref name="chances"/>, a sentence each; empty when they are right to <paramref name="tolerance"/>.</summary>
    public static IReadOnlyList<string> Objections(ChildRate rate, IReadOnlyList<double> chances, double tolerance = 1e-12)
    {
        ArgumentNullException.ThrowIfNull(rate);
        ArgumentNullException.ThrowIfNull(chances);
        var objections = new List<string>();
        var lessons = chances.Count - 1;
        if (Math.Abs(chances.Sum() - 1) > tolerance)
            objections.Add("The chances do not sum to 1.");

        // The ratio of neighbours and the sum together allow only one distribution.
        for (var k = 0; k < lessons; k++)
        {
            var mine = chances[k + 1] * (k + 1) * (rate.B + lessons - k - 1);
            var its = chances[k] * (lessons - k) * (rate.A + k);
            if (Math.Abs(mine - its) > tolerance * (mine + its))
                objections.Add($"The chances of {k} and {k + 1} are not in their ratio.");
        }

        var mean = chances.Select((c, k) => c * k).Sum();
        if (Math.Abs(mean - (lessons * rate.A / (rate.A + rate.B))) > tolerance * Math.Max(1, lessons))
            objections.Add("The mean is not the lessons times the rate.");
        return objections;
    }
}
