namespace Keikocho.Core.Partners;

/// <summary>
/// Who may work with whom, yes or no, by places in the register: what a tablet holds. It has no order of preference, for an order would tell sizes.
/// </summary>
/// <param name="May">A row for each child, a character for each: 1 where the two may work together, 0 where not.</param>
/// <param name="Middle">A character for each child: 1 where it may be the middle of a three.</param>
/// <param name="Share">A row for each child: 1 where the two may be the outer ones of one three.</param>
public sealed record MayWork(IReadOnlyList<string> May, string Middle, IReadOnlyList<string> Share)
{
    internal bool Pair(int a, int b) => a != b && May[a][b] == '1';

    internal bool Three(int one, int middle, int other) =>
        one != other && Middle[middle] == '1' && Pair(one, middle) && Pair(middle, other) && Share[one][other] == '1';

    internal void Guard()
    {
        var n = Middle.Length;
        if (May.Count != n || Share.Count != n || May.Concat(Share).Append(Middle).Any(row => row.Length != n || row.Any(c => c is not ('0' or '1'))))
            throw new ArgumentException("A table of who may work with whom has a row and a character for each child, 0 or 1.", nameof(May));
        for (var a = 0; a < n; a++)
        {
            for (var b = 0; b < n; b++)
            {
                if (May[a][b] != May[b][a] || Share[a][b] != Share[b][a])
                    throw new ArgumentException("A table of who may work with whom says the same both ways.", nameof(May));
            }
        }
    }
}

/// <summary>
/// The repair that a tablet makes without a network: at most two groups that stood change, and of the ways that there are the first in register
/// order. docs/sums/pair.md has the rule in steps; a twin in the tablet's own language follows the same vectors.
/// </summary>
public static class FirstLegalRepair
{
    /// <summary>Repairs; null where at most two changes do not do, and the laptop has to be asked.</summary>
    /// <param name="table">Who may work with whom.</param>
    /// <param name="standing">Groups by places: one with an adult, two, or three with the middle in the middle.</param>
    /// <param name="here">Places of those who are here, in any order.</param>
    /// <param name="adults">How many adults can partner a child.</param>
    /// <returns>Groups, each in register order save that a middle stands in the middle; in mat order.</returns>
    /// <exception cref="ArgumentException">A table, a place or a group that means nothing.</exception>
    public static IReadOnlyList<IReadOnlyList<int>>? Mend(MayWork table, IReadOnlyList<IReadOnlyList<int>> standing, IReadOnlyList<int> here, int adults)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(standing);
        ArgumentNullException.ThrowIfNull(here);
        table.Guard();
        var all = standing.SelectMany(g => g).ToArray();
        if (all.Concat(here).Any(c => c < 0 || c >= table.Middle.Length) || all.Distinct().Count() != all.Length || standing.Any(g => g.Count is < 1 or > 3))
            throw new ArgumentException("A group has one to three children of the table, and nobody stands in two.", nameof(standing));

        // Step 1: what still stands, and who is loose.
        var present = here.ToHashSet();
        var kept = new List<int[]>();
        var loose = new List<int>(present.Except(all));
        var changed = 0;
        foreach (var group in standing)
        {
            int[] left = [.. group.Where(present.Contains)];
            if (left.Length == group.Count && Stands(table, left, adults))
            {
                kept.Add(left.Length == 3 && left[0] > left[2] ? [left[2], left[1], left[0]] : left.Length == 2 ? [.. left.Order()] : left);
                continue;
            }

            loose.AddRange(left);
            changed += left.Length > 0 ? 1 : 0;
        }

        kept.Sort((a, b) => a.Min() - b.Min());

        // Step 2: nothing more is opened, then one group, then two; the first that does.
        for (var more = 0; more + changed <= RepairPairs.MostChanged; more++)
        {
            foreach (var opened in Choices(kept.Count, more))
            {
                int[] pool = [.. loose.Concat(opened.SelectMany(i => kept[i])).Order()];
                int[][] rest = [.. kept.Where((_, i) => !opened.Contains(i))];
                if (Seat(table, pool, rest.All(g => g.Length == 2), adults) is { } seated)
                    return [.. rest.Concat(seated).OrderBy(g => g.Min())];
            }
        }

        return null;
    }

    private static bool Stands(MayWork table, int[] group, int adults) => group.Length switch
    {
        1 => adults > 0,
        2 => table.Pair(group[0], group[1]),
        _ => table.Three(group[0], group[1], group[2]),
    };

    /// <summary>Sets of so many of the kept groups, in the order of the mat.</summary>
    private static IEnumerable<int[]> Choices(int groups, int many)
    {
        if (many == 0)
        {
            yield return [];
        }
        else if (many == 1)
        {
            for (var i = 0; i < groups; i++)
                yield return [i];
        }
        else
        {
            for (var i = 0; i < groups; i++)
            {
                for (var j = i + 1; j < groups; j++)
                    yield return [i, j];
            }
        }
    }

    /// <summary>Step 3: the loose ones among themselves; an odd one with an adult, else a three, and neither where there is one already.</summary>
    private static List<int[]>? Seat(MayWork table, int[] pool, bool oddIsFree, int adults)
    {
        if (pool.Length % 2 == 0)
            return Pairs(table, pool);
        if (!oddIsFree)
            return null;
        if (adults > 0)
        {
            foreach (var one in pool)
            {
                if (Pairs(table, [.. pool.Where(c => c != one)]) is { } pairs)
                    return [.. pairs, [one]];
            }
        }

        foreach (var middle in pool)
        {
            foreach (var one in pool)
            {
                foreach (var other in pool)
                {
                    if (one >= other || one == middle || other == middle || !table.Three(one, middle, other))
                        continue;
                    if (Pairs(table, [.. pool.Where(c => c != middle && c != one && c != other)]) is { } pairs)
                        return [.. pairs, [one, middle, other]];
                }
            }
        }

        return null;
    }

    /// <summary>The first with the earliest partner that leaves the rest a way, and so on.</summary>
    private static List<int[]>? Pairs(MayWork table, int[] pool)
    {
        if (pool.Length == 0)
            return [];
        for (var i = 1; i < pool.Length; i++)
        {
            if (table.Pair(pool[0], pool[i]) && Pairs(table, [.. pool[1..i], .. pool[(i + 1)..]]) is { } rest)
                return [[pool[0], pool[i]], .. rest];
        }

        return null;
    }
}
