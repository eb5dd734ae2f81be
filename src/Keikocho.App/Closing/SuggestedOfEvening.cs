using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Sightings;
using Keikocho.Core.Safety;
using Keikocho.Store.Marks;

namespace Keikocho.App.Closing;

/// <summary>One suggestion.</summary>
/// <param name="Mark">The mark.</param>
/// <param name="Child">The child.</param>
/// <param name="Words">What was seen, and by whom.</param>
public sealed record Suggestion(Guid Mark, string Child, string Words);

/// <summary>The suggestions about one item, or about falls.</summary>
/// <param name="Heading">The item.</param>
/// <param name="IsTicked">Whether all are confirmed but those that are unticked; never for falls and critical items.</param>
/// <param name="Suggestions">In register order.</param>
public sealed record SuggestedItem(string Heading, bool IsTicked, ImmutableArray<Suggestion> Suggestions);

/// <summary>What leaders marked on one evening and nobody has confirmed.</summary>
public static class SuggestedOfEvening
{
    /// <summary>Falls first, then critical items, then the others in the order of the edition.</summary>
    public static ImmutableArray<SuggestedItem> Of(OpenClub club, IReadOnlyList<MarkRow> marks, ItemsOfLadders items, EveningNames names)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(marks);
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(names);
        var book = club.Book;
        var waiting = StandingEvidence.Of([.. marks.Where(EvidenceCode.IsEvidence)]).Where(m => !m.Confirmed && book.Person(m.Mark.PersonId) is { IsErased: false });
        return
        [
            .. waiting.GroupBy(m => m.Mark.ItemId!.Value)
                .OrderBy(g => g.Key == MarkCode.Falls ? 0 : items.IsCritical(g.Key) ? 1 : 2).ThenBy(g => items.Place(g.Key)).ThenBy(g => g.Key)
                .Select(g => new SuggestedItem(
                    g.Key == MarkCode.Falls ? "Falls" : items.Name(g.Key),
                    g.Key != MarkCode.Falls && !items.IsCritical(g.Key),
                    [.. g.OrderBy(m => names.Place(m.Mark.PersonId)).ThenBy(m => m.Mark.DeviceId).ThenBy(m => m.Mark.Sequence)
                        .Select(m => new Suggestion(m.Mark.Id, names.Of(m.Mark.PersonId), $"{What(items, m)}{By(club, m.Mark.ById)}"))])),
        ];
    }

    private static string What(ItemsOfLadders items, StandingMark mark)
    {
        if (mark.Mark.ItemId != MarkCode.Falls) return EvidenceCode.WordOf(mark.Code) is { } word ? items.Word(mark.Mark.ItemId!.Value, word) : "";
        var (way, stage, clean) = EvidenceCode.FallOf(mark.Code);
        return $"{FallWords.Of(way)}, {FallWords.Stage(stage)}: {(clean ? "clean" : "head touched")}";
    }

    private static string By(OpenClub club, Guid? by) => by is { } id && club.Book.Person(id) is { IsErased: false } person ? $", by {person.CallName}" : "";
}
