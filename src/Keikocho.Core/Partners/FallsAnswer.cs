using Keikocho.Core.Kernel;

namespace Keikocho.Core.Partners;

/// <summary>One child's falls.</summary>
/// <param name="Child">Who.</param>
/// <param name="Name">The name.</param>
/// <param name="Falls">Falls tonight as it is planned.</param>
/// <param name="OverCap">More than the cap; exactly the cap is not over.</param>
public sealed record ChildFalls(PersonId Child, string Name, int Falls, bool OverCap);

/// <summary>A lighter drill for one group, to be offered before it begins.</summary>
/// <param name="Group">The group by names.</param>
/// <param name="Rounds">Rounds of each drill, in the order of the drills.</param>
/// <param name="Throws">Of a three: how often each outer child throws the middle in all, by turns, and watches in between. Empty of a pair.</param>
/// <param name="Falls">Each child's falls then.</param>
/// <param name="Because">In words.</param>
public sealed record LighterDrill(
    IReadOnlyList<string> Group, IReadOnlyList<int> Rounds, IReadOnlyList<OuterThrows> Throws, IReadOnlyList<ChildFalls> Falls, Reason Because);

/// <summary>How often an outer child throws the middle.</summary>
/// <param name="Name">Who throws.</param>
/// <param name="Throws">So often.</param>
public sealed record OuterThrows(string Name, int Throws);

/// <summary>Falls tonight.</summary>
/// <param name="Headline">The top line.</param>
/// <param name="Falls">Each child, in register order.</param>
/// <param name="Lighter">A lighter drill for each group in which somebody is over the cap, in register order.</param>
/// <param name="Reasons">Every rule and figure used.</param>
/// <param name="Settings">The settings used.</param>
public sealed record FallsAnswer(string Headline, IReadOnlyList<ChildFalls> Falls, IReadOnlyList<LighterDrill> Lighter, IReadOnlyList<Reason> Reasons, IReadOnlyList<SettingUsed> Settings);
