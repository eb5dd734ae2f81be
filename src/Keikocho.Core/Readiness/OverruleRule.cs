namespace Keikocho.Core.Readiness;

/// <summary>Whether an overrule holds: it needs a name and a reason, and it passes no safety gate.</summary>
internal static class OverruleRule
{
    /// <summary>Null when it holds, else why not, in one sentence.</summary>
    /// <param name="overrule">The overrule.</param>
    /// <param name="reckoned">What the sum says.</param>
    /// <param name="openNow">Safety that is not shown now, in phrases.</param>
    /// <param name="outOfReach">Safety that would not open in time, in phrases.</param>
    public static string? Refusal(Overrule overrule, ReadyWord reckoned, IReadOnlyList<string> openNow, IReadOnlyList<string> outOfReach)
    {
        if (string.IsNullOrWhiteSpace(overrule.Why))
            return "An overrule needs a reason: write why.";
        if (string.IsNullOrWhiteSpace(overrule.By))
            return "An overrule needs the name of the instructor who decides it.";
        if (overrule.To >= reckoned)
            return null;
        var against = overrule.To == ReadyWord.PutForward ? openNow : outOfReach;
        return against.Count == 0 ? null : $"An overrule never passes a safety gate: {string.Join("; ", against)}.";
    }
}
