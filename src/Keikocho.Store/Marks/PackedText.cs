namespace Keikocho.Store.Marks;

/// <summary>Reads days and numbers out of packed text without cutting it up: a page unpacks thousands of them.</summary>
internal static class PackedText
{
    /// <summary>A whole number that is not negative.</summary>
    /// <exception cref="FormatException">It is none.</exception>
    public static int Whole(ReadOnlySpan<char> text)
    {
        if (text.IsEmpty) throw new FormatException("A packed number is empty.");
        var number = 0;
        foreach (var sign in text)
        {
            if (!char.IsAsciiDigit(sign)) throw new FormatException($"“{text}” is no packed number.");
            number = checked((number * 10) + (sign - '0'));
        }

        return number;
    }

    /// <summary>A day as "20261103", or as the database writes it: "2026-11-03".</summary>
    /// <exception cref="FormatException">It is none.</exception>
    public static DateOnly Day(ReadOnlySpan<char> text) => text.Length switch
    {
        8 => new DateOnly(Whole(text[..4]), Whole(text[4..6]), Whole(text[6..])),
        10 when text[4] == '-' && text[7] == '-' => new DateOnly(Whole(text[..4]), Whole(text[5..7]), Whole(text[8..])),
        _ => throw new FormatException($"“{text}” is no packed day."),
    };
}
