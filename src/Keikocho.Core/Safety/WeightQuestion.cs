using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>Which growth table a weight is held against.</summary>
public enum GrowthTable
{
    /// <summary>Boys.</summary>
    Boys = 1,
    /// <summary>Girls.</summary>
    Girls = 2,
}

/// <summary>When a typed weight is asked about. It is about slips of the pen only and says nothing of a child.</summary>
/// <param name="AskBeyond">Ask when the weight lies more than so many standard scores from the median. Proposed 3.</param>
/// <param name="NameWithin">Name another reading when it lies within so many. Proposed 2.</param>
public sealed record WeightRule(int AskBeyond = 3, int NameWithin = 2)
{
    private static readonly WholeNumberSetting Ask = new("weight.askBeyond", "Ask about a weight more than so far from the median", 3, "standard scores", 2, 6, Setting.Ours);
    private static readonly WholeNumberSetting Name = new("weight.nameWithin", "Name another reading that is so near to the median", 2, "standard scores", 1, 3, Setting.Ours);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Ask, Name];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() => [Ask.Use(AskBeyond), Name.Use(NameWithin)];

    internal void Guard()
    {
        Ask.Guard(AskBeyond, nameof(AskBeyond));
        Name.Guard(NameWithin, nameof(NameWithin));
    }
}

/// <summary>The question: may a weight that somebody typed be a slip?</summary>
/// <param name="Born">Birth date.</param>
/// <param name="On">The day of the weighing.</param>
/// <param name="Kilograms">The weight as it would be stored.</param>
/// <param name="Table">The table; null where it is not known: then both must ask.</param>
/// <param name="Rule">The rule; null for the proposed one.</param>
public sealed record WeightSnapshot(DateOnly Born, DateOnly On, decimal Kilograms, GrowthTable? Table = null, WeightRule? Rule = null);

/// <summary>How a number may have been meant.</summary>
public enum WeightSlip
{
    /// <summary>Pounds were typed as kilograms.</summary>
    PoundsAsKilograms = 1,
    /// <summary>Kilograms were typed as pounds.</summary>
    KilogramsAsPounds = 2,
    /// <summary>A digit too many, or the point left out.</summary>
    DigitTooMany = 3,
    /// <summary>A digit too few, or the point one place too early.</summary>
    DigitTooFew = 4,
}

/// <summary>Another reading of the number.</summary>
/// <param name="Slip">What may have happened.</param>
/// <param name="Kilograms">What would then be meant, to a tenth of a kilogram.</param>
public sealed record WeightReading(WeightSlip Slip, decimal Kilograms);

/// <summary>Whether to ask again about a weight.</summary>
/// <param name="Months">Age in months, days / 30.4375.</param>
/// <param name="Z">Standard score; of two tables the one nearer to the median; null outside the ages of the table.</param>
/// <param name="Ask">Ask whoever typed it to look again. Nothing is changed by itself.</param>
/// <param name="Readings">Other readings that would be near the median, in the order of <see cref="WeightSlip"/>; empty when nothing is asked.</param>
/// <param name="Reasons">Figures and rule.</param>
/// <param name="Settings">The settings used.</param>
public sealed record WeightAnswer(
    double Months, double? Z, bool Ask, IReadOnlyList<WeightReading> Readings, IReadOnlyList<Reason> Reasons, IReadOnlyList<SettingUsed> Settings);
