using Keikocho.App.Club;
using Keikocho.Core.Safety;
using Keikocho.Store.Book;
using Keikocho.Store.Marks;

namespace Keikocho.App.Sightings;

/// <summary>One child's fall gates, reckoned from what the club saw.</summary>
public static class ChildGates
{
    /// <summary>The gates on a day.</summary>
    /// <param name="book">The club.</param>
    /// <param name="evidence">What was seen.</param>
    /// <param name="day">The day.</param>
    /// <param name="planned">Throws that are planned.</param>
    /// <exception cref="ArgumentException">Days on the mat were left out: an absence among them would be hidden, and old falls would open a gate.</exception>
    public static FallGateAnswer Of(ClubBook book, ChildEvidence evidence, DateOnly day, params IReadOnlyList<PlannedThrow> planned)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(evidence);
        if (evidence.MatCutAt is { } cut) throw new ArgumentException($"A fall gate needs every day on the mat, and those before {cut:yyyy-MM-dd} were left out.", nameof(evidence));
        return FallGate.Reckon(new FallGateSnapshot(
            day, evidence.Falls, [.. evidence.OnTheMat.Where(d => d <= day)], StandDownsOf(book, evidence), ClubRules.FallGate(book, day), planned));
    }

    /// <summary>What stands on a day.</summary>
    public static StandDownsAnswer Standing(ClubBook book, ChildEvidence evidence, DateOnly day) =>
        StandDowns.Read(new StandDownsSnapshot(day, StandDownsOf(book, evidence)));

    private static IReadOnlyList<StandDown> StandDownsOf(ClubBook book, ChildEvidence evidence)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(evidence);
        return [.. evidence.StandDowns.Select(s => s.ToStandDown(id => book.Person(id) is { IsErased: false } person ? person.FullName : null))];
    }
}
