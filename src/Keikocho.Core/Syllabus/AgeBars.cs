using Keikocho.Core.Kernel;

namespace Keikocho.Core.Syllabus;

/// <summary>Which of the club's age rules bar which items of an edition.</summary>
internal sealed class AgeBars
{
    private readonly Dictionary<string, AgeRule[]> byItem = new(StringComparer.Ordinal);

    public AgeBars(IReadOnlyList<AgeRule> rules, IReadOnlyList<Item> items, ItemNames names)
    {
        NoGaps.In(rules, "age rules");
        Rules = rules;
        foreach (var rule in rules)
        {
            if (rule.BelowAge is < 1 or > 30)
                throw new ArgumentException($"The age rule \"{rule.Name}\" is for ages below 1 to 30; mend its age.");
            if (!Enum.IsDefined(rule.AgeBy))
                throw new ArgumentException($"The age rule \"{rule.Name}\" reckons the age by the birthday or by the calendar year; choose one.");
        }

        foreach (var item in items)
        {
            // Of two rules the stricter counts, so it stands first.
            var bars = rules.Where(rule => Touches(rule, item, items, names)).OrderByDescending(rule => rule.BelowAge).ToArray();
            if (bars.Length > 0)
                byItem.Add(item.Key, bars);
        }
    }

    public IReadOnlyList<AgeRule> Rules { get; }

    /// <summary>Rules that bar an item at some age, the strictest first.</summary>
    public IReadOnlyList<AgeRule> Of(Item item) => byItem.TryGetValue(item.Key, out var rules) ? rules : [];

    /// <summary>The strictest rule that bars an item for somebody; null when none does. An unknown birth date is barred by every rule.</summary>
    public AgeRule? For(Item item, DateOnly? born, DateOnly on)
    {
        if (byItem.Count == 0 || !byItem.TryGetValue(item.Key, out var rules))
            return null;
        foreach (var rule in rules)
        {
            if (born is not { } day || YearsBy(rule.AgeBy, day, on) < rule.BelowAge)
                return rule;
        }

        return null;
    }

    /// <summary>The age that a rule looks at. A birthday on 29 February is on 1 March in other years: the later, so the stricter.</summary>
    public static int YearsBy(AgeBasis basis, DateOnly born, DateOnly on) =>
        basis == AgeBasis.CalendarYear ? on.Year - born.Year : Age.On(born, on, LeapBirthday.FirstMarch);

    private static bool Touches(AgeRule rule, Item item, IReadOnlyList<Item> items, ItemNames names) =>
        rule.Items.Contains(item.Key)
        || rule.Kinds.Contains(item.Kind)
        || rule.Techniques.Any(technique => Shown(item).Concat(InTheName(item, names, rule)).Any(name => names.Means(technique, name)))
        || (rule.Kinds.Count > 0 && (Of(item.Order, item.Kind, names).Any(rule.Kinds.Contains)
            || Made(item).Concat(InTheName(item, names, rule)).Any(part => IsOfKind(rule, part, items, names))));

    /// <summary>Whether a technique is of a kind that a rule bars: by the library, or by an item that the edition has of it.</summary>
    internal static bool IsOfKind(AgeRule rule, string technique, IReadOnlyList<Item> items, ItemNames names) =>
        names.Kinds(technique).Any(rule.Kinds.Contains)
        || items.Any(other => rule.Kinds.Contains(other.Kind) && other.Technique is { } its && names.Alike(its, technique));

    private static IEnumerable<string> Shown(Item item) =>
        item.Kind is ItemKind.Word or ItemKind.Question ? [] : ItemNames.Techniques(item).Append(item.Name);

    // What is done in an order is done too: a throw into a strangle is barred where strangles are. Getting out of one is not doing it.
    private static IEnumerable<string> Made(Item item) => item.Order is null or Order.EscapeFrom ? [] : ItemNames.Techniques(item);

    // An order may leave its parts to the item's name: "Tai-otoshi, then Juji-gatame".
    private static IEnumerable<string> InTheName(Item item, ItemNames names, AgeRule rule) =>
        item.Kind is ItemKind.Combination or ItemKind.Counter or ItemKind.Sequence or ItemKind.Turnover && item.Order is not Order.EscapeFrom
            ? names.In(item.Name, rule.Techniques)
            : [];

    // What an item is made of by its kind alone, where nobody knows the technique: combinations and counters are throws, a turnover ends in a hold.
    private static IEnumerable<ItemKind> Of(Order? order, ItemKind kind, ItemNames names) => order switch
    {
        Order.Into or Order.CounteredBy when kind is ItemKind.Combination or ItemKind.Counter => [ItemKind.Throw],
        Order.TurnoverInto { Hold: { } hold } when names.Kinds(hold).Count == 0 => [ItemKind.HoldDown],
        _ => [],
    };
}
