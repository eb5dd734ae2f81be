namespace Keikocho.Core.Intake;

/// <summary>The date in a cell of a sign-off grid: as anywhere else, or without a year, or with somebody's initials beside it.</summary>
internal readonly record struct SignOffDate(DateRead Full, HeaderDay Part)
{
    private const int MostInitials = 3;

    internal bool IsDate => Full.IsDate || Part.IsDate;

    internal bool NeedsYear => !Full.IsDate && Part.IsDate;

    /// <summary>The date is in the cell. Small numbers are ticks, not days.</summary>
    internal static SignOffDate Read(Cell cell, bool from1904, int latestYear)
    {
        if (cell.IsEmpty || cell.Kind is CellKind.Boolean or CellKind.Error or CellKind.Time || cell.Kind == CellKind.Number && cell.Number is >= 0 and <= 31) return default;
        if (Plain(cell, from1904, latestYear) is { IsDate: true } plain) return plain;
        return cell.Kind == CellKind.Text && WithoutInitials(cell.Text) is { } bare ? Plain(Cell.OfText(bare), from1904, latestYear) : default;
    }

    /// <summary>The day, under an order and, where the cell has no year, under what was answered for it: a year, or the latest such day up to today.</summary>
    internal DateOnly? Under(bool dayFirst, int? year, DateOnly today)
    {
        if (!NeedsYear) return Full.Under(dayFirst);
        if ((Part.Under(dayFirst) ?? Part.Under(!dayFirst)) is not { } part) return null;
        if (year is { } said) return DateForms.Day(said, part.Month, part.Day);
        for (var latest = today.Year; latest > today.Year - 8; latest--)
            if (DateForms.Day(latest, part.Month, part.Day) is { } day && day <= today) return day;
        return null;
    }

    /// <summary>Two different days, depending on which comes first.</summary>
    internal bool IsAmbiguous => NeedsYear
        ? Part.Under(true) is { } dayFirst && Part.Under(false) is { } monthFirst && dayFirst != monthFirst
        : Full.IsAmbiguous;

    /// <summary>Only possible with the day first (true), only with the month first (false), or no witness (null).</summary>
    internal bool? Witness => NeedsYear
        ? Part.First == 0 ? null : (Part.Under(true), Part.Under(false)) switch { ({ }, null) => true, (null, { }) => false, _ => null }
        : Full switch { { DayFirst: not null, MonthFirst: null } => true, { DayFirst: null, MonthFirst: not null } => false, _ => null };

    private static SignOffDate Plain(Cell cell, bool from1904, int latestYear)
    {
        var full = DateForms.Read(cell, from1904, latestYear);
        if (full.IsDate || cell.Kind != CellKind.Text) return new(full, default);
        var part = HeaderDay.Read(cell, from1904, latestYear);
        return part.IsDate ? new(default, part) : default;
    }

    // "12/9/2026 MH", "MH 12/9": up to three letters before or behind, which are no month and no weekday.
    private static string? WithoutInitials(string text)
    {
        var words = text.Split([' ', '\u00A0', '\n', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
        if (words.Length < 2) return null;
        if (IsInitials(words[^1])) return string.Join(' ', words[..^1]);
        return IsInitials(words[0]) ? string.Join(' ', words[1..]) : null;
    }

    private static bool IsInitials(string word)
    {
        var letters = word.Trim('.', ',').Replace(".", "", StringComparison.Ordinal);
        return letters.Length is >= 1 and <= MostInitials && letters.All(char.IsLetter) && MonthWords.Month(letters) is null && MonthWords.Weekday(letters) is null;
    }
}
