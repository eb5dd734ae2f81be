namespace Keikocho.Core.Intake;

/// <summary>A rank of a ladder that a file's words make.</summary>
/// <param name="Name">The club's own words: the spelling met most, the first of those.</param>
/// <param name="Cloth">The word of the look for the cloth; null where it cannot be drawn.</param>
/// <param name="Tips">Red tips, 0 to 2.</param>
/// <param name="Spellings">Every spelling of the file, the name among them.</param>
public sealed record DraftRank(string Name, string? Cloth, int Tips, IReadOnlyList<string> Spellings);

/// <summary>A ladder that a file's words make.</summary>
/// <param name="Ranks">Lowest first. Without the words that are still asked about or were left out.</param>
/// <param name="Doubts">Where the others stand; the next one comes up when one is answered.</param>
public sealed record DraftLadder(IReadOnlyList<DraftRank> Ranks, IReadOnlyList<Doubt> Doubts)
{
    /// <summary>The rank of a spelling; null where it is left out or still asked about.</summary>
    public DraftRank? Of(string spelling) => Ranks.FirstOrDefault(rank => rank.Spellings.Contains(spelling));
}

/// <summary>Makes a ladder of the words that a roster uses for ranks, for a programme that has none.</summary>
/// <remarks>
/// Colours stand in the order white, yellow, orange, green, blue, brown, black (common practice, no source), a second colour and tips
/// between them; kyu fall and mon rise. Every other word is asked about, one after the other, each against those that stand already.
/// </remarks>
public static class LadderFromWords
{
    /// <summary>The ladder so far.</summary>
    /// <param name="words">The words of every line, in the file's order, repeated as they are there.</param>
    /// <param name="answers">The answers given so far.</param>
    public static DraftLadder Draft(IEnumerable<string> words, Answers answers)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(answers);
        var groups = new List<(RankWord Word, List<string> Spellings)>();
        var byKey = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        var read = new Dictionary<string, RankWord>(StringComparer.Ordinal);
        foreach (var spelling in words.Where(word => word.Length > 0))
        {
            if (!read.TryGetValue(spelling, out var word)) read.Add(spelling, word = RankWords.Read(spelling));
            if (!byKey.TryGetValue(word.Key, out var spellings))
            {
                byKey.Add(word.Key, spellings = []);
                groups.Add((word, spellings));
            }

            spellings.Add(spelling);
        }

        var coloured = groups.Any(group => group.Word.Colour is not null);
        var standing = groups.Where(group => coloured ? group.Word.Colour is not null : group.Word.Number is not null)
            .OrderBy(group => group.Word.Colour).ThenBy(group => group.Word.Second).ThenBy(group => group.Word.Marks).ThenBy(group => group.Word.Number)
            .ThenBy(group => group.Word.Key, StringComparer.Ordinal).Select(Rank).ToList();
        var book = new DoubtBook(answers);
        foreach (var group in groups.Where(group => coloured ? group.Word.Colour is null : group.Word.Number is null))
        {
            var rank = Rank(group);
            if (standing.Count == 0)
            {
                standing.Add(rank);
                continue;
            }

            List<Offer> offers = [new("lowest", "The lowest rank"), .. standing.Select(below => new Offer("above:" + NameFold.Fold(below.Name), $"Next above {below.Name}")), new("leave-out", "No rank: leave it out")];
            var answer = book.Ask($"rank-place:{group.Word.Key}", DoubtKind.RankPlace,
                $"'{RosterLineReader.Short(rank.Name)}' shows neither a colour nor a number; say where this rank stands in the ladder.", offers);
            if (answer is null) break;
            if (answer == "leave-out") continue;
            var place = answer == "lowest" ? 0 : standing.FindIndex(below => "above:" + NameFold.Fold(below.Name) == answer) + 1;
            standing.Insert(place, rank);
        }

        return new DraftLadder(standing, book.Doubts);
    }

    private static DraftRank Rank((RankWord Word, List<string> Spellings) group)
    {
        var distinct = group.Spellings.Distinct(StringComparer.Ordinal).ToList();
        var name = distinct.OrderByDescending(spelling => group.Spellings.Count(other => other == spelling)).ThenBy(distinct.IndexOf).First();
        return new DraftRank(name, group.Word.Cloth, group.Word.Tips, distinct);
    }
}
