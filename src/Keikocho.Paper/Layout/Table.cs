namespace Keikocho.Paper.Layout;

/// <summary>A column of a table.</summary>
/// <param name="Head">Its heading; empty for none.</param>
/// <param name="Width">Width in points.</param>
/// <param name="Align">Where its text stands.</param>
internal sealed record Column(string Head, double Width, Align Align = Align.Left);

/// <summary>A cell: text, a picture, or both.</summary>
/// <param name="text">Its text; empty for none.</param>
/// <param name="picture">Draws in the cell's area; also gets the table, for its sizes.</param>
internal sealed class Cell(IReadOnlyList<Words> text, Action<Page, Area, Table>? picture = null)
{
    private TextLine? _line;

    /// <summary>Its text; empty for none.</summary>
    public IReadOnlyList<Words> Text { get; } = text;

    /// <summary>Draws in the cell's area; also gets the table, for its sizes.</summary>
    public Action<Page, Area, Table>? Picture { get; } = picture;

    /// <summary>True for the name that the row is about.</summary>
    public bool HeadsRow { get; init; }

    /// <summary>Space before the text, for the picture.</summary>
    public double Indent { get; init; }

    /// <summary>A cell to write in.</summary>
    public static Cell Empty { get; } = new([]);

    /// <summary>Width of the text on one line, at size 1.</summary>
    public double NaturalWidth(ISet<int> missing) => Line(missing).Width;

    /// <summary>The lines of the text. Measured once: the search for the best row height asks often.</summary>
    public List<TextLine> Lines(double size, double width, ISet<int> missing) =>
        Line(missing).Width * size <= width ? [Line(missing)] : LineBreaker.Break(Text, size, width, missing);

    private TextLine Line(ISet<int> missing) => _line ??= LineBreaker.Measure(Text, missing);
}

/// <summary>A row of cells, one for each column.</summary>
/// <param name="Cells">As many as the table has columns.</param>
/// <param name="RuleWeight">Weight of the rule under it.</param>
internal sealed record Row(IReadOnlyList<Cell> Cells, double RuleWeight = 0.3);

/// <summary>A table with rules between its rows and a head that repeats on each page.</summary>
/// <param name="Columns">From left to right.</param>
/// <param name="Rows">From top to bottom.</param>
/// <param name="TextSize">Size of the text in the rows.</param>
/// <param name="RowHeight">Least height of a row; a row with more lines is higher.</param>
internal sealed record Table(IReadOnlyList<Column> Columns, IReadOnlyList<Row> Rows, double TextSize, double RowHeight)
{
    private const double HeadSize = 9;
    private const double Leading = 1.2;

    /// <summary>Free space at both sides of a cell's text.</summary>
    public const double Padding = 3;

    /// <summary>Height of the head, with its rule.</summary>
    public double HeadHeight { get; init; } = 15;

    /// <summary>Draws the heads of the columns instead of their words in one line; gets the column's number and area.</summary>
    public Action<Page, int, Area>? HeadPicture { get; init; }

    /// <summary>True for rules between the columns from this one on; null for none.</summary>
    public int? UprightRulesFrom { get; init; }

    /// <summary>Height of row <paramref name="index"/>.</summary>
    public double HeightOf(int index, ISet<int> missing)
    {
        var lines = 1;
        for (var i = 0; i < Columns.Count; i++)
        {
            if (Rows[index].Cells[i].Text.Count > 0)
                lines = Math.Max(lines, Rows[index].Cells[i].Lines(TextSize, TextRoom(i, Rows[index].Cells[i]), missing).Count);
        }

        return lines == 1 ? RowHeight : Math.Max(RowHeight, (lines * TextSize * Leading) + 3);
    }

    /// <summary>Draws the head and rows <paramref name="from"/> up to <paramref name="to"/>; the answer is where they end.</summary>
    public double Draw(Page page, double x, double y, int from, int to)
    {
        var top = y;
        y = DrawHead(page, x, y, from == 0);
        for (var i = from; i < to; i++)
        {
            var height = HeightOf(i, page.Missing);
            page.Add(new OpenTag(PaperTag.Row));
            DrawRow(page, Rows[i], x, y, height);
            page.Add(new CloseTag());
            y += height;
            page.Rule(x, x + Columns.Sum(column => column.Width), y, Rows[i].RuleWeight);
        }

        if (UprightRulesFrom is { } first)
            DrawUprights(page, x, top, y, first);
        return y;
    }

    private double DrawHead(Page page, double x, double y, bool read)
    {
        if (read)
            page.Add(new OpenTag(PaperTag.Row));
        var left = x;
        for (var i = 0; i < Columns.Count; i++)
        {
            var area = new Area(left, y, Columns[i].Width, HeadHeight);
            if (read)
                page.Add(new OpenTag(PaperTag.HeadCell));
            if (HeadPicture is null)
                DrawLine(page, LineBreaker.Measure([Columns[i].Head], page.Missing), area, area.Bottom - 4, HeadSize, Columns[i].Align);
            else
                HeadPicture(page, i, area);
            if (read)
                page.Add(new CloseTag());
            left = area.Right;
        }

        if (read)
            page.Add(new CloseTag());
        page.Rule(x, left, y + HeadHeight, 1.2);
        return y + HeadHeight;
    }

    private void DrawRow(Page page, Row row, double x, double y, double height)
    {
        for (var i = 0; i < Columns.Count; i++)
        {
            var cell = row.Cells[i];
            var area = new Area(x, y, Columns[i].Width, height);
            page.Tagged(cell.HeadsRow ? PaperTag.HeadCell : PaperTag.Cell, () =>
            {
                cell.Picture?.Invoke(page, area, this);
                if (cell.Text.Count > 0)
                    DrawText(page, cell.Lines(TextSize, TextRoom(i, cell), page.Missing), area with { X = area.X + cell.Indent, Width = area.Width - cell.Indent }, Columns[i].Align);
            });
            x = area.Right;
        }
    }

    // A hair of room, so that a column as wide as its text holds it.
    private double TextRoom(int column, Cell cell) => Columns[column].Width - (2 * Padding) - cell.Indent + 0.001;

    private void DrawText(Page page, List<TextLine> lines, Area area, Align align)
    {
        var top = area.Y + ((area.Height - (lines.Count * TextSize * Leading)) / 2);
        for (var i = 0; i < lines.Count; i++)
        {
            var baseline = top + ((i + 0.5) * TextSize * Leading) + (FontSet.CapitalHeight * TextSize / 2);
            DrawLine(page, lines[i], area, baseline, TextSize, align);
        }
    }

    private static void DrawLine(Page page, TextLine line, Area area, double baseline, double size, Align align)
    {
        var at = align switch
        {
            Align.Left => area.X + Padding,
            Align.Centre => area.X + (area.Width / 2),
            Align.Right => area.Right - Padding,
            _ => throw new ArgumentOutOfRangeException(nameof(align)),
        };
        page.Line(line, at, baseline, size, align);
    }

    private void DrawUprights(Page page, double x, double top, double bottom, int first)
    {
        for (var i = 0; i <= Columns.Count; i++)
        {
            if (i >= first)
                page.Add(new LineInk(x, top, x, bottom, 0.3));
            if (i < Columns.Count)
                x += Columns[i].Width;
        }
    }
}
