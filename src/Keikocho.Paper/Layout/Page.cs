namespace Keikocho.Paper.Layout;

/// <summary>One page while it is laid out. Text outside any tag is decoration: it repeats what stands elsewhere.</summary>
internal sealed class Page(Area inside, ISet<int> missing)
{
    private readonly List<Ink> _ink = [];

    /// <summary>Where anything may be drawn.</summary>
    public Area Inside { get; } = inside;

    /// <summary>Everything on the page, in order.</summary>
    public IReadOnlyList<Ink> Ink => _ink;

    /// <summary>Characters that no font has, of the whole paper.</summary>
    public ISet<int> Missing { get; } = missing;

    /// <summary>Adds one thing.</summary>
    public void Add(Ink ink) => _ink.Add(ink);

    /// <summary>A horizontal rule.</summary>
    public void Rule(double x1, double x2, double y, double weight, double dash = 0) => Add(new LineInk(x1, y, x2, y, weight, dash));

    /// <summary>Draws inside an element.</summary>
    public void Tagged(PaperTag tag, Action draw)
    {
        Add(new OpenTag(tag));
        draw();
        Add(new CloseTag());
    }

    /// <summary>One line that starts, ends or has its middle at <paramref name="x"/>.</summary>
    public void Line(TextLine line, double x, double baseline, double size, Align align = Align.Left, bool white = false)
    {
        var at = align switch
        {
            Align.Left => x,
            Align.Centre => x - (line.Width * size / 2),
            Align.Right => x - (line.Width * size),
            _ => throw new ArgumentOutOfRangeException(nameof(align)),
        };
        foreach (var run in line.Runs)
        {
            Add(new TextInk(at, baseline, size, run, white));
            at += run.Width * size;
        }
    }

    /// <summary>One line, not wrapped.</summary>
    public void Line(IReadOnlyList<Words> text, double x, double baseline, double size, Align align = Align.Left, bool white = false) =>
        Line(LineBreaker.Measure(text, Missing), x, baseline, size, align, white);

    /// <summary>One line that runs up the page.</summary>
    public void Upward(TextLine line, double x, double bottom, double size)
    {
        foreach (var run in line.Runs)
        {
            Add(new TextInk(x, bottom, size, run, Upward: true));
            bottom -= run.Width * size;
        }
    }

    /// <summary>A paragraph from <paramref name="top"/> down; the answer is where it ends.</summary>
    public double Block(IReadOnlyList<Words> text, double x, double top, double width, double size, double leading = TextLeading)
    {
        foreach (var line in LineBreaker.Break(text, size, width, Missing))
        {
            Line(line, x, top + (size * leading / 2) + (FontSet.CapitalHeight * size / 2), size);
            top += size * leading;
        }

        return top;
    }

    /// <summary>Height that <see cref="Block"/> will take.</summary>
    public double BlockHeight(IReadOnlyList<Words> text, double width, double size, double leading = TextLeading) =>
        LineBreaker.Break(text, size, width, Missing).Count * size * leading;

    /// <summary>Distance of two lines of text, as a part of the size.</summary>
    public const double TextLeading = 1.4;
}

/// <summary>Where text stands in its column.</summary>
internal enum Align
{
    /// <summary>Starts at the left edge.</summary>
    Left,

    /// <summary>In the middle.</summary>
    Centre,

    /// <summary>Ends at the right edge.</summary>
    Right,
}
