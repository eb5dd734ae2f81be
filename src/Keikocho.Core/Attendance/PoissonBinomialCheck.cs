namespace Keikocho.Core.Attendance;

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
