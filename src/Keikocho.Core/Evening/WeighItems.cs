using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>What the children present need of each item, and which item comes first.</summary>
internal static class WeighItems
{
    /// <summary>Never shown 2, shown and not signed 1, signed and stale 1/2, fresh 0; none where the child does not do the item.</summary>
    public static decimal Need(CardChild child, CardItem item) => !Does(child, item) ? 0 : StandingOf(child, item) switch
    {
        CardStanding.NeverShown => 2,
        CardStanding.NotSigned => 1,
        CardStanding.Stale => 0.5m,
        _ => 0,
    };

    /// <summary>Whether a child may do the item at all: it is on the mat, and its neck is not spared.</summary>
    public static bool Does(CardChild child, CardItem item) => child.MayBeOnTheMat && !(item.LoadsTheNeck && child.SparesTheNeck);

    public static bool IsUrgent(CardChild child, CardRule rule) => child.LessonsToTest <= rule.UrgentLessons;

    private static CardStanding StandingOf(CardChild child, CardItem item) => item.Standing.TryGetValue(child.Key, out var standing) ? standing : CardStanding.NeverShown;

    /// <summary>All items that this card may have, the first to choose first.</summary>
    public static IReadOnlyList<ItemScore> Order(CardSnapshot snapshot, CardPlan plan)
    {
        var weighed = snapshot.Items.Select((item, place) => (Item: item, Place: place, Score: Score(snapshot, item)))
            .Where(i => plan == CardPlan.AsPlanned || !i.Item.IsThrown).ToArray();
        var others = weighed.Where(i => !IsRunning(i.Item)).ToArray();
        var best = others.Length == 0 ? (decimal?)null : others.Max(i => i.Score);
        bool Held(CardItem item, decimal score) => IsRunning(item) && best is { } b && score < 2 * b;
        var isMain = snapshot.End == MatEnd.Main;
        return [.. weighed
            .OrderBy(i => Held(i.Item, i.Score))
            .ThenBy(i => isMain ? Planned(i.Item) : 0)
            .ThenByDescending(i => i.Score)
            .ThenBy(i => isMain ? 0 : Planned(i.Item))
            .ThenByDescending(i => LastShown(i.Item) ?? int.MaxValue)
            .ThenBy(i => i.Place)
            .Select(i => new ItemScore(i.Item.Key, i.Item.Name, i.Score, Held(i.Item, i.Score), Because(snapshot, i.Item, i.Score, Held(i.Item, i.Score))))];
    }

    private static decimal Score(CardSnapshot snapshot, CardItem item) => snapshot.Children.Sum(c => Need(c, item) * (IsUrgent(c, snapshot.Rule) ? 2 : 1));

    private static bool IsRunning(CardItem item) => item.ShownAgo.Contains(1) && item.ShownAgo.Contains(2);

    private static int Planned(CardItem item) => item.Planned ?? int.MaxValue;

    private static int? LastShown(CardItem item) => item.ShownAgo.Count == 0 ? null : item.ShownAgo.Min();

    private static ItemNeeded Because(CardSnapshot snapshot, CardItem item, decimal score, bool held)
    {
        var doing = snapshot.Children.Where(c => Does(c, item)).ToArray();
        int Count(CardStanding standing) => doing.Count(c => StandingOf(c, item) == standing);
        return new ItemNeeded(
            item.Name, score, Count(CardStanding.NeverShown), Count(CardStanding.NotSigned), Count(CardStanding.Stale),
            doing.Count(c => Need(c, item) > 0 && IsUrgent(c, snapshot.Rule)), held, LastShown(item));
    }
}
