using Keikocho.App.Club;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;

namespace Keikocho.App.Closing;

/// <summary>The children of an evening in register order, told apart as every list tells them.</summary>
public sealed class EveningNames
{
    private readonly Dictionary<Guid, (string Name, int Place)> children = [];
    private readonly ClubBook book;

    /// <summary>Reads the registers of the lessons.</summary>
    public EveningNames(OpenClub club, IEnumerable<LessonRow> lessons)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(lessons);
        book = club.Book;
        foreach (var shown in CallNames.Show([.. lessons.SelectMany(l => book.RegisterOf(l.ProgrammeId, l.Date).Select(e => (e.PersonId, Ladder: book.Programme(l.ProgrammeId)?.LadderId)))
            .DistinctBy(c => c.PersonId).Select(c => (Person: book.Person(c.PersonId), c.Ladder)).Where(c => c.Person is { IsErased: false })
            .Select(c => new NamedChild(new PersonId(c.Person!.Id), c.Person.CallName, c.Person.Family, book.RankOf(c.Person.Id, c.Ladder)?.Name))]))
            children.Add(shown.Person.Value, (shown.Name, children.Count));
    }

    /// <summary>The children in register order.</summary>
    public IEnumerable<Guid> Children => children.Keys;

    /// <summary>How lists call somebody; who is on none of the registers by their full name.</summary>
    public string Of(Guid person) => children.TryGetValue(person, out var child) ? child.Name
        : book.Person(person) is { IsErased: false } other ? other.FullName : "somebody who is not in the file any more";

    /// <summary>The place in the register; at the end for who is on none.</summary>
    public int Place(Guid person) => children.TryGetValue(person, out var child) ? child.Place : int.MaxValue;
}
