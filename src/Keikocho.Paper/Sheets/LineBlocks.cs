using Keikocho.Core.Syllabus;
using Keikocho.Paper.Layout;

namespace Keikocho.Paper.Sheets;

/// <summary>Lines of a sheet as blocks of one column.</summary>
/// <param name="content">The sheet.</param>
/// <param name="sizes">Sizes of type.</param>
/// <param name="width">Width of the column.</param>
/// <param name="missing">Gets characters that no font has.</param>
internal sealed class LineBlocks(RequirementSheetContent content, SheetSizes sizes, double width, ISet<int> missing)
{
    private const double Leading = 1.24;
    private const double HeavyWeight = 1.9;
    private const char Nbsp = (char)0xA0;
    private const int MostToChoose = 8;
    private const int MostOfAll = 14;

    /// <summary>One thing to show, or several of which so many are asked: box, words, small lines; a heavy box around what is critical.</summary>
    public IEnumerable<Block> Shown(SheetLine line) => line.Items.Count > 1 && line.IsAll && LineLead.Of(line) is null
        ? line.Items.Select(item => One(line with { Count = 1, Items = [item], Title = item.Item.Name }))
        : [line.Items.Count == 1 ? One(line) : Several(line)];

    private Block One(SheetLine line) => Boxed(line, (page, x, y, room) =>
    {
        var text = Tick(page, x, y, line.Critical, line.Items[0].KeptUntil is not null, sizes.Item);
        room -= text - x;
        var words = ItemNotes.Line(line, line.Title);
        y = page.Block([words, .. Marks(line)], text, y, room, sizes.Item, Leading);
        return Notes(page, text, y, room, ItemNotes.Of(content, line, line.Items[0], words, false).Concat(ItemNotes.Of(content, line)));
    });

    private Block Several(SheetLine line) => Boxed(line, (page, x, y, room) =>
    {
        var text = Tick(page, x, y, line.Critical, false, sizes.Item);
        room -= text - x;
        var condition = line.Condition is { } asked && !ItemNotes.Says(line.Title, asked) ? ", " + asked : "";
        var lead = LineLead.Of(line) ?? SheetTexts.Of(line.Count, line.Items.Count);
        if (line.IsEither && LineLead.NamesAll(line))
            return Either(page, line, text, y, room, lead, condition, Marks(line));
        y = page.Block([new Words(lead, !line.IsAll && LineLead.NamesAll(line)), condition, .. Marks(line)], text, y, room, sizes.Item, Leading);
        if (line.IsEither)
            return Either(page, line, text, y, room, SheetTexts.EitherOf, "", []);
        if (!line.IsAll && line.Items.Count > 0 && !LineLead.NamesAll(line) && !ItemNotes.Says(lead, SheetTexts.AnyOf(line.Count)))
            y = page.Block([new Words(SheetTexts.Of(line.Count, line.Items.Count), true)], text, y, room, sizes.Item, Leading);
        y = Notes(page, text, y, room, ItemNotes.Of(content, line));
        var own = line.Items;
        if (line.Items.Count > (line.IsAll ? MostOfAll : MostToChoose))
        {
            // A pool of everything that lower ranks ask would be taller than a page: names alone, and only what is this child's own below.
            own = [.. line.Items.Where(item => (item.Chosen && !line.IsAll) || item.KeptUntil is not null || item.InsteadOf is not null || item.Way is not null)];
            var rest = line.Items.Except(own).ToList();
            y = page.Block([string.Join("; ", rest.Select(item => item.Item.Name))], text, y, room, sizes.Small, Leading);
            foreach (var seen in rest.Where(item => content.SeenGood?.ContainsKey(item.Item.Key) == true).GroupBy(item => SheetTexts.Seen(item.Item.Kind)))
                y = page.Block([new Words("✓ ", true), $"{seen.Key}: {string.Join("; ", seen.Select(item => item.Item.Name))}"], text, y, room, sizes.Small, Leading);
        }

        foreach (var item in own)
        {
            var inner = Tick(page, text, y + 1, false, item.KeptUntil is not null, sizes.Item * 0.88);
            var words = ItemNotes.Figures(item.Item.Name, item.Item);
            Words[] chosen = item.Chosen && !line.IsAll ? [", ", new("chosen", true)] : [];
            y = page.Block([words, .. chosen], inner, y + 1, room - inner + text, sizes.Item, Leading);
            y = Notes(page, inner, y, room - inner + text, ItemNotes.Of(content, line, item, words, false));
        }

        return y;
    });

    /// <summary>A question with the answers that are accepted.</summary>
    public Block Question(SheetLine line, SheetItem item) => Boxed(line, (page, x, y, room) =>
    {
        var text = Tick(page, x, y, line.Critical, item.KeptUntil is not null, sizes.Item);
        room -= text - x;
        y = page.Block([item.Item.Name, .. Marks(line)], text, y, room, sizes.Item, Leading);
        var answers = item.Item.Answers is { Count: > 0 } accepted ? string.Join(", or ", accepted) : item.Item.Meaning;
        if (answers is not null)
            y = page.Block([answers], text, y, room, sizes.Small, Leading);
        var plain = item with { Item = item.Item with { Meaning = null, LookFor = null } };
        var alone = line with { FromRank = null };
        return Notes(page, text, y, room, ItemNotes.Of(content, alone, plain, item.Item.Name, false).Concat(ItemNotes.Of(content, alone)));
    });

    /// <summary>A word, its script, its meaning, with a fine rule below.</summary>
    /// <param name="line">The line it belongs to.</param>
    /// <param name="item">The word.</param>
    /// <param name="first">Width of the column of words.</param>
    /// <param name="second">Width of the column of script.</param>
    public Block Word(SheetLine line, SheetItem item, double first, double second) => Boxed(line, (page, x, y, room) =>
    {
        var what = item.Item;
        // Kanji and kana on one line, or the kana below: a reading is not broken.
        string[] scripts = [.. ItemNotes.Scripts(content, what)];
        if (scripts.Length > 1 && LineBreaker.Measure([string.Join(' ', scripts)], missing).Width * sizes.Small <= second - 6)
            scripts = [string.Join(' ', scripts)];
        var meaning = what.Meaning ?? (what.Answers is { Count: > 0 } accepted ? accepted[0] : "");
        var end = page.Block([new Words(what.Name, true)], x, y, first - x - 2, sizes.Word, Leading);
        var scriptEnd = y + ((sizes.Word - sizes.Small) * 0.6);
        foreach (var script in scripts)
            scriptEnd = page.Block([script], first, scriptEnd, second - 6, sizes.Small, Leading);
        end = Math.Max(end, scriptEnd);
        // The columns are the same inside a heavy box and outside.
        var left = first + second;
        room = x + room - left;
        Words[] marks = line.Carry == Carry.ThisTerm ? [] : Marks(line);
        y = page.Block([meaning, .. marks], left, y, room, sizes.Word, Leading);
        var plain = item with { Item = what with { Meaning = null, Kanji = null, Kana = null, LookFor = null } };
        var bare = content with { Scripts = new Dictionary<string, ItemScript>() };
        var alone = line with { FromRank = null };
        y = Notes(page, left, y, room, ItemNotes.Of(bare, alone, plain, what.Name, false).Concat(ItemNotes.Of(bare, alone)));
        return Math.Max(end, y);
    }, true);

    /// <summary>A few words above what follows.</summary>
    public Block Label(string words) =>
        Block.Lay(missing, page =>
        {
            var y = 0.0;
            page.Tagged(PaperTag.Heading, () => y = page.Block([new Words(words, true)], 0, 0, width, sizes.Small, 1.35));
            page.Rule(0, width, y + 0.5, 0.35);
            return y + 0.5;
        }, sizes.Gap + 1, true);

    /// <summary>Full words for the marks of a line.</summary>
    private static Words[] Marks(SheetLine line) => line.Carry switch
    {
        Carry.Always or Carry.OnceAskedStays => [new($"{Nbsp}{SheetTexts.Again}", true)],
        Carry.ThisTerm => [" ", new(SheetTexts.ThisTerm.Replace(' ', Nbsp), true)],
        _ => [],
    };

    private double Either(Page page, SheetLine line, double x, double y, double room, string lead, string condition, Words[] marks)
    {
        var (one, two) = (line.Items[0], line.Items[1]);
        y = page.Block(
            [new(lead + " ", true), ItemNotes.Figures(Form(one), one.Item) + " ", new("or ", true), ItemNotes.Figures(Form(two), two.Item) + condition, .. marks],
            x, y, room, sizes.Item, Leading);
        var above = one.Item.Name + " " + two.Item.Name;
        return Notes(page, x, y, room, ItemNotes.Of(content, line, one, above, true).Concat(ItemNotes.Of(content, line, two, above, true)).Concat(ItemNotes.Of(content, line)));
    }

    // Two ways out of one hold are told apart by the way, in small letters.
    private static string Form(SheetItem item) => item.Item.Order is Order.EscapeFrom escape ? escape.By : item.Item.Name;

    private double Notes(Page page, double x, double y, double room, IEnumerable<IReadOnlyList<Words>> notes)
    {
        foreach (var note in notes)
            y = page.Block(note, x, y, room, sizes.Small, Leading);
        return y;
    }

    private Block Boxed(SheetLine line, Func<Page, double, double, double, double> draw, bool ruled = false)
    {
        var across = line.Critical ? 6 : 0.0;
        var down = (line.Critical, ruled) switch { (true, true) => 2.6, (true, false) => 3.4, (false, true) => 2 * sizes.Scale, _ => 0 };
        return Block.Lay(missing, page =>
        {
            var y = 0.0;
            page.Tagged(PaperTag.Paragraph, () => y = draw(page, across, down, width - (2 * across)));
            y += down;
            if (line.Critical)
                page.Add(new BoxInk(new Area(HeavyWeight / 2, HeavyWeight / 2, width - HeavyWeight, y - HeavyWeight), HeavyWeight));
            else if (ruled)
                page.Rule(0, width, y, 0.35);
            return y;
        }, ruled ? line.Critical ? 3 : 0 : sizes.Gap);
    }

    // The box to tick; the answer is where the text beside it begins.
    private static double Tick(Page page, double x, double y, bool heavy, bool ticked, double size)
    {
        var side = size * 0.84;
        var weight = heavy ? 1.8 : 0.9;
        var top = y + (size * Leading / 2) - (side / 2);
        page.Add(new BoxInk(new Area(x + (weight / 2), top, side, side), weight));
        if (ticked)
        {
            var mark = LineBreaker.Measure([new Words("✓", true)], page.Missing);
            foreach (var run in mark.Runs)
                page.Add(new TextInk(x + ((side - (mark.Width * size)) / 2), top + (side * 0.88), size, run, Decoration: true));
        }

        return x + side + 7;
    }
}
