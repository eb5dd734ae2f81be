using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>Catches a weight that was typed in the wrong unit or with a digit too many or too few. It judges the typing, never a child.</summary>
public static class WeightSlips
{
    internal const decimal KilogramsInAPound = 0.45359237m;
    private const double DaysInAMonth = 30.4375;

    /// <summary>Judges one weight.</summary>
    /// <exception cref="ArgumentException">A weight that no scale shows, a day before the birth, or a figure out of range.</exception>
    public static WeightAnswer Judge(WeightSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var rule = snapshot.Rule ?? new WeightRule();
        rule.Guard();
        if (snapshot.Kilograms is <= 0 or > 2_000)
            throw new ArgumentException("A weight is more than 0 and at most 2000 kilograms; mend it.", nameof(snapshot));
        if (snapshot.On < snapshot.Born)
            throw new ArgumentException($"The weighing on {snapshot.On.Full()} is before the birth on {snapshot.Born.Full()}; mend a date.", nameof(snapshot));
        if (snapshot.Table is { } table && !Enum.IsDefined(table))
            throw new ArgumentException("The table is boys or girls.", nameof(snapshot));
        var months = (snapshot.On.DayNumber - snapshot.Born.DayNumber) / DaysInAMonth;
        if (NearestZ((double)snapshot.Kilograms, months, snapshot.Table) is not { } z)
            return new WeightAnswer(months, null, false, [], [new AgeOutsideTheTable(months)], rule.Used());
        var ask = Math.Abs(z) > rule.AskBeyond;
        WeightReading[] readings = ask
            ? [.. Meanings(snapshot.Kilograms)
                .Where(m => Math.Abs(NearestZ((double)m.Kilograms, months, snapshot.Table)!.Value) <= rule.NameWithin)
                .Select(m => m with { Kilograms = Math.Round(m.Kilograms, 1, MidpointRounding.AwayFromZero) })]
            : [];
        return new WeightAnswer(months, z, ask, readings, [new WeightJudged(snapshot.Kilograms, months, z, rule.AskBeyond, readings)], rule.Used());
    }

    /// <summary>The standard score of a weight, null outside the ages of the table: ((X/M)^L - 1)/(LS), and ln(X/M)/S where L is 0; L, M and S by straight line between the rows.</summary>
    public static double? Z(double kilograms, double months, GrowthTable table)
    {
        var rows = table == GrowthTable.Boys ? CdcWeightForAge.Boys : CdcWeightForAge.Girls;
        if (months < rows[0].Months || months > rows[^1].Months)
            return null;
        // The rows are one month apart.
        var at = Math.Min((int)(months - rows[0].Months), rows.Length - 2);
        var (low, high) = (rows[at], rows[at + 1]);
        var share = months - low.Months;
        var (l, m, s) = (low.L + (share * (high.L - low.L)), low.M + (share * (high.M - low.M)), low.S + (share * (high.S - low.S)));
        return Math.Abs(l) < 1e-9 ? Math.Log(kilograms / m) / s : (Math.Pow(kilograms / m, l) - 1) / (l * s);
    }

    private static double? NearestZ(double kilograms, double months, GrowthTable? table)
    {
        if (table is { } one)
            return Z(kilograms, months, one);
        var boys = Z(kilograms, months, GrowthTable.Boys);
        var girls = Z(kilograms, months, GrowthTable.Girls);
        return boys is null || girls is null ? null : Math.Abs(boys.Value) <= Math.Abs(girls.Value) ? boys : girls;
    }

    private static WeightReading[] Meanings(decimal kilograms) =>
    [
        new(WeightSlip.PoundsAsKilograms, kilograms * KilogramsInAPound),
        new(WeightSlip.KilogramsAsPounds, kilograms / KilogramsInAPound),
        new(WeightSlip.DigitTooMany, kilograms / 10),
        new(WeightSlip.DigitTooFew, kilograms * 10),
    ];
}

/// <summary>A weight and what it may have been meant to be.</summary>
/// <param name="Kilograms">As typed.</param>
/// <param name="Months">Age in months.</param>
/// <param name="Z">Standard score.</param>
/// <param name="AskBeyond">The bound.</param>
/// <param name="Readings">Other readings.</param>
public sealed record WeightJudged(decimal Kilograms, double Months, double Z, int AskBeyond, IReadOnlyList<WeightReading> Readings) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var figures = string.Create(CultureInfo.InvariantCulture, $"{Kilograms:0.###} kg at {Months:0.0} months has the score {Z:0.0}; the bound is {AskBeyond} either way ({CdcWeightForAge.Source})");
            return Math.Abs(Z) <= AskBeyond ? $"{figures}: nothing is asked."
                : Readings.Count == 0 ? $"{figures}: please look again."
                : $"{figures}: please look again, perhaps {string.Join(" or ", Readings.Select(Words))}.";
        }
    }

    private static string Words(WeightReading reading) => string.Create(CultureInfo.InvariantCulture, $"{reading.Kilograms:0.0} kg ({reading.Slip switch
    {
        WeightSlip.PoundsAsKilograms => "pounds typed as kilograms",
        WeightSlip.KilogramsAsPounds => "kilograms typed as pounds",
        WeightSlip.DigitTooMany => "a digit too many",
        _ => "a digit too few",
    }})");
}

/// <summary>The table does not go so far.</summary>
/// <param name="Months">Age in months.</param>
public sealed record AgeOutsideTheTable(double Months) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => string.Create(
        CultureInfo.InvariantCulture, $"{Months:0.0} months is outside the table of 60.5 to 168.5 months ({CdcWeightForAge.Source}): nothing is asked.");
}
