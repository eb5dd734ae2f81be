using System.Numerics;
using System.Text;
using Keikocho.Core.Names;

namespace Keikocho.Core.Syllabus;

/// <summary>The lines that a sheet must have, worked out key by key for the check of it.</summary>
internal sealed class ExpectedLines(SheetSnapshot question, NameIndex? names)
{
    private readonly Edition edition = question.Edition;
    private readonly ItemNames spellings = new(question.Edition, names);
    private readonly int target = question.Edition.Ranks.ToList().FindIndex(r => r.Key == question.Rank);
    private readonly int? years = Years(question);

    /// <summary>Years completed on the day, counted up one by one; a birthday on 29 February counts on 1 March.</summary>
    public static int? Years(SheetSnapshot question)
    {
        if (question.Child?.Born is not { } born)
            return null;
        var count = 0;
        while (Reached(born, count + 1) <= question.TestOn)
            count++;
        return count;
    }

    public IReadOnlyList<ExpectedLine> All() =>
    [
        .. edition.Ranks.Take(target + 1).SelectMany((rank, home) => rank.Requirements.Where(OfMyAge).SelectMany(r => Of(r, home))).Where(l => l.Count > 0),
    ];

    private static DateOnly Reached(DateOnly born, int age) =>
        born is { Month: 2, Day: 29 } && !DateTime.IsLeapYear(born.Year + age) ? new(born.Year + age, 3, 1) : new(born.Year + age, born.Month, born.Day);

    private bool OfMyAge(Requirement requirement) =>
        question.Child is null || requirement.Ages is not { } band || (band.From is null || years >= band.From) && (band.To is null || years is null || years <= band.To);

    private IEnumerable<ExpectedLine> Of(Requirement requirement, int home)
    {
        var own = home == target;
        var key = own ? requirement.Key : $"{edition.Ranks[home].Key}/{requirement.Key}";
        var inUnit = requirement.Unit is null || requirement.Unit == question.Unit;
        if (requirement.Carry == Carry.OnceAskedStays && !(own && inUnit))
        {
            var stays = Shown(Named(requirement).Where(k => question.Child?.AskedBefore.Contains(k) == true));
            return [new(key, requirement, own, stays.Count, stays, Nothing)];
        }

        if (!inUnit || (!own && requirement.Carry != Carry.Always))
            return [];
        return requirement.Ask switch
        {
            Ask.AllOf all => Some(all.Items.Count, Shown(all.Items)),
            Ask.AnyOf any => Some(any.Count, Shown(any.Items)),
            Ask.FromPool pool => [Pool(key, requirement, own, pool, home)],
            Ask.ShareOfRank share => Share(key, requirement, own, share),
            Ask.DrawnFromEarlier drawn => [Drawn(key, requirement, own, drawn, home)],
            Ask.TheOther other => Other(other),
            _ => [],
        };

        IEnumerable<ExpectedLine> Some(int count, Dictionary<string, HashSet<string>> shown) =>
            [new(key, requirement, own, Math.Min(count, shown.Count), shown, Nothing)];

        IEnumerable<ExpectedLine> Other(Ask.TheOther other)
        {
            var choice = (Ask.AnyOf)edition.Ranks.Single(r => r.Key == other.Rank).Requirements.Single(r => r.Key == other.Requirement).Ask;
            var rest = choice.Items.Where(k => question.Child?.ShownAtRank.Contains(k) != true).ToList();
            return Some(Math.Min(choice.Items.Count - choice.Count, rest.Count), rest.Count == 0 ? [] : Shown(rest));
        }
    }

    private ExpectedLine Pool(string key, Requirement requirement, bool own, Ask.FromPool ask, int home)
    {
        var pool = ask.Pool.Count > 0 ? ask.Pool : Asked(0, home, ask.Kinds ?? Enum.GetValues<ItemKind>().Except([ItemKind.Fall, ItemKind.Word, ItemKind.Question]));
        var shown = Shown(pool);
        var count = Math.Min(ask.Count, shown.Count);
        var choice = question.Child?.Choices.FirstOrDefault(c => c.Requirement == requirement.Key || c.Requirement == $"{edition.Ranks[home].Key}/{requirement.Key}")?.Items ?? [];
        var chosen = choice.Intersect(pool).Select(Final).OfType<string>().ToHashSet();
        if (chosen.Count >= count)
            shown = shown.Where(s => chosen.Contains(s.Key)).ToDictionary();
        return new(key, requirement, own, count, shown, chosen);
    }

    private IEnumerable<ExpectedLine> Share(string key, Requirement requirement, bool own, Ask.ShareOfRank ask)
    {
        var its = edition.Ranks.Single(r => r.Key == ask.Rank).Requirements.Where(r => OfMyAge(r) && (r.Unit is null || r.Unit == question.Unit)).ToList();
        bool Counts(string k) => ask.Kinds is { } kinds ? kinds.Contains(Item(k).Kind) : Item(k).Kind != ItemKind.Fall;
        var falls = Shown(ask.Kinds is null ? its.SelectMany(Named).Where(k => !Counts(k)) : []);
        yield return new(key + ":falls", requirement, own, falls.Count, falls, Nothing);
        decimal asked = its.Sum(r => r.Ask switch
        {
            Ask.AllOf all => all.Items.Count(Counts),
            Ask.AnyOf any => Math.Min(any.Count, any.Items.Count(Counts)),
            Ask.FromPool pool => Math.Min(pool.Count, pool.Pool.Count(Counts)),
            _ => 0,
        });
        var shown = Shown(its.SelectMany(Named).Where(Counts));
        yield return new(key, requirement, own, Math.Min((int)Math.Ceiling(asked * ask.Percent / 100m), shown.Count), shown, Nothing);
    }

    private ExpectedLine Drawn(string key, Requirement requirement, bool own, Ask.DrawnFromEarlier ask, int home)
    {
        var places = edition.Ranks.Take(home).Select((r, i) => (r, i)).Where(p => ask.Ranks.Count == 0 || ask.Ranks.Contains(p.r.Key)).Select(p => p.i);
        var anyway = edition.Ranks.Take(target).SelectMany(r => r.Requirements).SelectMany(r => r.Carry switch
        {
            Carry.Always when r.Ask is Ask.AllOf && (r.Unit is null || r.Unit == question.Unit) => Named(r),
            Carry.OnceAskedStays when question.Child is not null => Named(r).Intersect(question.Child.AskedBefore),
            _ => [],
        });
        var kinds = ask.Kinds ?? Enum.GetValues<ItemKind>().Except([ItemKind.Fall]);
        var pool = places.SelectMany(p => Asked(p, p, kinds)).Distinct().Except(anyway).ToList();
        if (question.Child is not { } child)
            return new(key, requirement, own, Math.Min(ask.Count, pool.Count), new Dictionary<string, HashSet<string>>(), Nothing);
        var shown = Shown(pool);
        var drawn = shown.Keys.OrderBy(k => Ticket($"{edition.Ranks[home].Key}/{requirement.Key}|{child.Draw}|{k}")).Take(ask.Count).ToHashSet();
        return new(key, requirement, own, drawn.Count, shown.Where(s => drawn.Contains(s.Key)).ToDictionary(), drawn, drawn.Count > 0);
    }

    // The documented ticket in whole numbers without end, cut to 64 bits at each step.
    private static BigInteger Ticket(string text)
    {
        var whole = BigInteger.One << 64;
        var h = BigInteger.Parse("14695981039346656037", System.Globalization.CultureInfo.InvariantCulture);
        foreach (var b in Encoding.UTF8.GetBytes(text))
            h = (h ^ b) * 1099511628211 % whole;
        h = (h ^ (h >> 30)) * new BigInteger(0xBF58476D1CE4E5B9) % whole;
        h = (h ^ (h >> 27)) * new BigInteger(0x94D049BB133111EB) % whole;
        return h ^ (h >> 31);
    }

    private IEnumerable<string> Asked(int from, int to, IEnumerable<ItemKind> kinds) =>
        edition.Ranks.Skip(from).Take(to - from + 1).SelectMany(r => r.Requirements).SelectMany(Named).Distinct().Where(k => kinds.Contains(Item(k).Kind));

    private static IReadOnlySet<string> Nothing { get; } = new HashSet<string>();

    private static IEnumerable<string> Named(Requirement requirement) => requirement.Ask switch
    {
        Ask.AllOf all => all.Items,
        Ask.AnyOf any => any.Items,
        Ask.FromPool pool => pool.Pool,
        _ => [],
    };

    private Dictionary<string, HashSet<string>> Shown(IEnumerable<string> keys)
    {
        var shown = new Dictionary<string, HashSet<string>>();
        foreach (var key in keys)
        {
            if (Final(key) is not { } final)
                continue;
            if (!shown.TryGetValue(final, out var from))
                shown.Add(final, from = []);
            from.Add(key);
        }

        return shown;
    }

    private string? Final(string key)
    {
        // As many steps as there are items: a circle of barred items ends with nothing.
        for (var step = 0; step <= edition.Items.Count; step++)
        {
            if (!Barred(Item(key)))
                return key;
            if (Item(key).Alternative is not { } next)
                return null;
            key = next;
        }

        return null;
    }

    private bool Barred(Item item)
    {
        if (question.Child is not { } child)
            return false;
        return (child.SpareTheNeck && item.LoadsTheNeck) || question.AgeRules.Any(rule =>
            (child.Born is not { } born || (rule.AgeBy == AgeBasis.CalendarYear ? question.TestOn.Year - born.Year : years) < rule.BelowAge) && Names(rule, item));
    }

    private bool Names(AgeRule rule, Item item)
    {
        var parts = ItemNames.Techniques(item).ToList();
        var isSaid = item.Kind is ItemKind.Word or ItemKind.Question;
        var isMade = item.Kind is ItemKind.Combination or ItemKind.Counter or ItemKind.Sequence or ItemKind.Turnover || item.Order is not null;
        var isDone = isMade && item.Order is not Order.EscapeFrom && item.Kind != ItemKind.Escape;
        if (isDone && item.Kind is ItemKind.Combination or ItemKind.Counter or ItemKind.Sequence or ItemKind.Turnover)
            parts.AddRange(spellings.In(item.Name, rule.Techniques));
        var kinds = new HashSet<ItemKind> { item.Kind };
        if (isDone)
        {
            kinds.UnionWith(parts.SelectMany(spellings.Kinds));
            kinds.UnionWith(edition.Items.Where(o => o.Technique is { } its && parts.Any(p => spellings.Alike(its, p))).Select(o => o.Kind));
            if (item.Order is not null && item.Kind is ItemKind.Combination or ItemKind.Counter)
                kinds.Add(ItemKind.Throw);
            if (item.Order is Order.TurnoverInto { Hold: { } hold } && spellings.Kinds(hold).Count == 0)
                kinds.Add(ItemKind.HoldDown);
        }

        return rule.Items.Contains(item.Key) || kinds.Overlaps(rule.Kinds) || (!isSaid && rule.Techniques.Any(t => parts.Append(item.Name).Any(p => spellings.Means(t, p))));
    }

    private Item Item(string key) => edition.Items.Single(i => i.Key == key);
}
