using Keikocho.Core.Intake;
using Keikocho.Core.Safety;

namespace Keikocho.Core.Syllabus;

/// <summary>What is wrong with the items and own techniques of an edition.</summary>
internal static class FaultsOfItems
{
    public static void Find(FaultList list)
    {
        var edition = list.Edition;
        var keys = new HashSet<string>(StringComparer.Ordinal);
        var named = edition.Ranks.Where(r => r is not null).SelectMany(r => r.Requirements).Where(r => r?.Ask is not null).SelectMany(r => PreparedEdition.Named(r.Ask))
            .Concat(edition.Units.Where(u => u is not null).SelectMany(u => u.Items)).Concat(edition.FirstCourse)
            .Concat(edition.Items.Where(i => i is not null).SelectMany(i => (i.Covers ?? []).Append(i.Alternative!))).ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < edition.Items.Count; i++)
        {
            var path = $"items[{i}]";
            if (list.Gap(path, edition.Items[i]))
                continue;
            var item = edition.Items[i];
            list.Key($"{path}.key", item.Key, keys, "An item");
            list.Text($"{path}.name", item.Name, "An item has no name; sheets print it, so give it one.");
            list.Range($"{path}.seconds", item.Seconds, 1, 3600, "The number of seconds");
            list.Range($"{path}.times", item.Times, 1, 1000, "The number of times");
            Kind(list, item, path);
            Said(list, item, path);
            Links(list, item, path);
            if (item.Key is not null && !named.Contains(item.Key))
                list.Caution(path, $"Nothing names {item.Name}: no rank, no unit, no first course and no other item.");
        }

        Techniques(list);
    }

    private static void Kind(FaultList list, Item item, string path)
    {
        if (!Enum.IsDefined(item.Kind))
        {
            list.Blocks($"{path}.kind", $"{item.Name} is of no known kind; choose one.");
            return;
        }

        if (item.Kind == ItemKind.Fall)
            Fall(list, item, path);
        else if (item.Fall is not null)
            list.Blocks($"{path}.fall", $"{item.Name} says which way somebody falls but is no fall; change its kind or take that out.");
        var wanted = item.Kind switch
        {
            ItemKind.Escape => item.Order is Order.EscapeFrom ? null : "out of which hold, and how",
            ItemKind.Turnover => item.Order is Order.TurnoverInto ? null : "into which hold, and how the partner lies",
            ItemKind.Combination => item.Order is Order.Into ? null : "which throw goes into which",
            ItemKind.Counter => item.Order is Order.CounteredBy ? null : "which attack is countered by which throw",
            _ => null,
        };
        if (wanted is not null)
            list.Blocks($"{path}.order", $"{item.Name} does not say {wanted}; add it.");
        if (item.Order is not null && item.Kind is ItemKind.Fall or ItemKind.Throw or ItemKind.HoldDown or ItemKind.Strangle or ItemKind.Armlock or ItemKind.Word or ItemKind.Question or ItemKind.Etiquette)
            list.Blocks($"{path}.order", $"{item.Name} has an order of two things but is a single one; change its kind or take the order out.");
        if (item.Kind is ItemKind.Throw or ItemKind.HoldDown or ItemKind.Strangle or ItemKind.Armlock && string.IsNullOrWhiteSpace(item.Technique))
            list.Caution($"{path}.technique", $"{item.Name} does not say which technique it is a form of; an age rule that names the technique finds it by its name only.");
        foreach (var (member, text) in Parts(item.Order))
            list.Text($"{path}.order.{member}", text, $"{item.Name} leaves a part of its order empty; fill it in.");
    }

    private static void Fall(FaultList list, Item item, string path)
    {
        if (item.Fall is not { } fall)
        {
            list.Blocks($"{path}.fall", $"{item.Name} is a fall but does not say which way; add direction, sides and stage.");
            return;
        }

        if (!Enum.IsDefined(fall.Direction))
            list.Blocks($"{path}.fall.direction", $"{item.Name} falls no known way; choose back, side, front or rolling.");
        else if (fall.BothSides && fall.Direction is FallDirection.Back or FallDirection.Front)
            list.Blocks($"{path}.fall.bothSides", $"{item.Name} is asked on both sides, but this fall has no sides; take that out.");
        list.Range($"{path}.fall.stage", fall.Stage, 1, 6, $"The stage of {item.Name}");
    }

    private static void Said(FaultList list, Item item, string path)
    {
        if (item.Kind == ItemKind.Word && string.IsNullOrWhiteSpace(item.Meaning) && item.Answers is not { Count: > 0 })
            list.Caution($"{path}.meaning", $"The word {item.Name} has neither a meaning nor an accepted answer; whoever asks it must know.");
        if (item.Kind == ItemKind.Question && item.Answers is not { Count: > 0 })
            list.Caution($"{path}.answers", $"The question {item.Name} has no accepted answer; whoever asks it must know.");
        for (var i = 0; i < (item.Answers?.Count ?? 0); i++)
            list.Text($"{path}.answers[{i}]", item.Answers![i], $"{item.Name} has an empty answer; take it out.");
    }

    private static void Links(FaultList list, Item item, string path)
    {
        if (item.Alternative is { } key)
        {
            if (list.Item(key) is not { } other)
                list.Blocks($"{path}.alternative", $"{item.Name} gives way to \"{key}\", which is not in the edition; add it or name another.");
            else if (Leads(list, item.Key, other, i => i.Alternative is { } next ? [next] : []))
                list.Blocks($"{path}.alternative", $"{item.Name} gives way to itself in the end; break the circle.");
            else if (item.LoadsTheNeck && other.LoadsTheNeck && other.Alternative is null)
                list.Caution($"{path}.alternative", $"{item.Name} gives way to {other.Name}, which loads the neck too; where the neck is spared nothing is left.");
        }

        list.Keys($"{path}.covers", item.Covers ?? [], item.Name);
        for (var i = 0; i < (item.Covers?.Count ?? 0); i++)
        {
            if (list.Item(item.Covers![i]) is not { } easier)
                continue;
            if (Leads(list, item.Key, easier, its => its.Covers ?? []))
                list.Blocks($"{path}.covers[{i}]", $"{item.Name} meets itself in the end; break the circle.");
            else if (easier.Kind == ItemKind.Fall || item.Kind == ItemKind.Fall)
                list.Blocks($"{path}.covers[{i}]", "A fall is met by falls alone; take it out of what another item meets.");
        }
    }

    private static bool Leads(FaultList list, string to, Item from, Func<Item, IReadOnlyList<string>> next)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<Item>([from]);
        while (open.TryPop(out var at))
        {
            if (at.Key == to)
                return true;
            if (!seen.Add(at.Key))
                continue;
            foreach (var other in list.Items(next(at)))
                open.Push(other);
        }

        return false;
    }

    private static IEnumerable<(string Member, string? Text)> Parts(Order? order) => order switch
    {
        Order.Into into => [("first", into.First), ("second", into.Second)],
        Order.CounteredBy by => [("attack", by.Attack), ("counter", by.Counter)],
        Order.EscapeFrom escape => [("hold", escape.Hold), ("by", escape.By)],
        Order.TurnoverInto turn => [("position", turn.Position)],
        _ => [],
    };

    private static void Techniques(FaultList list)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < (list.Edition.Techniques?.Count ?? 0); i++)
        {
            var path = $"techniques[{i}]";
            if (list.Gap(path, list.Edition.Techniques![i]))
                continue;
            var own = list.Edition.Techniques[i];
            list.Text($"{path}.name", own.Name, "A technique of the club's own has no name; give it one.");
            if (string.IsNullOrWhiteSpace(own.Name))
                continue;
            if (!seen.Add(NameFold.Fold(own.Name)))
                list.Blocks($"{path}.name", $"{own.Name} is entered twice; take one out.");
            if (own.CountedAs is { } other && NameFold.Fold(other) == NameFold.Fold(own.Name))
                list.Caution($"{path}.countedAs", $"{own.Name} is counted as itself; leave that out.");
        }
    }
}
