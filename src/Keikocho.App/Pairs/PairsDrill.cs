using Keikocho.Core.Partners;
using Keikocho.Core.Safety;
using Keikocho.Store.Starter;

namespace Keikocho.App.Pairs;

/// <summary>What is done in pairs, and what that asks of the one who falls.</summary>
/// <param name="Activity">The activity.</param>
/// <param name="Name">In words: "turn-ins", "throwing: O-goshi".</param>
/// <param name="Planned">The throw; null where nobody is thrown.</param>
public sealed record PairsDrill(PairsActivity Activity, string Name, PlannedThrow? Planned)
{
    /// <summary>Every activity in the order of the page, with its word.</summary>
    public static IReadOnlyList<(PairsActivity Activity, string Word)> All { get; } =
        [(PairsActivity.TurnIns, "Turn-ins"), (PairsActivity.Throwing, "Throwing"), (PairsActivity.Holds, "Holds"), (PairsActivity.FreePractice, "Free practice")];

    /// <summary>Throws to choose from, each once.</summary>
    public static IReadOnlyList<string> Throws { get; } = [.. StarterFalls.Table.Throws.Where(t => t.Then is null).Select(t => t.Technique).Distinct(StringComparer.Ordinal)];

    /// <summary>A drill.</summary>
    /// <param name="activity">The activity.</param>
    /// <param name="technique">The throw, both hands, drilled freely; null for ways and stage.</param>
    /// <param name="ways">Ways to fall; none for all that there are.</param>
    /// <param name="stage">The stage; null for thrown by a child.</param>
    public static PairsDrill Of(PairsActivity activity, string? technique = null, IReadOnlyList<FallWay>? ways = null, int? stage = null)
    {
        switch (activity)
        {
            case PairsActivity.TurnIns or PairsActivity.Holds:
                return new PairsDrill(activity, activity == PairsActivity.TurnIns ? "turn-ins" : "holds", null);
            case PairsActivity.Throwing when technique is not null:
                return new PairsDrill(activity, $"throwing: {technique}", StarterFalls.Table.Plan(technique, [ThrowHand.Right, ThrowHand.Left], freely: true));
        }

        var asked = stage ?? FallWords.LastStage;
        FallWay[] all = [.. FallWay.All.Where(w => StarterFalls.Table.Has(w, asked))];
        FallWay[] chosen = activity == PairsActivity.Throwing && ways is { Count: > 0 } ? [.. all.Where(ways.Contains)] : all;
        var name = activity == PairsActivity.FreePractice ? "free practice"
            : chosen.Length == all.Length ? $"throwing any way, {FallWords.Stage(asked)}"
            : chosen.Length == 0 ? "throwing" : $"throwing {FallWords.Together(chosen)}, {FallWords.Stage(asked)}";
        // A way that there is not at that stage lets nobody be thrown.
        return new PairsDrill(activity, name, new PlannedThrow(name, chosen.Length == 0 || (ways?.Any(w => !all.Contains(w)) ?? false) ? [] : chosen, asked));
    }
}
