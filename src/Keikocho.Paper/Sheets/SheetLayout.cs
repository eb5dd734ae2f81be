using Keikocho.Core.Syllabus;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Sheets;

/// <summary>Lays one requirement sheet out at one size of type.</summary>
internal sealed class SheetLayout
{
    private const double Between = 22;
    private readonly RequirementSheetContent _content;
    private readonly SheetSizes _sizes;
    private readonly SheetFrame _frame;
    private readonly Draft _draft;
    private Page _page;
    private double _y;
    private bool _empty = true;

    private SheetLayout(RequirementSheetContent content, SheetFormat format, double scale)
    {
        _content = content;
        _sizes = new SheetSizes(scale);
        _frame = SheetHead.Of(content);
        _draft = new Draft(format, SheetHead.FileTitle(content), content.Club, content.PrintedOn);
        _page = _draft.NewPage();
        _y = _frame.Head(_page);
    }

    /// <summary>The sheet, without its foot.</summary>
    public static (Draft Draft, SheetFrame Frame) Lay(RequirementSheetContent content, SheetFormat format, double scale)
    {
        var layout = new SheetLayout(content, format, scale);
        layout.Draw();
        return (layout._draft, layout._frame);
    }

    private double Bottom => _frame.Bottom(_page);

    private void Draw()
    {
        var columns = Columns.Over(_page.Inside.Width, 2, Between);
        var blocks = new LineBlocks(_content, _sizes, columns.Width, _draft.Missing);
        foreach (var caution in _content.Cautions ?? [])
            Sentence([new Words("Please note: ", true), caution], _sizes.Small);
        var shown = Shown(blocks);
        if (_content.Sheet.Lines.Count == 0)
            Sentence([SheetTexts.NothingAsked], _sizes.Item);
        Section(SheetTexts.Show, shown, columns);
        if (Key() is { Length: > 0 } key)
            Sentence([key], _sizes.Small);
        Section(SheetTexts.Words, Words(blocks, columns.Width), columns, 0.6);
        Section(SheetTexts.Questions, Questions(blocks), columns);
        var before = _content.Before.Count > 0 ? Paragraph(SheetTexts.Before, _content.Before, columns.Width) : null;
        var home = Paragraph(SheetTexts.AtHome, [.. _content.AtHome, SheetTexts.NeverAtHome], columns.Width);
        Section(null, before is null ? [home] : [before, home], columns);
    }

    // Whole on this page, else whole on the next, else from here on as it fits.
    private void Section(string? title, List<Block> blocks, Columns columns, double rule = 0)
    {
        if (blocks.Count == 0)
            return;
        var heading = Heading(title, !_empty, rule);
        var height = heading.Height + columns.Height(blocks);
        if (_y + height > Bottom && !_empty && (height <= EmptyHeight() || _y + heading.Height + 40 > Bottom))
            NewPage();
        if (_empty)
            heading = Heading(title, false, rule);
        heading.Place(_page, _page.Inside.X, _y);
        _y += heading.Height;
        while (true)
        {
            var (drawn, end) = columns.Draw(_page, _page.Inside.X, _y, Bottom, blocks, _empty);
            _y = end;
            if (drawn == blocks.Count)
                break;
            if (drawn > 0)
                _empty = false;
            blocks = [.. blocks.Skip(drawn)];
            NewPage();
        }

        _empty = false;
        _y += 4 * _sizes.Scale;
    }

    private double EmptyHeight()
    {
        var page = _draft.Scratch();
        return _frame.Bottom(page) - _frame.HeadAgain(page);
    }

    private void NewPage()
    {
        _page = _draft.NewPage();
        _y = _frame.HeadAgain(_page);
        _empty = true;
    }

    private void Sentence(IReadOnlyList<Words> words, double size)
    {
        var block = Block.Lay(_draft.Missing, page =>
        {
            var y = 0.0;
            page.Tagged(PaperTag.Paragraph, () => y = page.Block(words, 0, 0, _page.Inside.Width, size));
            return y;
        });
        if (_y + block.Height > Bottom)
            NewPage();
        block.Place(_page, _page.Inside.X, _y);
        _y += block.Height + 4;
    }

    private Block Heading(string? title, bool ruled, double under) => Block.Lay(_draft.Missing, page =>
    {
        var y = ruled ? 4 * _sizes.Scale : 0;
        if (ruled)
            page.Rule(0, _page.Inside.Width, y, 0.8);
        y += ruled ? 3 * _sizes.Scale : 0;
        if (title is not null)
        {
            page.Tagged(PaperTag.Heading, () => y = page.Block([new Words(title, true)], 0, y, _page.Inside.Width, _sizes.Heading, 1.3));
            y += 2 * _sizes.Scale;
        }

        if (under > 0)
            page.Rule(0, _page.Inside.Width, y, under);
        return y;
    });

    private List<Block> Shown(LineBlocks blocks)
    {
        var shown = new List<Block>();
        foreach (var part in Enum.GetValues<SheetPart>().Where(part => part is not (SheetPart.Words or SheetPart.Questions)))
        {
            var lines = Of(part).ToList();
            if (lines.Count > 0)
                shown.Add(blocks.Label(SheetTexts.Of(part)));
            shown.AddRange(lines.SelectMany(blocks.Shown));
        }

        return shown;
    }

    // Words of this term only stand last under a heading of their own: the mark beside each would take a line.
    private List<Block> Words(LineBlocks blocks, double width)
    {
        var all = Of(SheetPart.Words).SelectMany(line => line.Items).Select(item => item.Item).ToList();
        double Widest(IEnumerable<string?> texts, bool bold, double size) =>
            texts.OfType<string>().Select(text => LineBreaker.Measure([new Words(text, bold)], _draft.Missing).Width * size).Append(0).Max();
        var first = Math.Min(Widest(all.Select(item => item.Name), true, _sizes.Word) + 10, width * 0.32);
        var script = Widest(all.Select(item => ItemNotes.Script(_content, item)), false, _sizes.Small);
        var second = script > 0 ? Math.Min(script + 10, width * 0.3) : 0;
        var (brief, lasting) = (Of(SheetPart.Words).Where(line => line.Carry == Carry.ThisTerm), Of(SheetPart.Words).Where(line => line.Carry != Carry.ThisTerm));
        var drawn = Each(blocks, lasting, One);
        var more = Each(blocks, brief, One);
        if (more.Count > 0)
            drawn.Add(blocks.Label(SheetTexts.ThisTermWords));
        return [.. drawn, .. more];

        Block One(SheetLine line, SheetItem item) => blocks.Word(line, item, first, second);
    }

    private List<Block> Questions(LineBlocks blocks) => Each(blocks, Of(SheetPart.Questions), blocks.Question);

    private static List<Block> Each(LineBlocks blocks, IEnumerable<SheetLine> lines, Func<SheetLine, SheetItem, Block> one)
    {
        var drawn = new List<Block>();
        foreach (var line in lines)
        {
            if (line.Items.Count != 1 && LineLead.Of(line) is { } lead)
                drawn.Add(blocks.Label(lead));
            drawn.AddRange(line.Items.Select(item => one(line, item)));
        }

        return drawn;
    }

    private Block Paragraph(string title, IReadOnlyList<string> sentences, double width) => Block.Lay(_draft.Missing, page =>
    {
        var y = 0.0;
        page.Tagged(PaperTag.Heading, () => y = page.Block([new Words(title, true)], 0, 0, width, _sizes.Heading, 1.3));
        page.Tagged(PaperTag.Paragraph, () => y = page.Block([string.Join(' ', sentences)], 0, y + (2 * _sizes.Scale), width, _sizes.Item, 1.3));
        return y;
    });

    private string Key()
    {
        var lines = _content.Sheet.Lines;
        var means = new List<string>();
        if (lines.Any(line => line.Part < SheetPart.Words && line.Items.Any(item => item.Item.LookFor is not null)))
            means.Add(SheetTexts.LookForMeans);
        if (lines.Any(line => line.Critical))
            means.Add(SheetTexts.HeavyMeans);
        if (lines.Any(line => line.Carry is Carry.Always or Carry.OnceAskedStays))
            means.Add(SheetTexts.AgainMeans);
        if (lines.Any(line => line.Carry == Carry.ThisTerm && line.Part != SheetPart.Words))
            means.Add(SheetTexts.ThisTermMeans);
        if (_content.Sheet.Draw is { } draw)
            means.Add(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"Drawn by lot, number {draw}."));
        return string.Join(' ', means);
    }

    private IEnumerable<SheetLine> Of(SheetPart part) => _content.Sheet.Lines.Where(line => line.Part == part);
}
