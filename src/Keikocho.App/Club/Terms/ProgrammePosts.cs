using Keikocho.App.Shared;
using Keikocho.Store.Book;

namespace Keikocho.App.Club.Terms;

/// <summary>Takes a new programme, and the name and figures of one that is there.</summary>
internal static class ProgrammePosts
{
    private const string Part = "programmes-part";

    /// <summary>What the fields of one programme begin with.</summary>
    public static string Key(Guid programme) => $"programme-{programme:N}-";

    public static async Task<IResult> AddAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var name = sent.Name("programme-new-name", "The programme has no name. Type what you call the group.");
        RefuseSameName(sent, club.Book, "programme-new-name", name, null);
        if (!sent.IsTaken) return sent.Again();
        await club.House.Calendar.AddProgrammeAsync(name, club.Acting?.Id, club.Device, cancel);
        return Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage($"{name} is a programme of the club.", "Give it its weekly hours next."));
    }

    public static async Task<IResult> ChangeAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        if (sent.Id("programme") is not { } id || club.Book.Programme(id) is null) return SentForm.Gone(Part);
        var key = Key(id);
        var name = sent.Name(key + "name", "The programme has no name. “Juniors” will do.");
        RefuseSameName(sent, club.Book, key + "name", name, id);
        var lessons = sent.WholeIfAny(key + "lessons", 1, 200, "Lessons of the first course");
        var weeks = sent.WholeIfAny(key + "weeks", 1, 104, "Weeks of the first course");
        var trials = sent.WholeIfAny(key + "trials", 1, 20, "Lessons to try");
        if (!sent.IsTaken) return sent.Again();
        return await club.House.Calendar.ChangeProgrammeAsync(id, name, lessons, weeks, trials, club.Acting?.Id, club.Device, cancel)
            ? Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage($"{name} is saved."))
            : SentForm.Gone(Part);
    }

    private static void RefuseSameName(SentForm sent, ClubBook book, string field, string name, Guid? own)
    {
        if (book.Programmes.Any(p => p.Id != own && string.Equals(p.Name, name, StringComparison.OrdinalIgnoreCase)))
            sent.Refuse(field, $"There is a programme called {name} already. Type another name.");
    }
}
