using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>What a child may not do for now. Nothing lapses by itself, and nobody is cleared by this sum.</summary>
public static class StandDowns
{
    /// <summary>Reads what stands.</summary>
    /// <exception cref="ArgumentException">A lifting without a named adult, a reason or a day, or before it began.</exception>
    public static StandDownsAnswer Read(StandDownsSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        Guard(snapshot.StandDowns);
        var begun = snapshot.StandDowns.Where(s => s.From <= snapshot.On).ToArray();
        StandDown[] standing = [.. begun.Where(s => StandsOn(s, snapshot.On)).OrderBy(s => s.From).ThenBy(s => s.Scope).ThenBy(s => s.ReviewOn).ThenBy(s => s.WhoseWord, StringComparer.Ordinal)];
        StandDown[] review = [.. standing.Where(s => s.ReviewOn <= snapshot.On)];
        var offTheMat = standing.Any(s => s.Scope == StandDownScope.OffTheMat);
        var noContact = offTheMat || standing.Any(s => s.Scope == StandDownScope.NoContact);
        var noFalls = standing.Any(s => ForbidsFalls(s.Scope));
        var reasons = new List<Reason>();
        reasons.AddRange(standing.Select(s => new StandsDown(s, snapshot.On)));
        reasons.AddRange(begun.Where(s => !StandsOn(s, snapshot.On))
            .OrderBy(s => s.LiftedOn).ThenBy(s => s.From).ThenBy(s => s.Scope).ThenBy(s => s.LiftedBy, StringComparer.Ordinal)
            .Select(s => new StandDownLifted(s)));
        reasons.AddRange(snapshot.StandDowns.Where(s => s.From > snapshot.On).OrderBy(s => s.From).ThenBy(s => s.Scope).Select(s => new StandDownToCome(s)));
        if (reasons.Count == 0)
            reasons.Add(new NothingStands(snapshot.On));
        return new StandDownsAnswer(
            standing, review, !noFalls, !noContact, !offTheMat, standing.Any(s => s.Scope == StandDownScope.SpareTheNeck),
            offTheMat ? RoleWords.Watches : noContact ? RoleWords.MovementAlone : noFalls ? RoleWords.ToriOnly : RoleWords.ThrowsAndIsThrown,
            reasons);
    }

    /// <summary>Whether it stands on a day: from its first day until the day on which somebody lifts it. No day ends it by itself.</summary>
    internal static bool StandsOn(StandDown standDown, DateOnly day) =>
        standDown.From <= day && (standDown.LiftedOn is not { } lifted || day < lifted);

    /// <summary>
    /// The day from which what is shown counts as shown after the lifting: the later of the day it was lifted for and the day that was
    /// entered. A lifting entered afterwards for an earlier day makes no fall count that was done while everybody still read "no falls".
    /// </summary>
    internal static DateOnly? LiftCountsFrom(StandDown standDown) =>
        standDown is { LiftedOn: { } lifted, LiftEnteredOn: { } entered } && entered > lifted ? entered : standDown.LiftedOn;

    /// <summary>Being thrown needs contact and the mat; sparing the neck is about items.</summary>
    internal static bool ForbidsFalls(StandDownScope scope) =>
        scope is StandDownScope.NoFalls or StandDownScope.NoContact or StandDownScope.OffTheMat;

    internal static void Guard(IReadOnlyList<StandDown> standDowns)
    {
        NoGaps.In(standDowns, "stand-downs");
        foreach (var s in standDowns)
        {
            if (!Enum.IsDefined(s.Scope))
                throw new ArgumentException("A stand-down is no falls, no contact, off the mat or spare the neck.", nameof(standDowns));
            if (s.LiftedOn is null && s.LiftedBy is null && s.LiftedWhy is null && s.LiftEnteredOn is null)
                continue;
            if (s.LiftedOn is not { } lifted || string.IsNullOrWhiteSpace(s.LiftedBy) || string.IsNullOrWhiteSpace(s.LiftedWhy))
                throw new ArgumentException($"The stand-down of {s.From.Full()} is lifted only with a day, a named adult and a reason; name all three.", nameof(standDowns));
            if (lifted < s.From)
                throw new ArgumentException($"The stand-down of {s.From.Full()} cannot be lifted on {lifted.Full()}, before it began; mend a date.", nameof(standDowns));
        }
    }
}
