using Keikocho.App.Register;
using Keikocho.App.Shared;
using Keikocho.Core.Kernel;
using Keikocho.Store.People;

namespace Keikocho.App.Club.Adults;

/// <summary>Takes adults and leaders: a new one, the dates of a duty, the end of one.</summary>
internal static class AdultPosts
{
    private const string Part = "adults-part";
    private const int Adulthood = 18;
    private const int OldestYears = 110;

    /// <summary>What the fields of one duty begin with.</summary>
    public static string Key(Guid duty) => $"duty-{duty:N}-";

    /// <summary>With a capital, for the head of a line.</summary>
    public static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    public static async Task<IResult> AddAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        var given = sent.Name("adult-given", "The first name is missing. Type what the adult is called.");
        var family = sent.NameIfAny("adult-family");
        if (!Enum.TryParse<DutyKind>(sent.Text("adult-duty"), out var kind) || !Enum.IsDefined(kind)) sent.Refuse("adult-duty", "Choose the duty.");
        var born = sent.DayIfAny("adult-born", club.Today.AddYears(-OldestYears));
        CheckBirth(club, sent, born, kind);
        var vetted = sent.DayIfAny("adult-vetted");
        var aid = sent.DayIfAny("adult-aid");
        if (sent.Id("adult-person") is not { } person || person.Version != 7) return SentForm.Gone(Part);
        if (!sent.IsTaken) return sent.Again();

        var added = await club.House.People.AddDutyAsync(
            new NewDuty(person, given, family, born, kind, vetted, aid), club.Today, club.Acting?.Id, club.Device, cancel);
        return Redirects.SeeOther(ClubAddress.At(Part), added
            ? new FlashMessage($"{given} is on the list as {DutyWords.Of(kind)}.", Counts(kind, vetted, club.Today))
            : new FlashMessage($"{given} was on the list already.", "A form sent twice adds nobody twice."));
    }

    public static async Task<IResult> ChangeAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        if (Find(club, sent) is not { } duty) return SentForm.Gone(Part);
        var key = Key(duty.Id);
        var vetted = sent.DayIfAny(key + "vetted");
        var aid = sent.DayIfAny(key + "aid");
        if (!sent.IsTaken) return sent.Again();
        return await club.House.People.ChangeDutyAsync(duty.Id, vetted, aid, duty.To, club.Acting?.Id, club.Device, cancel)
            ? Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage($"The dates of {club.Book.Person(duty.PersonId)!.FullName} are saved.", Counts(duty.Kind, vetted, club.Today)))
            : SentForm.Gone(Part);
    }

    public static async Task<IResult> EndAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        if (Find(club, sent) is not { } duty) return SentForm.Gone(Part);
        var field = Key(duty.Id) + "last";
        var name = club.Book.Person(duty.PersonId)!.FullName;
        var last = sent.Day(field, "Type the last day of the duty.");
        if (last < duty.From) sent.Refuse(field, $"The duty only begins on {duty.From.Full()}. Type that day or a later one.");
        else if (duty.Kind == DutyKind.HeadInstructor && !club.Book.Duties.Any(d => d.Id != duty.Id && d.Kind == DutyKind.HeadInstructor && (d.To is null || d.To > last)))
            sent.Refuse(field, $"{name} is the only head instructor. Add the next one first.");
        if (!sent.IsTaken) return sent.Again();
        return await club.House.People.ChangeDutyAsync(duty.Id, duty.VettedUntil, duty.FirstAidUntil, last, club.Acting?.Id, club.Device, cancel)
            ? Redirects.SeeOther(ClubAddress.At(Part), new FlashMessage($"{name}: last day as {DutyWords.Of(duty.Kind)} is {last!.Value.Full()}.", "Marks that were made keep the name."))
            : SentForm.Gone(Part);
    }

    public static async Task<IResult> ConfirmFallsAsync(OpenClub club, IFormCollection fields, CancellationToken cancel)
    {
        var sent = new SentForm(fields);
        if (Find(club, sent) is not { } duty || club.Book.Person(duty.PersonId) is not { } person) return SentForm.Gone(Part);
        var field = Key(duty.Id) + "falls";
        var may = sent.Text(field) == "yes";
        if (sent.Text(field) is not ("yes" or "no")) return SentForm.Gone(Part);
        if (may && duty.Kind == DutyKind.JuniorLeader) sent.Refuse(field, $"{person.FullName} is a junior leader. What a junior leader marks is a suggestion.");
        else if (may && !SignOff.IsAdult(person.Born, person.SeenAdult, club.Today)) sent.Refuse(field, person.Born is { } born && born <= club.Today
            ? $"{person.FullName} is {Age.On(born, club.Today, LeapBirthday.FirstMarch)} today. Only from {Adulthood} on may somebody confirm falls."
            : $"No birth date of {person.FullName} is held. Only from {Adulthood} on may somebody confirm falls.");
        if (!sent.IsTaken) return sent.Again();
        return await club.House.People.LetConfirmFallsAsync(duty.Id, may, club.Today, club.Acting?.Id, club.Device, cancel)
            ? Redirects.SeeOther(ClubAddress.At(Part), may
                ? new FlashMessage($"{person.FullName} may confirm falls from now on.", "What was a suggestion before waits until somebody confirms it.")
                : new FlashMessage($"{person.FullName} may not confirm falls any more.", "What was confirmed before stays so; new marks are suggestions."))
            : SentForm.Gone(Part);
    }

    private static DutyRow? Find(OpenClub club, SentForm sent) => sent.Id("duty") is { } id ? club.Book.Duties.FirstOrDefault(d => d.Id == id) : null;

    private static void CheckBirth(OpenClub club, SentForm sent, DateOnly? born, DutyKind kind)
    {
        if (born is not { } day) return;
        if (day > club.Today)
        {
            sent.Refuse("adult-born", $"{day.Full()} is still to come. Type the birth date.");
            return;
        }

        // 29 February: the later birthday, so that nobody is an adult a day too soon.
        var age = Age.On(day, club.Today, LeapBirthday.FirstMarch);
        if (age < Adulthood && kind != DutyKind.JuniorLeader)
            sent.Refuse("adult-born", $"Born on {day.Full()} is {age} today. Under 18 the duty is junior leader, who is never counted as an adult.");
        else if (age >= Adulthood && kind == DutyKind.JuniorLeader)
            sent.Refuse("adult-born", $"Born on {day.Full()} is {age} today. A junior leader is under 18; choose assistant or another duty.");
    }

    private static string Counts(DutyKind kind, DateOnly? vetted, DateOnly today) => kind switch
    {
        DutyKind.JuniorLeader => "A junior leader helps and is never counted as an adult.",
        _ when vetted is null || vetted < today => "Not counted among the adults until vetting holds.",
        _ => "Counted among the adults when marked present.",
    };
}
