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
public sealed record GridChild(Guid PersonId, string Name, bool WasHere);

/// <summary>Whom the grid of an evening holds: those who were here, or everybody while nobody has taken the register.</summary>
/// <param name="Children">In register order.</param>
/// <param name="NotHere">Names of those who were not here.</param>
/// <param name="RegisterTaken">Whether anybody was marked.</param>
public sealed record EveningChildren(ImmutableArray<GridChild> Children, ImmutableArray<string> NotHere, bool RegisterTaken)
{
    /// <summary>Reads them.</summary>
    public static EveningChildren Of(OpenClub club, LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lesson);
        var book = club.Book;
        var states = AttendanceReader.OfLesson(club.Reading, lesson.Id);
        var programme = book.Programme(lesson.ProgrammeId)!;
        var names = CallNames.Show([.. book.RegisterOf(programme.Id, lesson.Date).DistinctBy(e => e.PersonId).Select(e => book.Person(e.PersonId)!).Where(p => !p.IsErased).Select(p =>
            new NamedChild(new PersonId(p.Id), p.CallName, p.Family, book.RankOf(p.Id, programme.LadderId)?.Name))]);
        var children = names.Select(n => new GridChild(n.Person.Value, n.Name, states.GetValueOrDefault(n.Person.Value)?.Word is AttendanceWord.Present or AttendanceWord.Left)).ToList();
        var taken = children.Any(c => c.WasHere);
        return taken
            ? new EveningChildren([.. children.Where(c => c.WasHere)], [.. children.Where(c => !c.WasHere).Select(c => c.Name)], true)
            : new EveningChildren([.. children], [], false);
    }
}
