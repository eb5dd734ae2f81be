using System.Globalization;

namespace Keikocho.Core.Intake;

/// <summary>What a header of a register says of its date; much may be missing.</summary>
/// <param name="Full">A whole date, both ways where day and month could change places.</param>
/// <param name="Month">Month, when it is certain.</param>
/// <param name="Day">Day, when it is certain.</param>
/// <param name="First">The first of two numbers of which one is the day and one the month ("3/9"); 0 otherwise.</param>
/// <param name="Second">The second of them.</param>
/// <param name="Weekday">The weekday, when it is said.</param>
internal readonly record struct HeaderDay(DateRead Full, int? Month, int? Day, int First, int Second, DayOfWeek? Weekday)
{
    /// <summary>Names a date, but for the year.</summary>
    internal bool IsDate => Full.IsDate || Month is not null && Day is not null || First > 0;

    /// <summary>Only a number from 1 to 31: a date when a month stands above it.</summary>
    internal bool IsDayOnly => !IsDate && Day is not null;

    internal bool NeedsYear => !Full.IsDate;

    /// <summary>Month and day under an order; null when that is no day.</summary>
    internal (int Month, int Day)? Under(bool dayFirst)
    {
        if (First == 0) return Month is { } month && Day is { } day ? (month, day) : null;
        var (m, d) = dayFirst ? (Second, First) : (First, Second);
        return m is >= 1 and <= 12 && d >= 1 && d <= DateTime.DaysInMonth(2024, m) ? (m, d) : null;
    }

    internal static HeaderDay Read(Cell cell, bool from1904, int latestYear)
    {
        if (cell.IsEmpty || cell.Kind is CellKind.Boolean or CellKind.Error or CellKind.Time) return default;
        var full = DateForms.Read(cell, from1904, latestYear);
        if (full.IsDate) return new(full, null, null, 0, 0, null);
        if (cell.Kind == CellKind.Number)
            return cell.Number is >= 1 and <= 31 && cell.Number == Math.Floor(cell.Number) ? new(default, null, (int)cell.Number, 0, 0, null) : default;
        if (cell.Text.Length > 40) return default;

        DayOfWeek? weekday = null;
        int? month = null;
        var numbers = new List<int>();
        foreach (var word in cell.Text.Split([' ', '/', '-', '.', ',', '\n', '\r', '\u00A0', '\u2013', '(', ')'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (word.Contains(':', StringComparison.Ordinal)) continue;
            var bare = char.IsAsciiDigit(word[0]) ? word.TrimEnd('s', 't', 'n', 'd', 'r', 'h', 'e') : word;
            if (bare.Length <= 2 && int.TryParse(bare, NumberStyles.None, CultureInfo.InvariantCulture, out var number)) numbers.Add(number);
            else if (MonthWords.Month(word) is { } found && month is null) month = found;
            else if (MonthWords.Weekday(word) is { } named && weekday is null) weekday = named;
            else return default;
        }
        if (month is not null && numbers is [>= 1 and <= 31]) return new(default, month, numbers[0], 0, 0, weekday);
        if (month is null && numbers is [>= 1 and <= 31, >= 1 and <= 31] && cell.Text.AsSpan().IndexOfAny("/-.") >= 0)
        {
            var day = new HeaderDay(default, null, null, numbers[0], numbers[1], weekday);
            if (cell.Text.Contains('.', StringComparison.Ordinal)) return day.Under(true) is { } dotted ? new(default, dotted.Month, dotted.Day, 0, 0, weekday) : default;
            return day.Under(true) is not null || day.Under(false) is not null ? day : default;
        }
        if (month is null && numbers is [>= 1 and <= 31]) return new(default, null, numbers[0], 0, 0, weekday);
        return default;
    }

    /// <summary>"September", "Sept 2026", a date cell shown as a month: the month and, where it is said, the year.</summary>
    internal static (int Month, int? Year)? MonthAlone(Cell cell)
    {
        if (cell.Kind == CellKind.Date && cell.Day is { Day: 1 } first) return (first.Month, first.Year);
        if (cell.Kind != CellKind.Text || cell.Text.Length > 30) return null;
        int? month = null, year = null;
        foreach (var word in cell.Text.Split([' ', '/', '-', '.', ',', '\''], StringSplitOptions.RemoveEmptyEntries))
        {
            if (MonthWords.Month(word) is { } found && month is null) month = found;
            else if (word.Length is 2 or 4 && int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && year is null) year = number < 100 ? 2000 + number : number;
            else return null;
        }
        return month is { } only ? (only, year) : null;
    }
}
