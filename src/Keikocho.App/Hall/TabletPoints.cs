using System.Collections.Immutable;
using Keikocho.App.Shared;
using Keikocho.Core.Kernel;
using Keikocho.Store.Hall;

namespace Keikocho.App.Hall;

/// <summary>What is to be said of the tablets of an evening: who is silent, and whose marks were not taken. Points to look at; none stops anything.</summary>
public static class TabletPoints
{
    /// <summary>A tablet that is in and silent for longer than this is said to be; it asks every ten seconds. Ours, no source.</summary>
    public static readonly TimeSpan Silence = TimeSpan.FromMinutes(2);

    /// <summary>A sentence a point, by the tablets' numbers.</summary>
    /// <param name="heard">What was heard.</param>
    /// <param name="clock">The hour at the club.</param>
    /// <param name="joins">The tablets of the evening.</param>
    public static ImmutableArray<string> Of(TabletsHeard heard, ClubClock clock, IReadOnlyList<JoinRow> joins)
    {
        ArgumentNullException.ThrowIfNull(heard);
        ArgumentNullException.ThrowIfNull(clock);
        ArgumentNullException.ThrowIfNull(joins);
        return [.. joins.SelectMany(j => Of(j, heard.Last(j.DeviceId, j.Date), heard.Since, clock))];
    }

    private static IEnumerable<string> Of(JoinRow join, TabletHeard? last, DateTimeOffset since, ClubClock clock)
    {
        var isIn = join.PutOutAt is null && join.EndsAt > clock.Now;
        // One that was let in after the program was started has been heard then.
        var at = last?.At ?? (join.JoinedAt > since ? join.JoinedAt : since);
        if (isIn && clock.Now - at > Silence)
        {
            var when = last is null && since >= join.JoinedAt ? $"has not been heard since the program was started at {clock.TimeOf(at).Plain()}" : $"was last heard at {clock.TimeOf(at).Plain()}";
            yield return $"Tablet {join.Number} {when}; {(last is { Waiting: > 0 } ? $"{Marks(last.Waiting)} waited on it then" : "marks may wait on it")}.";
        }
        else if (!isIn && last is { Waiting: > 0 })
        {
            yield return $"Tablet {join.Number} was last heard at {clock.TimeOf(at).Plain()}; {Marks(last.Waiting)} waited on it then.";
        }

        if (last is { Refused: > 0 }) yield return $"Tablet {join.Number}: {Marks(last.Refused)} {(last.Refused == 1 ? "was" : "were")} not taken; its view Waiting says why.";
    }

    private static string Marks(int count) => Counted.Of(count, "mark");
}
