using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>Tonight's words for one end: those due for most of the children present.</summary>
public static class WordsDue
{
    // Never asked is longer ago than any asking.
    private const int Never = int.MaxValue;

    /// <summary>Chooses them.</summary>
    /// <exception cref="ArgumentException">A word or child twice, a step that there is not, or a word that is not on the list.</exception>
    public static WordsDueAnswer Choose(WordsDueSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        Guard(snapshot);
        var judged = snapshot.Words.Select((word, place) => Judge(word, place, snapshot.Children)).Where(w => w.Due.Count > 0)
            .OrderByDescending(w => w.Due.Count).ThenByDescending(w => w.Overdue).ThenByDescending(w => w.Word.Safety).ThenByDescending(w => w.Longest).ThenBy(w => w.Place)
            .Take(snapshot.Rule.Ask);
        return new WordsDueAnswer(
            [.. judged.Select(w => new WordToAsk(
                w.Word.Key, w.Word.Name, w.Due, w.Overdue, new WordIsDue(w.Word.Name, w.Due.Count, snapshot.Children.Count, w.Overdue, w.NeverAsked, w.Word.Safety)))],
            snapshot.Rule.Used());
    }

    private static Judged Judge(DueWord word, int place, IReadOnlyList<WordChild> children)
    {
        var due = new List<string>();
        var (overdue, longest, never) = (0, 0, 0);
        foreach (var child in children)
        {
            if (child.Asked.FirstOrDefault(a => a.Word == word.Key) is not { } asked)
            {
                due.Add(child.Key);
                longest = Never;
                never++;
                continue;
            }

            var over = asked.ClassesAgo - WordsDueRule.Gaps[asked.Step];
            if (over < 0) continue;
            due.Add(child.Key);
            overdue += over;
            longest = Math.Max(longest, asked.ClassesAgo);
        }

        return new Judged(word, place, due, overdue, longest, never);
    }

    private static void Guard(WordsDueSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot.Rule);
        snapshot.Rule.Guard();
        NoGaps.In(snapshot.Words, "words");
        NoGaps.In(snapshot.Children, "children");
        if (snapshot.Words.GroupBy(w => w.Key, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } word)
            throw new ArgumentException($"The word {word.Key} is on the list twice; take one out.", nameof(snapshot));
        if (snapshot.Children.GroupBy(c => c.Key, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } child)
            throw new ArgumentException($"The child {child.Key} is there twice; take one out.", nameof(snapshot));
        var known = snapshot.Words.Select(w => w.Key).ToHashSet(StringComparer.Ordinal);
        foreach (var one in snapshot.Children)
        {
            NoGaps.In(one.Asked, $"words asked of {one.Key}");
            foreach (var asked in one.Asked)
            {
                if (!known.Contains(asked.Word))
                    throw new ArgumentException($"{one.Key} was asked {asked.Word}, which is not on the list of words; add it there or take it out.", nameof(snapshot));
                if (asked.Step < 0 || asked.Step >= WordsDueRule.Gaps.Count)
                    throw new ArgumentException($"{one.Key}, {asked.Word}: a step is from 0 to {WordsDueRule.Gaps.Count - 1}.", nameof(snapshot));
                if (asked.ClassesAgo is < 0 or > 10_000)
                    throw new ArgumentException($"{one.Key}, {asked.Word}: classes ago are from 0 to 10000.", nameof(snapshot));
            }

            if (one.Asked.DistinctBy(a => a.Word).Count() != one.Asked.Count)
                throw new ArgumentException($"One word is there twice for {one.Key}; take one out.", nameof(snapshot));
        }
    }

    private sealed record Judged(DueWord Word, int Place, IReadOnlyList<string> Due, int Overdue, int Longest, int NeverAsked);
}
