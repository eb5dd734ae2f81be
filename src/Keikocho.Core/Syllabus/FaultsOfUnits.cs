namespace Keikocho.Core.Syllabus;

/// <summary>What is wrong with the units and the first course of an edition.</summary>
internal static class FaultsOfUnits
{
    public static void Find(FaultList list)
    {
        var edition = list.Edition;
        var keys = new HashSet<string>(StringComparer.Ordinal);
        var used = edition.Ranks.Where(r => r is not null).SelectMany(r => r.Requirements).Select(r => r?.Unit).ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < edition.Units.Count; i++)
        {
            var path = $"units[{i}]";
            if (list.Gap(path, edition.Units[i]))
                continue;
            var unit = edition.Units[i];
            list.Key($"{path}.key", unit.Key, keys, "A unit");
            list.Text($"{path}.name", unit.Name, "A unit has no name; give it one.");
            list.Keys($"{path}.items", unit.Items, $"The unit {unit.Name}");
            if (unit.Items.Count == 0)
                list.Caution($"{path}.items", $"Nothing is taught in the unit {unit.Name}; list what is.");
            if (!used.Contains(unit.Key))
                list.Caution(path, $"No requirement is asked in the term of {unit.Name}; a child may miss it and nobody will know.");
        }

        list.Keys("firstCourse", edition.FirstCourse, "The first course");
        for (var i = 0; i < edition.FirstCourse.Count; i++)
        {
            if (list.Item(edition.FirstCourse[i]) is not { } item || !FaultList.IsThrown(item))
                continue;
            if (!list.Items(edition.FirstCourse.Take(i)).Any(before => before.Kind == ItemKind.Fall))
                list.Caution($"firstCourse[{i}]", $"The first course teaches {item.Name} before any fall; move a fall before it.");
            break;
        }
    }
}
