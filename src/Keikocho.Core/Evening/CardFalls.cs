using Keikocho.Core.Safety;

namespace Keikocho.Core.Evening;

/// <summary>The falls to work on: for each way the lowest stage that is not open for somebody here.</summary>
internal static class CardFalls
{
    // Nobody is thrown forward onto the arms; being thrown by a child comes with the throws.
    private static int Highest(FallWay way) => way.Direction == FallDirection.Front ? 3 : 5;

    public static IReadOnlyList<CardFall> Of(IReadOnlyList<CardChild> children)
    {
        var falls = new List<CardFall>();
        foreach (var way in FallWay.All)
        {
            var next = children.Where(c => c is { MayFall: true, MayBeOnTheMat: true })
                .Select(c => (c.Key, Stage: Enumerable.Range(FallWords.FirstStage, Highest(way)).FirstOrDefault(s => c.Gates?.Any(g => g.Way == way && g.OpenStages.Contains(s)) != true)))
                .Where(c => c.Stage > 0).ToArray();
            if (next.Length == 0) continue;
            var lowest = next.Min(c => c.Stage);
            falls.Add(new CardFall(way, lowest, [.. next.Where(c => c.Stage == lowest).Select(c => c.Key)]));
        }

        return falls;
    }
}
