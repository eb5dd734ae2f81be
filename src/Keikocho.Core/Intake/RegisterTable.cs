namespace Keikocho.Core.Intake;

/// <summary>A sheet seen as children down and dates across, whichever way round the file has it.</summary>
internal sealed class RegisterTable
{
    private const int RowsToLookAt = 40;
    private readonly Sheet _file;

    private RegisterTable(Sheet file, bool turned)
    {
        _file = file;
        Turned = turned;
        Sheet = turned ? file.Turned() : file;
    }

    internal bool Turned { get; }
    internal Sheet Sheet { get; }
    internal int HeaderRow { get; private set; }
    internal int FirstRow { get; private set; }
    internal List<(int Column, HeaderDay Day)> Dates { get; } = [];
    internal List<int> NameColumns { get; } = [];
    internal HashSet<int> HeadingRows { get; } = [];

    internal (int Row, int Column) InFile(int row, int column) => Turned ? (column, row) : (row, column);

    internal CellPlace Place(int row, int column)
    {
        var (r, c) = InFile(row, column);
        return _file.Place(r, c);
    }

    internal string PlaceOfLine(int row) => Turned ? $"sheet '{_file.Name}', column {CellPlace.Letters(row)}" : $"sheet '{_file.Name}', row {row}";

    internal string PlaceOfDate(int column) => Turned ? $"sheet '{_file.Name}', row {column}" : $"sheet '{_file.Name}', column {CellPlace.Letters(column)}";

    internal static RegisterTable? Find(Sheet file, bool turned, int latestYear, int fewest)
    {
        var table = new RegisterTable(file, turned);
        var sheet = table.Sheet;
        var best = 0;
        for (var row = 1; row <= Math.Min(sheet.Rows, RowsToLookAt); row++)
        {
            var days = Days(sheet, row, latestYear);
            if (days.Count < fewest || days.Count <= best || !MarksBelow(sheet, row, days, latestYear)) continue;
            best = days.Count;
            table.HeaderRow = row;
            table.Dates.Clear();
            table.Dates.AddRange(days);
        }
        if (best == 0) return null;
        table.FindNames();
        return table.NameColumns.Count == 0 ? null : table;
    }

    // The dates of a row. Bare day numbers count when a month stands above them; the month holds until the next one.
    private static List<(int Column, HeaderDay Day)> Days(Sheet sheet, int row, int latestYear)
    {
        var days = new List<(int, HeaderDay)>();
        (int Month, int? Year)? month = null;
        for (var column = 1; column <= sheet.Width(row); column++)
        {
            for (var above = row - 1; above >= Math.Max(1, row - 3); above--)
                if (HeaderDay.MonthAlone(sheet[above, column]) is { } found)
                {
                    month = found;
                    break;
                }
            var day = HeaderDay.Read(sheet[row, column], sheet.From1904, latestYear);
            if (day.IsDayOnly && month is { } of)
            {
                if (of.Year is { } year)
                {
                    var whole = DateForms.Day(year, of.Month, day.Day!.Value);
                    day = whole is null ? default : day with { Full = new("month above", whole, whole), Month = null, Day = null };
                }
                else day = day with { Month = of.Month };
            }
            if (day.IsDate) days.Add((column, day));
        }
        return days;
    }

    private static bool MarksBelow(Sheet sheet, int row, List<(int Column, HeaderDay Day)> days, int latestYear)
    {
        int filled = 0, dates = 0, long_ = 0, seen = 0;
        for (var below = row + 1; below <= sheet.Rows && seen < 30; below++)
        {
            if (GuessColumns.IsBlank(sheet, below)) continue;
            seen++;
            foreach (var (column, _) in days)
            {
                var cell = sheet[below, column];
                if (cell.IsEmpty) continue;
                filled++;
                if (HeaderDay.Read(cell, sheet.From1904, latestYear).IsDate && Signs.Arrival(cell) is null) dates++;
                else if (!Signs.LooksLikeSign(cell)) long_++;
            }
        }
        return seen > 0 && dates * 4 <= filled && long_ * 2 <= filled;
    }

    private void FindNames()
    {
        var first = HeaderRow + 1;
        while (first <= Sheet.Rows && (GuessColumns.IsBlank(Sheet, first) || IsWeekdays(first)))
        {
            if (!GuessColumns.IsBlank(Sheet, first)) HeadingRows.Add(first);
            first++;
        }
        FirstRow = first;
        var dated = Dates.Select(date => date.Column).ToHashSet();
        var texty = new List<int>();
        for (var column = 1; column <= Sheet.Columns; column++)
        {
            if (dated.Contains(column)) continue;
            var header = HeaderText(column);
            if (header is not null && HeaderWords.Meaning(header) is { } found)
            {
                if (found.Meaning is ColumnMeaning.GivenName or ColumnMeaning.FamilyName or ColumnMeaning.FullName) NameColumns.Add(column);
                continue;
            }
            if (header is not null && HeaderWords.IsTotal(header)) continue;
            int filled = 0, words = 0;
            for (var row = FirstRow; row <= Math.Min(Sheet.Rows, FirstRow + 200); row++)
            {
                var cell = Sheet[row, column];
                if (cell.IsEmpty) continue;
                filled++;
                if (cell.Kind == CellKind.Text && cell.Text.Any(char.IsLetter) && cell.Text.Length >= 2 && !cell.Text.Any(char.IsAsciiDigit)) words++;
            }
            if (filled > 0 && words * 5 >= filled * 3) texty.Add(column);
        }
        if (NameColumns.Count > 0) return;
        var left = texty.Where(column => column < Dates[0].Column).ToList();
        NameColumns.AddRange(left.Count > 0 ? left.Take(2) : texty.Take(1));
    }

    private bool IsWeekdays(int row)
    {
        var words = 0;
        foreach (var (column, _) in Dates)
        {
            var cell = Sheet[row, column];
            if (cell.IsEmpty) continue;
            if (cell.Kind != CellKind.Text || MonthWords.Weekday(cell.Text) is null || cell.Text.Length < 2) return false;
            words++;
        }
        return words > 0;
    }

    /// <summary>The text at the head of a column that is no date: in the header row, or above it where merged cells or two-row headers put it.</summary>
    internal string? HeaderText(int column)
    {
        for (var row = HeaderRow; row >= Math.Max(1, HeaderRow - 2); row--)
            if (Sheet[row, column] is { Kind: CellKind.Text } cell) return cell.Text;
        return null;
    }
}
