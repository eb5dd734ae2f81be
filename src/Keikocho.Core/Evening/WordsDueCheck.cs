namespace Keikocho.Core.Evening;

/// <summary>Judges tonight's words by comparing two at a time, without sorting.</summary>
public static class WordsDueCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(WordsDueSnapshot question, WordsDueAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        var words = question.Words.ToList();
        if (answer.Words.Count > question.Rule.Ask)
            objections.Add("More words are asked than the rule says.");
        for (var i = 0; i < answer.Words.Count; i++)
        {
            var at = words.FindIndex(w => w.Key == answer.Words[i].Key);
            if (at < 0)
            {
                objections.Add($"{answer.Words[i].Key} is not on the list.");
                return objections;
            }

            var due = question.Children.Where(c => Waits(c, words[at]) >= 0).Select(c => c.Key).ToArray();
            if (due.Length == 0)
                objections.Add($"{words[at].Name} is due for nobody.");
            if (!due.SequenceEqual(answer.Words[i].DueFor))
                objections.Add($"{words[at].Name} is due for others.");
            if (answer.Words[i].Overdue != question.Children.Sum(c => Math.Max(0, Waits(c, words[at]))))
                objections.Add($"{words[at].Name}: the classes over add up otherwise.");
            if (i > 0 && !Before(question, words, words.FindIndex(w => w.Key == answer.Words[i - 1].Key), at))
                objections.Add($"{words[at].Name} comes before {answer.Words[i - 1].Name}.");
        }

        var left = Enumerable.Range(0, words.Count).Where(i => answer.Words.All(a => a.Key != words[i].Key) && question.Children.Any(c => Waits(c, words[i]) >= 0)).ToArray();
        if (answer.Words.Count < question.Rule.Ask && left.Length > 0)
            objections.Add($"{words[left[0]].Name} is due and is not asked.");
        if (answer.Words.Count > 0)
            objections.AddRange(left.Where(i => Before(question, words, i, words.FindIndex(w => w.Key == answer.Words[^1].Key))).Select(i => $"{words[i].Name} is left out and comes before the last that is asked."));
        return objections;
    }

    // Classes beyond the gap; 0 for never asked; below 0 when it is not due.
    private static int Waits(WordChild child, DueWord word)
    {
        var asked = child.Asked.SingleOrDefault(a => a.Word == word.Key);
        return asked is null ? 0 : asked.ClassesAgo - (1 << asked.Step);
    }

    private static long Longest(WordsDueSnapshot question, DueWord word) => question.Children.Where(c => Waits(c, word) >= 0)
        .Select(c => c.Asked.SingleOrDefault(a => a.Word == word.Key)?.ClassesAgo ?? long.MaxValue).DefaultIfEmpty(0).Max();

    private static bool Before(WordsDueSnapshot question, List<DueWord> words, int one, int other)
    {
        var (a, b) = (words[one], words[other]);
        var children = question.Children.Count(c => Waits(c, a) >= 0) - question.Children.Count(c => Waits(c, b) >= 0);
        if (children != 0) return children > 0;
        var over = question.Children.Sum(c => Math.Max(0, Waits(c, a))) - question.Children.Sum(c => Math.Max(0, Waits(c, b)));
        if (over != 0) return over > 0;
        if (a.Safety != b.Safety) return a.Safety;
        return Longest(question, a) == Longest(question, b) ? one < other : Longest(question, a) > Longest(question, b);
    }
}
