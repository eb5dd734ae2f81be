namespace Keikocho.Core.Partners;

/// <summary>
/// Finds the best seating of one kind, exactly. A three is a matching in which its middle stands twice; what its outer two may not be to each
/// other splits the question into a few that need no such rule.
/// </summary>
/// <param name="table">Gates and costs.</param>
/// <param name="worstFirst">The worst pair before the sum.</param>
/// <param name="standing">Groups that stand: then as many of them as can be are kept, before anything else; null where none stand.</param>
internal sealed class SeatEverybody(LinkTable table, bool worstFirst, StandingSeats? standing = null)
{
    private readonly int _n = table.Children.Count;

    /// <summary>The best of one kind; null where there is none. Who was asked for together is, where the others can still be placed.</summary>
    public Seating? Find(OfferKind kind)
    {
        if (standing is not null)
            return KeepStanding(kind);
        var together = TogetherLinks();
        if (together.Count == 0 || Find(kind, together) is not { } kept)
            return Find(kind, []);
        return kept.Left.Count > 0 && Find(kind, [])!.Left.Count < kept.Left.Count ? Find(kind, []) : kept;
    }

    private Seating? Find(OfferKind kind, List<(int, int)> together)
    {
        int[] others = [.. Enumerable.Range(0, _n).Where(c => together.All(t => t.Item1 != c && t.Item2 != c))];
        return kind switch
        {
            OfferKind.Pairs => others.Length % 2 != 0 ? null : Solve(kind, others, together),
            OfferKind.Adult => others.Length % 2 != 1 ? null : Solve(kind, others, together),
            OfferKind.Three => others.Length % 2 != 1 ? null : Three(others, together),
            _ => Solve(kind, others, together),
        };
    }

    private Seating? KeepStanding(OfferKind kind)
    {
        var seated = Find(kind, []);
        if (kind != OfferKind.Three || standing!.Three is not { } three)
            return seated;

        // The three that stands, as it is, or another one; in another one no link of a pair counts as kept.
        int[] rest = [.. Enumerable.Range(0, _n).Where(c => c != three.Middle && c != three.One && c != three.Other)];
        if (rest.Length % 2 != 0 || Solve(OfferKind.Three, rest, [(three.One, three.Middle), (three.Middle, three.Other)]) is not { } same)
            return seated;
        same = same with { Middle = three.Middle };
        return seated is null || standing.Kept(same) > standing.Kept(seated) || (standing.Kept(same) == standing.Kept(seated) && same.Compare(seated, worstFirst) < 0) ? same : seated;
    }

    /// <summary>The links asked for that no gate forbids; of two for one child the first in register order.</summary>
    private List<(int, int)> TogetherLinks()
    {
        var links = new List<(int, int)>();
        foreach (var (a, b) in table.AskedTogether)
        {
            if (table.May(a, b) && links.All(l => l.Item1 != a && l.Item2 != a && l.Item1 != b && l.Item2 != b))
                links.Add((a, b));
        }

        return links;
    }

    private Seating? Three(int[] others, List<(int, int)> together)
    {
        Seating? best = null;
        foreach (var middle in others)
        {
            if (!table.MayBeMiddle(middle))
                continue;
            int[] outers = [.. others.Where(c => table.May(c, middle))];
            if (outers.Length < 2)
                continue;
            foreach (var part in Parts(middle, outers))
            {
                if (Solve(OfferKind.Three, others, together, part, best) is not { } found)
                    continue;
                var more = best is null || standing is null ? 0 : standing.Kept(found) - standing.Kept(best);
                if (best is null || more > 0 || (more == 0 && found.Compare(best, worstFirst) < 0))
                    best = found;
            }
        }

        return best;
    }

    /// <summary>A part of the question about one middle: the first outer child where it is settled, and who may be an outer child at all.</summary>
    private sealed record ThreePart(int Middle, int Outer, HashSet<int> Outers);

    /// <summary>Parts that cover every allowed three of this middle and no other.</summary>
    private IEnumerable<ThreePart> Parts(int middle, int[] outers)
    {
        var barred = new List<(int, int)>();
        for (var i = 0; i < outers.Length; i++)
        {
            for (var j = i + 1; j < outers.Length; j++)
            {
                if (!table.MayShareThree(outers[i], outers[j]))
                    barred.Add((outers[i], outers[j]));
            }
        }

        if (barred.Count == 0)
            return [new ThreePart(middle, -1, [.. outers])];
        if (barred.Count <= 2)
            return Without(middle, [.. outers], barred, 0);

        // Many who may not share a three: who is in none of these pairs, and then each of the others as the first outer child.
        var named = barred.SelectMany(b => (int[])[b.Item1, b.Item2]).Distinct().Order().ToArray();
        var parts = new List<ThreePart> { new(middle, -1, [.. outers.Except(named)]) };
        parts.AddRange(named.Select(a => new ThreePart(middle, a, [.. outers.Where(c => table.MayShareThree(a, c))])));
        return parts;
    }

    private static IEnumerable<ThreePart> Without(int middle, HashSet<int> outers, List<(int, int)> barred, int from)
    {
        while (from < barred.Count && !(outers.Contains(barred[from].Item1) && outers.Contains(barred[from].Item2)))
            from++;
        if (from == barred.Count)
            return [new ThreePart(middle, -1, outers)];
        return Without(middle, [.. outers.Where(c => c != barred[from].Item1)], barred, from + 1)
            .Concat(Without(middle, [.. outers.Where(c => c != barred[from].Item2)], barred, from + 1));
    }

    /// <summary>Sets up one matching and solves it.</summary>
    /// <param name="kind">How everybody is placed.</param>
    /// <param name="others">Who is to be matched.</param>
    /// <param name="together">Links that are settled.</param>
    /// <param name="three">Of a three, which.</param>
    /// <param name="best">What is known already; where this is worse, null is an answer.</param>
    private Seating? Solve(OfferKind kind, int[] others, List<(int, int)> together, ThreePart? three = null, Seating? best = null)
    {
        var seats = new List<int>();
        foreach (var c in others)
        {
            if (c == three?.Outer)
                continue;
            seats.Add(c);
            if (c == three?.Middle && three.Outer < 0)
                seats.Add(c);
        }

        // An adult comes last, and in part a stranger makes the number even: neither is a child.
        if (kind == OfferKind.Adult || (kind == OfferKind.Part && seats.Count % 2 == 1))
            seats.Add(-1);
        var settled = new List<(int, int)>(together);
        if (three is { Outer: >= 0 })
            settled.Add((three.Outer, three.Middle));
        var costs = Costs(seats, kind, three);
        if (standing is not null)
        {
            if (WithFewestMoves(costs, seats, settled, three, best) is not { } kept)
                return null;
            costs = kept;
            best = null;
        }
        else if (worstFirst)
        {
            if (BottleneckMatching.Threshold(costs) is not { } most)
                return null;
            most = Math.Max(most, settled.Count == 0 ? 0 : settled.Max(s => table.Cost(s.Item1, s.Item2)));
            if (most > best?.Worst)
                return null;
            costs = costs.UpTo(most);
            if (most < best?.Worst)
                best = null;
        }

        if (best is not null && (MinimumMatching.Find(costs) is not { } first || first.Cost + settled.Sum(s => table.Cost(s.Item1, s.Item2)) > best.Total))
            return null;

        var mates = LevelledMatching.Solve(costs, (i, j) => Since(seats[i], seats[j]));
        if (mates is null)
            return null;
        var links = new List<(int, int)>(settled);
        var left = new List<int>();
        var withAdult = -1;
        for (var i = 0; i < mates.Length; i++)
        {
            var (a, b) = (seats[i], seats[mates[i]]);
            if (i > mates[i])
                continue;
            if (a >= 0 && b >= 0 && table.May(a, b))
                links.Add((a, b));
            else if (kind == OfferKind.Adult)
                withAdult = Math.Max(a, b);
            else
                left.AddRange(((int[])[a, b]).Where(c => c >= 0));
        }

        left.Sort();
        return Seating.Of(kind, table, links, three?.Middle ?? -1, withAdult, left);
    }

    /// <summary>The costs with a move above all of them, up to the least threshold at which the moves are still as few; null where it is beaten already.</summary>
    private MatchingCosts? WithFewestMoves(MatchingCosts costs, List<int> seats, List<(int, int)> settled, ThreePart? three, Seating? best)
    {
        var moves = new MatchingCosts(costs.Vertices);
        for (var i = 0; i < costs.Vertices; i++)
        {
            for (var j = i + 1; j < costs.Vertices; j++)
            {
                if (!costs.Has(i, j))
                    continue;
                var inThree = three is not null && (seats[i] == three.Middle || seats[j] == three.Middle);
                moves[i, j] = !inThree && standing!.Has(seats[i], seats[j]) ? 0 : 1;
            }
        }

        if (MinimumMatching.Find(moves) is not { } fewest || (best is not null && (costs.Vertices / 2) - fewest.Cost < standing!.Kept(best)))
            return null;
        var worst = settled.Count == 0 ? 0 : settled.Max(s => table.Cost(s.Item1, s.Item2));
        var values = costs.Distinct();
        var (low, high) = (0, values.Length - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (values[middle] < worst || Narrow(values[middle]) is not { } found || found.Cost > fewest.Cost)
                low = middle + 1;
            else
                high = middle;
        }

        var scale = 1L;
        foreach (var value in values)
            scale += value * costs.Vertices;
        var together = new MatchingCosts(costs.Vertices);
        for (var i = 0; i < costs.Vertices; i++)
        {
            for (var j = i + 1; j < costs.Vertices; j++)
            {
                if (costs.Has(i, j) && costs[i, j] <= (values.Length == 0 ? 0 : Math.Max(worst, values[high])))
                    together[i, j] = moves[i, j] * scale + costs[i, j];
            }
        }

        return together;

        MatchingAnswer? Narrow(long most)
        {
            var narrow = moves.Copy();
            for (var i = 0; i < costs.Vertices; i++)
            {
                for (var j = i + 1; j < costs.Vertices; j++)
                {
                    if (costs[i, j] > most)
                        narrow[i, j] = MatchingCosts.Absent;
                }
            }

            return MinimumMatching.Find(narrow);
        }
    }

    private int Since(int a, int b) => a >= 0 && b >= 0 && table.May(a, b) ? table.Since(a, b) : LinkTable.Never;

    private MatchingCosts Costs(List<int> seats, OfferKind kind, ThreePart? three)
    {
        var costs = new MatchingCosts(seats.Count);

        // In part: two left over cost more than all links together, so they are as few as can be.
        var dearest = 0;
        for (var a = 0; a < _n; a++)
        {
            for (var b = a + 1; b < _n; b++)
                dearest = table.May(a, b) ? Math.Max(dearest, table.Cost(a, b)) : dearest;
        }

        var apart = (dearest + 1L) * (_n + 2);
        for (var i = 0; i < seats.Count; i++)
        {
            for (var j = i + 1; j < seats.Count; j++)
            {
                var (a, b) = (seats[i], seats[j]);
                if (a >= 0 && b >= 0 && table.May(a, b) && MayLink(a, b, three))
                    costs[i, j] = table.Cost(a, b);
                else if (kind == OfferKind.Part)
                    costs[i, j] = apart;
                else if (kind == OfferKind.Adult && b < 0)
                    costs[i, j] = 0;
            }
        }

        return costs;
    }

    private static bool MayLink(int a, int b, ThreePart? three) =>
        three is null || (a != three.Middle && b != three.Middle) || three.Outers.Contains(a == three.Middle ? b : a);
}
