using Keikocho.Core.Kernel;

namespace Keikocho.Core.Attendance;

/// <summary>One child of the programme.</summary>
/// <param name="Child">Key or name by which the answer refers to the child.</param>
/// <param name="Held">Lessons held for this child in the last 12 months.</param>
/// <param name="Attended">Lessons attended of those.</param>
/// <param name="Needed">Lessons still needed before a test; null when not asked.</param>
/// <param name="Left">Lessons left before that test; null when not asked.</param>
/// <param name="Tonight">False when the child is known not to come tonight (excused, off the mat).</param>
public sealed record AttendanceChild(string Child, int Held, int Attended, int? Needed = null, int? Left = null, bool Tonight = true);

/// <summary>The question: a programme's children and their lessons.</summary>
/// <param name="Children">All children of the programme, in register order.</param>
/// <param name="Rule">The settings; null for the proposed ones.</param>
public sealed record AttendanceSnapshot(IReadOnlyList<AttendanceChild> Children, PriorRule? Rule = null);

/// <summary>One child's rate and, where asked, the chance of enough lessons by the test.</summary>
/// <param name="Child">Key from the question.</param>
/// <param name="A">Lessons attended, the common rate's included.</param>
/// <param name="B">Lessons missed, the common rate's included.</param>
/// <param name="RatePercent">The rate in whole percent, half up.</param>
/// <param name="Chance">Chance of at least the needed of the lessons left, 0 to 1; null when not asked.</param>
/// <param name="Words">The chance in words; null when not asked.</param>
/// <param name="Because">The figures behind it.</param>
public sealed record ChildChance(string Child, double A, double B, int RatePercent, double? Chance, string? Words, Reason Because);

/// <summary>Tonight's numbers.</summary>
/// <param name="Asked">Children who may come.</param>
/// <param name="Mean">Mean number, to the full precision of the sum.</param>
/// <param name="From">Smallest likely number.</param>
/// <param name="To">Largest likely number.</param>
/// <param name="Chance">Chance of a number from <paramref name="From"/> to <paramref name="To"/>.</param>
/// <param name="Words">"likely 17 to 22 children".</param>
public sealed record TonightNumbers(int Asked, double Mean, int From, int To, double Chance, string Words);

/// <summary>The answer.</summary>
/// <param name="Prior">The common rate.</param>
/// <param name="Children">Each child, in the order of the question.</param>
/// <param name="Tonight">Tonight's numbers.</param>
/// <param name="Reasons">Where the common rate and tonight's numbers come from.</param>
/// <param name="Settings">The settings used.</param>
public sealed record AttendanceAnswer(
    BetaPrior Prior, IReadOnlyList<ChildChance> Children, TonightNumbers Tonight, IReadOnlyList<Reason> Reasons, IReadOnlyList<SettingUsed> Settings);

/// <summary>The figures behind one child's rate and chance.</summary>
/// <param name="Held">Lessons held.</param>
/// <param name="Attended">Lessons attended.</param>
/// <param name="RatePercent">The rate with the common rate added.</param>
/// <param name="Needed">Lessons needed; null when not asked.</param>
/// <param name="Left">Lessons left; null when not asked.</param>
/// <param name="Chance">The chance in words; null when not asked.</param>
public sealed record OwnLessons(int Held, int Attended, int RatePercent, int? Needed, int? Left, string? Chance) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var rate = $"Attended {Attended} of {Words.Count(Held, "lesson")}; with the common rate added {RatePercent} %";
            if (Chance is null || Needed is not { } needed || Left is not { } left)
                return rate + ".";
            if (needed <= 0)
                return $"{rate}; no more lessons are needed.";
            return needed > left
                ? $"{rate}; {needed} {Words.Is(needed)} needed and {left} {Words.Is(left)} left: {Chance}."
                : $"{rate}; {Chance} to attend {needed} or more of the {Words.Count(left, "lesson")} left.";
        }
    }
}

/// <summary>How tonight's numbers came about.</summary>
/// <param name="Asked">Children who may come.</param>
/// <param name="Children">Children of the programme.</param>
/// <param name="Mean">Mean number, to one decimal.</param>
/// <param name="Range">The range in words.</param>
/// <param name="Percent">Chance of the range in whole percent.</param>
public sealed record NumbersTonight(int Asked, int Children, decimal Mean, string Range, int Percent) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"{Asked} of {Words.Count(Children, "child", "children")} may come tonight, {Words.OneDigit(Mean)} on average: {Range} ({Percent} %).";
}

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
