using System.Globalization;

namespace Keikocho.Core.Mat;

/// <summary>Measures of a mat in words.</summary>
public static class MatWords
{
    /// <summary>"3 m", "2.5 m".</summary>
    public static string Metres(int cm) => string.Create(CultureInfo.InvariantCulture, $"{cm / 100m:0.##} m");

    /// <summary>"64 m²", "58.5 m²".</summary>
    public static string SquareMetres(decimal m2) => string.Create(CultureInfo.InvariantCulture, $"{m2:0.##} m²");
}
