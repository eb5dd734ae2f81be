using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Partners;

/// <summary>
/// Who works with whom: gates shut or open, then the worst pair as good as can be, then the sum. A pair that a gate forbids is never made, even if
/// it leaves a child over.
/// </summary>
public static class PairsTonight
{
    /// <summary>Makes the pairs.</summary>
    /// <exception cref="ArgumentException">A child or a place twice, a figure out of range, or a child named together with itself.</exception>
    public static PartnersAnswer Make(PartnersQuestion question)
    {
        PartnersGuard.Guard(question);
        var table = new LinkTable(question, question.Activity);
        var offers = new List<PartnersOffer>();
        Seating? first = null;
        foreach (var kind in Kinds(table.Children.Count, question.Adults.Count))
        {
            if (new SeatEverybody(table, worstFirst: true).Find(kind) is not { } worst)
                continue;
            var sum = new SeatEverybody(table, worstFirst: false).Find(kind)!;
            offers.Add(new PartnersOffer(kind, SeatingWords.Arrange(worst, table, question.Adults), SeatingWords.Arrange(sum, table, question.Adults)));
            first ??= worst;
        }

        if (first is null && table.Children.Count > 0)
        {
            first = new SeatEverybody(table, worstFirst: false).Find(OfferKind.Part)!;
            var part = SeatingWords.Arrange(first, table, question.Adults);
            offers.Add(new PartnersOffer(OfferKind.Part, part, part));
        }

        var unplaced = first is null ? [] : first.Left.Select(c => NotPlaced(c, table)).ToArray();
        return new PartnersAnswer(
            Headline(first, table, question),
            offers,
            [.. question.Children.Where(c => !c.MayHaveContact || !c.MayBeOnTheMat).OrderBy(c => c.Register)
                .Select(c => new WithoutPartner(c.Child, c.Name, c.MayBeOnTheMat ? Safety.RoleWords.MovementAlone : Safety.RoleWords.Watches))],
            unplaced,
            unplaced.Length == 0 ? [] : Help(question, first!, table),
            Reasons(question, first, offers, table),
            table.Rule.Used());
    }

    /// <summary>Ways to place so many, the one to use first.</summary>
    internal static IEnumerable<OfferKind> Kinds(int children, int adults) =>
        children == 0 ? [] : children % 2 == 0 ? [OfferKind.Pairs] : adults > 0 ? [OfferKind.Adult, OfferKind.Three] : [OfferKind.Three];

    private static string Headline(Seating? first, LinkTable table, PartnersQuestion question)
    {
        if (first is null)
            return "nobody to pair";
        if (first.Left.Count > 0)
            return $"no arrangement for {question.Activity.Name}: no partner for {Words.List([.. first.Left.Select(c => table.Children[c].Name)])}";
        var pairs = first.Links.Count - (first.Middle >= 0 ? 2 : 0);
        var count = Words.Count(pairs, "pair");
        var odd = first.Middle >= 0 ? "one three" : first.WithAdult >= 0 ? $"{table.Children[first.WithAdult].Name} with {question.Adults[0]}" : null;
        return odd is null ? count : pairs == 0 ? odd : $"{count} and {odd}";
    }

    private static List<(LinkBars Bar, int Pairs)> CountBars(IEnumerable<LinkBars> pairs)
    {
        var all = pairs.ToArray();
        return [.. BarWords.All.Select(bar => (bar, all.Count(p => (p & bar) != 0))).Where(b => b.Item2 > 0)];
    }

    private static Unplaced NotPlaced(int child, LinkTable table)
    {
        int[] others = [.. Enumerable.Range(0, table.Children.Count).Where(c => c != child)];
        var name = table.Children[child].Name;
        return new Unplaced(table.Children[child].Child, name, new CannotBePlaced(
            name, others.Length, CountBars(others.Select(o => table.Bars(child, o))), [.. others.Where(o => table.May(child, o)).Select(o => table.Children[o].Name)]));
    }

    private static List<Reason> Help(PartnersQuestion question, Seating part, LinkTable table)
    {
        var instead = (question.Instead ?? []).Select(activity => (Activity: activity, Way: Instead(question, activity))).ToArray();
        // An adult does not throw a child whose gate is shut either: with nobody to fall, only another activity helps.
        if (question.Activity.Thrown && table.Children.All(c => !c.MayFall))
            return [new NobodyIsThrown(question.Activity, [.. instead.Select(i => (i.Activity, i.Way.Left))])];
        return
        [
            .. instead.Select(i => i.Way.Kind is { } placed ? (Reason)new AnotherActivity(i.Activity, placed) : new AnotherActivityFallsShort(i.Activity, i.Way.Left)),
            new AdultsWouldHelp([.. part.Left.Select(c => table.Children[c].Name)]),
        ];
    }

    // How another activity would place everybody; else who would be left over.
    private static (OfferKind? Kind, IReadOnlyList<string> Left) Instead(PartnersQuestion question, PartnersActivity activity)
    {
        var other = new LinkTable(question, activity);
        var seat = new SeatEverybody(other, worstFirst: false);
        foreach (var kind in Kinds(other.Children.Count, question.Adults.Count))
        {
            if (seat.Find(kind) is { } placed)
                return (placed.Kind, []);
        }

        return (null, [.. seat.Find(OfferKind.Part)!.Left.Select(c => other.Children[c].Name)]);
    }

    private static List<Reason> Reasons(PartnersQuestion question, Seating? first, List<PartnersOffer> offers, LinkTable table)
    {
        var reasons = new List<Reason> { new PairsFollow(question.Activity, table.Rule) };
        var n = table.Children.Count;
        if (n > 1)
        {
            LinkBars[] pairs = [.. Enumerable.Range(0, n).SelectMany(a => Enumerable.Range(a + 1, n - a - 1).Select(b => table.Bars(a, b)))];
            reasons.Add(new PairsBarred(pairs.Length, pairs.Count(p => p == LinkBars.None), CountBars(pairs)));
        }

        string[] unsized = [.. table.Children.Where(c => c.Kilograms is null).Select(c => c.Name)];
        if (unsized.Length > 0)
            reasons.Add(new NoSizeHeld(unsized, unsized.Length == n, question.Activity.Thrown ? Math.Min(table.Rule.AgeLimit, table.Rule.AgeLimitWithoutSize) : table.Rule.AgeLimitWithoutSize));
        reasons.AddRange(table.Children
            .Where(c => c.Kilograms is not null && !(c.WeighedOn >= question.Today.AddMonths(-table.Rule.SizeMonths)))
            .Select(c => new SizeIsOld(c.Name, c.WeighedOn, table.Rule.SizeMonths)));
        if (question.Activity.Thrown && table.Children.Any(c => !c.MayFall))
            reasons.Add(new TorisOnly([.. table.Children.Where(c => !c.MayFall).Select(c => c.Name)]));
        if (first is null)
            return reasons;
        foreach (var offer in offers)
        {
            if (offer == offers[0] && offer.Kind != OfferKind.Part)
                reasons.Add(new BestByWorst(offer.WorstFirst.Worst, offer.WorstFirst.Total, offer.BySum.Total));
            foreach (var group in offer.WorstFirst.Groups)
            {
                if (group.Adult is not null)
                    reasons.Add(new AdultTakesOne(group.Members[0].Name, group.Adult));
                if (group.Middle is not null)
                    reasons.Add(new ThreeWithMiddle(group.Members[1].Name, group.Members[0].Name, group.Members[2].Name, question.Activity.Thrown));
            }
        }

        string Name(int c) => table.Children[c].Name;
        reasons.AddRange(table.AskedTogether.Select(t => new AskedForTogether(Name(t.First), Name(t.Second), first.Links.Contains(t))));
        reasons.AddRange(first.Links.Where(l => table.Since(l.First, l.Second) == 1 && !table.AskedTogether.Contains(l)).Select(l => new TogetherAgain(Name(l.First), Name(l.Second))));
        if (first.Left.Count > 0 && n % 2 == 0)
            reasons.Add(WhyTooFew(table));
        return reasons;
    }

    private static TooFewPartners WhyTooFew(LinkTable table)
    {
        var costs = new MatchingCosts(table.Children.Count);
        for (var a = 0; a < costs.Vertices; a++)
        {
            for (var b = a + 1; b < costs.Vertices; b++)
            {
                if (table.May(a, b))
                    costs[a, b] = 0;
            }
        }

        var proof = MaximumCardinality.Find(costs, 0).Proof(costs);
        string Name(int c) => table.Children[c].Name;
        return new TooFewPartners([.. proof.Barrier.Select(Name)], [.. proof.OddParts.Select(p => p.Select(Name).ToArray())], proof.LeftOver);
    }
}

/// <summary>Refuses what no sum of pairs means.</summary>
internal static class PartnersGuard
{
    public static void Guard(PartnersQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        NoGaps.In(question.Children, "children");
        NoGaps.In(question.Adults, "adults");
        NoGaps.In(question.KeepApart ?? [], "pairs to keep apart");
        NoGaps.In(question.KeepTogether ?? [], "pairs to keep together");
        NoGaps.In(question.Together ?? [], "pairs that worked together");
        NoGaps.In(question.Instead ?? [], "other activities");
        (question.Rule ?? new PartnersRule()).Guard();
        foreach (var activity in (PartnersActivity[])[question.Activity, .. question.Instead ?? []])
        {
            if (activity.SizeLimit is < 0 or > 100)
                throw new ArgumentException($"The size limit of {activity.Name} is {activity.SizeLimit.ToString(CultureInfo.InvariantCulture)} %: 0 to 100 is allowed.", nameof(question));
        }

        if (question.Children.Count > 400)
            throw new ArgumentException("More than 400 children at one end of the mat: give one end only.", nameof(question));
        foreach (var twice in question.Children.GroupBy(c => c.Child).Where(g => g.Count() > 1))
            throw new ArgumentException($"{twice.First().Name} is there {twice.Count()} times; take one out.", nameof(question));
        foreach (var twice in question.Children.GroupBy(c => c.Register).Where(g => g.Count() > 1))
            throw new ArgumentException($"{Words.List([.. twice.Select(c => c.Name)])} have the same place on the register; mend it.", nameof(question));
        foreach (var child in question.Children)
        {
            if (child.Kilograms is <= 0 or > 300)
                throw new ArgumentException($"The size of {child.Name} is out of range: above 0 and up to 300 kg is allowed.", nameof(question));
            if (child.Age is < 0 or > 99)
                throw new ArgumentException($"The age of {child.Name} is out of range: 0 to 99 is allowed.", nameof(question));
            if (child.Steps is < 0 or > 1_000)
                throw new ArgumentException($"The steps of {child.Name} are out of range: 0 to 1000 is allowed.", nameof(question));
        }

        if ((question.KeepApart ?? []).Concat(question.KeepTogether ?? []).Any(t => t.One == t.Other) || (question.Together ?? []).Any(t => t.One == t.Other))
            throw new ArgumentException("A child is named as its own partner; name two.", nameof(question));
        if ((question.Together ?? []).Any(t => t.ClassesAgo < 1))
            throw new ArgumentException("Worked together is 1 or more classes ago; mend it.", nameof(question));
    }
}
