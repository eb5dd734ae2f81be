using System.Globalization;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Register;

/// <summary>The register to fall back on: for a month or a term, to fill in with a pen when there is no power, no tablet or no network.</summary>
public static class BlankRegister
{
    private const int MostDatesUpright = 12;
    private const int MostSpareLines = 40;
    private const double NumberWidth = 28;
    private const double SmallestBox = 21;
    private const double WidestBox = 48;
    private const double LowestRow = 20;
    private const double HighestRow = 27;
    private const double HeadHeight = 39;
    private const double TextSize = 11;

    /// <summary>The blank register as a PDF: upright up to 12 evenings, else on its side.</summary>
    public static PaperResult Render(BlankRegisterContent content, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(content);
        if (content.Dates.Count == 0)
            throw new ArgumentException("A register needs at least one evening.", nameof(content));
        if (content.SpareLines is < 0 or > MostSpareLines)
            throw new ArgumentException($"Spare lines are 0 to {MostSpareLines}.", nameof(content));
        for (var i = 1; i < content.Dates.Count; i++)
        {
            if (content.Dates[i].Date <= content.Dates[i - 1].Date)
                throw new ArgumentException($"The evenings must rise, each once: {PaperDate.Day(content.Dates[i].Date)} does not.", nameof(content));
        }

        return PdfWriter.Write(Lay(content, SheetFormat.Of(size)));
    }

    internal static Draft Lay(BlankRegisterContent content, SheetFormat upright)
    {
        var format = content.Dates.Count <= MostDatesUpright ? upright : upright.Landscape();
        var title = $"{RegisterTexts.Title}, {content.Programme}";
        var draft = new Draft(format, $"{title}, {content.Period}", content.Club, content.PrintedOn);
        var frame = new Frame(content.Club, title, RegisterTexts.Slip, Under(content), content.PrintedOn);
        var first = true;
        foreach (var dates in Sheets(content, draft))
        {
            DrawSheets(content, draft, frame, dates, first);
            first = false;
        }

        frame.Foot(draft);
        return draft;
    }

    private static List<string> Under(BlankRegisterContent content)
    {
        var under = new List<string> { content.Hours is null ? content.Period : $"{content.Period}, {content.Hours}" };
        var closed = Closures(content.Dates);
        if (closed.Count > 0)
            under.Add($"{RegisterTexts.Closed}: {string.Join("; ", closed)}.");
        if (content.Edition is not null)
            under.Add(content.Edition);
        return under;
    }

    // "27 October, 29 October: half-term" for evenings that follow each other with one reason.
    private static List<string> Closures(IReadOnlyList<BlankRegisterDate> dates)
    {
        var closures = new List<string>();
        for (var i = 0; i < dates.Count; i++)
        {
            if (dates[i].Closure is not { } why)
                continue;
            var days = new List<string>();
            for (; i < dates.Count && dates[i].Closure == why; i++)
                days.Add(dates[i].Date.ToString("d MMMM", CultureInfo.InvariantCulture));
            i--;
            closures.Add($"{string.Join(", ", days)}, {why}");
        }

        return closures;
    }

    // As few sets of columns as boxes wide enough for a pen allow, of even size.
    private static IEnumerable<BlankRegisterDate[]> Sheets(BlankRegisterContent content, Draft draft)
    {
        var room = draft.Format.Inside.Width - NumberWidth - LeastNameWidth(draft);
        var most = (int)(room / SmallestBox);
        var sheets = (content.Dates.Count + most - 1) / most;
        return content.Dates.Chunk((content.Dates.Count + sheets - 1) / sheets);
    }

    private static double LeastNameWidth(Draft draft) => draft.Format.Width > draft.Format.Height ? 40.Mm() : 45.Mm();

    private static void DrawSheets(BlankRegisterContent content, Draft draft, Frame frame, BlankRegisterDate[] dates, bool firstSheet)
    {
        var (table, breaks) = Fit(content, draft, frame, dates, firstSheet);
        for (var i = 0; i + 1 < breaks.Count; i++)
        {
            var page = draft.NewPage();
            var inside = page.Inside;
            var y = firstSheet && i == 0 ? frame.Head(page) : frame.Again(page);
            if (i == 0)
                page.Add(new OpenTag(PaperTag.Table));
            var top = y + table.HeadHeight;
            y = table.Draw(page, inside.X, y, breaks[i], breaks[i + 1]);
            DrawClosures(page, table, dates, top, y);
            if (i + 2 == breaks.Count)
                page.Add(new CloseTag());
            DrawBand(page, firstSheet && i == 0);
        }
    }

    // The fewest pages at the lowest row a pen can use, then the highest rows that fit on as many.
    private static (Table Table, List<int> Breaks) Fit(BlankRegisterContent content, Draft draft, Frame frame, BlankRegisterDate[] dates, bool firstSheet)
    {
        var best = Try(LowestRow);
        var pages = best.Breaks.Count;
        for (double low = LowestRow, high = HighestRow; high - low > 0.2;)
        {
            var middle = (low + high) / 2;
            var (table, breaks) = Try(middle);
            if (breaks.Count > pages)
            {
                high = middle;
            }
            else
            {
                low = middle;
                best = (table, breaks);
            }
        }

        return best;

        (Table Table, List<int> Breaks) Try(double height)
        {
            var table = Rows(content, draft, dates, height);
            return (table, Breaks(table, draft, frame, firstSheet));
        }
    }

    private static List<int> Breaks(Table table, Draft draft, Frame frame, bool firstSheet)
    {
        var page = draft.Scratch();
        var bottom = Frame.Bottom(page) - BandHeight(draft);
        var again = page.Inside.Y + frame.AgainHeight(draft) + table.HeadHeight;
        var y = firstSheet ? page.Inside.Y + frame.HeadHeight(draft) + table.HeadHeight : again;
        var breaks = new List<int> { 0 };
        for (var i = 0; i < table.Rows.Count; i++)
        {
            var height = table.HeightOf(i, draft.Missing);
            if (y + height > bottom && i > breaks[^1])
            {
                breaks.Add(i);
                y = again;
            }

            y += height;
        }

        breaks.Add(table.Rows.Count);
        return breaks;
    }

    private static Table Rows(BlankRegisterContent content, Draft draft, BlankRegisterDate[] dates, double height)
    {
        var room = draft.Format.Inside.Width - NumberWidth;
        var box = Math.Min(WidestBox, (room - LeastNameWidth(draft)) / dates.Length);
        Column[] columns =
        [
            new(RegisterTexts.Number, NumberWidth, Align.Right),
            new(RegisterTexts.Child, room - (box * dates.Length)),
            .. dates.Select(date => new Column(date.Date.ToString("ddd d MMM", CultureInfo.InvariantCulture), box, Align.Centre)),
        ];
        var boxes = dates.Select(_ => Cell.Empty).ToArray();
        var rows = new List<Row>();
        for (var i = 0; i < content.Children.Count; i++)
        {
            var child = content.Children[i];
            Words[] name = child.Second is null ? [new(child.FirstName, true)] : [new(child.FirstName, true), " ", child.Second];
            rows.Add(Line(Number(i + 1), name, boxes, (i + 1) % 5 == 0 ? 0.8 : 0.3));
        }

        for (var i = 0; i < content.SpareLines; i++)
            rows.Add(Line(Number(content.Children.Count + i + 1), [], boxes, 0.3));
        if (rows.Count > 0)
            rows[^1] = rows[^1] with { RuleWeight = 1.2 };
        foreach (var adult in content.Adults)
            rows.Add(Line("", adult.Role.Length == 0 ? [new(adult.Name)] : [new(adult.Name), ", " + adult.Role], boxes, 0.3));
        rows.Add(Line("", [RegisterTexts.AnotherAdult], boxes, 0.3));
        rows.Add(Line("", [RegisterTexts.TakenBy], boxes, 1.2));
        return new Table(columns, rows, TextSize, height)
        {
            HeadHeight = HeadHeight,
            HeadPicture = (page, column, area) => DrawHead(page, columns, dates, column, area),
            UprightRulesFrom = 2,
        };
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static Row Line(string number, IReadOnlyList<Words> name, Cell[] boxes, double rule) =>
        new([number.Length == 0 ? Cell.Empty : new Cell([number]), new Cell(name) { HeadsRow = true }, .. boxes], rule);

    // Month where it changes, weekday, day.
    private static void DrawHead(Page page, Column[] columns, BlankRegisterDate[] dates, int column, Area area)
    {
        if (column < 2)
        {
            page.Line([columns[column].Head], area.X + Table.Padding, area.Bottom - 4, 9);
            return;
        }

        var date = dates[column - 2].Date;
        var middle = area.X + (area.Width / 2);
        if (column == 2 || dates[column - 3].Date.Month != date.Month)
            page.Line([new Words(date.ToString("MMM", CultureInfo.InvariantCulture), true)], area.X + 2, area.Y + 9, 9);
        page.Line([date.ToString("ddd", CultureInfo.InvariantCulture)], middle, area.Bottom - 17.5, 8.5, Align.Centre);
        page.Line([new Words(Number(date.Day), true)], middle, area.Bottom - 4.5, 12, Align.Centre);
    }

    private static void DrawClosures(Page page, Table table, BlankRegisterDate[] dates, double top, double bottom)
    {
        var x = page.Inside.X + table.Columns[0].Width + table.Columns[1].Width;
        for (var i = 0; i < dates.Length; i++)
        {
            var area = new Area(x, top, table.Columns[i + 2].Width, bottom - top);
            x = area.Right;
            if (dates[i].Closure is not { } why)
                continue;
            page.Add(new HatchInk(area, 5, 0.3));
            const double size = 10;
            var line = LineBreaker.Measure([new Words(why, true)], page.Missing);
            var length = line.Width * size;
            // The words stand under the title too; where the column is too short for them, they stand only there.
            if (length + 12 > area.Height)
                continue;
            var middle = area.X + (area.Width / 2);
            page.Add(new BoxInk(new Area(middle - 7.5, area.Y + ((area.Height - length) / 2) - 5, 15, length + 10), 0, White: true));
            page.Upward(line, middle + (size * FontSet.CapitalHeight / 2), area.Y + ((area.Height + length) / 2), size);
        }
    }

    private static double BandHeight(Draft draft)
    {
        var page = draft.Scratch();
        return Band(page, page.Inside.Y, false) - page.Inside.Y;
    }

    private static void DrawBand(Page page, bool read)
    {
        var scratch = new Page(page.Inside, page.Missing);
        var height = Band(scratch, page.Inside.Y, false) - page.Inside.Y;
        Band(page, Frame.Bottom(page) - height, read);
    }

    // The key of the marks and the safety line stand on every page; they are read out once.
    private static double Band(Page page, double top, bool read)
    {
        const double size = 9.5;
        const double line = 15;
        var inside = page.Inside;
        var y = top + 6;
        Element(page, read, () =>
        {
            var x = inside.X;
            foreach (var (word, late, sign, means) in RegisterTexts.KeyOfMarks)
            {
                var text = LineBreaker.Measure([new Words(sign, true), " " + means], page.Missing);
                var width = 17 + (text.Width * size) + 12;
                if (x + width - 12 > inside.Right)
                {
                    x = inside.X;
                    y += line;
                }

                RegisterStamp.Draw(page, word, late, x + 6, y + (line / 2), 6);
                page.Line(text, x + 16, y + (line / 2) + 3.6, size);
                x += width;
            }
        });
        y += line;
        Element(page, read, () => y = page.Block([new Words(RegisterTexts.Doubt, true), $" {RegisterTexts.DoubtMore} {RegisterTexts.NewChild}"], inside.X, y, inside.Width, size, 1.5));
        return y + 2;
    }

    private static void Element(Page page, bool read, Action draw)
    {
        if (read)
            page.Tagged(PaperTag.Paragraph, draw);
        else
            draw();
    }
}
