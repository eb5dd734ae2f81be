using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Evening;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Calendar;
using Keikocho.Store.Safety;

namespace Keikocho.App.Knocks;

/// <summary>A knock on a list.</summary>
/// <param name="Id">Which.</param>
/// <param name="Name">The child.</param>
/// <param name="Words">When and what was going on.</param>
/// <param name="SlipIsOpen">Its slip waits.</param>
public sealed record KnockOnList(Guid Id, string Name, string Words, bool SlipIsOpen);

/// <summary>The children of a lesson, to say who had a knock, and the knocks of its evening.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Children">In register order, by the names that are called.</param>
/// <param name="Knocks">Those of the evening, oldest first.</param>
public sealed record KnocksView(LessonRow Lesson, ImmutableArray<(Guid Id, string Name)> Children, ImmutableArray<KnockOnList> Knocks)
{
    /// <summary>Reads it.</summary>
    public static KnocksView Of(OpenClub club, LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        var book = club.Book;
        var programme = book.Programme(lesson.ProgrammeId)!;
        var names = CallNames.Show([.. book.RegisterOf(programme.Id, lesson.Date).DistinctBy(e => e.PersonId).Select(e => book.Person(e.PersonId)!).Select(p =>
            new NamedChild(new PersonId(p.Id), p.CallName, p.Family, book.RankOf(p.Id, programme.LadderId)?.Name))]);
        var knocks = KnockReader.OfLessons(club.Reading, [.. EveningLesson.SameEvening(book, lesson).Select(l => l.Id)]);
        return new KnocksView(lesson, [.. names.Select(n => (n.Person.Value, n.Name))], [.. knocks.Reverse().Select(k => Line(club, k))]);
    }

    /// <summary>A knock as a line.</summary>
    internal static KnockOnList Line(OpenClub club, HeldKnock knock) => new(
        knock.Id,
        club.Book.Person(knock.PersonId)?.CallName ?? "a child",
        $"{knock.On.Full()}, marked at {club.Clock.TimeOf(knock.MadeAt).Plain()}, {KnockActivities.Words(knock.Activity)}{(knock.Counts ? "" : "; counts no more")}",
        knock.SlipIsOpen);
}
