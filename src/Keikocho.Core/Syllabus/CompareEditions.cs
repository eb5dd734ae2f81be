namespace Keikocho.Core.Syllabus;

/// <summary>What one edition changed against another, in words.</summary>
/// <param name="Rank">Name of the rank that it is about; null for the ladder, the units or the items.</param>
/// <param name="Sentence">"Yellow: O-goshi, moving was added."</param>
public sealed record EditionChange(string? Rank, string Sentence);

/// <summary>The difference between two editions.</summary>
public static class CompareEditions
{
    /// <summary>Every change, ladder order; empty when they ask the same. The names and days of the editions themselves do not count.</summary>
    /// <exception cref="ArgumentException">One of them has two ranks, units or items with one key, or names an item that it does not have.</exception>
    public static IReadOnlyList<EditionChange> Changes(Edition older, Edition newer)
    {
        ArgumentNullException.ThrowIfNull(older);
        ArgumentNullException.ThrowIfNull(newer);
        var changes = new List<EditionChange>();
        var (old, now) = (PreparedEdition.Of(older), PreparedEdition.Of(newer));
        if (older.Ladder != newer.Ladder)
            changes.Add(new(null, $"The ladder \"{older.Ladder}\" is now \"{newer.Ladder}\"."));
        Ladder(older, newer, changes);
        foreach (var rank in newer.Ranks)
        {
            if (older.Ranks.FirstOrDefault(r => r.Key == rank.Key) is { } before)
                changes.AddRange(ChangesOfRank.Between(old, before, now, rank));
        }

        changes.AddRange(ChangesOfUnits.Between(old, now).Concat(ChangesOfItems.Between(older, newer)).Select(s => new EditionChange(null, s)));
        return changes;
    }

    private static void Ladder(Edition older, Edition newer, List<EditionChange> changes)
    {
        foreach (var rank in older.Ranks.Where(r => newer.Ranks.All(n => n.Key != r.Key)))
            changes.Add(new(rank.Name, $"{rank.Name} was dropped."));
        for (var i = 0; i < newer.Ranks.Count; i++)
        {
            if (older.Ranks.All(r => r.Key != newer.Ranks[i].Key))
                changes.Add(new(newer.Ranks[i].Name, $"{newer.Ranks[i].Name} was added, {After(newer, i)}."));
        }

        var moved = Moved([.. older.Ranks.Select(r => r.Key)], [.. newer.Ranks.Select(r => r.Key)]);
        for (var i = 0; i < newer.Ranks.Count; i++)
        {
            if (moved.Contains(newer.Ranks[i].Key))
                changes.Add(new(newer.Ranks[i].Name, $"{newer.Ranks[i].Name} has another place: {After(newer, i)}."));
        }
    }

    private static string After(Edition edition, int at) => at == 0 ? "now the first" : $"now after {edition.Ranks[at - 1].Name}";

    /// <summary>The fewest keys that have to move to make one order the other: all but a longest run that kept its order.</summary>
    internal static HashSet<string> Moved(IReadOnlyList<string> older, IReadOnlyList<string> newer)
    {
        var before = older.Where(newer.Contains).ToList();
        var after = newer.Where(older.Contains).ToList();
        var places = after.Select(k => before.IndexOf(k)).ToList();
        var best = new int[places.Count];
        var from = new int[places.Count];
        var end = -1;
        for (var i = 0; i < places.Count; i++)
        {
            (best[i], from[i]) = (1, -1);
            for (var j = 0; j < i; j++)
            {
                if (places[j] < places[i] && best[j] + 1 > best[i])
                    (best[i], from[i]) = (best[j] + 1, j);
            }

            if (end < 0 || best[i] > best[end])
                end = i;
        }

        var moved = after.ToHashSet(StringComparer.Ordinal);
        for (; end >= 0; end = from[end])
            moved.Remove(after[end]);
        return moved;
    }
}
