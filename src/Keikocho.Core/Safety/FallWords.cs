namespace Keikocho.Core.Safety;

/// <summary>Falls in plain words, and what a fall can be.</summary>
public static class FallWords
{
    /// <summary>Lowest stage.</summary>
    public const int FirstStage = 1;

    /// <summary>Highest stage.</summary>
    public const int LastStage = 6;

    /// <summary>"backward", "to the left side", "rolling, right".</summary>
    public static string Of(FallWay way) => (way.Direction, way.Side) switch
    {
        (FallDirection.Back, _) => "backward",
        (FallDirection.Side, FallSide.Left) => "to the left side",
        (FallDirection.Side, _) => "to the right side",
        (FallDirection.Front, _) => "forward",
        (_, FallSide.Left) => "rolling, left",
        _ => "rolling, right",
    };

    /// <summary>Several ways with one "and": "backward, to both sides and rolling to the left"; one way as <see cref="Of"/> has it.</summary>
    public static string Together(IReadOnlyList<FallWay> ways, string and = "and")
    {
        ArgumentNullException.ThrowIfNull(ways);
        FallWay[] own = [.. ways.Distinct().OrderBy(w => w.Direction).ThenBy(w => w.Side)];
        if (own is [var only])
            return Of(only);
        string[] parts = [.. own.GroupBy(w => w.Direction).Select(Direction)];
        return parts.Length < 2 ? string.Concat(parts) : $"{string.Join(", ", parts[..^1])} {and} {parts[^1]}";
    }

    private static string Direction(IGrouping<FallDirection, FallWay> ways)
    {
        if (ways.Key is FallDirection.Back or FallDirection.Front)
            return Of(ways.First());
        var to = ways.Count() > 1 ? "both sides" : ways.Key == FallDirection.Side ? Of(ways.First())["to ".Length..] : ways.First().Side == FallSide.Left ? "the left" : "the right";
        return ways.Key == FallDirection.Side ? $"to {to}" : $"rolling to {to}";
    }

    /// <summary>"stage 3 (standing)".</summary>
    public static string Stage(int stage) => stage switch
    {
        1 => "stage 1 (lying or sitting)",
        2 => "stage 2 (squat)",
        3 => "stage 3 (standing)",
        4 => "stage 4 (from a partner, low and slow)",
        5 => "stage 5 (thrown by an instructor)",
        _ => "stage 6 (thrown by a child)",
    };

    /// <exception cref="ArgumentException">There is no such fall.</exception>
    internal static void Guard(FallWay way, int stage, string what)
    {
        if (!FallWay.All.Contains(way))
            throw new ArgumentException($"{what}: a fall is back or front without a side, or side or rolling with left or right; mend its direction or side.", nameof(way));
        if (stage is < FirstStage or > LastStage)
            throw new ArgumentException($"{what}: a stage is from {FirstStage} to {LastStage}.", nameof(stage));
    }
}
