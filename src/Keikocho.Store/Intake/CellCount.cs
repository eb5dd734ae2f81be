using Keikocho.Core.Intake;

namespace Keikocho.Store.Intake;

/// <summary>Counts what was read against the limits and takes the rows.</summary>
internal sealed class CellCount(string fileName, ReadLimits limits)
{
    private int _rows;
    private int _cells;

    /// <summary>A row's cells without the blank end; counted.</summary>
    internal Cell[] Take(Cell[] row, int width)
    {
        while (width > 0 && row[width - 1].IsEmpty) width--;
        if (width == 0) return [];
        if (++_rows > limits.Rows) throw new RefusedException($"'{fileName}' has more than {limits.Rows:#,0} rows, which are more than a club's list; save the part that holds the children and read that.");
        if (width > limits.Columns) throw TooWide();
        var taken = new Cell[width];
        for (var i = 0; i < width; i++)
        {
            taken[i] = row[i].Text is null ? Cell.Empty : row[i];
            if (taken[i].IsEmpty) continue;
            Count();
            if (taken[i].Text.Length > limits.CellCharacters) throw new RefusedException($"'{fileName}' has a cell of more than {limits.CellCharacters:#,0} characters in row {_rows}; a quotation mark may be missing there. Set the file right and read it again.");
        }
        return taken;
    }

    internal void Count()
    {
        if (++_cells > limits.Cells) throw TooMany();
    }

    internal RefusedException TooMany() => new($"'{fileName}' has more than {limits.Cells:#,0} filled cells, which are more than a club's list; save the part that holds the children and read that.");

    internal RefusedException TooWide() => new($"'{fileName}' has more than {limits.Columns:#,0} columns; save the part that holds the children and read that.");
}
