using Keikocho.App.Club;
using Keikocho.App.Syllabus;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Sightings;

/// <summary>
/// What the children at one end are going for, from their own sheets of the next test. At the beginners' end the first course stands in
/// front; in the main group the unit of the term.
/// </summary>
public static class GoingFor
{
    /// <summary>Keys of items, those in front first, then those that most of the children must show, then by the order of the edition.</summary>
    public static IReadOnlyList<string> Keys(
        ClubBook book, EditionsInHand editions, PublishedEdition published, LessonRow lesson, EveningChildren children, IReadOnlyDictionary<Guid, ChildEvidence> seen)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(editions);
        ArgumentNullException.ThrowIfNull(published);
        ArgumentNullException.ThrowIfNull(lesson);
        ArgumentNullException.ThrowIfNull(children);
        ArgumentNullException.ThrowIfNull(seen);
        var (hand, programme) = (editions.Of(published), book.Programme(lesson.ProgrammeId)!);
        var edition = hand.Edition;
        var unit = book.TermOn(lesson.Date) is { } term && book.UnitOf(programme.Id, term.Id) is { } key ? edition.Units.FirstOrDefault(u => u.Key == key) : null;
        var test = book.Tests.FirstOrDefault(t => t.ProgrammeId == programme.Id && t.Date >= lesson.Date);
        var asked = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var child in children.Children)
        {
            if (ClubRules.NextRank(book, programme, child.PersonId, lesson.Date) is not { } next || hand.PlaceOf(next.Key) < 0) continue;
            var born = book.Person(child.PersonId)?.Born is { } date && date <= lesson.Date ? (DateOnly?)date : null;
            var own = seen[child.PersonId];
            var sheet = MakeSheet.Make(
                new SheetSnapshot(edition, next.Key, test?.Date ?? lesson.Date, unit?.Key, editions.AgeRulesOf(book), SheetChild.Plain(born) with
                {
                    Choices = [.. own.Choices.GroupBy(c => c.Requirement).Select(g => new ChosenItems(g.Key, [.. g.Select(c => book.ItemKey(c.ItemId)).OfType<string>()]))],
                    SpareTheNeck = own.StandDowns.Any(s => s.Scope == StandDownScope.SpareTheNeck && s.From <= lesson.Date && (s.LiftedOn is not { } lifted || lifted > lesson.Date)),
                    Draw = SheetDraw.Of(child.PersonId, test?.Id ?? Guid.Empty),
                }),
                hand.Prepared);
            foreach (var item in sheet.Lines.SelectMany(l => l.Items).Select(i => i.Item.Key).Distinct()) asked[item] = asked.GetValueOrDefault(item) + 1;
        }

        var front = (children.End == MatEnd.Beginners ? edition.FirstCourse : unit?.Items ?? []).ToHashSet(StringComparer.Ordinal);
        return [.. edition.Items.Select(i => i.Key).Distinct().Where(k => front.Contains(k) || asked.ContainsKey(k))
            .OrderBy(k => front.Contains(k) ? 0 : 1).ThenByDescending(asked.GetValueOrDefault)];
    }
}
