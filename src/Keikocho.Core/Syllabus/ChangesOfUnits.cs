using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>What changed in the units, their order and the first course.</summary>
internal static class ChangesOfUnits
{
    public static IEnumerable<string> Between(PreparedEdition old, PreparedEdition now)
    {
        var (before, units) = (old.Edition.Units, now.Edition.Units);
        foreach (var unit in before.Where(u => units.All(n => n.Key != u.Key)))
            yield return $"The unit {unit.Name} was dropped.";
        foreach (var unit in units)
        {
            if (before.FirstOrDefault(u => u.Key == unit.Key) is not { } was)
            {
                yield return $"The unit {unit.Name} was added.";
                continue;
            }

            if (was.Name != unit.Name)
                yield return $"The unit \"{was.Name}\" is now \"{unit.Name}\".";
            foreach (var sentence in Lists(old, was.Items, now, unit.Items, $"The unit {unit.Name}"))
                yield return sentence;
        }

        var kept = before.Select(u => u.Key).Where(k => units.Any(u => u.Key == k));
        if (!kept.SequenceEqual(units.Select(u => u.Key).Where(k => before.Any(u => u.Key == k))))
            yield return $"The rotation has another order: {Words.List([.. units.Select(u => u.Name)])}.";
        foreach (var sentence in Lists(old, old.Edition.FirstCourse, now, now.Edition.FirstCourse, "The first course"))
            yield return sentence;
    }

    private static IEnumerable<string> Lists(PreparedEdition old, IReadOnlyList<string> before, PreparedEdition now, IReadOnlyList<string> items, string whose)
    {
        var dropped = before.Except(items).Select(k => Name(old, k)).ToList();
        var added = items.Except(before).Select(k => Name(now, k)).ToList();
        if (added.Count > 0)
            yield return $"{whose} now teaches {Words.List(added)}.";
        if (dropped.Count > 0)
            yield return $"{whose} no longer teaches {Words.List(dropped)}.";
        if (!before.Where(items.Contains).SequenceEqual(items.Where(before.Contains)))
            yield return $"{whose} has another order.";
    }

    private static string Name(PreparedEdition edition, string key) => edition.Has(key) ? edition.Item(key).Name : key;
}
