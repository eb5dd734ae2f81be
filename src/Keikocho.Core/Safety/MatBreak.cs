using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>The latest time off the mat or off falls after which the falls are shown again.</summary>
/// <param name="From">The falls are shown again on one evening from this day on; null when nothing asks for it.</param>
/// <param name="Because">Why; null when nothing asks for it.</param>
/// <param name="Standing">A stand-down that forbids falls tonight; the oldest of them.</param>
internal sealed record MatBreak(DateOnly? From, Reason? Because, StandDown? Standing)
{
    public static MatBreak Of(FallGateSnapshot snapshot)
    {
        var (from, because) = Absence(snapshot);
        foreach (var lifted in snapshot.StandDowns
            .Where(s => StandDowns.ForbidsFalls(s.Scope) && s.LiftedOn <= snapshot.Tonight)
            .OrderBy(StandDowns.LiftCountsFrom).ThenBy(s => s.LiftedOn).ThenBy(s => s.From))
        {
            var counts = StandDowns.LiftCountsFrom(lifted)!.Value;
            if (from is null || counts >= from)
                (from, because) = (counts, new FallsAgainAfterStandDown(lifted.LiftedOn!.Value, counts == lifted.LiftedOn ? null : counts));
        }

        var standing = snapshot.StandDowns
            .Where(s => StandDowns.ForbidsFalls(s.Scope) && StandDowns.StandsOn(s, snapshot.Tonight))
            .MinBy(s => s.From);
        if (standing is not null)
            because = new FallsStoodDown(standing.From);
        return new MatBreak(from, because, standing);
    }

    private static (DateOnly? From, Reason? Because) Absence(FallGateSnapshot snapshot)
    {
        var days = snapshot.OnTheMat.Where(d => d <= snapshot.Tonight).Distinct().Order().ToList();
        if (days.Count == 0)
        {
            // Falls without a day on the mat: how long the child was away is not known, so it was long.
            return snapshot.Falls.Any(f => f.On <= snapshot.Tonight) ? (snapshot.Tonight, new NoDayOnTheMat()) : (null, null);
        }

        if (days[^1] != snapshot.Tonight)
            days.Add(snapshot.Tonight);
        for (var i = days.Count - 1; i > 0; i--)
        {
            if (days[i].DayNumber - days[i - 1].DayNumber >= snapshot.Rule.AwayDays)
                return (days[i], new OffTheMatFor(days[i - 1], days[i]));
        }

        return (null, null);
    }
}
