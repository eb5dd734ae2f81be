namespace Keikocho.Core.Partners;

/// <summary>
/// Judges pairs by reckoning every gate and cost again from the question, pair by pair. Up to <see cref="TriedUpTo"/> children it also tries every
/// arrangement; above, that no two pairs would do better by changing partners.
/// </summary>
public static class PartnersCheck
{
    /// <summary>Up to so many children every arrangement is tried.</summary>
    public const int TriedUpTo = 9;

    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(PartnersQuestion question, PartnersAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        var judge = new PairJudge(question);
        PartnersChild[] here = [.. question.Children.Where(c => c.MayHaveContact && c.MayBeOnTheMat).OrderBy(c => c.Register)];
        var without = question.Children.Except(here).Select(c => c.Child).ToHashSet();
        if (!without.SetEquals(answer.WithoutPartner.Select(w => w.Child)))
            objections.Add("Those without a partner are not those whom a stand-down keeps from one.");
        foreach (var offer in answer.Offers)
        {
            foreach (var (arrangement, worstFirst) in ((Arrangement, bool)[])[(offer.WorstFirst, true), (offer.BySum, false)])
            {
                var before = objections.Count;
                Place(question, judge, here, offer.Kind, arrangement, answer.Unplaced, objections);
                if (objections.Count > before || offer.Kind == OfferKind.Part)
                    continue;
                if (here.Length <= TriedUpTo)
                    Tried(judge, here, offer.Kind, arrangement, worstFirst, objections);
                else
                    Swapped(judge, question, arrangement, worstFirst, objections);
            }
        }

        if (answer.Unplaced.Count > 0 && (answer.Help.Count == 0 || answer.Offers.Any(o => o.Kind != OfferKind.Part)))
            objections.Add("Somebody is left over without a word of what would help, or although everybody could be placed.");
        if (here.Length <= TriedUpTo && here.Length > 0)
        {
            var possible = PairsTonight.Kinds(here.Length, question.Adults.Count).Where(k => PairJudge.All(judge, here, k).Any()).ToArray();
            var offered = answer.Offers.Where(o => o.Kind != OfferKind.Part).Select(o => o.Kind).ToArray();
            if (!possible.SequenceEqual(offered))
                objections.Add($"What can be offered is {string.Join(", ", possible)}; what is offered is {string.Join(", ", offered)}.");
            if (answer.Unplaced.Count > 0 && answer.Unplaced.Count != PairJudge.FewestLeft(judge, here))
                objections.Add("Fewer children could be left over.");
        }

        return objections;
    }

    /// <summary>Whether one arrangement keeps every gate, places everybody once, in mat order, and costs what it says.</summary>
    internal static void Place(
        PartnersQuestion question, PairJudge judge, PartnersChild[] here, OfferKind kind, Arrangement arrangement, IReadOnlyList<Unplaced> unplaced, List<string> objections)
    {
        var by = here.ToDictionary(c => c.Child);
        var placed = arrangement.Groups.SelectMany(g => g.Members.Select(m => m.Child)).Concat(kind == OfferKind.Part ? unplaced.Select(u => u.Child) : []).ToArray();
        if (placed.Length != here.Length || !placed.ToHashSet().SetEquals(by.Keys))
        {
            objections.Add("Not everybody has one place.");
            return;
        }

        var costs = new List<int>();
        var threes = 0;
        var adults = 0;
        foreach (var group in arrangement.Groups)
        {
            PartnersChild[] members = [.. group.Members.Select(m => by[m.Child])];
            if (group.Members.Any(m => m.ToriOnly != (question.Activity.Thrown && !by[m.Child].MayFall)))
                objections.Add("Who is tori only is not said, or said of somebody else.");
            var shape = (members.Length, group.Middle is not null, group.Adult is not null);
            switch (shape)
            {
                case (1, false, true):
                    adults++;
                    break;
                case (2, false, false):
                    Link(members[0], members[1]);
                    break;
                case (3, true, false):
                    threes++;
                    if (group.Middle != members[1].Child || (question.Activity.Thrown && !members[1].MayFall))
                        objections.Add("The middle of the three may not be thrown, or stands at the side.");
                    if (judge.Apart(members[0], members[2]) || members.Count(m => m.Newcomer) > 1)
                        objections.Add("Two of the three are to be kept apart, or are newcomers.");
                    Link(members[0], members[1]);
                    Link(members[1], members[2]);
                    break;
                default:
                    objections.Add("A group is neither a pair, nor a three with a middle, nor a child with an adult.");
                    break;
            }
        }

        if ((threes, adults) != (kind == OfferKind.Three ? 1 : 0, kind == OfferKind.Adult ? 1 : 0))
            objections.Add("The threes and adults are not those of the offer.");
        int[] order = [.. arrangement.Groups.Select(g => g.Members.Min(m => by[m.Child].Register))];
        if (!order.SequenceEqual(order.Order()))
            objections.Add("The groups are not in register order.");
        if (arrangement.Worst != costs.DefaultIfEmpty(0).Max() || arrangement.Total != costs.Sum())
            objections.Add($"The pairs cost {costs.Sum()}, the dearest {costs.DefaultIfEmpty(0).Max()}; the answer says {arrangement.Total} and {arrangement.Worst}.");

        void Link(PartnersChild a, PartnersChild b)
        {
            if (judge.Bar(a, b) is { } bar)
                objections.Add($"{a.Name} and {b.Name} may not work together: {bar}.");
            costs.Add(judge.Cost(a, b));
        }
    }

    private static void Tried(
        PairJudge judge, PartnersChild[] here, OfferKind kind, Arrangement arrangement, bool worstFirst, List<string> objections)
    {
        var mine = judge.Measure(PairJudge.LinksOf(arrangement, here), worstFirst);
        var all = PairJudge.All(judge, here, kind).ToList();
        var asked = judge.AskedTogether(here);
        if (asked.Count > 0 && all.Where(l => asked.All(t => l.Links.Contains(t) && l.Middle != t.Item1 && l.Middle != t.Item2)).ToList() is { Count: > 0 } kept)
            all = kept;
        if (all.Any(other => PairJudge.Compare(judge.Measure(other.Links, worstFirst), mine) < 0))
            objections.Add($"There is a better arrangement {(worstFirst ? "by the worst pair" : "by the sum")} than {string.Join("; ", arrangement.Groups.Select(g => g.Line))}.");
    }

    private static void Swapped(PairJudge judge, PartnersQuestion question, Arrangement arrangement, bool worstFirst, List<string> objections)
    {
        var by = question.Children.ToDictionary(c => c.Child);
        PartnersChild[][] pairs = [.. arrangement.Groups.Where(g => g.Members.Count == 2).Select(g => g.Members.Select(m => by[m.Child]).ToArray())];
        var asked = judge.AskedTogether([.. by.Values.OrderBy(c => c.Register)]).SelectMany(t => (int[])[t.Item1, t.Item2]).ToHashSet();
        foreach (var p in pairs)
        {
            foreach (var q in pairs)
            {
                if (p == q || p.Concat(q).Any(c => asked.Contains(c.Register)))
                    continue;
                foreach (var (a, b) in ((PartnersChild, PartnersChild)[])[(q[0], q[1]), (q[1], q[0])])
                {
                    if (judge.Bar(p[0], a) is not null || judge.Bar(p[1], b) is not null)
                        continue;
                    var (now, then) = (judge.Cost(p[0], p[1]) + judge.Cost(q[0], q[1]), judge.Cost(p[0], a) + judge.Cost(p[1], b));
                    var dearer = worstFirst && Math.Max(judge.Cost(p[0], a), judge.Cost(p[1], b)) > arrangement.Worst;
                    if (then < now && !dearer)
                        objections.Add($"{p[0].Name} with {a.Name} and {p[1].Name} with {b.Name} would be better.");
                }
            }
        }
    }
}
