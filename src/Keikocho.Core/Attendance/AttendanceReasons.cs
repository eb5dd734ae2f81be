using Keikocho.Core.Kernel;

namespace Keikocho.Core.Attendance;

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
