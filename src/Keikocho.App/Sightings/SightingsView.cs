using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Syllabus;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;

namespace Keikocho.App.Sightings;

/// <summary>One cell: one child and one item on this evening.</summary>
/// <param name="Item">The item.</param>
/// <param name="Stands">What stands, in words; null for nothing.</param>
public sealed record SeenCellView(GridItem Item, string? Stands);

/// <summary>One child's row.</summary>
/// <param name="Child">Who.</param>
/// <param name="Cells">In the order of the items.</param>
public sealed record SeenRowView(GridChild Child, ImmutableArray<SeenCellView> Cells);

/// <summary>What was seen on an evening: children down, items across.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Asked">What was asked for, with the end that is shown.</param>
/// <param name="Line">Programme and day.</param>
/// <param name="Lessons">Lessons to choose from.</param>
/// <param name="Choice">The items; null while the club has no syllabus.</param>
/// <param name="Children">Whom it holds.</param>
/// <param name="Rows">A row a child.</param>
public sealed record SightingsView(
    LessonRow Lesson,
    GridAsked Asked,
    string Line,
    IReadOnlyList<(string Value, string Words)> Lessons,
    ItemChoice? Choice,
    EveningChildren Children,
    ImmutableArray<SeenRowView> Rows)
{
    /// <summary>Reads it.</summary>
    public static SightingsView Of(OpenClub club, EditionsInHand editions, LessonRow lesson, GridAsked asked)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(editions);
        ArgumentNullException.ThrowIfNull(lesson);
        ArgumentNullException.ThrowIfNull(asked);
        var book = club.Book;
        var programme = book.Programme(lesson.ProgrammeId)!;
        var children = EveningChildren.Of(club, lesson, asked.End);
        // Days on the mat say nothing here.
        var seen = EvidenceReader.Of(club.Reading, [.. children.Children.Select(c => c.PersonId)], lesson.Date, lesson.Date);
        var edition = book.EditionOn(programme.LadderId, lesson.Date) ?? book.NewestEdition(programme.LadderId);
        var choice = edition is null ? null : ItemChoice.Of(book, edition.Edition, asked, children.Children.Length, GoingFor.Keys(book, editions, edition, lesson, children, seen));
        SeenCellView Cell(GridChild child, GridItem item)
        {
            var evening = seen[child.PersonId].Items.GetValueOrDefault(item.Id)?.FirstOrDefault(e => e.On == lesson.Date);
            return new SeenCellView(item, evening is null ? null : SeenWords.Of(evening, item.Item.Kind));
        }

        return new SightingsView(
            lesson,
            asked with { End = children.End },
            $"{programme.Name}, {lesson.Date.WithWeekday()}",
            LessonChoice.List(club, lesson),
            choice,
            children,
            [.. children.Children.Select(c => new SeenRowView(c, [.. (choice?.Shown ?? []).Select(i => Cell(c, i))]))]);
    }
}
