using Keikocho.Core.Syllabus;

namespace Keikocho.App.Syllabus.Edits;

/// <summary>Changes of the units and of the first course of a draft. Null where it is not there or nothing changes.</summary>
public static class EditUnits
{
    /// <summary>What the first course is named by in a form; no unit has an empty key.</summary>
    public const string FirstCourse = "";

    /// <summary>A new unit at the end of the rotation.</summary>
    public static Edited Add(Edition edition, string name)
    {
        ArgumentNullException.ThrowIfNull(edition);
        return new Edited(edition with { Units = [.. edition.Units, new Unit(EditionKeys.Make(name, edition.Units.Select(u => u.Key)), name, [])] }, $"Unit {name} was added.");
    }

    /// <summary>Another name for a unit.</summary>
    public static Edited? Rename(Edition edition, string key, string name)
    {
        ArgumentNullException.ThrowIfNull(edition);
        return edition.Units.FirstOrDefault(u => u.Key == key) is { } unit && unit.Name != name
            ? new Edited(edition with { Units = [.. edition.Units.Select(u => u.Key == key ? u with { Name = name } : u)] }, $"Unit {unit.Name} is called {name}.")
            : null;
    }

    /// <summary>One place earlier or later in the rotation.</summary>
    public static Edited? Move(Edition edition, string key, bool earlier)
    {
        ArgumentNullException.ThrowIfNull(edition);
        return EditionKeys.Moved(edition.Units, u => u.Key == key, earlier ? -1 : 1) is { } units
            ? new Edited(edition with { Units = units }, $"Unit {edition.Units.First(u => u.Key == key).Name} was moved {(earlier ? "up" : "down")}.")
            : null;
    }

    /// <summary>Drops a unit; what was asked only in its term is asked in every term.</summary>
    public static Edited? Drop(Edition edition, string key)
    {
        ArgumentNullException.ThrowIfNull(edition);
        if (edition.Units.FirstOrDefault(u => u.Key == key) is not { } unit) return null;
        var left = edition with
        {
            Units = [.. edition.Units.Where(u => u.Key != key)],
            Ranks = [.. edition.Ranks.Select(r => r with { Requirements = [.. r.Requirements.Select(q => q.Unit == key ? q with { Unit = null } : q)] })],
        };
        return new Edited(EditionKeys.Prune(left, unit.Items), $"Unit {unit.Name} was dropped; what was asked in its term only is asked in every term.");
    }

    /// <summary>One more item that is taught.</summary>
    public static Edited? Teach(Edition edition, string unit, Item item)
    {
        ArgumentNullException.ThrowIfNull(item);
        return On(edition, unit, items => items.Contains(item.Key) ? null : [.. items, item.Key], $"{item.Name} was added.");
    }

    /// <summary>Takes an item out.</summary>
    public static Edited? TakeOut(Edition edition, string unit, string item)
    {
        var edited = On(edition, unit, items => items.Contains(item) ? [.. items.Where(k => k != item)] : null, $"{new AskWords(edition).Name(item)} was taken out.");
        return edited is null ? null : edited with { Edition = EditionKeys.Prune(edited.Edition, [item]) };
    }

    /// <summary>One place up or down.</summary>
    public static Edited? MoveItem(Edition edition, string unit, string item, bool up) =>
        On(edition, unit, items => EditionKeys.Moved(items, k => k == item, up ? -1 : 1), $"{new AskWords(edition).Name(item)} was moved {(up ? "up" : "down")}.");

    private static Edited? On(Edition edition, string unit, Func<IReadOnlyList<string>, IReadOnlyList<string>?> change, string said)
    {
        ArgumentNullException.ThrowIfNull(edition);
        if (unit == FirstCourse)
            return change(edition.FirstCourse) is { } course ? new Edited(edition with { FirstCourse = course }, $"First course: {said}") : null;
        if (edition.Units.FirstOrDefault(u => u.Key == unit) is not { } was || change(was.Items) is not { } items) return null;
        return new Edited(edition with { Units = [.. edition.Units.Select(u => u.Key == unit ? u with { Items = items } : u)] }, $"{was.Name}: {said}");
    }
}
