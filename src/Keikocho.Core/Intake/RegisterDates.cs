using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Intake;

/// <summary>Makes days of the dates of a register: order of day and month, and the year.</summary>
internal static class RegisterDates
{
    /// <summary>The day of each column; null while an answer is missing.</summary>
    internal static Dictionary<int, DateOnly?> Resolve(RegisterTable table, DateOnly today, DoubtBook book, List<string> notes)
    {
        var dayFirst = Order(table, today, book, notes);
        var days = new Dictionary<int, DateOnly?>();
        int? year = null;
        if (table.Dates.Any(date => date.Day.NeedsYear)) year = Year(table, dayFirst, today, book, notes);
        var before = 0;
        foreach (var (column, day) in table.Dates)
        {
            if (!day.NeedsYear)
            {
                days[column] = day.Full.IsAmbiguous && dayFirst is null ? null : day.Full.Under(dayFirst ?? true);
                continue;
            }
            if (day.First > 0 && dayFirst is null && IsEither(day) || year is null)
            {
                days[column] = null;
                continue;
            }
            // A date that is only possible one way is read that way.
            var (month, number) = (day.Under(dayFirst ?? true) ?? day.Under(!(dayFirst ?? true)))!.Value;
            if (month < before) year++;
            before = month;
            days[column] = DateForms.Day(year.Value, month, number);
            if (days[column] is null)
            {
                var typed = book.Ask($"day:{column}", DoubtKind.DateNotOne, $"In {table.PlaceOfDate(column)}, {number} {Month(month)} {year} is no day of the calendar; type the right date or leave it out.",
                    [new("leave-out", "Leave this date out")], null, TypedAnswer.Date);
                days[column] = typed is not null && typed.StartsWith('=') ? DoubtBook.TypedDate(typed[1..]) : null;
            }
        }
        return days;
    }

    private static bool IsEither(HeaderDay day) => day.Under(true) is { } one && day.Under(false) is { } other && one != other;

    private static bool? Order(RegisterTable table, DateOnly today, DoubtBook book, List<string> notes)
    {
        var either = table.Dates.Where(date => date.Day.Full.IsAmbiguous || date.Day.First > 0 && IsEither(date.Day)).ToList();
        if (either.Count == 0) return true;
        var onlyDay = table.Dates.Any(date => date.Day.Full is { DayFirst: not null, MonthFirst: null } || date.Day.First > 12);
        var onlyMonth = table.Dates.Any(date => date.Day.Full is { DayFirst: null, MonthFirst: not null } || date.Day.Second > 12);
        if (onlyDay != onlyMonth) return onlyDay;
        var rises = (Day: Rises(table, true, today), Month: Rises(table, false, today));
        if (!onlyDay && table.Dates.Count >= 3 && rises.Day != rises.Month)
        {
            notes.Add($"The dates of the register rise only with the {(rises.Day ? "day" : "month")} first; they were read so.");
            return rises.Day;
        }
        var weekdays = (Day: Weekdays(table, true, today), Month: Weekdays(table, false, today));
        var (column, sample) = either[0];
        var (first, second) = (Say(sample, true, today), Say(sample, false, today));
        var answer = book.Ask("order", DoubtKind.DateOrder,
            $"In {table.PlaceOfDate(column)}, '{table.Sheet[table.HeaderRow, column].Text}' is {first} with the day first, or {second} with the month first, and the other dates do not show which; say which holds for all.",
            [new(DateOrder.DayFirst, $"Day first: {first}"), new(DateOrder.MonthFirst, $"Month first: {second}")],
            weekdays.Day < weekdays.Month ? DateOrder.DayFirst : weekdays.Month < weekdays.Day ? DateOrder.MonthFirst : null);
        return answer is null ? null : answer == DateOrder.DayFirst;
    }

    private static DateOnly? Roughly(HeaderDay day, bool dayFirst, DateOnly today)
        => !day.NeedsYear ? day.Full.Under(dayFirst) : day.Under(dayFirst) is { } found ? DateForms.Day(today.Year, found.Month, found.Day) : null;

    // Rising through the table, with at most one turn of the year where years are not said.
    private static bool Rises(RegisterTable table, bool dayFirst, DateOnly today)
    {
        DateOnly? before = null;
        var turns = 0;
        foreach (var (_, day) in table.Dates)
        {
            if (Roughly(day, dayFirst, today) is not { } now) return false;
            if (before is { } last && now <= last)
            {
                if (!day.NeedsYear || last.Month - now.Month < 6 || ++turns > 1) return false;
            }
            before = now;
        }
        return true;
    }

    private static int Weekdays(RegisterTable table, bool dayFirst, DateOnly today)
        => table.Dates.Select(date => Roughly(date.Day, dayFirst, today)?.DayOfWeek).Distinct().Count();

    private static string Say(HeaderDay day, bool dayFirst, DateOnly today)
        => day.NeedsYear ? Roughly(day, dayFirst, today)?.ToString("d MMMM", CultureInfo.InvariantCulture) ?? "no day" : day.Full.Under(dayFirst)!.Value.Full();

    private static string Month(int month) => new DateOnly(2000, month, 1).ToString("MMMM", CultureInfo.InvariantCulture);

    // The year of the first date that does not say it: from a title or the sheet's name, proven by the weekdays, or asked.
    private static int? Year(RegisterTable table, bool? dayFirst, DateOnly today, DoubtBook book, List<string> notes)
    {
        var without = table.Dates.Where(date => date.Day.NeedsYear).ToList();
        var first = without[0].Day;
        var start = first.Under(dayFirst ?? true) ?? first.Under(!(dayFirst ?? true));
        var firstMonth = start?.Month ?? 1;
        foreach (var text in Titles(table))
            if (YearOf(text, firstMonth) is { } titled)
            {
                notes.Add($"The dates have no year; '{RosterLineReader.Short(text)}' gives it.");
                return titled;
            }
        if (dayFirst is { } order && without.All(date => date.Day.Weekday is not null))
        {
            var fitting = Enumerable.Range(today.Year - 4, 5).Where(year => Fits(without, order, year, today)).ToList();
            if (fitting.Count == 1)
            {
                notes.Add($"The dates have no year; only {fitting[0]} has these weekdays.");
                return fitting[0];
            }
        }
        var latest = start is { } from && DateForms.Day(today.Year, from.Month, Math.Min(from.Day, 28)) > today ? today.Year - 1 : today.Year;
        var answer = book.Ask("year", DoubtKind.YearMissing,
            $"In sheet '{table.Place(1, 1).Sheet}', the dates of the register have no year; say the year of the first one, '{table.Sheet[table.HeaderRow, without[0].Column].Text}'.",
            [new($"{latest}", $"{latest}"), new($"{latest - 1}", $"{latest - 1}")], $"{latest}", TypedAnswer.Year);
        return answer is null ? null : int.Parse(answer.TrimStart('='), CultureInfo.InvariantCulture);
    }

    private static bool Fits(List<(int Column, HeaderDay Day)> dates, bool dayFirst, int year, DateOnly today)
    {
        var before = 0;
        foreach (var (_, day) in dates)
        {
            if ((day.Under(dayFirst) ?? day.Under(!dayFirst)) is not { } found) return false;
            if (found.Month < before) year++;
            before = found.Month;
            if (DateForms.Day(year, found.Month, found.Day) is not { } whole || whole.DayOfWeek != day.Weekday || whole > today.AddDays(120)) return false;
        }
        return true;
    }

    private static IEnumerable<string> Titles(RegisterTable table)
    {
        for (var row = 1; row < table.HeaderRow; row++)
            for (var column = 1; column <= table.Sheet.Width(row); column++)
                if (table.Sheet[row, column] is { Kind: CellKind.Text, FromMerge: false } cell) yield return cell.Text;
        yield return table.Place(1, 1).Sheet;
    }

    // "2026", "Autumn 2026"; a season "2026/27" or "2026-2027" begins in July.
    internal static int? YearOf(string text, int firstMonth)
    {
        for (var i = 0; i + 4 <= text.Length; i++)
        {
            if (i > 0 && char.IsAsciiDigit(text[i - 1]) || !text.AsSpan(i, 2).SequenceEqual("20") || !char.IsAsciiDigit(text[i + 2]) || !char.IsAsciiDigit(text[i + 3])) continue;
            if (i + 4 < text.Length && char.IsAsciiDigit(text[i + 4])) continue;
            var year = int.Parse(text.AsSpan(i, 4), CultureInfo.InvariantCulture);
            var rest = text[(i + 4)..].TrimStart();
            if (rest.Length < 3 || rest[0] is not ('/' or '-' or '–')) return year;
            var next = new string([.. rest[1..].TrimStart().TakeWhile(char.IsAsciiDigit)]);
            var season = next.Length is 2 or 4 && int.Parse(next[^2..], CultureInfo.InvariantCulture) == (year + 1) % 100;
            return season && firstMonth < 7 ? year + 1 : year;
        }
        return null;
    }
}
