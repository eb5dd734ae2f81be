using Keikocho.Core.Kernel;

namespace Keikocho.Core.Club;

/// <summary>An activity over a span of evenings.</summary>
/// <param name="Activity">As the club calls it.</param>
/// <param name="ChildEvenings">Children who were there for it, added over the evenings; null where it is not known.</param>
/// <param name="Knocks">Knocks in it.</param>
/// <param name="NearMisses">Near misses in it: nobody was hurt. Kept apart.</param>
public sealed record ActivityCount(string Activity, int? ChildEvenings, int Knocks, int NearMisses = 0);

/// <summary>The question about knocks.</summary>
/// <param name="ChildEvenings">All child-evenings of the span.</param>
/// <param name="Activities">By activity.</param>
/// <param name="Rule">The figures.</param>
public sealed record KnocksQuestion(int ChildEvenings, IReadOnlyList<ActivityCount> Activities, KnocksRule Rule);

/// <summary>What a club may set.</summary>
/// <param name="TooFewBelow">Fewer knocks than this say nothing.</param>
/// <param name="IntervalPercent">How sure the interval is.</param>
public sealed record KnocksRule(int TooFewBelow = 3, int IntervalPercent = 90)
{
    private static readonly WholeNumberSetting TooFew = new("knocks.tooFewBelow", "Fewer knocks than this are too few to say", 3, "knocks", 1, 20, "the club's own, no source");

    private static readonly WholeNumberSetting Interval = new(
        "knocks.intervalPercent", "How sure the interval of a rate is", 90, "%", 50, 99, "90 % as in the NIST/SEMATECH handbook's example, 7.2.4.2");

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [TooFew, Interval];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() => [TooFew.Use(TooFewBelow), Interval.Use(IntervalPercent)];

    internal void Guard()
    {
        TooFew.Guard(TooFewBelow, nameof(TooFewBelow));
        Interval.Guard(IntervalPercent, nameof(IntervalPercent));
    }
}

/// <summary>How often an activity brings a knock.</summary>
/// <param name="Activity">The activity; null for all together.</param>
/// <param name="ChildEvenings">Children who were there for it; null where it is not known.</param>
/// <param name="Knocks">Knocks.</param>
/// <param name="NearMisses">Near misses.</param>
/// <param name="TooFewToSay">Fewer knocks than say anything.</param>
/// <param name="PerHundred">Knocks to 100 child-evenings; null where it is too few to say or not known.</param>
/// <param name="From">Lower end of the exact interval, to 100 child-evenings.</param>
/// <param name="To">Upper end.</param>
public sealed record KnockRate(string? Activity, int? ChildEvenings, int Knocks, int NearMisses, bool TooFewToSay, double? PerHundred, double? From, double? To);

/// <summary>The answer about knocks.</summary>
/// <param name="All">All together.</param>
/// <param name="Activities">By activity: the highest rate first, then the larger count, then by name; those too few to say after them.</param>
/// <param name="Reasons">Why.</param>
/// <param name="Settings">The settings used.</param>
public sealed record KnocksAnswer(KnockRate All, IReadOnlyList<KnockRate> Activities, IReadOnlyList<Reason> Reasons, IReadOnlyList<SettingUsed> Settings);

/// <summary>Knocks by activity, against how many children were there for it. It changes a game and blames nobody.</summary>
public static class KnocksByActivity
{
    /// <summary>Reckons the rates.</summary>
    /// <exception cref="ArgumentException">A count below 0, or more knocks than children exposed.</exception>
    public static KnocksAnswer Reckon(KnocksQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        NoGaps.In(question.Activities, "activities");
        var rule = question.Rule ?? new KnocksRule();
        rule.Guard();
        foreach (var activity in question.Activities)
        {
            if (string.IsNullOrWhiteSpace(activity.Activity))
                throw new ArgumentException("An activity has a name.", nameof(question));
            Guard(activity.Activity, activity.ChildEvenings, activity.Knocks, activity.NearMisses);
            if (activity.ChildEvenings > question.ChildEvenings)
                throw new ArgumentException($"{activity.Activity}: {activity.ChildEvenings} child-evenings are more than the {question.ChildEvenings} of all.", nameof(question));
        }

        if (question.Activities.Select(a => a.Activity).Distinct(StringComparer.Ordinal).Count() != question.Activities.Count)
            throw new ArgumentException("An activity is listed twice; add its counts up.", nameof(question));
        var knocks = question.Activities.Sum(a => a.Knocks);
        Guard("All together", question.ChildEvenings, knocks, 0);
        var all = Rate(null, question.ChildEvenings, knocks, question.Activities.Sum(a => a.NearMisses), rule);
        KnockRate[] each =
        [
            .. question.Activities.Select(a => Rate(a.Activity, a.ChildEvenings, a.Knocks, a.NearMisses, rule))
                .OrderByDescending(r => r.PerHundred ?? -1).ThenByDescending(r => r.Knocks).ThenBy(r => r.Activity, StringComparer.Ordinal),
        ];
        return new KnocksAnswer(all, each, [.. new[] { all }.Concat(each).Select(r => new KnocksSaid(r, rule))], rule.Used());
    }

    private static KnockRate Rate(string? activity, int? exposed, int knocks, int near, KnocksRule rule)
    {
        if (knocks < rule.TooFewBelow || exposed is not (> 0 and var children))
            return new KnockRate(activity, exposed, knocks, near, knocks < rule.TooFewBelow, null, null, null);
        var (from, to) = ExactInterval.Of(knocks, children, rule.IntervalPercent / 100.0);
        return new KnockRate(activity, exposed, knocks, near, false, 100.0 * knocks / children, 100 * from, 100 * to);
    }

    private static void Guard(string what, int? exposed, int knocks, int near)
    {
        if (knocks < 0 || near < 0 || exposed < 0)
            throw new ArgumentException($"{what}: counts are 0 or more.", nameof(knocks));
        if (exposed is { } children && knocks > children)
            throw new ArgumentException($"{what}: {knocks} knocks are more than {children} child-evenings.", nameof(knocks));
    }
}

/// <summary>What is said of one activity.</summary>
/// <param name="Rate">The figures.</param>
/// <param name="Rule">The settings.</param>
public sealed record KnocksSaid(KnockRate Rate, KnocksRule Rule) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var near = Rate.NearMisses == 0 ? "" : $" {Words.Count(Rate.NearMisses, "near miss", "near misses")} besides.";
            var exposed = Rate.ChildEvenings is { } children ? $" in {Words.Count(children, "child-evening")}" : "; how many children were there for it is not written down";
            var verdict = Rate.TooFewToSay ? "too few to say"
                : Rate.PerHundred is not { } rate ? "no rate"
                : FormattableString.Invariant($"{rate:0.00} to 100, {Rule.IntervalPercent} % sure between {Rate.From:0.00} and {Rate.To:0.00}");
            return $"{Rate.Activity ?? "All together"}: {Words.Count(Rate.Knocks, "knock")}{exposed}: {verdict}.{near}";
        }
    }
}
