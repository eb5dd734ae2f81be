using Keikocho.Core.Kernel;

namespace Keikocho.Core.Partners;

/// <summary>What bars two children from working with each other; more than one may.</summary>
[Flags]
public enum LinkBars
{
    /// <summary>Nothing.</summary>
    None = 0,
    /// <summary>Neither may be thrown.</summary>
    NeitherMayFall = 1,
    /// <summary>The size gap is above the limit.</summary>
    Size = 2,
    /// <summary>The ages are too far apart.</summary>
    Age = 4,
    /// <summary>An age is not known, and the rule asks for it.</summary>
    AgeUnknown = 8,
    /// <summary>To be kept apart.</summary>
    KeptApart = 16,
    /// <summary>Both are newcomers.</summary>
    Newcomers = 32,
    /// <summary>Siblings throw with others.</summary>
    Siblings = 64,
}

/// <summary>Every gate and every cost between the children who may have a partner, in register order.</summary>
internal sealed class LinkTable
{
    /// <summary>Classes since together of two who never were.</summary>
    public const int Never = LevelledMatching.Never;

    private readonly LinkBars[] _bars;
    private readonly int[] _cost;
    private readonly int[] _since;
    private readonly bool[] _apart;

    public LinkTable(PartnersQuestion question, PartnersActivity activity)
    {
        Activity = activity;
        Rule = question.Rule ?? new PartnersRule();
        Children = [.. question.Children.Where(c => c.MayHaveContact && c.MayBeOnTheMat).OrderBy(c => c.Register)];
        var n = Children.Count;
        _bars = new LinkBars[n * n];
        _cost = new int[n * n];
        _since = new int[n * n];
        _apart = new bool[n * n];
        Array.Fill(_since, Never);
        var place = new Dictionary<PersonId, int>();
        for (var i = 0; i < n; i++)
            place[Children[i].Child] = i;
        foreach (var two in question.KeepApart ?? [])
            Each(two.One, two.Other, (a, b) => _apart[a * n + b] = true);
        foreach (var two in question.Together ?? [])
            Each(two.One, two.Other, (a, b) => _since[a * n + b] = Math.Min(_since[a * n + b], two.ClassesAgo));
        var together = new List<(int, int)>();
        foreach (var two in question.KeepTogether ?? [])
            Each(two.One, two.Other, (a, b) => together.Add((a, b)));
        for (var a = 0; a < n; a++)
        {
            for (var b = 0; b < n; b++)
            {
                if (a == b)
                    continue;
                _bars[a * n + b] = BarsBetween(Children[a], Children[b], _apart[a * n + b], together.Contains((a, b)));
                _cost[a * n + b] = CostBetween(Children[a], Children[b], _since[a * n + b]);
            }
        }

        AskedTogether = [.. together.Where(t => t.Item1 < t.Item2).Distinct().Order()];

        void Each(PersonId one, PersonId other, Action<int, int> note)
        {
            if (place.TryGetValue(one, out var a) && place.TryGetValue(other, out var b))
            {
                note(a, b);
                note(b, a);
            }
        }
    }

    public PartnersActivity Activity { get; }

    public PartnersRule Rule { get; }

    public IReadOnlyList<PartnersChild> Children { get; }

    /// <summary>Two who are here and were asked for together, in register order.</summary>
    public IReadOnlyList<(int First, int Second)> AskedTogether { get; }

    public LinkBars Bars(int a, int b) => _bars[a * Children.Count + b];

    public bool May(int a, int b) => a != b && Bars(a, b) == LinkBars.None;

    public int Cost(int a, int b) => _cost[a * Children.Count + b];

    /// <summary>Classes since the two worked together.</summary>
    public int Since(int a, int b) => _since[a * Children.Count + b];

    /// <summary>Whether a child may be the middle of a three: both others throw it.</summary>
    public bool MayBeMiddle(int child) => !Activity.Thrown || Children[child].MayFall;

    /// <summary>Whether two may be the outer ones of a three: they share it, but not a link.</summary>
    public bool MayShareThree(int a, int b) => a != b && !_apart[a * Children.Count + b] && !(Children[a].Newcomer && Children[b].Newcomer);

    /// <summary>Per cent by which the heavier is above the lighter, a half rounded up; null where a size is missing.</summary>
    internal static int? GapPercent(PartnersChild a, PartnersChild b)
    {
        if (a.Kilograms is not { } x || b.Kilograms is not { } y)
            return null;
        var (light, heavy) = x < y ? (x, y) : (y, x);
        var (upper, lower) = (200 * (heavy - light) + light, 2 * light);
        var whole = decimal.Truncate(upper / lower);
        while (whole * lower > upper)
            whole--;
        while ((whole + 1) * lower <= upper)
            whole++;
        return (int)whole;
    }

    private LinkBars BarsBetween(PartnersChild a, PartnersChild b, bool apart, bool together)
    {
        var bars = LinkBars.None;
        if (Activity.Thrown && !a.MayFall && !b.MayFall)
            bars |= LinkBars.NeitherMayFall;
        var sized = a.Kilograms is not null && b.Kilograms is not null;
        if (sized && Math.Abs(a.Kilograms!.Value - b.Kilograms!.Value) * 100 > Activity.SizeLimit * Math.Min(a.Kilograms.Value, b.Kilograms.Value))
            bars |= LinkBars.Size;
        if (Activity.Thrown || !sized)
        {
            var limit = sized ? Rule.AgeLimit : Activity.Thrown ? Math.Min(Rule.AgeLimit, Rule.AgeLimitWithoutSize) : Rule.AgeLimitWithoutSize;
            if (a.Age is not { } x || b.Age is not { } y)
                bars |= LinkBars.AgeUnknown;
            else if (Math.Abs(x - y) > limit)
                bars |= LinkBars.Age;
        }

        if (apart)
            bars |= LinkBars.KeptApart;
        if (a.Newcomer && b.Newcomer)
            bars |= LinkBars.Newcomers;
        if (Activity.Thrown && !together && a.Family is not null && string.Equals(a.Family, b.Family, StringComparison.Ordinal))
            bars |= LinkBars.Siblings;
        return bars;
    }

    private int CostBetween(PartnersChild a, PartnersChild b, int since)
    {
        var gap = GapPercent(a, b);

        // A missing size counts as the limit, and a missing age as the age limit: not knowing is never the cheaper choice.
        var cost = gap ?? Activity.SizeLimit;
        if (gap is null && a.Steps is { } s && b.Steps is { } t)
            cost += Rule.StepCost * Math.Abs(s - t);
        cost += Rule.YearCost * (a.Age is { } x && b.Age is { } y ? Math.Abs(x - y) : Rule.AgeLimit);
        return since == 1 ? cost + Rule.LastClassCost : cost;
    }
}
