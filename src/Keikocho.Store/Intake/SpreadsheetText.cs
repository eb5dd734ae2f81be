using System.Globalization;

namespace Keikocho.Store.Intake;

/// <summary>Text for a spreadsheet that opens an export.</summary>
public static class SpreadsheetText
{
    /// <summary>
    /// Puts an apostrophe before text that a spreadsheet would run as a formula: text that begins with = + - @, a tab or a line end. Numbers
    /// (-4, +3.5) stay as they are. After the list in OWASP's "CSV Injection" (from memory).
    /// </summary>
    public static string Safe(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length == 0) return text;
        // Full-width signs are read as the plain ones by some programs.
        var first = text[0];
        if (first is not ('=' or '+' or '-' or '@' or '\t' or '\r' or '\n' or '＝' or '＋' or '－' or '＠')) return text;
        return first is '+' or '-' && IsNumber(text) ? text : "'" + text;
    }

    private static bool IsNumber(string text)
        => double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _);
}
