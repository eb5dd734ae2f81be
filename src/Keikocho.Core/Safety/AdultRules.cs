using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>How many children of an age one adult may watch.</summary>
/// <param name="From">Youngest age in years.</param>
/// <param name="To">Oldest age in years, included.</param>
/// <param name="ChildrenPerAdult">Children to one adult.</param>
public sealed record AgeBand(int From, int To, int ChildrenPerAdult);

/// <summary>How fractions of adults are rounded.</summary>
public enum RatioMethod
{
    /// <summary>The fractions of all bands are added, then rounded up.</summary>
    SumOfFractions = 0,
    /// <summary>Each band is rounded up, then added: stricter.</summary>
    RoundEachBand = 1,
}

/// <summary>The ratios and how they are used. The sport's own rule and the law of the place go first.</summary>
/// <param name="Method">Proposed: sum of fractions (mixed ages are not defined by the source; from memory both are used).</param>
/// <param name="Bands">Bands from age 0 up without a gap; null for the proposed ones. Age 2, which the source has in two bands, is in the stricter.</param>
/// <param name="UnknownAgeCountsAs">A child of unknown age counts as this old. Proposed 4: the youngest band that a junior programme takes.</param>
/// <param name="LeastAdults">So many adults in the hall however few the children. Proposed 2 (NSPCC), 1 to 10.</param>
public sealed record AdultRules(
    RatioMethod Method = RatioMethod.SumOfFractions, IReadOnlyList<AgeBand>? Bands = null, int UnknownAgeCountsAs = 4, int LeastAdults = 2)
{
    private const string Nspcc = "NSPCC Learning and CPSU, minimum adult to child ratios";

    private static readonly AgeBand[] ProposedBands = [new(0, 2, 3), new(3, 3, 4), new(4, 8, 6), new(9, 12, 8), new(13, 18, 10)];

    private static readonly ChoiceSetting MethodSetting = new(
        "adults.method", "Fractions of adults", "sumOfFractions", ["sumOfFractions", "roundEachBand"], "ours; the ratios' source does not say");

    private static readonly BandsSetting BandSetting = new("adults.bands", "Children to one adult by age", Nspcc);

    private static readonly WholeNumberSetting UnknownSetting = new(
        "adults.unknownAgeCountsAs", "A child of unknown age counts as", 4, "years", 0, 18, "ours: the youngest band of a junior programme");

    private static readonly WholeNumberSetting LeastSetting = new(
        "adults.leastAdults", "Adults in the hall at least", 2, "adults", 1, 10, Nspcc);

    /// <summary>The bands as published.</summary>
    public static IReadOnlyList<AgeBand> Published => ProposedBands;

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [MethodSetting, BandSetting, UnknownSetting, LeastSetting];

    /// <summary>The bands in use.</summary>
    public IReadOnlyList<AgeBand> BandsInUse() => Bands ?? ProposedBands;

    /// <summary>Where the bands in use come from.</summary>
    public string BandsFrom() => BandsInUse().SequenceEqual(ProposedBands) ? Nspcc : "the club's own";

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() =>
    [
        MethodSetting.Use(MethodSetting.Choices[(int)Method]),
        new(BandSetting.Key, BandsSetting.Text(BandsInUse()), BandSetting.Unit, BandsFrom()),
        UnknownSetting.Use(UnknownAgeCountsAs),
        LeastSetting.Use(LeastAdults),
    ];

    internal void Guard()
    {
        UnknownSetting.Guard(UnknownAgeCountsAs, nameof(UnknownAgeCountsAs));
        LeastSetting.Guard(LeastAdults, nameof(LeastAdults));
        if (BandsSetting.Fault(BandsInUse()) is { } fault)
            throw new ArgumentException(fault, nameof(Bands));
    }

    /// <summary>The band of an age.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No band has that age.</exception>
    internal AgeBand BandOf(int? age)
    {
        var years = age ?? UnknownAgeCountsAs;
        return BandsInUse().FirstOrDefault(b => years >= b.From && years <= b.To)
            ?? throw new ArgumentOutOfRangeException(nameof(age), years, "No age band has that age.");
    }
}
