using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.People;
using Keikocho.Core.Calendar;
using Keikocho.Core.Evening;
using Keikocho.Core.Intake;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;

namespace Keikocho.App.Students;

/// <summary>One child on the list. No chance, no contact, nothing medical, nothing from which a size could be read.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">The name that is called, with a second part where two share it.</param>
/// <param name="Belt">The rank.</param>
/// <param name="Lessons">Lessons attended of those held since the child's clock started.</param>
/// <param name="Verdict">What the child's clock says in a few words.</param>
/// <param name="Notes">Newcomer, away since ...; empty where there is nothing to say.</param>
public sealed record StudentLine(Guid PersonId, string Name, WornBelt Belt, string Lessons, string Verdict, string Notes);

/// <summary>A child who was on this register.</summary>
/// <param name="PersonId">Who.</param>
/// <param name="Name">Full name: nobody calls it on the mat any more.</param>
/// <param name="Words">Until when, and where the child is now.</param>
public sealed record FormerLine(Guid PersonId, string Name, string Words);

/// <summary>The register of one programme, by end.</summary>
/// <param name="Programme">The programme.</param>
/// <param name="Programmes">All programmes with their names.</param>
/// <param name="Reckoned">"Reckoned after Tuesday 24 November 2026", and the next test.</param>
/// <param name="Beginners">The beginners' end in register order.</param>
/// <param name="Main">The main group in register order.</param>
/// <param name="Former">Who was on it, by last day, newest first.</param>
/// <param name="OnRegister">Children on the register, found or not.</param>
/// <param name="Search">What was searched for; empty for everybody.</param>
public sealed record StudentsView(
    Guid Programme,
    ImmutableArray<(Guid Id, string Name)> Programmes,
    string Reckoned,
    ImmutableArray<StudentLine> Beginners,
    ImmutableArray<StudentLine> Main,
    ImmutableArray<FormerLine> Former,
    int OnRegister,
    string Search)
{
    /// <summary>Reads it; null when the club has no such programme.</summary>
    public static StudentsView? Of(OpenClub club, Reckonings reckonings, Guid? programmeId, string? search)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(reckonings);
        var book = club.Book;
        var programme = programmeId is { } id ? book.Programme(id) : book.Programmes.FirstOrDefault();
        if (programme is null) return null;
        var reckoning = reckonings.Of(club, programme);
        var today = club.Today;
        var register = book.RegisterOf(programme.Id, today).DistinctBy(e => e.PersonId).Select(e => book.Person(e.PersonId)!).ToList();
        // The names are those of the whole register, whoever is searched for: a child is called the same on every list.
        var names = CallNames.Show([.. register.Select(p => new NamedChild(new PersonId(p.Id), p.CallName, p.Family, book.RankOf(p.Id, programme.LadderId)?.Name))]);
        var words = NameFold.Fold(search ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var found = register.Zip(names, (person, name) => (Person: person, name.Name)).Where(c => Matches(c.Person, words)).ToList();
        var returning = StudentRules.Return(book, today);
        var lines = found.ToLookup(
            c => book.EndOf(c.Person.Id, programme, null, today),
            c => LineOf(book, programme, c.Person, c.Name, reckoning.Children.GetValueOrDefault(c.Person.Id), today, returning));
        return new StudentsView(
            programme.Id,
            [.. book.Programmes.Select(p => (p.Id, p.Name))],
            $"Reckoned after {reckoning.AsOf.WithWeekday()}; {(reckoning.TestOn is { } test ? $"the next test is on {test.WithWeekday()}" : "no test is set")}.",
            [.. lines[MatEnd.Beginners]],
            [.. lines[MatEnd.Main]],
            Formers(book, programme, today, words),
            register.Count,
            search?.Trim() ?? "");
    }

    private static StudentLine LineOf(
        ClubBook book, ProgrammeRow programme, BookPerson person, string name, ChildReckoning? reckoned, DateOnly today, ReturnRule returning)
    {
        var belt = WornBelt.Of(book, person.Id, programme.LadderId);
        return reckoned is null
            ? new StudentLine(person.Id, name, belt, "", "not reckoned: today is the last day on this register", "")
            : new StudentLine(person.Id, name, belt, $"{reckoned.Clock.Attended} of {reckoned.Clock.Held}", reckoned.Clock.Words, NotesOf(reckoned, today, returning));
    }

    private static string NotesOf(ChildReckoning reckoned, DateOnly today, ReturnRule returning)
    {
        var newcomer = reckoned.LessonsEver == 0 ? "newcomer, no lesson yet" : reckoned.IsNewcomer ? "newcomer" : null;
        var away = reckoned.LastLesson is { } last && ReturnAfterAbsence.Reckon(today, last, returning).SeeAgain.Count > 0
            ? $"away since {last.Full()}"
            : null;
        return string.Join("; ", new[] { newcomer, away }.OfType<string>());
    }

    private static ImmutableArray<FormerLine> Formers(ClubBook book, ProgrammeRow programme, DateOnly today, string[] words)
    {
        var former = book.EnrolmentsOf(programme.Id).GroupBy(e => e.PersonId)
            .Where(g => g.All(e => e.To < today))
            .Select(g => (Person: book.Person(g.Key)!, Last: g.Max(e => e.To!.Value)))
            .Where(f => !f.Person.IsErased && Matches(f.Person, words));
        return
        [
            .. former.OrderByDescending(f => f.Last).ThenBy(f => f.Person.FullName, StringComparer.Ordinal).ThenBy(f => f.Person.Id).Select(f =>
            {
                var now = book.EnrolmentsOfPerson(f.Person.Id).FirstOrDefault(e => e.IsOn(today));
                var where = now is null ? "" : $", now in {book.Programme(now.ProgrammeId)!.Name}";
                return new FormerLine(f.Person.Id, f.Person.FullName, $"to {f.Last.Full()}{where}");
            }),
        ];
    }

    private static bool Matches(BookPerson person, string[] words)
    {
        if (words.Length == 0) return true;
        var own = NameFold.Fold($"{person.FullName} {person.Called}").Split(' ');
        return words.All(word => own.Any(part => part.StartsWith(word, StringComparison.Ordinal)));
    }
}
