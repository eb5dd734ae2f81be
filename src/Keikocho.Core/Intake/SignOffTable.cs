namespace Keikocho.Core.Intake;

/// <summary>A sheet seen as children down and items across, whichever way round the file has it.</summary>
internal sealed class SignOffTable
{
    private const int RowsToLookAt = 40;
    private const int Fewest = 2;
    private readonly Sheet file;

    private SignOffTable(Sheet file, bool turned, int headerRow)
    {
        this.file = file;
        Turned = turned;
        Sheet = turned ? file.Turned() : file;
        HeaderRow = headerRow;
    }

    internal bool Turned { get; }
    internal Sheet Sheet { get; }
    internal int HeaderRow { get; }
    internal List<int> NameColumns { get; } = [];
    internal List<(int Column, string Heading)> Headings { get; } = [];

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
        (int Score, bool Turned, int Row) best = (Fewest - 1, false, 0);
        foreach (var turned in (bool[])[false, true])
        {
            var sheet = turned ? file.Turned() : file;
            for (var row = 1; row <= Math.Min(sheet.Rows, RowsToLookAt); row++)
            {
                var score = 0;
                for (var column = 1; column <= sheet.Width(row); column++)
                    if (sheet[row, column] is { Kind: CellKind.Text, FromMerge: false } cell && items.Find(cell.Text).Candidates.Count > 0) score++;
                if (score > best.Score) best = (score, turned, row);
            }
        }

        if (best.Row == 0) return null;
        var table = new SignOffTable(file, best.Turned, best.Row);
        table.FindColumns(items);
        return table.NameColumns.Count == 0 ? null : table;
    }

    private void FindColumns(SignOffItems items)
    {
        var texty = new List<int>();
        for (var column = 1; column <= Sheet.Columns; column++)
        {
            var heading = Sheet[HeaderRow, column] is { Kind: CellKind.Text } cell ? cell.Text : "";
            var meaning = heading.Length > 0 && items.Find(heading).Candidates.Count == 0 ? HeaderWords.Meaning(heading)?.Meaning : null;
            if (meaning is ColumnMeaning.GivenName or ColumnMeaning.FamilyName or ColumnMeaning.FullName) NameColumns.Add(column);
            else if (heading.Length > 0 && meaning is null && !HeaderWords.IsTotal(heading) && !heading.Contains('%', StringComparison.Ordinal)) Headings.Add((column, heading));
            if (NameLike(column)) texty.Add(column);
        }

        if (NameColumns.Count == 0)
        {
            var first = Headings.Where(h => items.Find(h.Heading).Candidates.Count > 0).Select(h => h.Column).DefaultIfEmpty(1).Min();
            NameColumns.AddRange(texty.Where(column => column < first).Take(2));
            if (NameColumns.Count == 0) NameColumns.AddRange(texty.Take(1));
        }

        Headings.RemoveAll(heading => NameColumns.Contains(heading.Column));
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
