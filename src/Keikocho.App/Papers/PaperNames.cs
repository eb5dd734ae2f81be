using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;

namespace Keikocho.App.Papers;

/// <summary>A child's name in the two parts in which papers print it.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="First">The name that is called on the mat.</param>
/// <param name="Second">What tells two children of one called name apart; null for none.</param>
public sealed record PaperName(Guid PersonId, string First, string? Second)
{
    /// <summary>The names of a programme's children in the order given, told apart as on every other list (statement 12).</summary>
    public static IReadOnlyList<PaperName> Of(ClubBook book, ProgrammeRow programme, IEnumerable<Guid> children)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(programme);
        var people = children.Distinct().Select(id => book.Person(id)!).ToList();
        var shown = CallNames.Show([.. people.Select(p =>
            new NamedChild(new PersonId(p.Id), p.CallName, p.Family, book.RankOf(p.Id, programme.LadderId)?.Name))]);
        // CallNames puts the second part behind the called name and a blank.
        return [.. shown.Zip(people, (name, person) => new PaperName(
            person.Id, person.CallName, name.Name.Length > person.CallName.Length ? name.Name[(person.CallName.Length + 1)..] : null))];
    }
}
