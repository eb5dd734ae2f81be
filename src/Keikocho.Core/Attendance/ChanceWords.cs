using System.Globalization;

namespace Keikocho.Core.Attendance;

/// <summary>A chance as an instructor says it.</summary>
public static class ChanceWords
{
    /// <summary>
    /// "about 8 in 10": to the nearest tenth, half up. Below 1 in 20 "hardly any chance", from 19 in 20 on "almost certain"; exactly 0 "no chance",
    /// exactly 1 "certain". The chance is that of attending enough lessons, never of passing; the instructor's page only.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Not from 0 to 1.</exception>
    public static string Of(double chance)
    {
        if (!(chance >= 0 && chance <= 1))
            throw new ArgumentOutOfRangeException(nameof(chance), chance, "A chance is from 0 to 1.");
        return chance switch
        {
            0 => "no chance",
            1 => "certain",
            < 0.05 => "hardly any chance",
            >= 0.95 => "almost certain",
            _ => $"about {((int)Math.Floor((chance * 10) + 0.5)).ToString(CultureInfo.InvariantCulture)} in 10",
        };
    }
}
