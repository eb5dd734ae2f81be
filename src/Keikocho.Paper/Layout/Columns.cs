namespace Keikocho.Paper.Layout;

/// <summary>Blocks in columns of one width, read down one column and then down the next, as level as their order allows.</summary>
/// <param name="Count">How many columns.</param>
/// <param name="Width">Width of each.</param>
/// <param name="Gap">Free space between two.</param>
internal sealed record Columns(int Count, double Width, double Gap)
{
    /// <summary>Columns over a width.</summary>
    public static Columns Over(double width, int count, double gap) => new(count, (width - (gap * (count - 1))) / count, gap);

    /// <summary>Height of all the blocks in level columns.</summary>
    public double Height(IReadOnlyList<Block> blocks) => Level(Units(blocks));

    /// <summary>
    /// Draws the first blocks that fit above <paramref name="bottom"/>, level when all of them fit; the answer is how many there were and
    /// where they end. On an empty page one is drawn whatever its height.
    /// </summary>
    public (int Drawn, double End) Draw(Page page, double x, double y, double bottom, IReadOnlyList<Block> blocks, bool emptyPage)
    {
        var units = Units(blocks);
        var level = Level(units);
        var height = level <= bottom - y ? level : bottom - y;
        var drawn = 0;
        var end = y;
        for (var column = 0; column < Count && units.Count > 0; column++)
        {
            var (taken, filled) = Fill(units, height);
            if (taken == 0 && emptyPage && drawn == 0)
                taken = 1;
            var at = y;
            for (var i = 0; i < taken; i++)
            {
                foreach (var block in units[i])
                {
                    at += at > y ? block.Above : 0;
                    block.Place(page, x + (column * (Width + Gap)), at);
                    at += block.Height;
                    drawn++;
                }
            }

            units = units[taken..];
            end = Math.Max(end, Math.Max(at, y + filled));
        }

        return (drawn, end);
    }

    // What stays together: a block, or headings with the block after them.
    private static List<List<Block>> Units(IReadOnlyList<Block> blocks)
    {
        var units = new List<List<Block>>();
        var open = false;
        foreach (var block in blocks)
        {
            if (open)
                units[^1].Add(block);
            else
                units.Add([block]);
            open = block.KeepsNext;
        }

        return units;
    }

    // The least height at which all fit. Heights of first columns are the only ones worth trying.
    private double Level(List<List<Block>> units)
    {
        var tries = new SortedSet<double>();
        for (var from = 0; from < units.Count; from++)
        {
            var height = 0.0;
            for (var to = from; to < units.Count; to++)
            {
                height += HeightOf(units[to], to > from);
                tries.Add(height);
            }
        }

        return tries.FirstOrDefault(height => Fits(units, height));
    }

    private bool Fits(List<List<Block>> units, double height)
    {
        for (var column = 0; column < Count && units.Count > 0; column++)
            units = units[Fill(units, height).Taken..];
        return units.Count == 0;
    }

    private static (int Taken, double Height) Fill(List<List<Block>> units, double height)
    {
        var filled = 0.0;
        var taken = 0;
        while (taken < units.Count && filled + HeightOf(units[taken], taken > 0) <= height + 0.001)
            filled += HeightOf(units[taken], taken++ > 0);
        return (taken, filled);
    }

    private static double HeightOf(List<Block> unit, bool below)
    {
        var height = 0.0;
        for (var i = 0; i < unit.Count; i++)
            height += unit[i].Height + (below || i > 0 ? unit[i].Above : 0);
        return height;
    }
}
