namespace Keikocho.Core.Mat;

/// <summary>
/// Lays as many working spaces as it finds room for: the part is cut into bands, a band into columns, a column into equal spaces. Bands
/// across the length and bands across the width are both tried. Sizes are whole centimetres.
/// </summary>
internal static class LayCells
{
    private const int FineStepCm = 10;
    private const int CoarseStepCm = 25;
    private const int FineUpToCm = 2_000;

    /// <summary>The spaces; of as many, the layout with fewer that are longer toward the line than along it.</summary>
    public static IReadOnlyList<MatArea> Most(MatArea part, IReadOnlyList<MatArea> blocks, long cellCm2, int sideCm)
    {
        var along = Bands(part, blocks, cellCm2, sideCm);
        var across = Bands(Turned(part), [.. blocks.Select(Turned)], cellCm2, sideCm).Select(Turned).ToList();
        return across.Count > along.Count || (across.Count == along.Count && Deep(across) < Deep(along)) ? across : along;
    }

    private static int Deep(IEnumerable<MatArea> cells) => cells.Count(c => c.LengthCm > c.WidthCm);

    private static MatArea Turned(MatArea area) => new(area.FromWidthCm, area.FromLengthCm, area.WidthCm, area.LengthCm);

    private static List<MatArea> Bands(MatArea part, IReadOnlyList<MatArea> blocks, long cellCm2, int sideCm)
    {
        if (part.LengthCm < sideCm || part.WidthCm < sideCm) return [];
        var cuts = Cuts(part, blocks);
        var deepest = Math.Max(2 * sideCm, 4 * (int)(cellCm2 / sideCm));
        var columns = new Dictionary<int, Columns>();
        var best = new (int Cells, int Deep, int From)[cuts.Count];
        for (var to = 1; to < cuts.Count; to++)
        {
            best[to] = (best[to - 1].Cells, best[to - 1].Deep, -1);
            for (var from = to - 1; from >= 0; from--)
            {
                var depth = cuts[to] - cuts[from];
                if (depth < sideCm || (depth > deepest && !(from == 0 && to == cuts.Count - 1))) continue;
                if (!columns.TryGetValue(depth, out var own)) columns.Add(depth, own = new Columns(depth, part.WidthCm, cellCm2, sideCm));
                if (own.Most(part.WidthCm) == 0) continue;
                var (cells, deep) = (best[from].Cells, best[from].Deep);
                foreach (var (start, end) in Free(part, blocks, cuts[from], cuts[to]))
                {
                    var count = own.Most(end - start);
                    cells += count;
                    deep += own.Deep(count);
                }

                if (cells > best[to].Cells || (cells == best[to].Cells && deep < best[to].Deep)) best[to] = (cells, deep, from);
            }
        }

        var laid = new List<MatArea>();
        for (var to = cuts.Count - 1; to > 0;)
        {
            var from = best[to].From;
            if (from < 0)
            {
                to--;
                continue;
            }

            var own = columns[cuts[to] - cuts[from]];
            foreach (var (start, end) in Free(part, blocks, cuts[from], cuts[to]))
                laid.AddRange(own.Lay(cuts[from], start, end - start));
            to = from;
        }

        return laid;
    }

    private static List<int> Cuts(MatArea part, IReadOnlyList<MatArea> blocks)
    {
        var cuts = new SortedSet<int> { part.FromLengthCm, part.ToLengthCm };
        var step = part.LengthCm <= FineUpToCm ? FineStepCm : CoarseStepCm;
        for (var at = part.FromLengthCm + step; at < part.ToLengthCm; at += step) cuts.Add(at);
        foreach (var edge in blocks.SelectMany(b => new[] { b.FromLengthCm, b.ToLengthCm }))
        {
            if (edge > part.FromLengthCm && edge < part.ToLengthCm) cuts.Add(edge);
        }

        return [.. cuts];
    }

    /// <summary>Where a band is free across its whole depth.</summary>
    private static List<(int Start, int End)> Free(MatArea part, IReadOnlyList<MatArea> blocks, int from, int to)
    {
        var free = new List<(int, int)>();
        var at = part.FromWidthCm;
        if (blocks.Count > 0)
        {
            foreach (var block in blocks.Where(b => b.FromLengthCm < to && from < b.ToLengthCm).OrderBy(b => b.FromWidthCm))
            {
                if (block.FromWidthCm > at) free.Add((at, Math.Min(block.FromWidthCm, part.ToWidthCm)));
                at = Math.Max(at, block.ToWidthCm);
                if (at >= part.ToWidthCm) return free;
            }
        }

        if (at < part.ToWidthCm) free.Add((at, part.ToWidthCm));
        return free;
    }

    /// <summary>How many spaces a band of one depth takes on so much width: columns of one or more equal spaces, the narrowest choice for each number.</summary>
    private sealed class Columns
    {
        private readonly List<(int Width, int Stack, int Deep)> _least = [(0, 0, 0)];
        private readonly int _depth;
        private readonly List<int> _widths = [0];

        public Columns(int depth, int widest, long cellCm2, int sideCm)
        {
            _depth = depth;
            for (var stack = 1; depth / stack >= sideCm; stack++)
            {
                var deep = depth / stack;
                _widths.Add(Math.Max(sideCm, (int)((cellCm2 + deep - 1) / deep)));
            }

            while (true)
            {
                var number = _least.Count;
                (int Width, int Stack, int Deep) least = (int.MaxValue, 0, 0);
                for (var stack = 1; stack <= Math.Min(number, _widths.Count - 1); stack++)
                {
                    var rest = _least[number - stack];
                    var own = (rest.Width + _widths[stack], stack, rest.Deep + (depth / stack > _widths[stack] ? stack : 0));
                    if (own.Item1 < least.Width || (own.Item1 == least.Width && own.Item3 < least.Deep)) least = own;
                }

                if (least.Width > widest) return;
                _least.Add(least);
            }
        }

        public int Deep(int count) => _least[count].Deep;

        /// <summary>The most spaces on so much width.</summary>
        public int Most(int width)
        {
            // The least width rises with the number: a column with one space fewer is not wider.
            var (fits, tooMany) = (0, _least.Count);
            while (tooMany - fits > 1)
            {
                var middle = (fits + tooMany) / 2;
                if (_least[middle].Width <= width) fits = middle;
                else tooMany = middle;
            }

            return fits;
        }

        /// <summary>The spaces themselves; what is left of the width is shared out among the columns.</summary>
        public IEnumerable<MatArea> Lay(int fromLength, int fromWidth, int width)
        {
            var stacks = new List<int>();
            for (var number = Most(width); number > 0; number -= _least[number].Stack) stacks.Add(_least[number].Stack);
            if (stacks.Count == 0) yield break;
            var spare = (width - stacks.Sum(s => _widths[s])) / stacks.Count;
            var at = fromWidth;
            foreach (var stack in stacks.OrderDescending())
            {
                var wide = _widths[stack] + spare;
                var deep = _depth / stack;
                for (var i = 0; i < stack; i++) yield return new MatArea(fromLength + (i * deep), at, deep, wide);
                at += wide;
            }
        }
    }
}
