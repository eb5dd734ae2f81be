namespace Keikocho.Core.Safety;

/// <summary>Judges the asking from the other side: which weights lie at the bounds for that age, M(1 + LSz)^(1/L), and on which side the typed one is.</summary>
public static class WeightSlipsCheck
{
    private const double Slack = 1e-9;

    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(WeightSnapshot snapshot, WeightAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        void Expect(bool holds, string what)
        {
            if (!holds)
                objections.Add(what);
        }

        var rule = snapshot.Rule ?? new WeightRule();
        Expect(Math.Abs((answer.Months * 30.4375) - snapshot.On.DayNumber + snapshot.Born.DayNumber) < 1e-6, "The age in months is the days by 30.4375.");
        LmsRow[][] tables = snapshot.Table switch
        {
            GrowthTable.Boys => [CdcWeightForAge.Boys],
            GrowthTable.Girls => [CdcWeightForAge.Girls],
            _ => [CdcWeightForAge.Boys, CdcWeightForAge.Girls],
        };
        LmsRow[] rows = [.. tables.Select(t => Row(t, answer.Months)).OfType<LmsRow>()];
        if (rows.Length < tables.Length)
        {
            Expect(answer is { Z: null, Ask: false, Readings.Count: 0 }, "Outside the table nothing is asked.");
            return objections;
        }

        var kilograms = (double)snapshot.Kilograms;
        bool Within(double weight, double bound) => rows.Any(r => weight >= Weight(r, -bound) * (1 - Slack) && weight <= Weight(r, bound) * (1 + Slack));
        Expect(answer.Ask == !Within(kilograms, rule.AskBeyond), $"Asking is {!Within(kilograms, rule.AskBeyond)}.");
        Expect(answer.Z is { } z && rows.Any(r => 1 + (r.L * r.S * z) > 0 && Math.Abs(Weight(r, z) - kilograms) < 1e-6 * kilograms), "The score gives the weight back.");
        var meant = new (WeightSlip Slip, double Kilograms)[]
        {
            (WeightSlip.PoundsAsKilograms, kilograms * 0.45359237), (WeightSlip.KilogramsAsPounds, kilograms / 0.45359237),
            (WeightSlip.DigitTooMany, kilograms / 10), (WeightSlip.DigitTooFew, kilograms * 10),
        };
        var named = answer.Ask ? meant.Where(m => Within(m.Kilograms, rule.NameWithin)).ToArray() : [];
        Expect(answer.Readings.Select(r => r.Slip).SequenceEqual(named.Select(n => n.Slip)), "The readings that are near the median are named.");
        Expect(answer.Readings.Count == named.Length && answer.Readings.Zip(named).All(p => Math.Abs((double)p.First.Kilograms - p.Second.Kilograms) <= 0.0501), "A reading is given to a tenth.");
        return objections;
    }

    private static double Weight(LmsRow row, double z) =>
        1 + (row.L * row.S * z) <= 0 ? (row.L < 0) == (z > 0) ? double.PositiveInfinity : 0 : row.M * Math.Pow(1 + (row.L * row.S * z), 1 / row.L);

    private static LmsRow? Row(LmsRow[] table, double months)
    {
        for (var i = 1; i < table.Length; i++)
        {
            var (a, b) = (table[i - 1], table[i]);
            if (months < a.Months || months > b.Months)
                continue;
            double Mix(double x, double y) => ((x * (b.Months - months)) + (y * (months - a.Months))) / (b.Months - a.Months);
            return new LmsRow(months, Mix(a.L, b.L), Mix(a.M, b.M), Mix(a.S, b.S));
        }

        return null;
    }
}
