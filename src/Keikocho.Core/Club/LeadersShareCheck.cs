namespace Keikocho.Core.Club;

/// <summary>Judges the leaders' share by turning helped evenings into trained ones until the share is met.</summary>
public static class LeadersShareCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(LeadersQuestion question, LeadersAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        if (!answer.Leaders.Select(l => l.Leader).Order(StringComparer.Ordinal).SequenceEqual(question.Leaders.Select(l => l.Leader).Order(StringComparer.Ordinal)))
            objections.Add("Every leader has a line.");
        foreach (var leader in question.Leaders)
        {
            var owed = 0;
            while ((leader.Trained + owed) * 100 < (leader.Helped + leader.Trained) * question.Rule.TrainedPercent) owed++;
            if (answer.Leaders.FirstOrDefault(l => l.Leader == leader.Leader) is not { } line || line.Owed != owed || line.Evenings != leader.Helped + leader.Trained)
                objections.Add($"{leader.Leader} is owed {owed}.");
        }

        for (var i = 1; i < answer.Leaders.Count; i++)
        {
            var (a, b) = (answer.Leaders[i - 1], answer.Leaders[i]);
            if ((a.Owed == 0 && b.Owed > 0) || (a.Owed > 0 && b.Owed > 0 && (a.OwnTest ?? DateOnly.MaxValue) > (b.OwnTest ?? DateOnly.MaxValue)))
                objections.Add("Who is owed is first, then the nearest own test.");
        }

        return objections;
    }
}
