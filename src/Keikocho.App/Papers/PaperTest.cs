using Keikocho.App.Club;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.People;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Papers;

/// <summary>The promotion test that a paper is for, with what belongs to it.</summary>
/// <param name="Test">The test.</param>
/// <param name="Programme">Whose test it is.</param>
/// <param name="Edition">The edition that holds on its day; null where none does.</param>
/// <param name="Term">The term that it lies in; null between terms.</param>
/// <param name="Unit">Key of that term's unit; null where none is set.</param>
public sealed record PaperTest(PromotionTestRow Test, ProgrammeRow Programme, PublishedEdition? Edition, TermRow? Term, string? Unit)
{
    /// <summary>Tests that papers are made for: those that are not over, the next first.</summary>
    public static IEnumerable<PromotionTestRow> Offered(OpenClub club)
    {
        ArgumentNullException.ThrowIfNull(club);
        return club.Book.Tests.Where(t => t.Date >= club.Today && club.Book.Programme(t.ProgrammeId) is not null);
    }

    /// <summary>The test with what belongs to it.</summary>
    public static PaperTest Of(OpenClub club, PromotionTestRow test)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(test);
        var book = club.Book;
        var programme = book.Programme(test.ProgrammeId)!;
        var edition = book.EditionOn(programme.LadderId, test.Date);
        var term = book.TermOn(test.Date);
        var unit = term is null ? null : book.UnitOf(programme.Id, term.Id);
        return new PaperTest(test, programme, edition, term, edition?.Edition.Units.Any(u => u.Key == unit) == true ? unit : null);
    }

    /// <summary>The test that was asked for; the next one where nothing was said. The error names the field.</summary>
    public static (PaperTest? Test, FieldError? Error) Read(OpenClub club, string? asked, string field)
    {
        ArgumentNullException.ThrowIfNull(club);
        var offered = Offered(club).ToList();
        if (offered.Count == 0) return (null, new FieldError(field, "No promotion test is set from today on. Add one to its term on the club’s page."));
        var test = string.IsNullOrEmpty(asked) ? offered[0] : Guid.TryParse(asked, out var id) ? offered.FirstOrDefault(t => t.Id == id) : null;
        if (test is null) return (null, new FieldError(field, "That test is not to come. Choose one from the list."));
        var found = Of(club, test);
        return found.Edition is null
            ? (null, new FieldError(field, $"{found.Programme.Name} have no syllabus that holds on {test.Date.Full()}, so nothing can be asked. Publish one on the page of the syllabus."))
            : (found, null);
    }

    /// <summary>"Tuesday 8 December 2026, Juniors".</summary>
    public string Words => $"{Test.Date.WithWeekday()}, {Programme.Name}";

    /// <summary>Whom a family asks: the head instructor, else another instructor, else whoever acts.</summary>
    public static string SpeakTo(OpenClub club)
    {
        ArgumentNullException.ThrowIfNull(club);
        var adult = club.Book.DutiesOn(club.Today).Where(d => d.Kind <= DutyKind.Instructor).OrderBy(d => d.Kind)
            .Select(d => club.Book.Person(d.PersonId)).FirstOrDefault(p => p is { IsErased: false }) ?? club.Acting;
        return adult?.FullName ?? "the instructor";
    }
}
