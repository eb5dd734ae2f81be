using Keikocho.Core.Intake;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.Syllabus.Edits;

/// <summary>Finds, makes and changes the items of a draft.</summary>
public static class EditItems
{
    /// <summary>The item that a name means: one of the draft, else one that the club or a sample ladder knows; null for a new one.</summary>
    public static Item? Find(Edition edition, IEnumerable<Item> known, string name)
    {
        ArgumentNullException.ThrowIfNull(edition);
        ArgumentNullException.ThrowIfNull(known);
        var folded = NameFold.Fold(name);
        return edition.Items.FirstOrDefault(i => NameFold.Fold(i.Name) == folded) ?? known.FirstOrDefault(i => NameFold.Fold(i.Name) == folded);
    }

    /// <summary>The draft with an item in it; links to items that it does not have are left out.</summary>
    public static (Edition Edition, Item Item) With(Edition edition, Item item)
    {
        ArgumentNullException.ThrowIfNull(edition);
        ArgumentNullException.ThrowIfNull(item);
        if (edition.Items.FirstOrDefault(i => i.Key == item.Key) is { } there) return (edition, there);
        var keys = edition.Items.Select(i => i.Key).ToHashSet(StringComparer.Ordinal);
        var own = item with
        {
            Alternative = item.Alternative is { } other && keys.Contains(other) ? other : null,
            Covers = item.Covers?.Where(keys.Contains).ToList() is { Count: > 0 } covers ? covers : null,
        };
        return (edition with { Items = [.. edition.Items, own] }, own);
    }

    /// <summary>A new item of a name and a kind.</summary>
    public static Item New(Edition edition, IEnumerable<Item> known, string name, ItemKind kind)
    {
        ArgumentNullException.ThrowIfNull(edition);
        var key = EditionKeys.Make(name, edition.Items.Concat(known).Select(i => i.Key));
        return Named(new Item(key, kind, name));
    }

    /// <summary>The item with what its name says: the technique before the comma, the two of a combination.</summary>
    public static Item Named(Item item)
    {
        ArgumentNullException.ThrowIfNull(item);
        var name = item.Name;
        return item.Kind switch
        {
            ItemKind.Throw or ItemKind.HoldDown or ItemKind.Strangle or ItemKind.Armlock when item.Technique is null && item.Order is null =>
                item with { Technique = name.Split(',')[0].Trim() },
            ItemKind.Combination or ItemKind.Sequence when item.Order is null && Two(name, " into ") is { } two => item with { Order = new Order.Into(two.First, two.Second) },
            ItemKind.Counter when item.Order is null && Two(name, " countered by ") is { } two => item with { Order = new Order.CounteredBy(two.First, two.Second) },
            ItemKind.Escape when item.Order is null && Two(name, " by ") is { } two => item with { Order = new Order.EscapeFrom(Hold(two.First), two.Second) },
            _ => item,
        };
    }

    /// <summary>Puts another version of an item in its place; its key stays.</summary>
    public static Edited? Change(Edition edition, Item item)
    {
        ArgumentNullException.ThrowIfNull(edition);
        ArgumentNullException.ThrowIfNull(item);
        if (edition.Items.FirstOrDefault(i => i.Key == item.Key) is not { } was) return null;
        return new Edited(
            edition with { Items = [.. edition.Items.Select(i => i.Key == item.Key ? item : i)] },
            was.Name != item.Name ? $"{was.Name} is called {item.Name}." : $"{item.Name} was changed.");
    }

    private static (string First, string Second)? Two(string name, string between)
    {
        var at = name.IndexOf(between, StringComparison.OrdinalIgnoreCase);
        if (at <= 0) return null;
        var (first, second) = (name[..at].Trim(), name[(at + between.Length)..].Trim());
        return first.Length > 0 && second.Length > 0 ? (first, second) : null;
    }

    // "Escape from Kesa-gatame" names the hold after "from".
    private static string Hold(string words)
    {
        var at = words.IndexOf("from ", StringComparison.OrdinalIgnoreCase);
        return at < 0 ? words : words[(at + 5)..].Trim();
    }
}
