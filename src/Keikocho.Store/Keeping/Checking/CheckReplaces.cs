namespace Keikocho.Store.Keeping.Checking;

/// <summary>Marks that take the place of another: it must be there and speak of the same person. They are looked up many at a time.</summary>
internal sealed class CheckReplaces(ReadSnapshot view, int lane, int club, Findings findings)
{
    private const int MostWaiting = 500;

    private readonly List<MarkLine> waiting = [];

    public void Add(in MarkLine mark)
    {
        waiting.Add(mark);
        if (waiting.Count >= MostWaiting) Finish();
    }

    public void Finish()
    {
        if (waiting.Count == 0) return;
        var people = new Dictionary<Guid, Guid>(waiting.Count);
        var ids = string.Join(", ", waiting.Select(m => view.Literal(m.Replaces!.Value)));
        using (var found = LineReading.Of(view, lane, $"SELECT \"Id\", \"PersonId\" FROM \"Marks\" WHERE \"Club\" = @club AND \"Id\" IN ({ids})", club))
        {
            while (found.Next()) people[found.Id(0)] = found.Id(1);
        }

        foreach (var mark in waiting)
        {
            var replaced = mark.Replaces!.Value;
            if (!people.TryGetValue(replaced, out var person))
                findings.Add(CheckPart.Marks, $"Mark {mark.Id} takes the place of mark {replaced}, which is not there.");
            else if (person != mark.PersonId)
                findings.Add(CheckPart.Marks, $"Mark {mark.Id} of person {mark.PersonId} takes the place of mark {replaced} of another person, {person}.");
        }

        waiting.Clear();
    }
}
