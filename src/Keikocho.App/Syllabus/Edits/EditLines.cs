using System.Globalization;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.Syllabus.Edits;

/// <summary>Changes of what one rank of a draft asks. Null where the rank or the line is not there or nothing changes.</summary>
public static class EditLines
{
    /// <summary>A new line that asks one item.</summary>
    public static Edited? Add(Edition edition, string rank, Item item, Requirement pattern)
    {
        ArgumentNullException.ThrowIfNull(item);
        ArgumentNullException.ThrowIfNull(pattern);
        return On(edition, rank, was =>
        {
            var line = pattern with { Key = EditionKeys.Make(item.Name, was.Requirements.Select(r => r.Key)), Ask = new Ask.AllOf([item.Key]) };
            return (was with { Requirements = [.. was.Requirements, line] }, $"{item.Name} was added.");
        });
    }

    /// <summary>Puts another version of a line in its place.</summary>
    public static Edited? Change(Edition edition, string rank, Requirement line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return On(edition, rank, was => was.Requirements.Any(r => r.Key == line.Key)
            ? (was with { Requirements = [.. was.Requirements.Select(r => r.Key == line.Key ? line : r)] }, $"“{new AskWords(edition).Line(line)}” was changed.")
            : null);
    }

    /// <summary>One more item in a line.</summary>
    public static Edited? AddTo(Edition edition, string rank, string line, Item item)
    {
        ArgumentNullException.ThrowIfNull(item);
        return On(edition, rank, was =>
        {
            if (was.Requirements.FirstOrDefault(r => r.Key == line) is not { } old || EditionKeys.Of(old.Ask).Contains(item.Key)) return null;
            Ask? ask = old.Ask switch
            {
                Ask.AllOf all => new Ask.AllOf([.. all.Items, item.Key]),
                Ask.AnyOf any => any with { Items = [.. any.Items, item.Key] },
                Ask.FromPool pool => pool with { Pool = [.. pool.Pool, item.Key] },
                _ => null,
            };
            return ask is null ? null : (Put(was, old with { Ask = ask }), $"{item.Name} was added to “{new AskWords(edition).Line(old)}”.");
        });
    }

    /// <summary>Takes one item out of a line; a line without any goes.</summary>
    public static Edited? TakeFrom(Edition edition, string rank, string line, string item)
    {
        var edited = On(edition, rank, was =>
        {
            if (was.Requirements.FirstOrDefault(r => r.Key == line) is not { } old || !EditionKeys.Of(old.Ask).Contains(item)) return null;
            var left = EditionKeys.Of(old.Ask).Where(k => k != item).ToList();
            Ask? ask = old.Ask switch
            {
                _ when left.Count == 0 => null,
                Ask.AnyOf any when any.Count >= left.Count => new Ask.AllOf(left),
                Ask.AnyOf any => any with { Items = left },
                Ask.FromPool pool => pool with { Pool = left, Count = Math.Min(pool.Count, left.Count) },
                _ => new Ask.AllOf(left),
            };
            var words = new AskWords(edition);
            return (ask is null ? Without(was, line) : Put(was, old with { Ask = ask }), $"{words.Name(item)} was taken out of “{words.Line(old)}”.");
        });
        return edited is null ? null : edited with { Edition = EditionKeys.Prune(edited.Edition, [item]) };
    }

    /// <summary>One place up or down the sheet.</summary>
    public static Edited? Move(Edition edition, string rank, string line, bool up) => On(edition, rank, was =>
        EditionKeys.Moved(was.Requirements, r => r.Key == line, up ? -1 : 1) is { } lines
            ? (was with { Requirements = lines }, $"“{new AskWords(edition).Line(was.Requirements.First(r => r.Key == line))}” was moved {(up ? "up" : "down")}.")
            : null);

    /// <summary>Drops a line.</summary>
    public static Edited? Drop(Edition edition, string rank, string line)
    {
        IReadOnlyList<string> items = [];
        var edited = On(edition, rank, was =>
        {
            if (was.Requirements.FirstOrDefault(r => r.Key == line) is not { } old) return null;
            items = EditionKeys.Of(old.Ask);
            return (Without(was, line), $"“{new AskWords(edition).Line(old)}” was dropped.");
        });
        return edited is null ? null : edited with { Edition = EditionKeys.Prune(edited.Edition, items) };
    }

    /// <summary>Makes one line of several: any so many of their items. What goes with the first goes with all.</summary>
    public static Edited? Join(Edition edition, string rank, IReadOnlySet<string> lines, int count) => On(edition, rank, was =>
    {
        var joined = was.Requirements.Where(r => lines.Contains(r.Key)).ToList();
        var items = joined.SelectMany(r => EditionKeys.Of(r.Ask)).Distinct(StringComparer.Ordinal).ToList();
        if (joined.Count < 2 || joined.Any(r => r.Ask is not (Ask.AllOf or Ask.AnyOf)) || count < 1 || count >= items.Count) return null;
        var line = joined[0] with
        {
            Ask = new Ask.AnyOf(count, items),
            Title = null,
            Critical = joined.Any(r => r.Critical),
            AtOnce = joined.Any(r => r.AtOnce),
        };
        var gone = joined.Skip(1).Select(r => r.Key).ToHashSet(StringComparer.Ordinal);
        var left = Put(was with { Requirements = [.. was.Requirements.Where(r => !gone.Contains(r.Key))] }, line);
        return (left, $"Joined: {new AskWords(edition).Line(line)}.");
    });

    /// <summary>Makes a line for each item of one.</summary>
    public static Edited? Part(Edition edition, string rank, string line) => On(edition, rank, was =>
    {
        if (was.Requirements.FirstOrDefault(r => r.Key == line) is not { Ask: Ask.AllOf or Ask.AnyOf } old || EditionKeys.Of(old.Ask) is not { Count: > 1 } items) return null;
        var words = new AskWords(edition);
        var keys = was.Requirements.Select(r => r.Key).ToList();
        var parts = new List<Requirement>();
        foreach (var item in items)
        {
            var key = parts.Count == 0 ? old.Key : EditionKeys.Make(words.Name(item), keys);
            keys.Add(key);
            parts.Add(old with { Key = key, Title = null, Ask = new Ask.AllOf([item]) });
        }

        return (was with { Requirements = [.. was.Requirements.SelectMany(r => r.Key == line ? parts : [r])] }, $"“{words.Line(old)}” was parted into {parts.Count.ToString(CultureInfo.InvariantCulture)} lines.");
    });

    private static Edited? On(Edition edition, string rank, Func<LadderRank, (LadderRank Rank, string Said)?> change)
    {
        ArgumentNullException.ThrowIfNull(edition);
        if (edition.Ranks.FirstOrDefault(r => r.Key == rank) is not { } was || change(was) is not { } changed) return null;
        return new Edited(edition with { Ranks = [.. edition.Ranks.Select(r => r.Key == rank ? changed.Rank : r)] }, $"{was.Name}: {changed.Said}");
    }

    private static LadderRank Put(LadderRank rank, Requirement line) => rank with { Requirements = [.. rank.Requirements.Select(r => r.Key == line.Key ? line : r)] };

    private static LadderRank Without(LadderRank rank, string line) => rank with { Requirements = [.. rank.Requirements.Where(r => r.Key != line)] };
}
