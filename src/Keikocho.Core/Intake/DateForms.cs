using System.Globalization;

namespace Keikocho.Core.Intake;

/// <summary>What a cell says as a date, both ways where day and month could change places.</summary>
/// <param name="Form">The form it is written in; null when it is no date at all.</param>
/// <param name="DayFirst">The day when the day comes first; null when that is no day.</param>
/// <param name="MonthFirst">The day when the month comes first; null when that is no day.</param>
public readonly record struct DateRead(string? Form, DateOnly? DayFirst, DateOnly? MonthFirst)
{
    /// <summary>Written like a date, though perhaps no such day (31/02/2015).</summary>
    public bool LooksLikeDate => Form is not null;

    /// <summary>A day, one way or the other.</summary>
    public bool IsDate => DayFirst is not null || MonthFirst is not null;

    /// <summary>Two different days, depending on which comes first.</summary>
    public bool IsAmbiguous => DayFirst is not null && MonthFirst is not null && DayFirst != MonthFirst;

    /// <summary>The day under an order; for a date that is only possible one way, that one.</summary>
    public DateOnly? Under(bool dayFirst) => dayFirst ? DayFirst ?? MonthFirst : MonthFirst ?? DayFirst;
}

/// <summary>The forms of a date that are read.</summary>
public static class DateForms
{
    /// <summary>Every form, with an example. Printed in docs/formats/import.md.</summary>
    public static IReadOnlyList<(string Form, string Example)> Table { get; } =
    [
        ("date cell", "a cell that the spreadsheet itself shows as a date"),
        ("year-month-day", "2015-03-14"),
        ("year month day without signs", "20150314"),
        ("numbers with / or -", "14/3/2015"),
        ("numbers with dots, day first", "14.3.2015"),
        ("month in letters", "14 March 2015"),
        ("day number since 1900", "42077"),
        ("day number since 1904", "40615"),
    ];

    /// <summary>Reads one cell. Nothing is assumed about day and month; the whole column decides that.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="from1904">Bare numbers count days from 1904.</param>
    /// <param name="latestYear">A year of two digits is the latest such year that is not after this one.</param>
    public static DateRead Read(Cell cell, bool from1904 = false, int latestYear = 2068)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(latestYear, 100);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(latestYear, 9899);
        switch (cell.Kind)
        {
            case CellKind.Date: return One(Table[0].Form, cell.Day);
            case CellKind.Number: return Serial(cell.Number, from1904);
            case CellKind.Text: break;
            default: return default;
        }
        var text = cell.Text;
        if (text.Length > 40) return default;

        // A time behind the date says nothing about the day: "2015-03-14 00:00:00", "2015-03-14T00:00".
        var end = text.IndexOf('T', StringComparison.Ordinal) is 10 and var t ? t : text.IndexOf(' ', StringComparison.Ordinal);
        if (end >= 6 && text.IndexOf(':', end) > 0) text = text[..end];

        if (text.All(char.IsAsciiDigit)) return Digits(text, from1904);
        var parts = text.Split(['/', '-', '.', ' ', ',', '\u2010', '\u2011', '\u2013', '\u00A0'], StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length > 3)
        {
            if (MonthWords.Weekday(parts[0]) is not null) parts = parts[1..];
            parts = [.. parts.Where(part => !(part.ToLowerInvariant() is "of" or "de" or "del" or "den"))];
        }
        if (parts.Length != 3) return default;
        return parts.All(part => part.Length <= 4 && part.All(char.IsAsciiDigit)) ? Numbers(text, parts, latestYear) : Lettered(parts, latestYear);
    }

    /// <summary>The day of a spreadsheet's day number; null for 29 February 1900, which the 1900 count has and the calendar has not, and outside 1900-9999.</summary>
    public static DateOnly? OfSerial(double serial, bool from1904)
    {
        if (double.IsNaN(serial) || serial < (from1904 ? 0 : 1) || serial > 2_957_003) return null;
        var days = (int)Math.Floor(serial);
        if (from1904) return new DateOnly(1904, 1, 1).AddDays(days);
        if (days == 60) return null;
        return new DateOnly(1899, 12, 31).AddDays(days < 60 ? days : days - 1);
    }

    // Bare numbers are days only between 1954 and 2119: anything else in such a column is a year, an age or a slip.
    private static DateRead Serial(double number, bool from1904)
        => number is >= 20_000 and <= 80_000 ? One(Table[from1904 ? 7 : 6].Form, OfSerial(number, from1904))
            : number is >= 19_000_101 and <= 22_000_000 && number == Math.Floor(number) ? Digits(number.ToString("0", CultureInfo.InvariantCulture), from1904)
            : default;

    private static DateRead Digits(string text, bool from1904) => text.Length switch
    {
        5 => Serial(int.Parse(text, CultureInfo.InvariantCulture), from1904),
        8 when int.Parse(text[..4], CultureInfo.InvariantCulture) is >= 1900 and <= 2199
            => One(Table[2].Form, Day(int.Parse(text[..4], CultureInfo.InvariantCulture), int.Parse(text[4..6], CultureInfo.InvariantCulture), int.Parse(text[6..], CultureInfo.InvariantCulture))),
        _ => default,
    };

    private static DateRead Numbers(string text, string[] parts, int latestYear)
    {
        var numbers = Array.ConvertAll(parts, part => int.Parse(part, CultureInfo.InvariantCulture));
        if (parts[0].Length == 4) return parts[1].Length <= 2 && parts[2].Length <= 2 ? One(Table[1].Form, Day(numbers[0], numbers[1], numbers[2])) : default;
        if (parts[0].Length > 2 || parts[1].Length > 2 || parts[2].Length is 1 or 3) return default;
        var year = Year(numbers[2], parts[2].Length, latestYear);
        if (text.Contains('.', StringComparison.Ordinal)) return One(Table[4].Form, Day(year, numbers[1], numbers[0]));
        return new(Table[3].Form, Day(year, numbers[1], numbers[0]), Day(year, numbers[0], numbers[1]));
    }

    private static DateRead Lettered(string[] parts, int latestYear)
    {
        for (var i = 0; i < 3; i++)
        {
            if (MonthWords.Month(parts[i]) is not { } month) continue;
            string[] rest = [.. parts.Where((_, j) => j != i)];
            var dayAt = rest[0].Length == 4 && rest[0].All(char.IsAsciiDigit) ? 1 : 0;
            var day = rest[dayAt].TrimEnd('s', 't', 'n', 'd', 'r', 'h', 'e');
            var year = rest[1 - dayAt].TrimStart('\'', '\u2019');
            if (day.Length is 0 or > 2 || !day.All(char.IsAsciiDigit) || year.Length is not (2 or 4) || !year.All(char.IsAsciiDigit)) return default;
            return One(Table[5].Form, Day(Year(int.Parse(year, CultureInfo.InvariantCulture), year.Length, latestYear), month, int.Parse(day, CultureInfo.InvariantCulture)));
        }
        return default;
    }

    private static int Year(int year, int digits, int latestYear)
    {
        if (digits == 4) return year;
        var full = latestYear - latestYear % 100 + year;
        return full > latestYear ? full - 100 : full;
    }

    private static DateRead One(string form, DateOnly? day) => new(form, day, day);

    /// <summary>The day, or null when there is no such day.</summary>
    internal static DateOnly? Day(int year, int month, int day)
        => year is >= 1 and <= 9999 && month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month) ? new DateOnly(year, month, day) : null;
}
