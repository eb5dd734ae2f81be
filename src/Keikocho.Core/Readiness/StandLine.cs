using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>A line with what can still be done for it.</summary>
/// <param name="Standing">As it stands.</param>
/// <param name="CanBeMet">What is missing can still be seen before the test.</param>
/// <param name="IsSafety">A fall or a critical line: a gate.</param>
/// <param name="Chosen">Items of the line that are nearest, as many as are asked, by their place in it.</param>
internal sealed record LineReach(LineStanding Standing, bool CanBeMet, bool IsSafety, int[] Chosen);

/// <summary>How one line stands: met by whichever of its items are good; what is missing is the least that could still be seen.</summary>
internal static class StandLine
{
    public static LineReach Of(ReadinessFrame frame, FallGateAnswer? gates, SheetLine line, List<StageGate> used)
    {
        var items = new ItemStanding[line.Items.Count];
        var order = new int[items.Length];
        var reach = new bool[items.Length];
        var falls = false;
        for (var i = 0; i < items.Length; i++)
        {
            var on = line.Items[i];
            items[i] = on.Item.Kind == ItemKind.Fall ? StandFall.Of(frame, gates!, on, used) : StandItem.Of(frame, line, on);
            reach[i] = CanBeSeen(frame, on.Item.Kind, items[i].EveningsMissing, line.Critical);
            falls |= on.Item.Kind == ItemKind.Fall;
            order[i] = i;
        }

        // What can be reached first, then what lacks least, then the order of the line.
        Array.Sort(order, (a, b) => (!reach[a], items[a].EveningsMissing, a).CompareTo((!reach[b], items[b].EveningsMissing, b)));
        var chosen = order[..line.Count];
        var canBeMet = chosen.All(i => reach[i]);
        var missing = chosen.Length == 0 ? 0 : chosen.Max(i => items[i].EveningsMissing);
        var met = missing == 0;
        string[] by = met && !line.IsAll ? [.. chosen.Order().Select(i => items[i].Name)] : [];
        string? said = met ? null : Said(line, items, chosen);
        return new LineReach(new LineStanding(line, met, by, missing, items, said), canBeMet, falls || line.Critical, chosen);
    }

    /// <summary>
    /// Whether so many evenings are left on which this could be seen; the last of them late enough for what must be fresh. What is good stays
    /// good under a stand-down; whether it may be shown at the test is the stand-down's own gate.
    /// </summary>
    public static bool CanBeSeen(ReadinessFrame frame, ItemKind kind, int missing, bool critical) =>
        missing == 0 || (missing <= frame.EveningsAfter(frame.Blocks.Of(kind)) && (!(critical || kind == ItemKind.Fall) || frame.CanBeFresh));

    // What follows is more than a phrase: a side, a touch, a break, a kept pass.
    private static bool NeedsAColon(ItemStanding item) =>
        item.Word == ItemStandingWord.FallShut || item.Because is FallCounted { Side: not FallSide.None } or FallCounted { KeptUntil: not null };

    private static string Said(SheetLine line, ItemStanding[] items, int[] chosen)
    {
        var open = chosen.Where(i => !items[i].IsMet).Order().ToArray();
        var phrases = open.Take(3).Select(i => $"{items[i].Name}{(NeedsAColon(items[i]) ? ":" : "")} {items[i].Said}");
        var said = string.Join("; ", phrases);
        if (open.Length > 3)
            said += $"; and {Words.Count(open.Length - 3, "more item")}";
        return line.IsAll || open.Length == items.Length ? said : $"{said}, or another of its line";
    }
}
