using System.Globalization;
using Keikocho.App.Shared;
using Keikocho.Store.Club;

namespace Keikocho.App.Club.About;

/// <summary>Lengths as the club types and reads them; the database holds whole centimetres.</summary>
public static class Lengths
{
    private const decimal CmInAFoot = 30.48m;

    /// <summary>"metres" or "feet".</summary>
    public static string Word(UnitChoice units) => units == UnitChoice.Imperial ? "feet" : "metres";

    /// <summary>"m" or "ft".</summary>
    public static string Sign(UnitChoice units) => units == UnitChoice.Imperial ? "ft" : "m";

    /// <summary>Centimetres as text, at most two decimals: "14", "8.5".</summary>
    public static string Text(int cm, UnitChoice units) =>
        (units == UnitChoice.Imperial ? Math.Round(cm / CmInAFoot, 2, MidpointRounding.AwayFromZero) : cm / 100m).ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>What was typed, as centimetres; null where it is no length.</summary>
    public static int? Read(string text, UnitChoice units) => units == UnitChoice.Imperial ? Typed.FeetAsCm(text) : Typed.MetresAsCm(text);
}
