using Keikocho.Core.Kernel;

namespace Keikocho.Core.Club;

/// <summary>A junior leader's evenings.</summary>
/// <param name="Leader">Who; a key or a name.</param>
/// <param name="Helped">Evenings on which they helped.</param>
/// <param name="Trained">Evenings on which they trained for themselves.</param>
/// <param name="OwnTest">Their own next promotion test; null where none is set.</param>
public sealed record LeaderEvenings(string Leader, int Helped, int Trained, DateOnly? OwnTest = null);

/// <summary>The question about the leaders' share.</summary>
/// <param name="Leaders">In register order.</param>
/// <param name="Rule">The figures.</param>
public sealed record LeadersQuestion(IReadOnlyList<LeaderEvenings> Leaders, LeadersRule Rule);

/// <summary>What a club may set.</summary>
/// <param name="TrainedPercent">At least so much of their evenings is their own training.</param>
public sealed record LeadersRule(int TrainedPercent = 50)
{
    private static readonly WholeNumberSetting Trained = new("leaders.trainedPercent", "At least so much of a leader's evenings is their own training", 50, "%", 0, 100, "the club's own, no source");

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Trained];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() => [Trained.Use(TrainedPercent)];

    internal void Guard() => Trained.Guard(TrainedPercent, nameof(TrainedPercent));
}

/// <summary>A leader's share.</summary>
/// <param name="Leader">Who.</param>
/// <param name="Evenings">Helped and trained together.</param>
/// <param name="Helped">Helped.</param>
/// <param name="Trained">Trained.</param>
/// <param name="Owed">Evenings of those past that should have been their own training.</param>
/// <param name="OwnTest">Their own next test.</param>
/// <param name="Because">Why.</param>
public sealed record LeaderShare(string Leader, int Evenings, int Helped, int Trained, int Owed, DateOnly? OwnTest, Reason Because);

/// <summary>The answer.</summary>
/// <param name="Leaders">Who is owed first; of these the nearest own test, then register order.</param>
/// <param name="Reasons">Why.</param>
/// <param name="Settings">The settings used.</param>
public sealed record LeadersAnswer(IReadOnlyList<LeaderShare> Leaders, IReadOnlyList<Reason> Reasons, IReadOnlyList<SettingUsed> Settings);

/// <summary>How much of a junior leader's evenings was their own training: no teenager becomes unpaid staff.</summary>
public static class LeadersShare
{
    /// <summary>Reckons the shares.</summary>
    /// <exception cref="ArgumentException">A count below 0.</exception>
    public static LeadersAnswer Reckon(LeadersQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        NoGaps.In(question.Leaders, "leaders");
        var rule = question.Rule ?? new LeadersRule();
        rule.Guard();
        var shares = new List<LeaderShare>();
        foreach (var leader in question.Leaders)
        {
            if (leader.Helped is < 0 or > 10_000 || leader.Trained is < 0 or > 10_000)
                throw new ArgumentException($"{leader.Leader}: evenings are from 0 to 10000.", nameof(question));
            var evenings = leader.Helped + leader.Trained;
            var asked = ((evenings * rule.TrainedPercent) + 99) / 100;
            var owed = Math.Max(0, asked - leader.Trained);
            shares.Add(new LeaderShare(leader.Leader, evenings, leader.Helped, leader.Trained, owed, leader.OwnTest, new ShareSaid(leader, evenings, asked, owed, rule)));
        }

        LeaderShare[] inOrder = [.. shares.OrderBy(s => s.Owed > 0 ? 0 : 1).ThenBy(s => s.Owed > 0 ? s.OwnTest ?? DateOnly.MaxValue : DateOnly.MinValue)];
        return new LeadersAnswer(inOrder, [.. inOrder.Select(s => s.Because)], rule.Used());
    }
}

/// <summary>What is said of one leader.</summary>
public sealed record ShareSaid(LeaderEvenings Of, int Evenings, int Asked, int Owed, LeadersRule Rule) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{Of.Leader}: {Words.Count(Evenings, "evening")}, helped {Of.Helped}, trained {Of.Trained}; at least {Rule.TrainedPercent} % trained is {Asked}: "
        + (Owed == 0 ? "nothing owed." : $"{Words.Count(Owed, "evening")} of their own training owed{(Of.OwnTest is { } test ? $", own test on {test.Full()}" : "")}.");
}
