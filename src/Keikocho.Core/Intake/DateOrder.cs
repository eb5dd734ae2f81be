using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>Decides day first or month first from a whole column.</summary>
internal static class DateOrder
{
    internal const string DayFirst = "day-first";
    internal const string MonthFirst = "month-first";

    /// <summary>The proven order, or the answer to the question, or null while it is open. True when no date of the column needs it.</summary>
    internal static bool? Decide(DoubtBook book, Sheet sheet, string header, int column, IReadOnlyList<(int Row, DateRead Date)> dates)
    {
        var ambiguous = dates.Where(date => date.Date.IsAmbiguous).ToList();
        var onlyDay = dates.Where(date => date.Date is { DayFirst: not null, MonthFirst: null }).ToList();
        var onlyMonth = dates.Where(date => date.Date is { DayFirst: null, MonthFirst: not null }).ToList();
        if (ambiguous.Count == 0) return true;
        if (onlyDay.Count > 0 && onlyMonth.Count == 0) return true;
        if (onlyMonth.Count > 0 && onlyDay.Count == 0) return false;
        var (row, sample) = ambiguous[0];
        var where = $"sheet '{sheet.Name}', column {CellPlace.Letters(column)}{(header.Length > 0 ? $" ('{header}')" : "")}";
        var both = $"'{sheet[row, column].Text}' in row {row} is {sample.DayFirst!.Value.Full()} with the day first, or {sample.MonthFirst!.Value.Full()} with the month first";
        var sentence = onlyDay.Count == 0
            ? $"In {where}, nothing shows whether the day or the month comes first: {both}. Say which; it holds for {Dates(ambiguous.Count)}."
            : $"In {where}, dates are written both ways: row {onlyDay[0].Row} can only have the day first, row {onlyMonth[0].Row} only the month. {both}. Say which holds for the {Dates(ambiguous.Count)} that could be either.";
        var answer = book.Ask($"order:{column}", DoubtKind.DateOrder, sentence,
            [new(DayFirst, $"Day first: {sample.DayFirst!.Value.Full()}"), new(MonthFirst, $"Month first: {sample.MonthFirst!.Value.Full()}")]);
        return answer is null ? null : answer == DayFirst;
    }

    /// <summary>
    /// A list of days first, typed into a program that puts the month first: days over 12 stay text, all others become dates with day and
    /// month changed round. The pattern is at least three of each and nothing that contradicts it.
    /// </summary>
    internal static bool Swapped(DoubtBook book, Sheet sheet, string header, int column, IReadOnlyList<(int Row, DateRead Date)> dates)
    {
        var cells = dates.Where(date => sheet[date.Row, column].Kind == CellKind.Date).ToList();
        var texts = dates.Where(date => date.Date.Form == DateForms.Table[3].Form).ToList();
        if (cells.Count < 3 || texts.Count < 3 || texts.Any(date => date.Date is not { DayFirst: not null, MonthFirst: null }) || cells.Any(date => date.Date.DayFirst!.Value.Day > 12)) return false;
        var (row, sample) = cells[0];
        var other = Swap(sample.DayFirst!.Value);
        return book.Ask($"swapped:{column}", DoubtKind.DatesSwapped,
            $"In sheet '{sheet.Name}', column {CellPlace.Letters(column)}{(header.Length > 0 ? $" ('{header}')" : "")}, the dates kept as text all have a day over 12 and the real dates all have a day up to 12: a spreadsheet may have changed day and month round when they were typed. Is row {row} {sample.DayFirst!.Value.Full()} or {other.Full()}?",
            [new("as-they-are", $"As they are: {sample.DayFirst!.Value.Full()}"), new("swap", $"Changed round: {other.Full()}")]) == "swap";
    }

    internal static DateOnly Swap(DateOnly day) => day.Day <= 12 ? new(day.Year, day.Day, day.Month) : day;

    private static string Dates(int count) => count == 1 ? "1 date" : $"{count} dates";
}
