using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Partners;

/// <summary>What the drills come to.</summary>
/// <param name="Drills">The drills.</param>
/// <param name="Throws">Throws of each partner.</param>
public sealed record FallsOfDrills(IReadOnlyList<FallsDrill> Drills, int Throws) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => Drills.Count == 0
        ? "No drill is planned."
        : $"{string.Join("; ", Drills.Select(d => $"{d.Name}: {Words.Count(d.ThrowsEach, "throw")} each{(d.Sides == 2 ? " on each side" : "")}, {Words.Count(d.Rounds, "round")}"))}. In a pair each falls {Times(Throws)}, the middle of a three {Times(2 * Throws)}.";

    internal static string Times(int number) => number switch
    {
        1 => "once",
        _ => $"{number.ToString(CultureInfo.InvariantCulture)} times",
    };
}

/// <summary>Too many falls.</summary>
/// <param name="Name">Who.</param>
/// <param name="Falls">So many.</param>
/// <param name="Cap">So many are allowed.</param>
public sealed record OverTheCap(string Name, int Falls, int Cap) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"{Name} would fall {FallsOfDrills.Times(Falls)}, more than {Cap.ToString(CultureInfo.InvariantCulture)}.";
}

/// <summary>The lighter drill in words.</summary>
/// <param name="Group">The group.</param>
/// <param name="Drills">The drills.</param>
/// <param name="Rounds">Rounds of each.</param>
/// <param name="Turns">Of a three, how often each outer child throws.</param>
/// <param name="Falls">Falls then.</param>
public sealed record LighterOffer(
    IReadOnlyList<string> Group, IReadOnlyList<FallsDrill> Drills, IReadOnlyList<int> Rounds, IReadOnlyList<OuterThrows> Turns, IReadOnlyList<ChildFalls> Falls) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var shorter = Drills.Where((d, i) => Rounds[i] < d.Rounds).Select(d => $"{d.Name} {Words.Count(Rounds[Drills.ToList().IndexOf(d)], "round")} instead of {d.Rounds.ToString(CultureInfo.InvariantCulture)}").ToArray();
            var parts = new List<string>();
            if (Turns.Count > 0)
                parts.Add($"{Turns[0].Name} and {Turns[1].Name} throw by turns, {Turns[0].Throws.ToString(CultureInfo.InvariantCulture)} and {Turns[1].Throws.ToString(CultureInfo.InvariantCulture)} times, and watch in between");
            parts.AddRange(shorter);
            return $"Lighter for {Words.List(Group)}: {string.Join("; ", parts)}. Falls then: {string.Join(", ", Falls.Select(f => $"{f.Name} {f.Falls.ToString(CultureInfo.InvariantCulture)}"))}.";
        }
    }
}
