namespace Keikocho.Core.Evening;

/// <summary>Judges a roll without taking it: nobody left out who may be here, nobody on it who is known to have gone.</summary>
public static class RollCheck
{
    /// <summary>What is wrong with <paramref name="answer"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(RollSnapshot snapshot, RollAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(answer);
        var objections = new List<string>();
        var here = answer.Here.Select(p => p.Person).ToHashSet();
        var gone = answer.Gone.Select(p => p.Person).ToHashSet();
        foreach (var person in snapshot.People)
        {
            var name = person.Person.Value;
            var leavings = person.Lessons.Where(l => l.State.Word == AttendanceWord.Left && !(l.State.LeftAt > snapshot.Now)).ToArray();
            var presences = person.Lessons.Where(l => l.State.Word is AttendanceWord.Present or AttendanceWord.Left).Except(leavings).ToArray();
            if (presences.Length > 0 && leavings.Length == 0 && !here.Contains(person.Person))
                objections.Add($"{name} is here and nowhere left, but not on the roll.");
            if (presences.Length == 0 && here.Contains(person.Person))
                objections.Add($"{name} is on the roll without being here at any lesson.");
            if (presences.Length > 0 && leavings.Length > 0)
            {
                // The last lesson to start decides, save that a leaving never speaks for a later arrival.
                var lastLeft = leavings.Max(l => l.Start);
                var stillHere = presences.Any(p => p.Start >= lastLeft
                    || leavings.Where(l => l.Start > p.Start).All(l => l.State.LeftAt < p.State.Arrived));
                if (stillHere != here.Contains(person.Person))
                    objections.Add($"{name} left one lesson and is here at another: {(stillHere ? "on" : "off")} the roll.");
            }

            if (leavings.Length > 0 && here.Contains(person.Person) == gone.Contains(person.Person))
                objections.Add($"{name} is either on the roll or gone, never both or neither.");
            if (leavings.Length == 0 && gone.Contains(person.Person))
                objections.Add($"{name} did not leave.");
        }

        var adults = snapshot.People.Where(p => p.IsAdult).Select(p => p.Person).ToHashSet();
        if (answer.AdultsHere != here.Count(adults.Contains) || answer.ChildrenHere != here.Count - answer.AdultsHere
            || answer.Here.Count != here.Count || answer.Gone.Count != gone.Count || answer.People != snapshot.People.Count)
            objections.Add("The counts do not match the lists.");
        if (answer.NotMarked != snapshot.People.Count(p => !p.Lessons.Any(l => l.State.Word != AttendanceWord.Untouched)))
            objections.Add("The number of people not marked is wrong.");
        if (!answer.Here.Select(p => p.Person).SequenceEqual(snapshot.People.Select(p => p.Person).Where(here.Contains)))
            objections.Add("The roll keeps the order of the register.");
        return objections;
    }
}
