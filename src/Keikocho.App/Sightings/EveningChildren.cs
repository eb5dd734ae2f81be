using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Marks;

namespace Keikocho.App.Sightings;

/// <summary>A child of the evening's grid.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">The name as called.</param>
/// <param name="WasHere">Marked present, or left later.</param>
/// <param name="End">The end of the mat on that evening.</param>
public sealed record GridChild(Guid PersonId, string Name, bool WasHere, MatEnd End);

/// <summary>Whom the grid of an evening holds: those of one end who were here, or all of that end while nobody has taken the register.</summary>
/// <param name="End">The end.</param>
/// <param name="HasBothEnds">Whether there is anybody at the other end too.</param>
/// <param name="Children">In register order.</param>
/// <param name="NotHere">Names of those of that end who were not here.</param>
/// <param name="RegisterTaken">Whether anybody was marked.</param>
public sealed record EveningChildren(MatEnd End, bool HasBothEnds, ImmutableArray<GridChild> Children, ImmutableArray<string> NotHere, bool RegisterTaken)
{
    /// <summary>Reads them.</summary>
    /// <param name="club">The club.</param>
    /// <param name="lesson">The lesson.</param>
    /// <param name="asked">The end that was asked for; null for the first that has anybody.</param>
    public static EveningChildren Of(OpenClub club, LessonRow lesson, MatEnd? asked)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        var book = club.Book;
        var states = AttendanceReader.OfLesson(club.Reading, lesson.Id);
        var programme = book.Programme(lesson.ProgrammeId)!;
        var names = CallNames.Show([.. book.RegisterOf(programme.Id, lesson.Date).DistinctBy(e => e.PersonId).Select(e => book.Person(e.PersonId)!).Where(p => !p.IsErased).Select(p =>
            new NamedChild(new PersonId(p.Id), p.CallName, p.Family, book.RankOf(p.Id, programme.LadderId)?.Name))]);
        var all = names.Select(n => new GridChild(
            n.Person.Value,
            n.Name,
            states.GetValueOrDefault(n.Person.Value)?.Word is AttendanceWord.Present or AttendanceWord.Left,
            book.EndOf(n.Person.Value, programme, lesson, lesson.Date))).ToList();
        var taken = all.Any(c => c.WasHere);
        var here = all.Where(c => c.WasHere || !taken).ToList();
        var hasBoth = here.DistinctBy(c => c.End).Count() > 1;
        var end = asked ?? here.Select(c => (MatEnd?)c.End).Min() ?? MatEnd.Beginners;
        return new EveningChildren(
            end, hasBoth, [.. here.Where(c => c.End == end)], taken ? [.. all.Where(c => !c.WasHere && c.End == end).Select(c => c.Name)] : [], taken);
    }
}
