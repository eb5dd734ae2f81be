using Keikocho.App.Club;
using Keikocho.App.Students;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Paper.Folder;
using Keikocho.Store.Book;
using Keikocho.Store.Kernel;
using Keikocho.Store.People;

namespace Keikocho.App.Papers;

/// <summary>Fills the red folder.</summary>
public static class FolderPaper
{
    private const string OnTheLaptop = "There are care notes. They are on the laptop, under its lock.";

    /// <summary>What the folder shows; null where there are care notes, the lock is shut, and nobody said that they are left out.</summary>
    /// <exception cref="ObjectDisposedException">The lock was shut while it was read.</exception>
    public static RedFolderContent? Of(OpenClub club, FolderScope scope, bool withoutCare)
    {
        ArgumentNullException.ThrowIfNull(club);
        ArgumentNullException.ThrowIfNull(scope);
        var (book, today) = (club.Book, club.Today);
        var numbers = new Dictionary<Guid, int>();
        var named = new List<PaperName>();
        var registers = new List<FolderRegister>();
        foreach (var part in scope.Parts)
        {
            var names = PaperName.Of(book, part.Programme, book.RegisterOf(part.Programme.Id, part.On).Select(e => e.PersonId).Where(id => book.Person(id) is { IsErased: false }));
            foreach (var name in names.Where(n => numbers.TryAdd(n.PersonId, numbers.Count + 1))) named.Add(name);
            registers.Add(new FolderRegister(part.Name, [.. names.Select(n => numbers[n.PersonId])]));
        }

        Guid[] children = [.. named.Select(n => n.PersonId)];
        var stands = CareNoteReader.Stands(club.Reading, children);
        var hasNotes = stands.Values.Any(s => s.HasNote);
        var key = withoutCare ? null : club.House.Lock.Now(club.Reading).Key;
        if (hasNotes && key is null && !withoutCare) return null;
        var notes = key is null ? [] : CareNoteReader.Of(club.Reading, children, key);
        var contacts = ContactsOf(club, children);
        var rule = FloorAndCareRules.Folder(book, today);
        return new RedFolderContent(
            book.Club.Name,
            scope.Words,
            today,
            rule.ShredBy(today),
            hasNotes && key is null ? FolderCare.LeftOut : FolderCare.InWords,
            FloorAndCareRules.EmergencyNumber(book, today),
            [.. scope.Halls.Select(h => new FolderHall(h.Name, h.Address, h.Entrance, h.Hospital))],
            Lines(Seal.Open(book.Club.Welfare)),
            registers,
            [.. named.Select(name =>
            {
                var person = book.Person(name.PersonId)!;
                var own = notes.GetValueOrDefault(name.PersonId) ?? [];
                return new FolderChild(
                    numbers[name.PersonId], name.First, name.Second, person.FullName, Age(book, person, today), [.. contacts[name.PersonId]],
                    [.. own.Select(n => new FolderNote(CareHeadings.Words(n.Heading), n.Text ?? "This note does not open with the club’s lock. Ask the family."))],
                    CareWords(stands[name.PersonId], key is not null), stands[name.PersonId].HasNote, stands[name.PersonId] is { HasNote: false, AskedOn: null });
            })]);
    }

    private static string? CareWords(CareStands stands, bool inWords) => stands switch
    {
        { HasNote: true } => inWords ? null : OnTheLaptop,
        { AskedOn: { } asked } => $"No care note: the family was asked on {asked.Full()}.",
        _ => "Nobody has asked the family about care yet.",
    };

    private static string? Age(ClubBook book, BookPerson person, DateOnly today) => StudentRules.Age(book, person, today) is { } years ? Shared.Counted.Of(years, "year") : null;

    private static ILookup<Guid, FolderContact> ContactsOf(OpenClub club, Guid[] children) => ContactReader.Of(club.Reading, children).ToLookup(
        c => c.PersonId, c => new FolderContact(c.Name ?? "name not known", c.Relation, c.Phone, c.Barred));

    private static string[] Lines(string? text) => (text ?? "").Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}
