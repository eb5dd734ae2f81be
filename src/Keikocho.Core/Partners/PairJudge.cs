namespace Keikocho.Core.Partners;

/// <summary>The gates and costs of two children once more, and every arrangement of a few, for the check alone.</summary>
internal sealed class PairJudge(PartnersQuestion question)
{
    private readonly PartnersRule _rule = question.Rule ?? new PartnersRule();

    public bool Apart(PartnersChild a, PartnersChild b) => Names(question.KeepApart, a, b);

    /// <summary>What forbids the two; null for nothing.</summary>
    public string? Bar(PartnersChild a, PartnersChild b)
    {
        if (!a.MayHaveContact || !b.MayHaveContact || !a.MayBeOnTheMat || !b.MayBeOnTheMat)
            return "one has no partner tonight";
        if (question.Activity.Thrown && !(a.MayFall || b.MayFall))
            return "neither may be thrown";
        var limit = int.MaxValue;
        if (a.Kilograms.HasValue && b.Kilograms.HasValue)
        {
            var lighter = Math.Min(a.Kilograms.Value, b.Kilograms.Value);
            if (Math.Max(a.Kilograms.Value, b.Kilograms.Value) > lighter + lighter * question.Activity.SizeLimit / 100)
                return "the size gap is above the limit";
        }
        else
        {
            limit = _rule.AgeLimitWithoutSize;
        }

        if (question.Activity.Thrown)
            limit = Math.Min(limit, _rule.AgeLimit);
        if (limit < int.MaxValue && (!a.Age.HasValue || !b.Age.HasValue || a.Age.Value - b.Age.Value > limit || b.Age.Value - a.Age.Value > limit))
            return "too far apart in age, or an age is not known";
        if (Apart(a, b))
            return "kept apart";
        if (a.Newcomer && b.Newcomer)
            return "two newcomers";
        return question.Activity.Thrown && a.Family is not null && a.Family == b.Family && !Names(question.KeepTogether, a, b) ? "siblings" : null;
    }

    public int Cost(PartnersChild a, PartnersChild b)
    {
        int cost;
        if (a.Kilograms.HasValue && b.Kilograms.HasValue)
        {
            // The smallest whole number that the gap is less than half a per cent above.
            var (light, heavy) = (Math.Min(a.Kilograms.Value, b.Kilograms.Value), Math.Max(a.Kilograms.Value, b.Kilograms.Value));
            cost = 0;
            while (200 * (heavy - light) >= (2 * cost + 1) * light)
                cost++;
        }
        else
        {
            cost = question.Activity.SizeLimit + (a.Steps.HasValue && b.Steps.HasValue ? _rule.StepCost * Math.Abs(a.Steps.Value - b.Steps.Value) : 0);
        }

        cost += _rule.YearCost * (a.Age.HasValue && b.Age.HasValue ? Math.Abs(a.Age.Value - b.Age.Value) : _rule.AgeLimit);
        return Since(a, b) == 1 ? cost + _rule.LastClassCost : cost;
    }

    /// <summary>Two asked for together that may be, by places on the register; of two for one child the first.</summary>
    public List<(int, int)> AskedTogether(PartnersChild[] here)
    {
        var asked = new List<(int, int)>();
        for (var i = 0; i < here.Length; i++)
        {
            for (var j = i + 1; j < here.Length; j++)
            {
                var (a, b) = (here[i], here[j]);
                if (Names(question.KeepTogether, a, b) && Bar(a, b) is null && asked.All(t => t.Item1 != a.Register && t.Item2 != a.Register && t.Item1 != b.Register && t.Item2 != b.Register))
                    asked.Add((a.Register, b.Register));
            }
        }

        return asked;
    }

    /// <summary>Worst (0 where it does not count), total, classes since together in order, links.</summary>
    public (int Worst, int Total, int[] Since, (int, int)[] Links) Measure(IEnumerable<(int, int)> links, bool worstFirst)
    {
        var by = question.Children.ToDictionary(c => c.Register);
        (int, int)[] sorted = [.. links.Order()];
        int[] costs = [.. sorted.Select(l => Cost(by[l.Item1], by[l.Item2]))];
        return (worstFirst ? costs.DefaultIfEmpty(0).Max() : 0, costs.Sum(), [.. sorted.Select(l => Since(by[l.Item1], by[l.Item2])).Order()], sorted);
    }

    /// <summary>Less than 0 where the first is better.</summary>
    public static int Compare((int Worst, int Total, int[] Since, (int, int)[] Links) a, (int Worst, int Total, int[] Since, (int, int)[] Links) b)
    {
        if (a.Worst != b.Worst || a.Total != b.Total)
            return (a.Worst, a.Total).CompareTo((b.Worst, b.Total));
        for (var i = 0; i < a.Since.Length; i++)
        {
            if (a.Since[i] != b.Since[i])
                return b.Since[i].CompareTo(a.Since[i]);
        }

        for (var i = 0; i < a.Links.Length; i++)
        {
            if (a.Links[i] != b.Links[i])
                return a.Links[i].CompareTo(b.Links[i]);
        }

        return 0;
    }

    public static IEnumerable<(int, int)> LinksOf(Arrangement arrangement, PartnersChild[] here)
    {
        var place = here.ToDictionary(c => c.Child, c => c.Register);
        foreach (var group in arrangement.Groups)
        {
            for (var i = 1; i < group.Members.Count; i++)
            {
                var (a, b) = (place[group.Members[i - 1].Child], place[group.Members[i].Child]);
                yield return (Math.Min(a, b), Math.Max(a, b));
            }
        }
    }

    /// <summary>Every arrangement of one kind, as links by places on the register.</summary>
    public static IEnumerable<((int, int)[] Links, int Middle)> All(PairJudge judge, PartnersChild[] here, OfferKind kind)
    {
        if (here.Length == 0)
            return [([], -1)];
        return kind switch
        {
            OfferKind.Pairs => Pairings(judge, here).Select(l => (l, -1)),
            OfferKind.Adult => here.SelectMany(c => Pairings(judge, [.. here.Where(o => o != c)])).Select(l => (l, -1)),
            _ => Threes(judge, here),
        };
    }

    /// <summary>The fewest that any set of pairs leaves over.</summary>
    public static int FewestLeft(PairJudge judge, PartnersChild[] here)
    {
        if (here.Length == 0)
            return 0;
        var fewest = 1 + FewestLeft(judge, here[1..]);
        for (var i = 1; i < here.Length && fewest > 0; i++)
        {
            if (judge.Bar(here[0], here[i]) is null)
                fewest = Math.Min(fewest, FewestLeft(judge, [.. here[1..i], .. here[(i + 1)..]]));
        }

        return fewest;
    }

    private static IEnumerable<((int, int)[] Links, int Middle)> Threes(PairJudge judge, PartnersChild[] here)
    {
        foreach (var middle in here)
        {
            if (judge.IsThrown && !middle.MayFall)
                continue;
            foreach (var one in here)
            {
                foreach (var other in here)
                {
                    if (one == middle || other == middle || one.Register >= other.Register || judge.Bar(one, middle) is not null || judge.Bar(other, middle) is not null
                        || judge.Apart(one, other) || (one.Newcomer && other.Newcomer))
                        continue;
                    foreach (var rest in Pairings(judge, [.. here.Where(c => c != middle && c != one && c != other)]))
                        yield return ([.. rest, Ordered(one, middle), Ordered(middle, other)], middle.Register);
                }
            }
        }
    }

    private bool IsThrown => question.Activity.Thrown;

    private static IEnumerable<(int, int)[]> Pairings(PairJudge judge, PartnersChild[] here)
    {
        if (here.Length == 0)
        {
            yield return [];
            yield break;
        }

        for (var i = 1; i < here.Length; i++)
        {
            if (judge.Bar(here[0], here[i]) is not null)
                continue;
            foreach (var rest in Pairings(judge, [.. here[1..i], .. here[(i + 1)..]]))
                yield return [Ordered(here[0], here[i]), .. rest];
        }
    }

    private static (int, int) Ordered(PartnersChild a, PartnersChild b) => (Math.Min(a.Register, b.Register), Math.Max(a.Register, b.Register));

    private int Since(PartnersChild a, PartnersChild b)
    {
        var since = int.MaxValue;
        foreach (var t in question.Together ?? [])
        {
            if ((t.One == a.Child && t.Other == b.Child) || (t.One == b.Child && t.Other == a.Child))
                since = Math.Min(since, t.ClassesAgo);
        }

        return since;
    }

    private static bool Names(IReadOnlyList<TwoChildren>? list, PartnersChild a, PartnersChild b) =>
        (list ?? []).Any(t => (t.One == a.Child && t.Other == b.Child) || (t.One == b.Child && t.Other == a.Child));
}
