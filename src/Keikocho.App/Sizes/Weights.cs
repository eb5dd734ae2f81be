using System.Globalization;
using Keikocho.Store.Club;

namespace Keikocho.App.Sizes;

/// <summary>Sizes as the club types and reads them; the database holds grams.</summary>
public static class Weights
{
    private const decimal GramsInAPound = 453.59237m;
    private const int LeastGrams = 5_000, MostGrams = 250_000;

    /// <summary>"kg" or "lb".</summary>
    public static string Sign(UnitChoice units) => units == UnitChoice.Imperial ? "lb" : "kg";

    /// <summary>"kilograms" or "pounds".</summary>
    public static string Word(UnitChoice units) => units == UnitChoice.Imperial ? "pounds" : "kilograms";

    /// <summary>Grams as text, one decimal at most.</summary>
    public static string Text(int grams, UnitChoice units) =>
        Math.Round(grams / (units == UnitChoice.Imperial ? GramsInAPound : 1000m), 1, MidpointRounding.AwayFromZero).ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>What was typed, as grams; null where it is no size of a person.</summary>
    public static int? Read(string? text, UnitChoice units)
    {
        if (!decimal.TryParse(text?.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) || number >= 1000) return null;
        var grams = (int)Math.Round(number * (units == UnitChoice.Imperial ? GramsInAPound : 1000m), MidpointRounding.AwayFromZero);
        return grams is >= LeastGrams and <= MostGrams ? grams : null;
    }
}
