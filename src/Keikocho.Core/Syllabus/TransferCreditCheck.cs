namespace Keikocho.Core.Syllabus;

/// <summary>Judges where teaching starts by two columns of ticks, as by hand.</summary>
public static class TransferCreditCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(TransferSnapshot question, TransferAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        if (answer.KeepsRank != question.WornRank)
            objections.Add("The belt is not kept.");
        var ladder = question.Edition.Ranks.Select(r => r.Key).ToList();
        if (!answer.Ranks.Select(r => r.Rank).SequenceEqual(ladder.Take(ladder.IndexOf(question.WornRank) + 1)))
            objections.Add("The ranks are not those up to the one worn.");
        // From below: the first rank at which something speaks against going on is the one to teach.
        var wanted = question.WornRank;
        foreach (var rank in answer.Ranks)
        {
            var enough = rank.Asked == 0 || (decimal)rank.Seen / rank.Asked >= question.Rule.EnoughPercent / 100m;
            if (enough && rank.SafetyOpen.Count == 0)
                continue;
            wanted = rank.Rank;
            break;
        }

        if (answer.TeachingRank != wanted)
            objections.Add($"Teaching starts at {wanted}.");
        var gaps = answer.Ranks.Sum(r => r.Asked - r.Seen);
        if (answer.Gaps != gaps || answer.Lessons != (int)Math.Ceiling((decimal)gaps / question.Rule.ItemsALesson))
            objections.Add("The gaps or the lessons to fill them are wrong.");
        var open = question.Edition.Items.Where(i => i.Kind == ItemKind.Fall && question.SeenHere.Contains(i.Key)).Select(i => i.Name);
        if (answer.FallsToSee.Intersect(open).Any() || answer.Ranks.SelectMany(r => r.Gaps).Intersect(question.Edition.Items.Where(i => i.Kind == ItemKind.Fall).Select(i => i.Name)).Except(answer.FallsToSee).Any())
            objections.Add("The falls to be seen are wrong.");
        return objections;
    }
}
