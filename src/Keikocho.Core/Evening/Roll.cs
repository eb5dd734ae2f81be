using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>
/// Who is on the premises now (statements 8 and 9). In doubt a person is on the roll: it is worse to leave somebody in a
/// burning hall than to look for one who has gone.
/// </summary>
public static class Roll
{
    /// <summary>The roll at <see cref="RollSnapshot.Now"/>.</summary>
    /// <remarks>
    /// Present at a lesson puts a person on the roll. A leaving takes the person off when it speaks for that presence: it was
    /// marked at the same lesson, or at a later one and not before the arrival. A leaving whose time is still to come does not yet hold, and one
    /// before an arrival that another device marked at the same lesson does not hold: the person may have come back.
    /// </remarks>
    /// <exception cref="ArgumentException">One person twice.</exception>
    public static RollAnswer Take(RollSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        NoGaps.In(snapshot.People, "people");
        foreach (var person in snapshot.People)
            NoGaps.In(person.Lessons, "lessons");
        var seen = new HashSet<PersonId>();
        var here = new List<OnPremises>();
        var gone = new List<GoneHome>();
        var notMarked = 0;
        foreach (var person in snapshot.People)
        {
            if (!seen.Add(person.Person))
                throw new ArgumentException($"The person {person.Person.Value} is on the list twice.", nameof(snapshot));
            if (person.Lessons.All(l => l.State.Word == AttendanceWord.Untouched))
                notMarked++;

            var lessons = person.Lessons.OrderBy(l => l.Start).ThenBy(l => l.State.Arrived).ToArray();
            var keeps = lessons.FirstOrDefault(l => IsHere(l, snapshot.Now) && !lessons.Any(g => Ends(g, l, snapshot.Now)));
            if (keeps is not null)
            {
                var since = lessons.Where(l => IsHere(l, snapshot.Now)).Select(l => l.State.Arrived).Min();
                here.Add(new OnPremises(person.Person, person.IsAdult, since, Because(keeps, lessons)));
                continue;
            }

            var last = lessons.LastOrDefault(l => l.State.Word == AttendanceWord.Left);
            if (last is not null)
                gone.Add(new GoneHome(person.Person, person.IsAdult, last.State.LeftAt, new MarkedLeft(last.State.LeftAt, last.Start)));
        }

        var children = here.Count(p => !p.IsAdult);
        return new RollAnswer(
            here, gone, children, here.Count - children, notMarked, snapshot.People.Count,
            [new RollCounts(children, here.Count - children, gone.Count, notMarked, snapshot.People.Count, snapshot.Now)]);
    }

    /// <summary>Present; or left with a leaving that is still to come, or that lies before an arrival on another device.</summary>
    private static bool IsHere(RollLesson lesson, TimeOnly now) =>
        lesson.State.Word == AttendanceWord.Present
        || (lesson.State.Word == AttendanceWord.Left && (lesson.State.LeftAt > now || lesson.State.Arrived > lesson.State.LeftAt));

    /// <summary>Whether a leaving speaks for a presence at an earlier lesson.</summary>
    private static bool Ends(RollLesson leaving, RollLesson presence, TimeOnly now) =>
        leaving.State.Word == AttendanceWord.Left
        && !IsHere(leaving, now)
        && leaving.Start > presence.Start
        && (presence.State.Arrived is null || leaving.State.LeftAt is null || leaving.State.LeftAt >= presence.State.Arrived);

    private static Reason Because(RollLesson keeps, RollLesson[] lessons)
    {
        if (keeps.State is { Word: AttendanceWord.Left, LeftAt: { } leaving })
            return keeps.State.Arrived is { } came && came > leaving
                ? new ArrivedAfterLeaving(came, leaving)
                : new LeavesLater(leaving);
        var other = lessons.LastOrDefault(l => l.State.Word == AttendanceWord.Left);
        return other is null
            ? new MarkedHere(keeps.State.Arrived, keeps.Start)
            : new LeftOneLessonHereAtAnother(other.Start, other.State.LeftAt, keeps.Start);
    }
}
