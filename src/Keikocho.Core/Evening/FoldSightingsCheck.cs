using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>Judges the folded evenings of one child and one item by asking of each mark, one by one, what speaks against it.</summary>
public static class FoldSightingsCheck
{
    /// <summary>What is wrong with <paramref name="evenings"/>, a sentence each; empty when they are right.</summary>
    public static IReadOnlyList<string> Objections(IReadOnlyCollection<SightingMark> marks, IReadOnlyList<SeenEvening> evenings)
    {
        ArgumentNullException.ThrowIfNull(marks);
        ArgumentNullException.ThrowIfNull(evenings);
        var all = marks.Distinct().ToArray();
        var objections = new List<string>();
        void Expect(bool holds, string what)
        {
            if (!holds)
                objections.Add(what);
        }

        for (var i = 1; i < evenings.Count; i++)
            Expect(evenings[i - 1].On < evenings[i].On, "The evenings are oldest first, each once.");
        var words = all.Where(m => (m.Kind is MarkKind.Sighting or MarkKind.Words or MarkKind.Corrected) && m.Word is not null && !Replaced(m, all))
            .Select(m => (Mark: m, Day: Day(m, all), Sure: Sure(m, all))).ToArray();
        Expect(words.All(w => evenings.Any(e => e.On == w.Day)), "An evening with a word is there.");
        foreach (var evening in evenings)
        {
            var tonight = words.Where(w => w.Day == evening.On).ToArray();
            Expect(tonight.Length > 0, $"{evening.On.Full()} has no word that stands.");
            Expect(evening.Seen.Order().SequenceEqual(tonight.Select(w => w.Mark.Word!.Value).Order()), $"{evening.On.Full()} shows every word.");
            Expect(evening.Confirmed == tonight.Any(w => w.Sure), $"{evening.On.Full()} is confirmed by a word of somebody with the right, not otherwise.");
            var settled = tonight.Where(w => w.Sure && w.Mark.Kind == MarkKind.Corrected).ToArray();
            var sure = tonight.Where(w => w.Sure).ToArray();
            var heard = settled.Length > 0 ? settled : sure.Length > 0 ? sure : tonight;
            var last = heard.Where(w => !heard.Any(o => o.Mark.Device == w.Mark.Device && IsAfter(o.Mark, w.Mark))).Select(w => w.Mark).ToArray();
            var good = last.Count(m => m.Word == SeenWord.Good);
            SeenWord? word = good == last.Length ? SeenWord.Good
                : good > 0 ? null
                : last.All(m => m.Word == SeenWord.Prompted) ? SeenWord.Prompted
                : SeenWord.NotYet;
            Expect(evening.Word == word, $"{evening.On.Full()}: the word is {word?.ToString() ?? "none"}, not {evening.Word?.ToString() ?? "none"}.");
            Expect(!evening.Settled || (evening.Confirmed && evening.Word is not null), $"{evening.On.Full()}: only a word that counts is settled.");
            Expect(evening.Settled == (evening.Confirmed && word is not null && last.Any(m => m.Settled)), $"{evening.On.Full()}: settled by a sign-off that holds.");
        }

        return objections;
    }

    private static bool IsAfter(SightingMark a, SightingMark b) =>
        (a.Sequence, (int)a.Word!.Value, a.Settled ? 0 : 1, a.Id.Value).CompareTo((b.Sequence, (int)b.Word!.Value, b.Settled ? 0 : 1, b.Id.Value)) > 0;

    /// <summary>The mark that this one is about, if it may be about it.</summary>
    private static SightingMark? Target(SightingMark mark, SightingMark[] all)
    {
        var target = all.FirstOrDefault(m => m.Id == mark.Replaces);
        if (target is null)
            return null;
        if (mark.Kind is not (MarkKind.Corrected or MarkKind.Confirmed) && (target.Device != mark.Device || (target.Confirms && !mark.Confirms)))
            return null;
        var seen = new HashSet<MarkId>();
        for (var at = target; at is not null && seen.Add(at.Id); at = all.FirstOrDefault(m => m.Id == at.Replaces))
        {
            if (at.Id == mark.Id)
                return null;
        }

        return target;
    }

    private static DateOnly Day(SightingMark mark, SightingMark[] all) => Target(mark, all) is { } under ? Day(under, all) : mark.On;

    private static bool Sure(SightingMark mark, SightingMark[] all) =>
        mark.Confirms || all.Any(m => m.Kind == MarkKind.Confirmed && m.Confirms && Target(m, all)?.Id == mark.Id && Acts(m, all));

    private static bool Replaced(SightingMark mark, SightingMark[] all) =>
        all.Any(m => m.Kind != MarkKind.Confirmed && Target(m, all)?.Id == mark.Id && Acts(m, all));

    private static bool Acts(SightingMark mark, SightingMark[] all)
    {
        if (mark.Kind == MarkKind.Corrected && !Sure(mark, all))
            return false;
        var above = all.Where(m => m.Kind != MarkKind.Confirmed && Target(m, all)?.Id == mark.Id && Acts(m, all)).ToArray();
        return above.Length == 0 || above.Any(m => m.Kind != MarkKind.Cleared);
    }
}
