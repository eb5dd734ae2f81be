using Keikocho.App.Syllabus;
using Keikocho.Core.Evening;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Marks;
using Keikocho.Store.Promotion;

namespace Keikocho.App.PromotionTests;

/// <summary>What a sheet needs to know of one child, from ranks, results and sightings.</summary>
internal static class SheetChildFacts
{
    public static SheetChild Of(ClubBook book, InCommon common, Guid person, DateOnly? born, ChildEvidence evidence, bool sparesTheNeck)
    {
        var promoted = PromotedOn(book, common, person);
        return new SheetChild(
            born,
            [.. evidence.Choices.GroupBy(c => c.Requirement).Select(g => new ChosenItems(g.Key, [.. Keys(book, g.Select(c => c.ItemId))]))],
            [.. common.Papers.Passes[person].Where(p => book.ItemKey(p.ItemId) is not null).Select(p => new KeptPass(book.ItemKey(p.ItemId)!, p.Until))],
            [.. evidence.Ways.Where(w => book.ItemKey(w.ItemId) is not null).Select(w => new AgreedWay(book.ItemKey(w.ItemId)!, w.Wording))],
            AskedBefore(book, common, person),
            promoted is not { } on ? [] : [.. Keys(book, evidence.Items.Where(i => i.Value.Any(e => e is { Word: SeenWord.Good, Confirmed: true } && e.On <= on)).Select(i => i.Key))],
            sparesTheNeck,
            SheetDraw.Of(person, common.TestId));
    }

    /// <summary>
    /// Items of the ranks up to the highest that the child came with, from a file or from another club: credited by rank. A fall never is.
    /// </summary>
    public static IReadOnlyList<string> Credited(ClubBook book, InCommon common, Guid person)
    {
        if (common.Edition is not { } edition) return [];
        var place = -1;
        foreach (var award in book.AwardsOf(person))
        {
            if (award.LadderId == common.Programme.LadderId && award.Source is AwardSource.Imported or AwardSource.Transferred)
                place = Math.Max(place, PlaceOf(book, edition, award));
        }

        return edition.AskedUpTo(place);
    }

    /// <summary>The day of the last promotion: the newest award with a day, above the rank that is worn on joining.</summary>
    public static DateOnly? PromotedOn(ClubBook book, InCommon common, Guid person) =>
        book.NewestAwardOf(person, common.Programme.LadderId) is { } award && book.Rank(award.RankId) is { Position: not 1 } ? award.On : null;

    // What stays once it was asked: such lines of every rank that was given here, as they stand in this edition; a line of a unit only
    // where that unit was taught in the term of the test.
    private static List<string> AskedBefore(ClubBook book, InCommon common, Guid person)
    {
        if (common.Edition is not { } edition) return [];
        var asked = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var award in book.AwardsOf(person))
        {
            if (award.LadderId != common.Programme.LadderId || award.Source != AwardSource.Promoted || PlaceOf(book, edition, award) is not (>= 0 and var place)) continue;
            var unit = award.On is { } on && book.TermOn(on) is { } term ? book.UnitOf(common.Programme.Id, term.Id) : null;
            foreach (var requirement in edition.Edition.Ranks[place].Requirements.Where(r => r.Carry == Carry.OnceAskedStays && (r.Unit is null || r.Unit == unit)))
                asked.UnionWith(EditionInHand.Named(requirement.Ask));
        }

        return [.. asked];
    }

    private static int PlaceOf(ClubBook book, EditionInHand edition, AwardRow award) => edition.PlaceOf(book.Rank(award.RankId)?.Key);

    private static IEnumerable<string> Keys(ClubBook book, IEnumerable<Guid> items) => items.Select(book.ItemKey).OfType<string>();
}
