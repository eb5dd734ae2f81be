using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

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
