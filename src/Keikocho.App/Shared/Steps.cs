using System.Globalization;
using System.Text;

namespace Keikocho.App.Shared;

/// <summary>
/// Numbers of a picture that only the page knows (a minute, a part of a span) reach the style sheet as data attributes with a rule for
/// each step in <c>css/steps.css</c>, because the security policy allows no style attribute.
/// </summary>
public static class Steps
{
    private const int MostMinutes = 240;

    /// <summary>A part of a span for <c>data-from</c>, <c>data-to</c> and <c>data-now</c>, in steps of half a percent.</summary>
    /// <param name="percent">0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the span.</exception>
    public static string Percent(double percent)
    {
        if (percent is not (>= 0 and <= 100))
            throw new ArgumentOutOfRangeException(nameof(percent), percent, "A part of a span lies between 0 and 100 percent.");
        return (Math.Round(percent * 2, MidpointRounding.AwayFromZero) / 2).ToString("0.#", CultureInfo.InvariantCulture);
    }

    /// <summary>Minutes for <c>data-at</c>, <c>data-for</c> and <c>data-minutes</c>.</summary>
    /// <param name="minutes">0 to 240.</param>
    /// <exception cref="ArgumentOutOfRangeException">Longer than an evening.</exception>
    public static string Minutes(int minutes)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(minutes);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(minutes, MostMinutes);
        return minutes.ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>A count for <c>data-terms</c>.</summary>
    /// <param name="terms">1 to 36.</param>
    /// <exception cref="ArgumentOutOfRangeException">More terms than a path can show.</exception>
    public static string Terms(int terms)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(terms, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(terms, 36);
        return terms.ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>The whole text of <c>css/steps.css</c>; a test holds the file to it.</summary>
    public static string StyleSheet()
    {
        var text = new StringBuilder("/* Made by Steps.StyleSheet(): a rule for each step of a picture's numbers. Do not edit. */\n@layer components {\n");
        foreach (var name in new[] { "from", "to", "now" })
        {
            for (var half = 0; half <= 200; half++)
                Rule(name, Percent(half / 2.0));
        }
        foreach (var name in new[] { "at", "for", "minutes" })
        {
            for (var minute = 0; minute <= MostMinutes; minute++)
                Rule(name, Minutes(minute));
        }
        for (var terms = 1; terms <= 36; terms++)
            Rule("terms", Terms(terms));
        return text.Append("}\n").ToString();

        void Rule(string name, string value) => text.Append(CultureInfo.InvariantCulture, $"[data-{name}=\"{value}\"]{{--{name}:{value}}}\n");
    }
}
