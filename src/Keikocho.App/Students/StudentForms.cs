using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Kernel;
using Keikocho.Store.People;
using Keikocho.Store.Promotion;

namespace Keikocho.App.Students;

/// <summary>Name and birth date as the form sends them.</summary>
public sealed class DetailsFields
{
    /// <summary>First name.</summary>
    public string? Given { get; set; }
    /// <summary>Family name.</summary>
    public string? Family { get; set; }
    /// <summary>What is called on the mat.</summary>
    public string? Called { get; set; }
    /// <summary>Birth date.</summary>
    public string? Born { get; set; }
    /// <summary>The programme whose page it stands on.</summary>
    public Guid? Programme { get; set; }

    /// <summary>What stands in the form at first.</summary>
    public static DetailsFields Of(StudentView view) => new()
    {
        Given = view.Person.Given,
        Family = view.Person.Family,
        Called = view.Person.Called,
        Born = view.Person.Born?.Iso(),
    };

    /// <summary>Reads them.</summary>
    public (PersonDetails? Details, List<FieldError> Errors) Read(DateOnly today)
    {
        var errors = new List<FieldError>();
        if (string.IsNullOrWhiteSpace(Given)) errors.Add(new("given", "The first name is missing. Type what the child is called."));
        DateOnly? born = null;
        if (!string.IsNullOrWhiteSpace(Born))
        {
            born = Typed.Date(Born.Trim());
            if (born is null) errors.Add(new("born", $"“{Born.Trim()}” is not a day of the calendar. Write year, month and day, such as 2016-02-29."));
            else if (born > today) errors.Add(new("born", $"{born.Value.Full()} is still to come. Check the year."));
            else if (born < today.AddYears(-110)) errors.Add(new("born", $"{born.Value.Full()} is more than 110 years ago. Check the year."));
        }

        return errors.Count > 0 ? (null, errors) : (new PersonDetails(Given!.Trim(), Family, Called, born), errors);
    }
}

/// <summary>A contact as the form sends it.</summary>
public sealed class ContactFields
{
    /// <summary>The contact; made with the form for a new one.</summary>
    public Guid? Contact { get; set; }
    /// <summary>Name.</summary>
    public string? ContactName { get; set; }
    /// <summary>Mother, father, carer ...</summary>
    public string? Relation { get; set; }
    /// <summary>Telephone.</summary>
    public string? Phone { get; set; }
    /// <summary>"yes" where this contact may not collect.</summary>
    public string? Barred { get; set; }
    /// <summary>The programme whose page it stands on.</summary>
    public Guid? Programme { get; set; }

    /// <summary>What stands in the form at first: a contact that is changed, or an empty one.</summary>
    public static ContactFields Of(OpenContact? contact, Guid fresh) => contact is null
        ? new ContactFields { Contact = fresh }
        : new ContactFields { Contact = contact.Id, ContactName = contact.Name, Relation = contact.Relation, Phone = contact.Phone, Barred = contact.Barred ? "yes" : null };

    /// <summary>Reads them.</summary>
    public (ContactDetails? Details, List<FieldError> Errors) Read(Guid person)
    {
        var errors = new List<FieldError>();
        if (string.IsNullOrWhiteSpace(ContactName) && string.IsNullOrWhiteSpace(Phone))
            errors.Add(new("contactName", "A contact needs a name or a telephone number."));
        if (!string.IsNullOrWhiteSpace(Phone) && !Phone.Any(char.IsDigit))
            errors.Add(new("phone", $"“{Phone.Trim()}” has no digit in it. Type the telephone number, or leave it empty."));
        return errors.Count > 0 || Contact is not { } id
            ? (null, errors)
            : (new ContactDetails(id, person, ContactName, Relation, Phone, Barred == "yes"), errors);
    }
}

/// <summary>A rank as the form sends it.</summary>
public sealed class RankFields
{
    /// <summary>Which.</summary>
    public Guid? Rank { get; set; }
    /// <summary>The day.</summary>
    public string? RankOn { get; set; }
    /// <summary>"here" or "elsewhere".</summary>
    public string? Source { get; set; }
    /// <summary>The award that it takes the place of; empty for none.</summary>
    public string? Replaces { get; set; }
    /// <summary>The programme whose page it stands on.</summary>
    public Guid? Programme { get; set; }

    /// <summary>Reads them.</summary>
    public (NewRank? Rank, List<FieldError> Errors) Read(StudentView view, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(view);
        var errors = new List<FieldError>();
        if (Rank is not { } rank || view.Ranks.All(r => r.Id != rank)) errors.Add(new("rank", "Choose the rank."));
        var on = Typed.Date(RankOn?.Trim());
        if (string.IsNullOrWhiteSpace(RankOn)) errors.Add(new("rankOn", "The day is missing. Lessons count from the day after it."));
        else if (on is null) errors.Add(new("rankOn", $"“{RankOn.Trim()}” is not a day of the calendar. Write year, month and day, such as 2024-02-29."));
        else if (on > today) errors.Add(new("rankOn", $"{on.Value.Full()} is still to come. A rank is recorded once it is given."));
        else if (on < view.Person.Born) errors.Add(new("rankOn", $"{on.Value.Full()} is before the birth date. Check the year."));
        return errors.Count > 0
            ? (null, errors)
            : (new NewRank(view.Person.Id, Rank!.Value, on, Source == "elsewhere" ? AwardSource.Transferred : AwardSource.Promoted, Guid.TryParse(Replaces, out var wrong) ? wrong : null), errors);
    }
}

/// <summary>Taking a child off the register, as the form sends it.</summary>
public sealed class OffFields
{
    /// <summary>Last day on the register.</summary>
    public string? Last { get; set; }
    /// <summary>"on" puts the child back on instead.</summary>
    public string? Back { get; set; }
    /// <summary>The programme.</summary>
    public Guid? Programme { get; set; }

    /// <summary>Reads the last day.</summary>
    public (DateOnly? Last, List<FieldError> Errors) Read(DateOnly from, DateOnly today)
    {
        var errors = new List<FieldError>();
        var last = Typed.Date(Last?.Trim());
        if (last is null) errors.Add(new("last", $"“{Last?.Trim()}” is not a day of the calendar. Write year, month and day, such as 2026-07-12."));
        else if (last < from) errors.Add(new("last", $"{last.Value.Full()} is before the first day on this register, {from.Full()}."));
        else if (last > today.AddYears(1)) errors.Add(new("last", $"{last.Value.Full()} is more than a year ahead. Check the year."));
        return errors.Count > 0 ? (null, errors) : (last, errors);
    }
}

/// <summary>A change of end as the form sends it.</summary>
public sealed class EndFields
{
    /// <summary>"beginners" or "main".</summary>
    public string? End { get; set; }
    /// <summary>Only this lesson; empty for from today on.</summary>
    public string? Lesson { get; set; }
    /// <summary>The programme.</summary>
    public Guid? Programme { get; set; }

    /// <summary>The end; null when nothing known was sent.</summary>
    public MatEnd? Read() => End switch { "beginners" => MatEnd.Beginners, "main" => MatEnd.Main, _ => null };
}
