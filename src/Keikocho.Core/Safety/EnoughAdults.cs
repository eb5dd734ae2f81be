using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>
/// Adults needed, there, and short by, for the hall and for each end. It states the shortfall and never calls anything allowed.
/// </summary>
public static class EnoughAdults
{
    /// <summary>Counts the adults of tonight.</summary>
    /// <exception cref="ArgumentException">A number out of range, an age without a band, or rules that contradict themselves.</exception>
    public static AdultsAnswer Count(AdultsSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var rules = snapshot.Rules ?? new AdultRules();
        NoGaps.In(snapshot.Children, "children");
        NoGaps.In(snapshot.Adults, "adults");
        NoGaps.In(snapshot.Extra ?? [], "extra");
        NoGaps.In(rules.BandsInUse(), "bands");
        rules.Guard();
        foreach (var children in snapshot.Children)
        {
            if (children.Number < 1)
                throw new ArgumentOutOfRangeException(nameof(snapshot), children.Number, "A line of children has at least 1 child.");
            if (children.Age is < 0 or > 18)
                throw new ArgumentOutOfRangeException(nameof(snapshot), children.Age, "A child is from 0 to 18 years old.");
        }

        foreach (var extra in snapshot.Extra ?? [])
        {
            if (extra.Adults < 0)
                throw new ArgumentOutOfRangeException(nameof(snapshot), extra.Adults, "Adults named for needs are 0 or more.");
        }

        var notCounted = new List<NotCounted>();
        var counted = new List<AdultPresent>();
        foreach (var adult in snapshot.Adults)
        {
            if (WhyNot(adult, snapshot.Today) is { } why)
                notCounted.Add(new NotCounted(adult.Name, why, new DoesNotCount(adult.Name, why, adult.VettedUntil)));
            else
                counted.Add(adult);
        }

        var reasons = new List<Reason>();
        var hall = Place(snapshot, rules, null, counted, reasons);
        var beginners = Place(snapshot, rules, MatEnd.Beginners, counted, reasons);
        var main = Place(snapshot, rules, MatEnd.Main, counted, reasons);
        var roaming = counted.Where(a => a.End is null).Select(a => a.Name).ToArray();
        if (roaming.Length > 0)
            reasons.Add(new AtNoEnd(roaming));
        reasons.AddRange(notCounted.Select(n => n.Because));
        string[] firstAiders = [.. counted.Where(a => a.FirstAidUntil >= snapshot.Today).Select(a => a.Name)];
        reasons.Add(new FirstAidPresent(firstAiders));
        foreach (var adult in counted)
        {
            if (adult.FirstAidUntil is { } aid && aid < snapshot.Today)
                reasons.Add(new PaperLapsed(adult.Name, "first aid", aid));
            if (adult.QualifiedUntil is { } qualified && qualified < snapshot.Today)
                reasons.Add(new PaperLapsed(adult.Name, "qualification", qualified));
        }

        var nobodyFree = hall.Children > 0 && hall.Have <= hall.Needed;
        if (nobodyFree && hall.ShortBy == 0)
            reasons.Add(new NobodyIsFree(hall.Needed));
        reasons.Add(new RatiosFrom(rules.BandsFrom()));
        return new AdultsAnswer(
            Headline(hall, beginners, main), hall, beginners, main, notCounted, firstAiders, nobodyFree, reasons, rules.Used());
    }

    private static string Headline(AdultCount hall, AdultCount beginners, AdultCount main)
    {
        if (hall.ShortBy > 0)
            return $"short by {hall.ShortBy}";
        if (hall.Children == 0)
            return "no children, no adult needed";
        var enough = $"enough adults in the hall: {hall.Have} of {hall.Needed} needed";
        return (beginners.ShortBy, main.ShortBy) switch
        {
            (0, 0) => enough,
            (var b, 0) => $"{enough}; the beginners' end is short by {b}",
            (0, var m) => $"{enough}; the main group is short by {m}",
            (var b, var m) => $"{enough}; the beginners' end is short by {b}, the main group by {m}",
        };
    }

    private static NotCountedWhy? WhyNot(AdultPresent adult, DateOnly today) =>
        adult.Under18 ? NotCountedWhy.Under18
        : adult.VettedUntil is not { } until ? NotCountedWhy.NoVetting
        : until < today ? NotCountedWhy.VettingLapsed
        : null;

    private static AdultCount Place(
        AdultsSnapshot snapshot, AdultRules rules, MatEnd? end, List<AdultPresent> counted, List<Reason> reasons)
    {
        var children = snapshot.Children.Where(c => end is null || c.End == end).ToArray();
        var bands = children
            .GroupBy(c => rules.BandOf(c.Age))
            .Select(g => (Band: g.Key, Children: g.Sum(c => c.Number)))
            .OrderBy(b => b.Band.From)
            .ToArray();
        var sum = bands.Aggregate(new Fraction(0, 1), (s, b) => s + new Fraction(b.Children, b.Band.ChildrenPerAdult));
        var byBand = bands.Sum(b => (int)new Fraction(b.Children, b.Band.ChildrenPerAdult).Ceiling);
        var ends = children.Select(c => c.End).ToHashSet();
        var extra = (snapshot.Extra ?? []).Where(e => ends.Contains(e.End)).Sum(e => e.Adults);
        int Needed(int ratio) => children.Length == 0 ? 0 : Math.Max(end is null ? rules.LeastAdults : 0, ratio) + extra;

        var bySum = Needed((int)sum.Ceiling);
        var byEachBand = Needed(byBand);
        var needed = rules.Method == RatioMethod.SumOfFractions ? bySum : byEachBand;
        var have = counted.Count(a => end is null || a.End == end);
        var count = new AdultCount(children.Sum(c => c.Number), needed, have, Math.Max(0, needed - have), bySum, byEachBand, sum.ToString());
        var place = end switch
        {
            MatEnd.Beginners => "At the beginners' end",
            MatEnd.Main => "In the main group",
            _ => "In the hall",
        };
        reasons.Add(new AdultsNeeded(
            place, bands, children.Where(c => c.Age is null).Sum(c => c.Number), rules.Method, sum, end is null ? rules.LeastAdults : null, extra, count));
        return count;
    }
}
