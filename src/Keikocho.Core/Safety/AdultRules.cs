using System.Globalization;
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

/// <summary>The age bands, written "0-2 1:3, 3 1:4, 4-8 1:6, 9-12 1:8, 13-18 1:10".</summary>
/// <param name="Key">Stored name.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Source">Source line.</param>
public sealed record BandsSetting(string Key, string Meaning, string Source) : Setting(Key, Meaning, "children to one adult", Source)
{
    /// <inheritdoc/>
    public override string Proposed => Text(AdultRules.Published);

    /// <inheritdoc/>
    public override string Range => "bands from age 0 to 18 without a gap, each with 1 to 30 children to one adult";

    /// <inheritdoc/>
    public override string? Refusal(string text)
    {
        var bands = Read(text);
        return bands is null ? $"{Meaning}: write it like {Proposed}." : Fault(bands);
    }

    /// <summary>The bands as text.</summary>
    public static string Text(IReadOnlyList<AgeBand> bands)
    {
        ArgumentNullException.ThrowIfNull(bands);
        return string.Join(", ", bands.Select(b => string.Create(
            CultureInfo.InvariantCulture, $"{(b.From == b.To ? $"{b.From}" : $"{b.From}-{b.To}")} 1:{b.ChildrenPerAdult}")));
    }

    /// <summary>The bands that a text says; null when it is not written as bands.</summary>
    public static IReadOnlyList<AgeBand>? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var bands = new List<AgeBand>();
        foreach (var part in text.Split(',', StringSplitOptions.TrimEntries))
        {
            var words = part.Split(' ');
            var ages = words[0].Split('-');
            if (words.Length != 2 || ages.Length > 2 || !words[1].StartsWith("1:", StringComparison.Ordinal)
                || !Whole(ages[0], out var from) || !Whole(ages[^1], out var to) || !Whole(words[1][2..], out var ratio))
                return null;
            bands.Add(new AgeBand(from, to, ratio));
        }

        return bands;
    }

    internal static string? Fault(IReadOnlyList<AgeBand> bands)
    {
        var next = 0;
        foreach (var band in bands)
        {
            if (band.From != next || band.To < band.From)
                return $"The age bands run from 0 up without a gap: {Text(bands)}.";
            if (band.ChildrenPerAdult is < 1 or > 30)
                return $"One adult to 1 to 30 children: {Text(bands)}.";
            next = band.To + 1;
        }

        return next > 18 ? null : $"The age bands run to 18: {Text(bands)}.";
    }

    private static bool Whole(string text, out int number) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);
}
