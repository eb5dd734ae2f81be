namespace Keikocho.Core.Intake;

/// <summary>A sheet seen as children down and items across, whichever way round the file has it.</summary>
internal sealed class SignOffTable
{
    private const int RowsToLookAt = 40;
    private const int ColumnsToLookAt = 300;
    private const int Fewest = 2;
    private readonly Sheet file;

    private SignOffTable(Sheet file, Sheet sheet, bool turned, int headerRow)
        => (this.file, Sheet, Turned, HeaderRow) = (file, sheet, turned, headerRow);

    internal bool Turned { get; }
    internal Sheet Sheet { get; }
    internal int HeaderRow { get; }
    internal List<int> NameColumns { get; } = [];
    internal List<(int Column, string Heading)> Headings { get; } = [];

    /// <summary>How many headings are items of the syllabus, or may be.</summary>
    internal int Known { get; private set; }

    internal (int Row, int Column) InFile(int row, int column) => Turned ? (column, row) : (row, column);

    internal CellPlace Place(int row, int column)
    {
        var (r, c) = InFile(row, column);
        return file.Place(r, c);
    }

    internal string PlaceOfLine(int row) => Turned ? $"sheet '{file.Name}', column {CellPlace.Letters(row)}" : $"sheet '{file.Name}', row {row}";

    internal string PlaceOfItem(int column) => Turned ? $"sheet '{file.Name}', row {column}" : $"sheet '{file.Name}', column {CellPlace.Letters(column)}";

    /// <summary>The way round, and the header row, under which most headings are items of the syllabus; null where fewer than two are.</summary>
    internal static SignOffTable? Find(Sheet file, SignOffItems items)
    {
        (int Score, Sheet Sheet, bool Turned, int Row) best = (Fewest - 1, file, false, 0);
        foreach (var turned in (bool[])[false, true])
        {
            // Only the corner that is looked at is turned, until it is known to be the better one.
            var sheet = turned ? Corner(file).Turned() : file;
            for (var row = 1; row <= Math.Min(sheet.Rows, RowsToLookAt); row++)
            {
                var score = 0;
                for (var column = 1; column <= Math.Min(sheet.Width(row), ColumnsToLookAt); column++)
                    if (sheet[row, column] is { Kind: CellKind.Text, FromMerge: false } cell && IsItem(items, cell.Text)) score++;
                if (score > best.Score) best = (score, sheet, turned, row);
            }
        }

        if (best.Row == 0) return null;
        var table = new SignOffTable(file, best.Turned ? file.Turned() : file, best.Turned, best.Row) { Known = best.Score };
        table.FindColumns(items);
        return table.NameColumns.Count == 0 || table.Headings.Count == 0 ? null : table;
    }

    /// <summary>Without being told, taken for a sign-off grid: at least half of the headings are items, and what stands below them are signs, dates or initials.</summary>
    internal bool IsLikely(int latestYear)
    {
        if (Known * 2 < Headings.Count) return false;
        int filled = 0, short_ = 0;
        for (var row = HeaderRow + 1; row <= Math.Min(Sheet.Rows, HeaderRow + 200); row++)
            foreach (var (column, _) in Headings)
            {
                var cell = Sheet[row, column];
                if (cell.IsEmpty || cell.FromMerge) continue;
                filled++;
                if (cell.Kind != CellKind.Text || cell.Text.Length <= 5 || SignOffSigns.IsSign(cell.Text) || DateForms.Read(cell, Sheet.From1904, latestYear).IsDate) short_++;
            }
        return short_ * 2 >= filled;
    }

    private static bool IsItem(SignOffItems items, string text)
        => !SignOffSigns.IsSign(text) && (items.Find(text).Candidates.Count > 0 || FallWords.Has(text) && text.Length <= 40);

    private static Sheet Corner(Sheet file)
    {
        var rows = new Cell[Math.Min(file.Rows, ColumnsToLookAt)][];
        for (var row = 1; row <= rows.Length; row++)
        {
            rows[row - 1] = new Cell[Math.Min(file.Width(row), RowsToLookAt)];
            for (var column = 1; column <= rows[row - 1].Length; column++) rows[row - 1][column - 1] = file[row, column];
        }
        return new Sheet(file.Name, rows, file.Hidden, file.From1904);
    }

    private void FindColumns(SignOffItems items)
    {
        var texty = new List<int>();
        for (var column = 1; column <= Sheet.Columns; column++)
        {
            var heading = Sheet[HeaderRow, column] is { Kind: CellKind.Text } cell ? cell.Text : "";
            var isItem = heading.Length > 0 && IsItem(items, heading);
            var meaning = heading.Length > 0 && !isItem ? HeaderWords.Meaning(heading)?.Meaning : null;
            if (meaning is ColumnMeaning.GivenName or ColumnMeaning.FamilyName or ColumnMeaning.FullName) NameColumns.Add(column);
            else if (isItem || heading.Length > 0 && meaning is null && !HeaderWords.IsTotal(heading) && !heading.Contains('%', StringComparison.Ordinal) && HasCells(column)) Headings.Add((column, heading));
            if (NameLike(column)) texty.Add(column);
        }

        if (NameColumns.Count == 0)
        {
            var first = Headings.Where(h => IsItem(items, h.Heading)).Select(h => h.Column).DefaultIfEmpty(1).Min();
            NameColumns.AddRange(texty.Where(column => column < first).Take(2));
            if (NameColumns.Count == 0) NameColumns.AddRange(texty.Take(1));
        }

        Headings.RemoveAll(heading => NameColumns.Contains(heading.Column));
    }

    private bool HasCells(int column)
    {
        for (var row = HeaderRow + 1; row <= Sheet.Rows; row++)
            if (!Sheet[row, column].IsEmpty) return true;
        return false;
    }

    private bool NameLike(int column)
    {
        int filled = 0, words = 0;
        for (var row = HeaderRow + 1; row <= Math.Min(Sheet.Rows, HeaderRow + 200); row++)
        {
            var cell = Sheet[row, column];
            if (cell.IsEmpty) continue;
            filled++;
            if (cell.Kind == CellKind.Text && cell.Text.Length >= 3 && cell.Text.Count(char.IsLetter) >= 3 && !cell.Text.Any(char.IsAsciiDigit)) words++;
        }

        return filled > 0 && words * 5 >= filled * 3;
    }
}
