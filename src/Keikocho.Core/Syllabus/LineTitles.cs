using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>The line of a requirement in plain words, where the club gave none or what it gave no longer holds.</summary>
internal static class LineTitles
{
    /// <summary>All, either of two, or any k of n.</summary>
    public static string Of(int count, IReadOnlyList<SheetItem> items) =>
        count >= items.Count ? All(items)
        : count == 1 && items.Count == 2 ? $"Either of: {items[0].Item.Name} or {items[1].Item.Name}"
        : $"Any {Text(count)} of: {Names(items)}";

    /// <summary>"A, B and C".</summary>
    public static string All(IReadOnlyList<SheetItem> items)
    {
        if (items.Count == 1)
            return items[0].Item.Name;
        if (items.Any(i => i.Item.Name.Contains(',', StringComparison.Ordinal)))
            return Names(items);
        return Words.List([.. items.Select(i => i.Item.Name)]);
    }

    /// <summary>A pool before and after the choice.</summary>
    public static string Pool(Ask.FromPool ask, bool chosen, int count, IReadOnlyList<SheetItem> items)
    {
        var whose = ask.ChosenBy == Chooser.Child ? "the child's choice" : "the instructor's choice";
        if (chosen)
            return $"Chosen, {whose}: {Names(items)}";
        return ask.Pool.Count == 0
            ? $"{Text(count)} of {whose} from what this rank and the ranks below ask"
            : $"{Text(count)} of {whose} from: {Names(items)}";
    }

    /// <summary>A share of a later rank.</summary>
    public static string Share(string rank, int count, int pool) => $"Any {Text(count)} of the {Text(pool)} that {rank} asks";

    /// <summary>What was drawn.</summary>
    public static string Drawn(IReadOnlyList<SheetItem> items) => $"Drawn by lot: {Names(items)}";

    /// <summary>What will be drawn, for the copy on the wall.</summary>
    public static string ToDraw(int count, string? from) => $"{Text(count)} drawn by lot from what {from ?? "the ranks below"} asked";

    /// <summary>What was not shown at an earlier rank.</summary>
    public static string TheOther(string rank, int count, IReadOnlyList<SheetItem> items, bool known) =>
        known && count == items.Count ? $"Not shown for {rank}: {All(items)}"
        : $"What was not shown for {rank}: {(count == items.Count ? All(items) : LowerFirst(Of(count, items)))}";

    /// <summary>A requirement's line as it stands in the edition.</summary>
    public static string Plain(PreparedEdition edition, string rank, Requirement requirement)
    {
        if (requirement.Title is { } title)
            return title;
        var named = PreparedEdition.Named(requirement.Ask).Select(key => new SheetItem(edition.Item(key))).ToList();
        return requirement.Ask switch
        {
            Ask.AllOf => All(named),
            Ask.AnyOf any => Of(any.Count, named),
            Ask.FromPool pool => Pool(pool, false, pool.Count, named),
            Ask.ShareOfRank share => $"{share.Percent} % of what {RankName(edition, share.Rank)} asks",
            Ask.DrawnFromEarlier drawn => ToDraw(drawn.Count, From(edition, drawn)),
            Ask.TheOther other => $"what was not shown for {RankName(edition, other.Rank)}",
            _ => $"a line of {rank}",
        };
    }

    /// <summary>The ranks that a lot is drawn from, in words; null for all below.</summary>
    public static string? From(PreparedEdition edition, Ask.DrawnFromEarlier ask) =>
        ask.Ranks.Count == 0 ? null : Words.List([.. ask.Ranks.Select(key => RankName(edition, key))]);

    /// <summary>"from 8 years", "up to 7 years", "8 to 10 years"; null for all.</summary>
    public static string? Ages(AgeBand? band) => band switch
    {
        null or { From: null, To: null } => null,
        { From: { } from, To: null } => $"from {Years(from)}",
        { From: null, To: { } to } => $"up to {Years(to)}",
        { From: { } from, To: { } to } => from == to ? Years(from) : $"{Text(from)} to {Years(to)}",
    };

    private static string RankName(PreparedEdition edition, string key) => edition.Edition.Ranks[edition.Rank(key)].Name;

    private static string Years(int years) => Words.Count(years, "year");

    // A name may hold a comma itself ("O-goshi, moving").
    private static string Names(IReadOnlyList<SheetItem> items) => string.Join(
        items.Any(i => i.Item.Name.Contains(',', StringComparison.Ordinal)) ? "; " : ", ", items.Select(i => i.Item.Name));

    private static string LowerFirst(string text) => char.ToLowerInvariant(text[0]) + text[1..];

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
