using System.Globalization;
using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Calendar;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;

namespace Keikocho.App.Start;

/// <summary>The first evening's form as it was sent.</summary>
public sealed class StartForm
{
    /// <summary>Name of the club.</summary>
    public string? Club { get; set; }
    /// <summary>First name of the head instructor.</summary>
    public string? Given { get; set; }
    /// <summary>Family name of the head instructor.</summary>
    public string? Family { get; set; }
    /// <summary>Name of the programme.</summary>
    public string? Programme { get; set; }
    /// <summary>Time zone.</summary>
    public string? Zone { get; set; }
    /// <summary>"a4" or "letter".</summary>
    public string? Paper { get; set; }
    /// <summary>First weekday, or empty.</summary>
    public string? Weekday1 { get; set; }
    /// <summary>Start of the first evening.</summary>
    public string? From1 { get; set; }
    /// <summary>End of the first evening.</summary>
    public string? To1 { get; set; }
    /// <summary>Second weekday, or empty.</summary>
    public string? Weekday2 { get; set; }
    /// <summary>Start of the second evening.</summary>
    public string? From2 { get; set; }
    /// <summary>End of the second evening.</summary>
    public string? To2 { get; set; }
    /// <summary>Name of the term.</summary>
    public string? Term { get; set; }
    /// <summary>First day of the term.</summary>
    public string? TermFrom { get; set; }
    /// <summary>Last day of the term.</summary>
    public string? TermTo { get; set; }

    internal string? Weekday(int n) => n == 1 ? Weekday1 : Weekday2;
    internal string? From(int n) => n == 1 ? From1 : From2;
    internal string? To(int n) => n == 1 ? To1 : To2;

    /// <summary>Reads what was typed; the errors in the order of the page, none when all is well.</summary>
    internal (StartAnswers? Answers, IReadOnlyList<FieldError> Errors) Read()
    {
        var errors = new List<FieldError>();
        if (string.IsNullOrWhiteSpace(Club)) errors.Add(new("club", "The club has no name yet. Type it as it stands on your papers."));
        if (string.IsNullOrWhiteSpace(Given)) errors.Add(new("given", "Your first name is missing. It stands beside every mark you make."));
        if (string.IsNullOrWhiteSpace(Programme)) errors.Add(new("programme", "The programme has no name. “Juniors” will do."));
        if (Zone is null || !ClubClock.Knows(Zone)) errors.Add(new("zone", "Choose the time zone of the hall."));
        var hours = new List<(DayOfWeek, LessonTimes)>();
        for (var n = 1; n <= 2; n++)
        {
            if (string.IsNullOrEmpty(Weekday(n))) continue;
            if (!Enum.TryParse<DayOfWeek>(Weekday(n), out var day)) errors.Add(new($"weekday{n}", "That is no day of the week. Choose one from the list."));
            else if (Typed.Time(From(n)) is not { } from) errors.Add(new($"from{n}", "Type the time of the bow, for example 17:30."));
            else if (Typed.Time(To(n)) is not { } to) errors.Add(new($"to{n}", "Type the time of the bow out, for example 18:45."));
            else if (to < from || to - from < TimeSpan.FromMinutes(15)) errors.Add(new($"to{n}", $"{to.Plain()} is not at least a quarter of an hour after {from.Plain()}. Type the time of the bow out."));
            else if (n == 2 && Weekday2 == Weekday1 && From2 == From1) errors.Add(new("weekday2", "The second evening is the same as the first. Choose another day, or none."));
            else hours.Add((day, UsualTimes.Of(from, to)));
        }

        (string, DateOnly, DateOnly)? term = null;
        if (Typed.Date(TermFrom) is not { } first) errors.Add(new("termFrom", "Type the first day of the term."));
        else if (Typed.Date(TermTo) is not { } last) errors.Add(new("termTo", "Type the last day of the term."));
        else if (last < first) errors.Add(new("termTo", $"{last.Full()} is before {first.Full()}. Type the last day of the term."));
        else if (last > first.AddDays(370)) errors.Add(new("termTo", "That term is longer than a year. Type the last day of one term."));
        else term = (string.IsNullOrWhiteSpace(Term) ? first.Year.ToString(CultureInfo.InvariantCulture) : Term.Trim(), first, last);
        return errors.Count > 0 ? (null, errors) : (new StartAnswers(hours, term!.Value), errors);
    }
}

/// <summary>The read answers that are more than text.</summary>
internal sealed record StartAnswers(IReadOnlyList<(DayOfWeek Weekday, LessonTimes Times)> Hours, (string Name, DateOnly From, DateOnly To) Term);
