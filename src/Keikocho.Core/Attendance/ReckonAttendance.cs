using Keikocho.Core.Kernel;

namespace Keikocho.Core.Attendance;

/// <summary>Each child's rate, the chance of enough lessons, and tonight's numbers.</summary>
public static class ReckonAttendance
{
    /// <summary>Reckons all three from the club's own register.</summary>
    /// <exception cref="ArgumentException">A count out of range, or lessons needed without lessons left.</exception>
    public static AttendanceAnswer Reckon(AttendanceSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        NoGaps.In(snapshot.Children, "children");
        foreach (var child in snapshot.Children)
        {
            if (child.Left is < 0 or > BetaBinomial.MostLessons)
                throw new ArgumentOutOfRangeException(nameof(snapshot), child.Left, $"{child.Child}: lessons left are from 0 to {BetaBinomial.MostLessons}.");
            if (child.Held < 0 || child.Attended < 0 || child.Attended > child.Held)
                throw new ArgumentOutOfRangeException(nameof(snapshot), child.Attended, $"{child.Child}: attended is from 0 to the {child.Held} held.");
        }

        var rule = snapshot.Rule ?? new PriorRule();
        var prior = BetaPrior.Fit([.. snapshot.Children.Select(c => new LessonCount(c.Held, c.Attended))], rule);
        var rates = snapshot.Children.Select(c => prior.Of(new LessonCount(c.Held, c.Attended))).ToArray();
        var children = snapshot.Children.Zip(rates, Chance).ToArray();

        var comes = snapshot.Children.Zip(rates).Where(c => c.First.Tonight).Select(c => c.Second.Mean).ToArray();
        var numbers = PoissonBinomial.Of(comes);
        var range = numbers.Likely(rule.LikelyPercent);
        var words = range.From == range.To
            ? $"likely {Words.Count(range.From, "child", "children")}"
            : $"likely {range.From} to {Words.Count(range.To, "child", "children")}";
        var tonight = new TonightNumbers(comes.Length, numbers.Mean, range.From, range.To, range.Chance, words);
        return new AttendanceAnswer(
            prior, children, tonight,
            [
                new CommonRate(prior, rule),
                new NumbersTonight(comes.Length, children.Length, (decimal)Math.Round(numbers.Mean, 1, MidpointRounding.AwayFromZero), words, Percent(range.Chance)),
            ],
            rule.Used());
    }

    private static ChildChance Chance(AttendanceChild child, ChildRate rate)
    {
        if (child.Needed is null != child.Left is null)
            throw new ArgumentException($"{child.Child}: lessons needed and lessons left are asked together.", nameof(child));
        double? chance = child is { Needed: { } needed, Left: { } left } ? BetaBinomial.AtLeast(rate, needed, left) : null;
        var words = chance is { } c ? ChanceWords.Of(c) : null;
        var percent = Percent(rate.Mean);
        return new ChildChance(
            child.Child, rate.A, rate.B, percent, chance, words,
            new OwnLessons(child.Held, child.Attended, percent, child.Needed, child.Left, words));
    }

    private static int Percent(double chance) => (int)Math.Floor((chance * 100) + 0.5);
}
