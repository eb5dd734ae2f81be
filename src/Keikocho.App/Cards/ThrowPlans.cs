using System.Collections.Concurrent;
using Keikocho.Core.Names;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Starter;

namespace Keikocho.App.Cards;

/// <summary>
/// What an item asks of the one who falls, from the fall table, for both hands: a card does not know who throws left-handed. What the
/// table does not know is thrown with nobody.
/// </summary>
public static class ThrowPlans
{
    private static readonly ThrowHand[] BothHands = [ThrowHand.Right, ThrowHand.Left];
    private static readonly Lazy<NameIndex> Names = new(() => NameIndex.Of(StarterNames.Known));
    private static readonly ConcurrentDictionary<string, string> Known = new(StringComparer.Ordinal);

    /// <summary>A first drill and a free one; null where nobody is thrown.</summary>
    public static (PlannedThrow? First, PlannedThrow? Free) Of(Item item)
    {
        ArgumentNullException.ThrowIfNull(item);
        if (item.Kind == ItemKind.FreePractice)
        {
            var any = new PlannedThrow(item.Name, [.. FallWay.All.Where(w => w.Direction != FallDirection.Front)], FallWords.LastStage);
            return (any, any);
        }

        return (Plan(item, freely: false), Plan(item, freely: true));
    }

    /// <summary>The name that the library has for a club's spelling; the spelling itself where it has none.</summary>
    public static string Listed(string written) =>
        Known.GetOrAdd(written, w => Names.Value.Resolve(w) is NameOutcome.One one ? one.Name : w);

    private static PlannedThrow? Plan(Item item, bool freely)
    {
        var table = StarterFalls.Table;
        bool Has(string name) => table.Of(Listed(name), ThrowHand.Right) is not null || table.Of(Listed(name), ThrowHand.Left) is not null;
        PlannedThrow Single(string name) => table.Plan(Listed(name), BothHands, freely);
        switch (item.Order)
        {
            case Order.Into into when table.Of(Listed(into.First), ThrowHand.Right, Listed(into.Second)) is not null:
                return table.Plan(Listed(into.First), BothHands, freely, Listed(into.Second));
            case Order.Into into when item.Kind == ItemKind.Sequence:
                // A throw into a hold: the throw counts; two holds throw nobody.
                string[] thrown = [.. new[] { into.First, into.Second }.Where(Has)];
                return thrown.Length == 0 ? null : Together(item.Name, [.. thrown.Select(Single)]);
            case Order.Into into:
                return Together(item.Name, Single(into.First), Single(into.Second));
            case Order.CounteredBy by:
                return Together(item.Name, Single(by.Attack), Single(by.Counter));
        }

        if (item.Kind == ItemKind.Throw) return Single(item.Technique ?? item.Name);
        return item.Kind is ItemKind.Combination or ItemKind.Counter ? new PlannedThrow(item.Name, [], FallWords.LastStage) : null;
    }

    // One without a line shuts all of them.
    private static PlannedThrow Together(string name, params PlannedThrow[] plans) => plans.Any(p => p.Ways.Count == 0)
        ? new PlannedThrow(name, [], FallWords.LastStage)
        : new PlannedThrow(name, [.. plans.SelectMany(p => p.Ways).Distinct().OrderBy(w => w.Direction).ThenBy(w => w.Side)], plans.Max(p => p.Stage));
}
