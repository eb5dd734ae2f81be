namespace Keikocho.Paper.Layout;

/// <summary>Layout counts in points of 1/72 inch; papers are measured in millimetres.</summary>
internal static class Millimetres
{
    private const double PointsPerMillimetre = 72.0 / 25.4;

    /// <summary>The length in points.</summary>
    public static double Mm(this double millimetres) => millimetres * PointsPerMillimetre;

    /// <summary>The length in points.</summary>
    public static double Mm(this int millimetres) => millimetres * PointsPerMillimetre;
}
