namespace Keikocho.Core.Safety;

/// <summary>What was going on when somebody had a knock. Stored; the numbers never change their meaning.</summary>
public enum KnockActivity
{
    /// <summary>Nobody has said.</summary>
    NotSaid = 0,
    /// <summary>The warm-up.</summary>
    WarmUp = 1,
    /// <summary>A game.</summary>
    Game = 2,
    /// <summary>Falls.</summary>
    Falls = 3,
    /// <summary>Turning in, without a throw.</summary>
    TurnIns = 4,
    /// <summary>Throwing.</summary>
    Throwing = 5,
    /// <summary>Hold-downs, escapes and turnovers.</summary>
    Holds = 6,
    /// <summary>Free practice.</summary>
    FreePractice = 7,
    /// <summary>Anything else: changing room, stairs, edge of the mat.</summary>
    Other = 8,
}

/// <summary>Plain words for activities.</summary>
public static class KnockActivities
{
    /// <summary>All of them with their words, in the order to choose from: nobody has said comes first.</summary>
    public static IReadOnlyList<(KnockActivity Activity, string Words)> All { get; } =
    [
        (KnockActivity.NotSaid, "not said"),
        (KnockActivity.WarmUp, "warm-up"),
        (KnockActivity.Game, "game"),
        (KnockActivity.Falls, "falls"),
        (KnockActivity.TurnIns, "turning in"),
        (KnockActivity.Throwing, "throwing"),
        (KnockActivity.Holds, "hold-downs"),
        (KnockActivity.FreePractice, "free practice"),
        (KnockActivity.Other, "something else"),
    ];

    /// <summary>The words of one; "not said" for a number that no activity has.</summary>
    public static string Words(KnockActivity activity)
    {
        foreach (var (known, words) in All)
            if (known == activity) return words;
        return All[0].Words;
    }
}
