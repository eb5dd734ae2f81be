using Keikocho.Core.Intake;
using Keikocho.Core.Syllabus;

namespace Keikocho.Store.Syllabus;

/// <summary>
/// Which rank of an edition each rank of the club is, so that belts that are worn stay worn: by its key, else by its name, else by the
/// only belt of that cloth and those tips.
/// </summary>
public static class MatchRanks
{
    /// <summary>The row of each rank's key; a rank that the club has no row for is not in it.</summary>
    /// <param name="rows">Ranks of the ladder.</param>
    /// <param name="edition">The edition.</param>
    /// <param name="fixedKeys">Keys that a published edition names: a row with one of them is that rank and no other.</param>
    public static IReadOnlyDictionary<string, RankRow> Match(IReadOnlyList<RankRow> rows, Edition edition, IReadOnlySet<string> fixedKeys)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(edition);
        ArgumentNullException.ThrowIfNull(fixedKeys);
        var found = new Dictionary<string, RankRow>(StringComparer.Ordinal);
        var ordered = rows.OrderBy(r => r.Position).ThenBy(r => r.Id).ToList();
        foreach (var rank in edition.Ranks)
            if (ordered.FirstOrDefault(r => r.Key.Length > 0 && r.Key == rank.Key) is { } row) found.TryAdd(rank.Key, row);
        var free = ordered.Where(r => !found.ContainsValue(r) && !fixedKeys.Contains(r.Key)).ToList();
        Take(edition, found, free, (rank, row) => NameFold.Fold(rank.Name) == NameFold.Fold(row.Name));
        Take(edition, found, free, (rank, row) => BeltOf(rank) is { } belt && belt == BeltOf(row));
        return found;
    }

    // Only where one rank and one row are meant: of two alike nobody knows which is which.
    private static void Take(Edition edition, Dictionary<string, RankRow> found, List<RankRow> free, Func<LadderRank, RankRow, bool> alike)
    {
        var open = edition.Ranks.Where(r => !found.ContainsKey(r.Key)).ToList();
        foreach (var rank in open)
        {
            var rows = free.Where(row => alike(rank, row)).ToList();
            if (rows.Count != 1 || open.Count(r => alike(r, rows[0])) != 1) continue;
            found.Add(rank.Key, rows[0]);
        }

        free.RemoveAll(found.ContainsValue);
    }

    private static (string Cloth, int Tips)? BeltOf(LadderRank rank) =>
        rank.Cloth is { } cloth ? (cloth, rank.Tips) : Read(rank.Name);

    private static (string Cloth, int Tips)? BeltOf(RankRow row) =>
        row.Cloth is { } cloth ? (cloth, row.Tips) : Read(row.Name);

    private static (string Cloth, int Tips)? Read(string words) =>
        RankWords.Read(words) is { Cloth: { } cloth } read ? (cloth, read.Tips) : null;
}
