namespace Keikocho.Core.Intake;

/// <summary>What passes for a telephone number and an e-mail address.</summary>
public static class ContactForms
{
    /// <summary>7 to 15 digits (the longest number of ITU-T E.164 has 15; from memory) with blanks, dots, dashes, brackets, slashes and one plus in front; "ext 12" after it.</summary>
    public static bool IsPhone(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var number = text.Trim();
        var extension = number.IndexOf("ext", StringComparison.OrdinalIgnoreCase);
        if (extension > 0) number = number[..extension].TrimEnd();
        if (number.Length == 0) return false;
        var digits = 0;
        for (var i = 0; i < number.Length; i++)
        {
            if (char.IsAsciiDigit(number[i])) digits++;
            else if (number[i] == '+' && i == 0) continue;
            else if (number[i] is not (' ' or '.' or '-' or '(' or ')' or '/' or '\u00A0' or '\u2011')) return false;
        }
        return digits is >= 7 and <= 15;
    }

    /// <summary>Something, one @, something with a dot inside; no blanks.</summary>
    public static bool IsEmail(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var at = text.IndexOf('@', StringComparison.Ordinal);
        if (at <= 0 || at != text.LastIndexOf('@') || text.Length > 254 || text.Any(char.IsWhiteSpace)) return false;
        var dot = text.LastIndexOf('.');
        return dot > at + 1 && dot < text.Length - 1;
    }

    /// <summary>The separate values of a cell that holds several, parted by ; , | a line end or " / " or " or ".</summary>
    internal static IEnumerable<string> Several(string text)
        => text.Replace(" / ", ";", StringComparison.Ordinal).Replace(" or ", ";", StringComparison.OrdinalIgnoreCase)
            .Split([';', ',', '|', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
