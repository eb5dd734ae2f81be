using System.Collections.Frozen;
using System.Collections.Immutable;
using Keikocho.Store.Syllabus;

namespace Keikocho.Store.Book;

/// <summary>Names and belts of ranks on a day: those of the edition that holds on it, whatever was published for later.</summary>
internal static class RankNames
{
    /// <summary>The rows with the names of a day; as they are where no edition is to come, or none holds yet.</summary>
    public static IReadOnlyList<RankRow> Of(IReadOnlyList<RankRow> ranks, FrozenDictionary<Guid, ImmutableArray<PublishedEdition>> editions, DateOnly? today)
    {
        // A row has the newest names: they are the day's own unless an edition is to come.
        if (today is not { } day || editions.Values.All(own => own[^1].From <= day)) return ranks;
        var holds = editions.Where(e => e.Value[^1].From > day)
            .Select(e => (e.Key, Edition: e.Value.LastOrDefault(p => p.From <= day))).Where(e => e.Edition is not null)
            .ToDictionary(e => e.Key, e => e.Edition!.Edition.Ranks.ToDictionary(r => r.Key, StringComparer.Ordinal));
        return [.. ranks.Select(row => holds.TryGetValue(row.LadderId, out var known) && known.TryGetValue(row.Key, out var rank)
            ? new RankRow
            {
                Club = row.Club, Id = row.Id, LadderId = row.LadderId, Key = row.Key, Name = rank.Name, Cloth = rank.Cloth, Tips = rank.Tips, Position = row.Position,
            }
            : row)];
    }
}
