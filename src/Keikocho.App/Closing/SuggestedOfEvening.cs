using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Sightings;
using Keikocho.Core.Safety;
using Keikocho.Store.Marks;

namespace Keikocho.App.Closing;

/// <summary>One suggestion.</summary>
/// <param name="Mark">The mark.</param>
/// <param name="Child">The child.</param>
/// <param name="Words">What was seen.</param>
/// <param name="Of">What those of one child have in common: the stage of falls, and who saw it.</param>
public sealed record Suggestion(Guid Mark, string Child, string Words, string Of);

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
                        .Select(m => Of(club, items, names, m))])),
        ];
    }

    private static Suggestion Of(OpenClub club, ItemsOfLadders items, EveningNames names, StandingMark mark)
    {
        var child = names.Of(mark.Mark.PersonId);
        var by = mark.Mark.ById is { } id && club.Book.Person(id) is { IsErased: false } person ? $"by {person.CallName}" : "";
        if (mark.Mark.ItemId != MarkCode.Falls)
            return new Suggestion(mark.Mark.Id, child, EvidenceCode.WordOf(mark.Code) is { } word ? items.Word(mark.Mark.ItemId!.Value, word) : "", by);
        var (way, stage, clean) = EvidenceCode.FallOf(mark.Code);
        return new Suggestion(mark.Mark.Id, child, $"{FallWords.Of(way)}: {(clean ? "clean" : "head touched")}", by.Length == 0 ? FallWords.Stage(stage) : $"{FallWords.Stage(stage)}, {by}");
    }
}
