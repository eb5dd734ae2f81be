using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>What is wrong with the requirements of one rank.</summary>
internal static class FaultsOfRequirements
{
    public static void Find(FaultList list, int rank, string path)
    {
        var its = list.Edition.Ranks[rank];
        var keys = new HashSet<string>(StringComparer.Ordinal);
        var asked = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < its.Requirements.Count; i++)
        {
            var at = $"{path}.requirements[{i}]";
            if (list.Gap(at, its.Requirements[i]))
                continue;
            var requirement = its.Requirements[i];
            list.Key($"{at}.key", requirement.Key, keys, "A requirement");
            if (requirement.Title is { } title && string.IsNullOrWhiteSpace(title))
                list.Caution($"{at}.title", "The line has an empty title; leave it out and the line is made from the items.");
            FaultsOfRanks.Band(list, $"{at}.ages", requirement.Ages);
            if (requirement.Unit is { } unit && !list.HasUnit(unit))
                list.Blocks($"{at}.unit", $"{its.Name} asks this in the term of the unit \"{unit}\", which is not in the edition; add it or name another.");
            Carrying(list, requirement, at);
            if (list.Gap($"{at}.ask", requirement.Ask))
                continue;
            Shape(list, rank, requirement, at);
            Twice(list, rank, requirement, at, asked);
        }

        Falls(list, rank, path);
    }

    private static void Carrying(FaultList list, Requirement requirement, string at)
    {
        if (!Enum.IsDefined(requirement.Carry))
            list.Blocks($"{at}.carry", "Something is asked for this rank, this term, always, or stays once asked; choose one.");
        if (requirement is { Carry: Carry.ThisTerm, Unit: null })
            list.Blocks($"{at}.carry", "What is asked this term only needs a unit, which says in which term; name one.");
        if (requirement.Carry == Carry.OnceAskedStays && requirement.Ask is not null && PreparedEdition.Named(requirement.Ask).Count == 0)
            list.Caution($"{at}.carry", "Only what a requirement names itself can stay once it was asked; nothing of this one will.");
    }

    private static void Shape(FaultList list, int rank, Requirement requirement, string at)
    {
        var name = list.Edition.Ranks[rank].Name;
        switch (requirement.Ask)
        {
            case Ask.AllOf all:
                if (all.Items.Count == 0)
                    list.Blocks($"{at}.ask.items", $"{name} asks nothing in this line; name an item or take the line out.");
                list.Keys($"{at}.ask.items", all.Items, name);
                Mixed(list, all.Items, $"{at}.ask.items");
                break;
            case Ask.AnyOf any:
                if (any.Count < 1 || any.Count >= any.Items.Count)
                    list.Blocks($"{at}.ask.count", $"{name} asks any {any.Count} of {any.Items.Count}; the count is at least 1 and smaller than the number of items.");
                list.Keys($"{at}.ask.items", any.Items, name);
                Mixed(list, any.Items, $"{at}.ask.items");
                break;
            case Ask.FromPool pool:
                FromPool(list, rank, pool, at);
                break;
            case Ask.ShareOfRank share:
                Share(list, rank, share, at);
                break;
            case Ask.DrawnFromEarlier drawn:
                Drawn(list, rank, drawn, at);
                break;
            case Ask.TheOther other:
                Other(list, rank, other, at);
                break;
        }
    }

    private static void FromPool(FaultList list, int rank, Ask.FromPool pool, string at)
    {
        var name = list.Edition.Ranks[rank].Name;
        if (!Enum.IsDefined(pool.ChosenBy))
            list.Blocks($"{at}.ask.chosenBy", "The child or the instructor chooses; say who.");
        list.Keys($"{at}.ask.pool", pool.Pool, name);
        if (pool.Pool.Count > 0 && pool.Kinds is not null)
            list.Caution($"{at}.ask.kinds", "Kinds count only where no pool is named; leave them out.");
        var size = pool.Pool.Count > 0 ? pool.Pool.Count : Pool(list, rank + 1, i => pool.Kinds?.Contains(i.Kind) ?? i.Kind is not (ItemKind.Fall or ItemKind.Word or ItemKind.Question));
        if (pool.Count < 1 || pool.Count > size)
            list.Blocks($"{at}.ask.count", $"{name} lets {pool.Count} be chosen from {Words.Count(size, "item")}; mend the count.");
        else if (pool.Count == size)
            list.Caution($"{at}.ask.count", $"{name} lets {pool.Count} be chosen from {size}, which is no choice.");
    }

    private static void Share(FaultList list, int rank, Ask.ShareOfRank share, string at)
    {
        var name = list.Edition.Ranks[rank].Name;
        list.Range($"{at}.ask.percent", share.Percent, 1, 99, "A share in per cent");
        if (list.Rank(share.Rank) is not { } later)
            list.Blocks($"{at}.ask.rank", $"{name} asks a share of the rank \"{share.Rank}\", which is not on the ladder; name one that is.");
        else if (later <= rank)
            list.Blocks($"{at}.ask.rank", $"{name} asks a share of {list.Edition.Ranks[later].Name}, which is not above it; name a later rank.");
        else if (!Named(list, later).Any(i => share.Kinds?.Contains(i.Kind) ?? i.Kind != ItemKind.Fall))
            list.Blocks($"{at}.ask.rank", $"{name} asks a share of {list.Edition.Ranks[later].Name}, which names nothing itself that counts; name another rank.");
    }

    private static void Drawn(FaultList list, int rank, Ask.DrawnFromEarlier drawn, string at)
    {
        var name = list.Edition.Ranks[rank].Name;
        if (drawn.Count < 1)
            list.Blocks($"{at}.ask.count", $"{name} draws {drawn.Count} by lot; draw at least 1.");
        for (var i = 0; i < drawn.Ranks.Count; i++)
            Earlier(list, rank, drawn.Ranks[i], $"{at}.ask.ranks[{i}]");
        var places = drawn.Ranks.Select(list.Rank).ToHashSet();
        var size = Enumerable.Range(0, rank).Where(r => drawn.Ranks.Count == 0 || places.Contains(r)).SelectMany(r => Named(list, r))
            .Where(i => drawn.Kinds?.Contains(i.Kind) ?? i.Kind != ItemKind.Fall).DistinctBy(i => i.Key).Count();
        if (size < drawn.Count)
            list.Caution($"{at}.ask.count", $"{name} draws {drawn.Count} by lot, but only {size} {Words.Was(size)} asked before.");
    }

    private static void Other(FaultList list, int rank, Ask.TheOther other, string at)
    {
        if (!Earlier(list, rank, other.Rank, $"{at}.ask.rank"))
            return;
        var earlier = list.Edition.Ranks[list.Rank(other.Rank)!.Value];
        var choice = earlier.Requirements.FirstOrDefault(r => r?.Key == other.Requirement);
        if (choice is null)
            list.Blocks($"{at}.ask.requirement", $"{earlier.Name} has no requirement \"{other.Requirement}\"; name one that it has.");
        else if (choice.Ask is not Ask.AnyOf)
            list.Blocks($"{at}.ask.requirement", $"\"{other.Requirement}\" of {earlier.Name} leaves no choice, so nothing of it is left to show; name an \"any of\".");
    }

    private static bool Earlier(FaultList list, int rank, string key, string path)
    {
        var name = list.Edition.Ranks[rank].Name;
        if (list.Rank(key) is not { } earlier)
        {
            list.Blocks(path, $"{name} names the rank \"{key}\", which is not on the ladder; name one that is.");
            return false;
        }

        if (earlier >= rank)
            list.Blocks(path, $"{name} names {list.Edition.Ranks[earlier].Name}, which is not below it; name an earlier rank.");
        return earlier < rank;
    }

    private static void Mixed(FaultList list, IReadOnlyList<string> keys, string path)
    {
        var said = list.Items(keys).Select(i => i.Kind is ItemKind.Word or ItemKind.Question).Distinct().Count();
        if (said > 1)
            list.Caution(path, "The line asks words together with what is shown; on a sheet the two stand apart, so make two lines of it.");
    }

    // The same thing asked for certain twice makes two boxes for it.
    private static void Twice(FaultList list, int rank, Requirement requirement, string at, HashSet<string> asked)
    {
        if (requirement.Ask is not Ask.AllOf all || requirement.Ages is not null || requirement.Unit is not null)
            return;
        var always = list.Edition.Ranks.Take(rank).Where(r => r is not null).SelectMany(r => r.Requirements)
            .Where(r => r is { Carry: Carry.Always, Unit: null, Ages: null, Ask: Ask.AllOf }).SelectMany(r => ((Ask.AllOf)r.Ask).Items).ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < all.Items.Count; i++)
        {
            if (list.Item(all.Items[i]) is not { } item)
                continue;
            if (!asked.Add(item.Key))
                list.Caution($"{at}.ask.items[{i}]", $"{list.Edition.Ranks[rank].Name} asks {item.Name} in two lines.");
            else if (always.Contains(item.Key))
                list.Caution($"{at}.ask.items[{i}]", $"{item.Name} is asked at every test since an earlier rank; here it would stand on the sheet twice.");
        }
    }

    private static void Falls(FaultList list, int rank, string path)
    {
        var its = list.Edition.Ranks[rank];
        if (Enumerable.Range(0, rank + 1).SelectMany(r => Named(list, r)).Any(i => i.Kind == ItemKind.Fall))
            return;
        if (Named(list, rank).FirstOrDefault(FaultList.IsThrown) is { } thrown)
            list.Caution($"{path}.requirements", $"{its.Name} asks {thrown.Name}, but no fall is asked by then; partners fall before they are thrown.");
    }

    private static int Pool(FaultList list, int below, Func<Item, bool> kind) =>
        Enumerable.Range(0, below).SelectMany(r => Named(list, r)).Where(kind).DistinctBy(i => i.Key).Count();

    private static IEnumerable<Item> Named(FaultList list, int rank) =>
        list.Edition.Ranks[rank] is { } its
            ? list.Items(its.Requirements.Where(r => r?.Ask is not null).SelectMany(r => PreparedEdition.Named(r.Ask)))
            : [];
}
