using Keikocho.Core.Kernel;

namespace Keikocho.Core.Evening;

/// <summary>
/// Folds the marks of one child and one item, evening by evening: the same state for every order of arrival; the same evening by
/// two people is one evening; good against anything else counts as nothing until an instructor settles it; a leader's word waits.
/// </summary>
/// <remarks>
/// An evening is judged by its corrections where there are any, else by its confirmed words, else by its suggestions. Of these the
/// last on each device holds. Devices that agree are one word; good against another word is no word; prompted against not yet is not yet.
/// </remarks>
public static class FoldSightings
{
    /// <summary>Folds the marks of one child and one item.</summary>
    /// <exception cref="ArgumentException">Two different marks with one id, a word missing, or a mark of another kind.</exception>
    public static IReadOnlyList<SeenEvening> Fold(IReadOnlyCollection<SightingMark> marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        if (marks.Count == 0)
            return [];
        var known = new Dictionary<MarkId, SightingMark>(marks.Count);
        foreach (var mark in marks)
        {
            Guard(mark);
            if (!known.TryAdd(mark.Id, mark) && known[mark.Id] != mark)
                throw new ArgumentException($"Two different marks have the id {mark.Id.Value}.", nameof(marks));
        }

        var chain = new MarkChain(known.Values.Select(m => new MarkLink(m.Id, m.Device, m.Sequence, m.Kind, m.Replaces, m.Confirms)));
        return
        [
            .. known.Values
                .Where(m => m.Word is not null && m.Kind is not (MarkKind.Cleared or MarkKind.Confirmed) && chain.Stands(m.Id))
                .Select(m => new Spoken(m, known[chain.Root(m.Id)].On, chain.IsConfirmed(m.Id)))
                .GroupBy(s => s.On)
                .OrderBy(g => g.Key)
                .Select(g => Evening(g.Key, g)),
        ];
    }

    private static SeenEvening Evening(DateOnly on, IEnumerable<Spoken> spoken)
    {
        // On one device by its own count; at one place, which an honest device never makes, the worse word is heard last.
        Spoken[] all =
        [
            .. spoken.OrderBy(s => s.Mark.Device.Value).ThenBy(s => s.Mark.Sequence).ThenBy(s => s.Mark.Word)
                .ThenBy(s => s.Mark.Settled ? 0 : 1).ThenBy(s => s.Mark.Id.Value),
        ];
        var confirmed = all.Any(s => s.Confirmed);
        var judged = all.Any(Settles) ? all.Where(Settles) : all.Where(s => s.Confirmed == confirmed);
        var last = judged.GroupBy(s => s.Mark.Device).Select(g => g.Last().Mark).ToArray();
        var word = last[0].Word;
        if (last.Any(m => m.Word != word))
            word = last.Any(m => m.Word == SeenWord.Good) ? null : SeenWord.NotYet;
        return new SeenEvening(on, word, confirmed, word is not null && confirmed && last.Any(m => m.Settled), [.. all.Select(s => s.Mark.Word!.Value)]);
    }

    private static bool Settles(Spoken s) => s.Confirmed && s.Mark.Kind == MarkKind.Corrected;

    private static void Guard(SightingMark mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        if (mark.Kind is not (MarkKind.Sighting or MarkKind.Words or MarkKind.Confirmed or MarkKind.Cleared or MarkKind.Corrected))
            throw new ArgumentException($"{mark.Kind} says nothing of an item.", nameof(mark));
        if (mark.Kind is MarkKind.Sighting or MarkKind.Words && mark.Word is null)
            throw new ArgumentException("A sighting says good, prompted or not yet.", nameof(mark));
        if (mark.Kind is MarkKind.Corrected or MarkKind.Confirmed && mark.Replaces is null)
            throw new ArgumentException("A correction and a confirmation name the mark that they are about.", nameof(mark));
        if (mark.Word is { } word && !Enum.IsDefined(word))
            throw new ArgumentException("A sighting says good, prompted or not yet.", nameof(mark));
    }

    private sealed record Spoken(SightingMark Mark, DateOnly On, bool Confirmed);
}
