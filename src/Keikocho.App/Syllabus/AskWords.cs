using System.Globalization;
using Keikocho.App.Shared;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.Syllabus;

/// <summary>What a rank asks in short words, for the table of the ladder and the lists of a draft.</summary>
public sealed class AskWords
{
    private const int MostNames = 4;
    private readonly Edition edition;
    private readonly Dictionary<string, Item> items;
    private readonly Dictionary<string, string> ranks;

    /// <summary>Of one edition; a key that it does not have is said as it is.</summary>
    public AskWords(Edition edition)
    {
        ArgumentNullException.ThrowIfNull(edition);
        this.edition = edition;
        items = edition.Items.DistinctBy(i => i.Key).ToDictionary(i => i.Key, StringComparer.Ordinal);
        ranks = edition.Ranks.DistinctBy(r => r.Key).ToDictionary(r => r.Key, r => r.Name, StringComparer.Ordinal);
    }

    /// <summary>The name of an item.</summary>
    public string Name(string key) => items.TryGetValue(key, out var item) ? item.Name : key;

    /// <summary>One line: "O-goshi or De-ashi-barai".</summary>
    public string Line(Requirement requirement)
    {
        ArgumentNullException.ThrowIfNull(requirement);
        if (requirement.Title is { } title) return title;
        return requirement.Ask switch
        {
            Ask.AllOf all => Names(all.Items),
            Ask.AnyOf { Count: 1, Items.Count: 2 } any => $"{Name(any.Items[0])} or {Name(any.Items[1])}",
            Ask.AnyOf any => $"any {Text(any.Count)} of: {Names(any.Items)}",
            Ask.FromPool pool => $"{Text(pool.Count)} chosen by the {(pool.ChosenBy == Chooser.Child ? "child" : "instructor")} from {(pool.Pool.Count > 0 ? Names(pool.Pool) : "all that was asked so far" + Only(pool.Kinds))}",
            Ask.ShareOfRank share => $"{(share.Percent == 50 ? "half" : Text(share.Percent) + "%")} of what {Rank(share.Rank)} asks{Only(share.Kinds)}",
            Ask.DrawnFromEarlier drawn => $"{Text(drawn.Count)} drawn by lot from {(drawn.Ranks.Count == 0 ? "the ranks below" : Listed([.. drawn.Ranks.Select(Rank)], "and"))}{Only(drawn.Kinds)}",
            Ask.TheOther other => $"what was not shown for {Rank(other.Rank)}",
            _ => throw new ArgumentOutOfRangeException(nameof(requirement), requirement.Ask, "There is no such shape."),
        };
    }

    /// <summary>What goes with a line: condition, ages, unit, how long it is asked, critical; empty for none.</summary>
    public string More(Requirement requirement)
    {
        ArgumentNullException.ThrowIfNull(requirement);
        var parts = new[]
        {
            requirement.Condition,
            KindWords.Of(requirement.Ages),
            requirement.Unit is { } unit ? $"in the term of {edition.Units.FirstOrDefault(u => u.Key == unit)?.Name ?? unit}" : null,
            requirement.Carry == Carry.ThisRank ? null : KindWords.Of(requirement.Carry),
            requirement.Critical ? "must be good" : null,
            requirement.AtOnce ? "from the day of publication on" : null,
        };
        return string.Join("; ", parts.OfType<string>());
    }

    /// <summary>Everything that a rank asks, on one or two lines of a table.</summary>
    public string InShort(LadderRank rank)
    {
        ArgumentNullException.ThrowIfNull(rank);
        if (rank.Requirements.Count == 0) return "";
        var parts = new List<string>();
        var counted = new Dictionary<ItemKind, int>();
        foreach (var requirement in rank.Requirements)
        {
            // Words, questions and the smaller things are many, and their names say little in a table; so are long lists of anything.
            if (requirement.Title is null && requirement.Ask is Ask.AllOf { Items: var keys } && keys.All(items.ContainsKey)
                && (keys.Count > MostNames || keys.All(k => KindWords.IsCounted(items[k].Kind))))
            {
                foreach (var key in keys) counted[items[key].Kind] = counted.GetValueOrDefault(items[key].Kind) + 1;
                continue;
            }

            parts.Add(Line(requirement) + (requirement.Condition is { } condition ? $" ({condition})" : ""));
        }

        parts.AddRange(counted.OrderBy(c => c.Key).Select(c => KindWords.Count(c.Value, c.Key)));
        var text = string.Join("; ", parts);
        return Capital(text);
    }

    /// <summary>The text as a sentence begins.</summary>
    public static string Capital(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
    }

    /// <summary>The text with its full stop, where it has no sign at its end already.</summary>
    public static string Ended(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length > 0 && text[^1] is '.' or '?' or '!' ? text : text + ".";
    }

    /// <summary>Least time and age in words: "14 lessons and 10 weeks"; empty when nothing is asked.</summary>
    public static string Minima(Minima minima)
    {
        ArgumentNullException.ThrowIfNull(minima);
        var parts = new List<string>();
        if (minima.Lessons > 0) parts.Add(Counted.Of(minima.Lessons, "lesson") + (minima.CountedOverTwoRanks ? " since the rank before the last" : ""));
        if (minima.Weeks > 0) parts.Add(Counted.Of(minima.Weeks, "week"));
        if (minima.Months > 0) parts.Add(Counted.Of(minima.Months, "month"));
        if (minima.Age is { } age) parts.Add($"{Counted.Of(age, "year")} old{(minima.AgeBy == AgeBasis.CalendarYear ? " in the calendar year" : "")}");
        foreach (var other in minima.ForAges ?? [])
        {
            var own = new[] { Other(other.Lessons, "lesson"), Other(other.Weeks, "week"), Other(other.Months, "month") }.OfType<string>().ToList();
            if (own.Count > 0) parts.Add($"{KindWords.Of(other.Ages) ?? "at any age"} {Listed(own, "and")}");
        }

        return string.Join(", ", parts);

        static string? Other(int? number, string one) => number is { } n ? Counted.Of(n, one) : null;
    }

    private string Rank(string key) => ranks.GetValueOrDefault(key, key);

    private string Names(IReadOnlyList<string> keys)
    {
        var names = keys.Select(Name).ToList();
        // A name may hold a comma itself ("O-goshi, moving").
        if (names.Any(n => n.Contains(',', StringComparison.Ordinal))) return string.Join("; ", names);
        return Listed(names, "and");
    }

    private static string Only(IReadOnlyList<ItemKind>? kinds) => kinds is null ? "" : $" ({Listed([.. kinds.Select(KindWords.Many)], "and")} only)";

    private static string Listed(List<string> parts, string last) =>
        parts.Count < 2 ? string.Concat(parts) : $"{string.Join(", ", parts.Take(parts.Count - 1))} {last} {parts[^1]}";

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
