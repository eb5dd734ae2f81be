namespace Keikocho.Core.Partners;

/// <summary>Judges a repair: every gate and cost once more, and up to nine children that no way changes fewer groups, or as few and better.</summary>
public static class RepairCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(RepairQuestion question, RepairAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        var judge = new PairJudge(question.Now);
        PartnersChild[] here = [.. question.Now.Children.Where(c => c.MayHaveContact && c.MayBeOnTheMat).OrderBy(c => c.Register)];
        var ids = here.Select(c => c.Child).ToHashSet();
        var stood = question.Standing.Where(g => g.Members.Any(ids.Contains)).Select(RepairPairs.Key).ToArray();
        foreach (var offer in answer.Offers)
        {
            PartnersCheck.Place(question.Now, judge, here, offer.Kind, offer.Arrangement, [], objections);
            var now = offer.Arrangement.Groups.Select(g => RepairPairs.Key(StandingGroup.Of(g))).ToHashSet();
            var changed = stood.Count(s => !now.Contains(s));
            if (changed != offer.Changed)
                objections.Add($"{changed} groups change, not {offer.Changed}.");
            if (!now.Except(stood).ToHashSet().SetEquals(offer.New.Select(g => RepairPairs.Key(StandingGroup.Of(g)))))
                objections.Add("The new groups are not those that did not stand before.");
            if (here.Length > PartnersCheck.TriedUpTo)
                continue;
            var by = here.ToDictionary(c => c.Register);
            var mine = judge.Measure(PairJudge.LinksOf(offer.Arrangement, here), true);
            foreach (var (links, middle) in PairJudge.All(judge, here, offer.Kind))
            {
                var groups = Keys(links, middle, by);
                var changes = stood.Count(s => !groups.Contains(s));
                if (changes < changed || (changes == changed && PairJudge.Compare(judge.Measure(links, true), mine) < 0))
                {
                    objections.Add($"There is a way that changes {changes} groups and is better.");
                    break;
                }
            }
        }

        if (here.Length is > 0 and <= PartnersCheck.TriedUpTo)
        {
            var possible = PairsTonight.Kinds(here.Length, question.Now.Adults.Count).Where(k => PairJudge.All(judge, here, k).Any()).ToHashSet();
            if (!possible.SetEquals(answer.Offers.Select(o => o.Kind)))
                objections.Add("The ways offered are not those that there are.");
        }

        if (answer.AtMostTwo != (answer.Offers.Count > 0 && answer.Offers[0].Changed <= RepairPairs.MostChanged))
            objections.Add("Whether at most two pairs change is not said rightly.");
        return objections;
    }

    private static HashSet<string> Keys((int, int)[] links, int middle, Dictionary<int, PartnersChild> by)
    {
        var keys = new HashSet<string>();
        var alone = by.Keys.ToHashSet();
        var outers = new List<int>();
        foreach (var (a, b) in links)
        {
            alone.Remove(a);
            alone.Remove(b);
            if (a == middle || b == middle)
                outers.Add(a == middle ? b : a);
            else
                keys.Add(RepairPairs.Key(new StandingGroup([by[a].Child, by[b].Child])));
        }

        if (outers.Count == 2)
            keys.Add(RepairPairs.Key(new StandingGroup([by[outers[0]].Child, by[middle].Child, by[outers[1]].Child])));
        foreach (var one in alone)
            keys.Add(RepairPairs.Key(new StandingGroup([by[one].Child])));
        return keys;
    }
}
