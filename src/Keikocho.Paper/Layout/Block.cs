namespace Keikocho.Paper.Layout;

/// <summary>Something of a known height, laid out once at the origin and put wherever there is room.</summary>
internal sealed class Block
{
    private readonly IReadOnlyList<Ink> _ink;

    private Block(IReadOnlyList<Ink> ink, double height)
    {
        _ink = ink;
        Height = height;
    }

    /// <summary>Its height.</summary>
    public double Height { get; }

    /// <summary>Free space above it, save at the top of a column.</summary>
    public double Above { get; init; }

    /// <summary>True for a heading: never without what comes after it.</summary>
    public bool KeepsNext { get; init; }

    /// <summary>Lays a block out; the function draws from the origin down and says where it ends.</summary>
    public static Block Lay(ISet<int> missing, Func<Page, double> draw, double above = 0, bool keepsNext = false)
    {
        var page = new Page(default, missing);
        var height = draw(page);
        return new Block(page.Ink, height) { Above = above, KeepsNext = keepsNext };
    }

    /// <summary>Puts it on a page.</summary>
    public void Place(Page page, double x, double y)
    {
        foreach (var ink in _ink)
            page.Add(ink.Moved(x, y));
    }
}
