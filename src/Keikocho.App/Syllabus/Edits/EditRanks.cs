using Keikocho.Core.Syllabus;

namespace Keikocho.App.Syllabus.Edits;

/// <summary>Changes of the ladder of a draft. Null where the rank is not there or nothing changes.</summary>
public static class EditRanks
{
    /// <summary>A new rank after another; at the top where none is named.</summary>
    public static Edited Add(Edition edition, string name, string? cloth, int tips, string? after)
    {
        ArgumentNullException.ThrowIfNull(edition);
        var ranks = edition.Ranks.ToList();
        var rank = new LadderRank(EditionKeys.Make(name, ranks.Select(r => r.Key)), name, null, cloth, tips, new Minima(), []);
        var at = ranks.FindIndex(r => r.Key == after);
        ranks.Insert(at < 0 ? ranks.Count : at + 1, rank);
        return new Edited(edition with { Ranks = ranks }, $"{name} was added{(at < 0 ? " at the top" : $" after {ranks[at].Name}")}.");
    }

    /// <summary>One place further up (toward the higher ranks) or down.</summary>
    public static Edited? Move(Edition edition, string key, bool higher)
    {
        ArgumentNullException.ThrowIfNull(edition);
        return EditionKeys.Moved(edition.Ranks, r => r.Key == key, higher ? 1 : -1) is { } ranks
            ? new Edited(edition with { Ranks = ranks }, $"{Name(edition, key)} was moved {(higher ? "up" : "down")} the ladder.")
            : null;
    }

    /// <summary>Drops a rank with all that it asks.</summary>
    public static Edited? Drop(Edition edition, string key)
    {
        ArgumentNullException.ThrowIfNull(edition);
        if (edition.Ranks.FirstOrDefault(r => r.Key == key) is not { } rank) return null;
        var left = edition with { Ranks = [.. edition.Ranks.Where(r => r.Key != key)] };
        return new Edited(EditionKeys.Prune(left, rank.Requirements.SelectMany(r => EditionKeys.Of(r.Ask))), $"{rank.Name} was dropped.");
    }

    /// <summary>Puts another version of a rank in its place; its key stays. There is one first course, so one rank that ends it.</summary>
    public static Edited? Change(Edition edition, LadderRank rank)
    {
        ArgumentNullException.ThrowIfNull(edition);
        ArgumentNullException.ThrowIfNull(rank);
        if (edition.Ranks.FirstOrDefault(r => r.Key == rank.Key) is not { } was) return null;
        var ranks = edition.Ranks.Select(r => r.Key == rank.Key ? rank : rank.FirstCourse ? r with { FirstCourse = false } : r).ToList();
        var said = was.Name != rank.Name ? $"{was.Name} is called {rank.Name}."
            : was.Minima != rank.Minima ? $"{rank.Name}: least time and age are {(AskWords.Minima(rank.Minima) is { Length: > 0 } words ? words : "none")}."
            : $"{rank.Name} was changed.";
        return new Edited(edition with { Ranks = ranks }, said);
    }

    /// <summary>The names of ladder and edition.</summary>
    public static Edited Names(Edition edition, string ladder, string name)
    {
        ArgumentNullException.ThrowIfNull(edition);
        return new Edited(edition with { Ladder = ladder, Name = name }, $"The draft is called {name}, the ladder {ladder}.");
    }

    private static string Name(Edition edition, string key) => edition.Ranks.First(r => r.Key == key).Name;
}
