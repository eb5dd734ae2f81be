using Keikocho.Core.Kernel;

namespace Keikocho.Core.Attendance;

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
