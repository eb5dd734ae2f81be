namespace Keikocho.Core.Intake;

/// <summary>One sheet of a file, as rows of cells. Rows and columns count from 1, as on the screen the club made it on.</summary>
public sealed class Sheet
{
    private readonly Cell[][] _rows;

    /// <summary>A sheet of <paramref name="rows"/>; rows may be of different length.</summary>
    /// <param name="name">Its name; for a text file the file's name.</param>
    /// <param name="rows">The cells, first row first.</param>
    /// <param name="hidden">The file hides this sheet from whoever opens it.</param>
    /// <param name="from1904">Its day numbers count from 1904, not from 1900.</param>
    public Sheet(string name, IReadOnlyList<IReadOnlyList<Cell>> rows, bool hidden = false, bool from1904 = false)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(rows);
        Name = name;
        Hidden = hidden;
        From1904 = from1904;
        _rows = new Cell[rows.Count][];
        for (var i = 0; i < rows.Count; i++)
        {
            _rows[i] = rows[i] is Cell[] cells ? cells : [.. rows[i]];
            Columns = Math.Max(Columns, _rows[i].Length);
        }
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>The file hides this sheet.</summary>
    public bool Hidden { get; }

    /// <summary>Its day numbers count from 1 January 1904 (0) instead of 1900.</summary>
    public bool From1904 { get; }

    /// <summary>How many rows, blank ones included.</summary>
    public int Rows => _rows.Length;

    /// <summary>How many columns the widest row has.</summary>
    public int Columns { get; }

    /// <summary>The cell at a row and column, from 1; an empty cell where the file has none.</summary>
    public Cell this[int row, int column]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(row, 1);
            ArgumentOutOfRangeException.ThrowIfLessThan(column, 1);
            if (row > _rows.Length) return Cell.Empty;
            var cells = _rows[row - 1];
            return column > cells.Length || cells[column - 1].Text is null ? Cell.Empty : cells[column - 1];
        }
    }

    /// <summary>Where a cell is.</summary>
    public CellPlace Place(int row, int column) => new(Name, row, column);

    /// <summary>The last column of a row that may hold something.</summary>
    public int Width(int row) => row < 1 || row > _rows.Length ? 0 : _rows[row - 1].Length;

    /// <summary>The same sheet with rows and columns changed round.</summary>
    public Sheet Turned()
    {
        var turned = new Cell[Columns][];
        for (var column = 1; column <= Columns; column++)
        {
            turned[column - 1] = new Cell[Rows];
            for (var row = 1; row <= Rows; row++) turned[column - 1][row - 1] = this[row, column];
        }
        return new Sheet(Name, turned, Hidden, From1904);
    }
}
