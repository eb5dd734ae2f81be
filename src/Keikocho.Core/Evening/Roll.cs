using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>Where one person stands at one lesson of the evening.</summary>
/// <param name="Start">The bow of that lesson.</param>
/// <param name="State">The folded state.</param>
public sealed record RollLesson(TimeOnly Start, AttendanceState State);

/// <summary>One person of the evening: a child or an adult, in one lesson or several.</summary>
/// <param name="Person">Who.</param>
/// <param name="IsAdult">18 or over on the day.</param>
/// <param name="Lessons">All lessons of this evening that the person is on the register of.</param>
public sealed record RollPerson(PersonId Person, bool IsAdult, IReadOnlyList<RollLesson> Lessons);

/// <summary>The question: everybody of the evening, and the time now.</summary>
/// <param name="Now">Local time of the hall.</param>
/// <param name="People">Everybody on a register of the evening, in the order in which to list them.</param>
public sealed record RollSnapshot(TimeOnly Now, IReadOnlyList<RollPerson> People);

/// <summary>Somebody who is on the premises.</summary>
/// <param name="Person">Who.</param>
/// <param name="IsAdult">Adult or child.</param>
/// <param name="Since">Earliest known arrival; null when nobody noted it.</param>
/// <param name="Because">Why this person is on the roll.</param>
public sealed record OnPremises(PersonId Person, bool IsAdult, TimeOnly? Since, Reason Because);

/// <summary>Somebody who was here and has gone.</summary>
/// <param name="Person">Who.</param>
/// <param name="IsAdult">Adult or child.</param>
/// <param name="At">When; null when nobody noted it.</param>
/// <param name="Because">Why this person is not on the roll.</param>
public sealed record GoneHome(PersonId Person, bool IsAdult, TimeOnly? At, Reason Because);

/// <summary>The roll: who is on the premises, who has gone, and how many nobody has marked.</summary>
/// <param name="Here">On the premises, in the order of the question.</param>
/// <param name="Gone">Here before and gone, in the order of the question.</param>
/// <param name="ChildrenHere">Children on the premises.</param>
/// <param name="AdultsHere">Adults on the premises.</param>
/// <param name="NotMarked">People whom nobody has marked at any lesson of the evening.</param>
/// <param name="People">Everybody asked about.</param>
/// <param name="Reasons">The counts in words.</param>
public sealed record RollAnswer(
    IReadOnlyList<OnPremises> Here,
    IReadOnlyList<GoneHome> Gone,
    int ChildrenHere,
    int AdultsHere,
    int NotMarked,
    int People,
    IReadOnlyList<Reason> Reasons);

/// <summary>
/// Who is on the premises now (statements 8 and 9). In doubt a person is on the roll: it is worse to leave somebody in a
/// burning hall than to look for one who has gone.
/// </summary>
public static class Roll
{
    /// <summary>The roll at <see cref="RollSnapshot.Now"/>.</summary>
    /// <remarks>
    /// Present at a lesson puts a person on the roll. A leaving takes the person off when it speaks for that presence: it was
    /// marked at the same lesson, or at a later one and not before the arrival. A leaving whose time is still to come does not yet hold.
    /// </remarks>
    /// <exception cref="ArgumentException">One person twice.</exception>
    public static RollAnswer Take(RollSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
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

    private static bool IsHere(RollLesson lesson, TimeOnly now) =>
        lesson.State.Word == AttendanceWord.Present || (lesson.State.Word == AttendanceWord.Left && lesson.State.LeftAt > now);

    /// <summary>Whether a leaving speaks for a presence at an earlier lesson.</summary>
    private static bool Ends(RollLesson leaving, RollLesson presence, TimeOnly now) =>
        leaving.State.Word == AttendanceWord.Left
        && !(leaving.State.LeftAt > now)
        && leaving.Start > presence.Start
        && (presence.State.Arrived is null || leaving.State.LeftAt is null || leaving.State.LeftAt >= presence.State.Arrived);

    private static Reason Because(RollLesson keeps, RollLesson[] lessons)
    {
        if (keeps.State.Word == AttendanceWord.Left)
            return new LeavesLater(keeps.State.LeftAt!.Value);
        var other = lessons.LastOrDefault(l => l.State.Word == AttendanceWord.Left);
        return other is null
            ? new MarkedHere(keeps.State.Arrived, keeps.Start)
            : new LeftOneLessonHereAtAnother(other.Start, other.State.LeftAt, keeps.Start);
    }
}

/// <summary>Marked here and not marked left.</summary>
/// <param name="At">Arrival; null when nobody noted it.</param>
/// <param name="Lesson">Start of the lesson.</param>
public sealed record MarkedHere(TimeOnly? At, TimeOnly Lesson) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"Marked here at the {Lesson.Plain()} lesson{(At is { } at ? $", came at {at.Plain()}" : "")}, and not marked left.";
}

/// <summary>Left one lesson and is here at another.</summary>
/// <param name="LeftLesson">Start of the lesson that was left.</param>
/// <param name="LeftAt">When; null when nobody noted it.</param>
/// <param name="HereAt">Start of the lesson of the presence.</param>
public sealed record LeftOneLessonHereAtAnother(TimeOnly LeftLesson, TimeOnly? LeftAt, TimeOnly HereAt) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"Left the {LeftLesson.Plain()} lesson{(LeftAt is { } at ? $" at {at.Plain()}" : "")}, but marked here at the {HereAt.Plain()} lesson.";
}

/// <summary>Is to leave later; until then on the roll.</summary>
/// <param name="At">The time that was marked.</param>
public sealed record LeavesLater(TimeOnly At) : Reason
{
    /// <inheritdoc/>
    public override string Sentence => $"The leaving is marked for {At.Plain()}, which is still to come.";
}

/// <summary>Marked left.</summary>
/// <param name="At">When; null when nobody noted it.</param>
/// <param name="Lesson">Start of the lesson.</param>
public sealed record MarkedLeft(TimeOnly? At, TimeOnly Lesson) : Reason
{
    /// <inheritdoc/>
    public override string Sentence =>
        $"Left the {Lesson.Plain()} lesson{(At is { } at ? $" at {at.Plain()}" : "; nobody noted when")}.";
}

/// <summary>The counts of the roll.</summary>
/// <param name="Children">Children on the premises.</param>
/// <param name="Adults">Adults on the premises.</param>
/// <param name="Gone">People who have left.</param>
/// <param name="NotMarked">People whom nobody has marked.</param>
/// <param name="People">Everybody asked about.</param>
/// <param name="Now">The time of the roll.</param>
public sealed record RollCounts(int Children, int Adults, int Gone, int NotMarked, int People, TimeOnly Now) : Reason
{
    /// <inheritdoc/>
    public override string Sentence
    {
        get
        {
            var counts = $"At {Now.Plain()} {Words.Count(Children, "child", "children")} and {Words.Count(Adults, "adult")} of {Words.Count(People, "person", "people")} {Words.Is(Children + Adults)} on the premises; {Gone} {(Gone == 1 ? "has" : "have")} left.";
            return NotMarked == 0 ? counts : $"{counts} Nobody has marked {NotMarked} of the {People}: look for them too.";
        }
    }
}
