using System.Globalization;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Register;

/// <summary>The register of one evening as it was taken, for the folder.</summary>
public static class RegisterSheet
{
    private const double HighestRow = 24;
    private const double LowestRowOnOnePage = 12.2;
    private const double LowestRowOnMore = 16.5;
    private const double Label = 62;
    private const double Body = 10;
    private const double Leading = 1.3;
    private const double SmallestText = 9.5;
    private const double LargestText = 11.5;
    private const double BoxRoom = 17;

    /// <summary>The register as a PDF: one page up to 40 children, where names and remarks leave room; beyond that it runs on.</summary>
    public static PaperResult Render(RegisterSheetContent content, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(content);
        if (content.End <= content.Start)
            throw new ArgumentException("A lesson ends after it starts.", nameof(content));
        if (content.AdultsNeeded < 0)
            throw new ArgumentException("The adults needed are a count.", nameof(content));
        return PdfWriter.Write(Lay(content, SheetFormat.Of(size)));
    }

    internal static Draft Lay(RegisterSheetContent content, SheetFormat format)
    {
        var title = $"{RegisterTexts.Title}, {content.Programme}";
        var draft = new Draft(format, $"{title}, {PaperDate.Full(content.Date)}", content.Club, content.PrintedOn);
        var frame = new Frame(content.Club, title, RegisterTexts.Slip, Under(content), content.PrintedOn);
        var (table, breaks) = Fit(content, frame, draft);
        for (var i = 0; i + 1 < breaks.Count; i++)
        {
            var page = draft.NewPage();
            var inside = page.Inside;
            var y = i == 0 ? Adults(page, content, frame.Head(page)) : frame.Again(page);
            // The table stays one element over all its pages; what is between them is decoration.
            if (i == 0)
                page.Add(new OpenTag(PaperTag.Table));
            if (breaks[i + 1] > breaks[i])
                y = table.Draw(page, inside.X, y, breaks[i], breaks[i + 1]);
            if (i + 2 < breaks.Count)
                continue;
            page.Add(new CloseTag());
            new Flow(draft, frame.Again).Draw(page, y, Tail(draft, content));
        }

        frame.Foot(draft);
        return draft;
    }

    private static List<string> Under(RegisterSheetContent content)
    {
        var when = $"{PaperDate.Full(content.Date)}, {PaperDate.Clock(content.Start)} to {PaperDate.Clock(content.End)}";
        var under = new List<string> { content.Hall is null ? when : $"{when}, {content.Hall}" };
        if (content.Edition is not null)
            under.Add(content.Edition);
        return under;
    }

    // The fewest pages first, then the highest rows that fit on them. Higher rows never need fewer pages, so halving finds them.
    private static (Table Table, List<int> Breaks) Fit(RegisterSheetContent content, Frame frame, Draft draft)
    {
        Row[] rows = [.. content.Children.Select((child, i) => ChildRow(child, i + 1))];
        for (var pages = 1; ; pages++)
        {
            var low = pages == 1 ? LowestRowOnOnePage : LowestRowOnMore;
            var best = Try(low);
            if (best.Breaks.Count - 1 > pages)
                continue;
            for (var high = HighestRow; high - low > 0.2;)
            {
                var middle = (low + high) / 2;
                var (table, breaks) = Try(middle);
                if (breaks.Count - 1 > pages)
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
        }

        (Table Table, List<int> Breaks) Try(double height)
        {
            var table = Rows(rows, draft, height);
            return (table, Breaks(content, frame, draft, table));
        }
    }

    // The first row of each page, and the end. A last page may hold no row, only what comes after the table.
    private static List<int> Breaks(RegisterSheetContent content, Frame frame, Draft draft, Table table)
    {
        var scratch = draft.Scratch();
        var bottom = Frame.Bottom(scratch);
        var tail = TailHeight(draft, content);
        var breaks = new List<int> { 0 };
        var y = Adults(scratch, content, scratch.Inside.Y + frame.HeadHeight(draft)) + table.HeadHeight;
        for (var i = 0; i < table.Rows.Count; i++)
        {
            var height = table.HeightOf(i, draft.Missing);
            if (y + height > bottom && i > breaks[^1])
            {
                breaks.Add(i);
                y = scratch.Inside.Y + frame.AgainHeight(draft) + table.HeadHeight;
            }

            y += height;
        }

        if (y + tail > bottom)
            breaks.Add(table.Rows.Count);
        breaks.Add(table.Rows.Count);
        return breaks;
    }

    // The largest type at which the names stand on one line, or have a quarter of the sheet's width and wrap.
    private static Table Rows(Row[] rows, Draft draft, double height)
    {
        var name = rows.Select(row => row.Cells[1].NaturalWidth(draft.Missing)).Append(0).Max();
        var enough = draft.Format.Inside.Width / 4;
        var text = Math.Clamp(height * 0.62, SmallestText, LargestText);
        while (true)
        {
            var columns = Columns(rows, draft, text);
            if (text <= SmallestText || Math.Min((name * text) + (2 * Table.Padding), enough) <= columns[1].Width)
                return new Table(columns, rows, text, height);
            text = Math.Max(SmallestText, text - 0.5);
        }
    }

    private static Column[] Columns(Row[] rows, Draft draft, double text)
    {
        double Natural(int column, string head) => (2 * Table.Padding) + rows
            .Select(row => row.Cells[column].NaturalWidth(draft.Missing) * text)
            .Append(LineBreaker.Measure([head], draft.Missing).Width * 9)
            .Max();
        var number = Math.Max(Natural(0, RegisterTexts.Number), text);
        var mark = Natural(3, RegisterTexts.Mark) + 6;
        var lesson = Natural(4, RegisterTexts.Lesson) + 6;
        var collected = Natural(5, RegisterTexts.Collected) + (rows.Any(row => row.Cells[5].Text.Count > 0) ? BoxRoom : 0);
        const double stamp = 24;
        return
        [
            new(RegisterTexts.Number, number, Align.Right),
            new(RegisterTexts.Child, draft.Format.Inside.Width - number - stamp - mark - lesson - collected),
            new("", stamp, Align.Centre),
            new(RegisterTexts.Mark, mark),
            new(RegisterTexts.Lesson, lesson),
            new(RegisterTexts.Collected, collected),
        ];
    }

    private static Row ChildRow(RegisterChild child, int number)
    {
        Words[] name = child.Second is null ? [new(child.FirstName, true)] : [new(child.FirstName, true), " ", child.Second];
        Words[] note = child.Collection == CollectionBox.CheckWithInstructor ? [new(RegisterTexts.CheckWithInstructor)] : [];
        var here = child.Mark.Word is RegisterWord.Present or RegisterWord.Left;
        return new Row(
            [
                new([number.ToString(CultureInfo.InvariantCulture)]),
                new(name) { HeadsRow = true },
                new([], (page, area, table) => RegisterStamp.Draw(page, child.Mark, area.X + (area.Width / 2), area.Y + (area.Height / 2), (Math.Min(table.RowHeight, 22) / 2) - 1.3)),
                new([new(RegisterTexts.Of(child.Mark), here)]),
                child.Lesson is null ? Cell.Empty : new([new(RegisterTexts.Of(child.Lesson), child.Lesson.FormNeeded)]),
                new(note, child.Collection == CollectionBox.NoBox ? null : (page, area, table) => Box(page, area, table, child.Collection == CollectionBox.Collected)) { Indent = note.Length > 0 ? BoxRoom : 0 },
            ],
            number % 5 == 0 ? 0.8 : 0.25);
    }

    private static void Box(Page page, Area area, Table table, bool ticked)
    {
        var side = Math.Min(table.RowHeight - 3, 13);
        var box = new Area(area.X + Table.Padding, area.Y + ((area.Height - side) / 2), side, side);
        page.Add(new BoxInk(box, 0.9));
        if (ticked)
            page.Line([new Words("✓", true)], box.X + (side / 2), box.Y + (side / 2) + (table.TextSize * 0.36), table.TextSize, Align.Centre);
    }

    private static double Adults(Page page, RegisterSheetContent content, double y)
    {
        var inside = page.Inside;
        page.Rule(inside.X, inside.Right, y, 0.8);
        y += 4;
        var head = RegisterTexts.Adults;
        if (content.AdultsNeeded is { } needed)
            head = string.Create(CultureInfo.InvariantCulture, $"{head} {content.Adults.Count} of {needed}");
        var label = LineBreaker.Measure([new Words(head, true)], page.Missing).Width * Body;
        var left = inside.X + Math.Max(Label, label + 10);
        var width = (inside.Right - left) / 2;
        page.Tagged(PaperTag.Heading, () => page.Block([new Words(head, true)], inside.X, y, left - inside.X, Body, Leading));
        if (content.Adults.Count == 0)
        {
            page.Tagged(PaperTag.Paragraph, () => y = page.Block([RegisterTexts.NoAdults], left, y, 2 * width, Body, Leading));
        }

        for (var i = 0; i < content.Adults.Count; i += 2)
        {
            var end = y;
            for (var side = 0; side < 2 && i + side < content.Adults.Count; side++)
            {
                var adult = content.Adults[i + side];
                Words[] words = adult.Role.Length == 0 ? [new(adult.Name, true)] : [new(adult.Name, true), "  " + adult.Role];
                page.Tagged(PaperTag.Paragraph, () => end = Math.Max(end, page.Block(words, left + (side * width), y, width - 6, Body, Leading)));
            }

            y = end;
        }

        return y + 3;
    }

    // Counts, remarks and signatures, from the top down.
    private static List<Func<Page, double, double>> Tail(Draft draft, RegisterSheetContent content)
    {
        var inside = draft.Format.Inside;
        var left = inside.X + Label;
        var width = inside.Right - left;
        var sentence = content.Children.Count == 0 ? RegisterTexts.NoChildren : RegisterCounts.Of(content.Children).Sentence() + ".";
        List<Func<Page, double, double>> pieces = [(page, y) => Paragraph(page, [new Words(sentence, true)], inside.X, y + 6, inside.Width) + 2];
        for (var i = 0; i < content.Remarks.Count; i++)
        {
            var (remark, first) = (content.Remarks[i], i == 0);
            pieces.Add((page, y) => Labelled(page, first ? RegisterTexts.Remarks : null, y, [remark], left, width));
        }

        if (content.Remarks.Count == 0)
            pieces.Add((page, y) => WriteLine(page, RegisterTexts.Remarks, left, inside.Right, y));
        if (content.Signatures.Count > 0)
            pieces.Add((page, y) => Labelled(page, RegisterTexts.Signed, y + 2, Signatures(content.Signatures), left, width));
        else
        {
            pieces.Add((page, y) =>
            {
                var end = WriteLine(page, RegisterTexts.Signed, left, inside.Right - 90, y + 2);
                page.Tagged(PaperTag.Paragraph, () => page.Line(["at"], inside.Right - 82, end - 3, Body));
                page.Rule(inside.Right - 66, inside.Right, end - 1, 0.4);
                return end;
            });
        }

        return pieces;
    }

    private static Words[] Signatures(IReadOnlyList<RegisterSignature> signatures)
    {
        var words = new List<Words>();
        for (var i = 0; i < signatures.Count; i++)
        {
            var part = signatures[i].Part is { } what ? " (" + what + ")" : "";
            var end = i + 1 < signatures.Count ? ", " : "";
            words.AddRange([new(signatures[i].Name, true), $" at {PaperDate.Clock(signatures[i].At)}{part}{end}"]);
        }

        return [.. words];
    }

    private static double Paragraph(Page page, IReadOnlyList<Words> words, double x, double y, double width)
    {
        var end = y;
        page.Tagged(PaperTag.Paragraph, () => end = page.Block(words, x, y, width, Body, Leading));
        return end;
    }

    private static double Labelled(Page page, string? label, double y, IReadOnlyList<Words> words, double left, double width)
    {
        DrawLabel(page, label, y);
        return Paragraph(page, words, left, y, width);
    }

    private static double WriteLine(Page page, string label, double from, double to, double y)
    {
        DrawLabel(page, label, y);
        y += Body * Leading;
        page.Rule(from, to, y - 1, 0.4);
        return y;
    }

    private static void DrawLabel(Page page, string? label, double y)
    {
        if (label is not null)
            page.Tagged(PaperTag.Heading, () => page.Block([new Words(label, true)], page.Inside.X, y, Label, Body, Leading));
    }

    private static double TailHeight(Draft draft, RegisterSheetContent content)
    {
        var flow = new Flow(draft, page => page.Inside.Y);
        return Tail(draft, content).Sum(flow.Height);
    }
}
