using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Kernel;

namespace Keikocho.App.Club;

/// <summary>What the club's page shows again when a form cannot be taken: all that was typed, and what is wrong with it.</summary>
/// <param name="Typed">Every field by its id.</param>
/// <param name="Errors">In the order of the form.</param>
public sealed record RefusedForm(IReadOnlyDictionary<string, string> Typed, IReadOnlyList<FieldError> Errors);

/// <summary>
/// One of the many small forms of the club's page as it was sent. Reading a field says what is wrong with it; nothing is stored while
/// anything is.
/// </summary>
public sealed class SentForm(IFormCollection fields)
{
    private const int LongestName = 100;
    private static readonly DateOnly Earliest = new(2000, 1, 1);
    private static readonly DateOnly Latest = new(2100, 12, 31);
    private readonly List<FieldError> _errors = [];

    /// <summary>Whether nothing is wrong so far.</summary>
    public bool IsTaken => _errors.Count == 0;

    /// <summary>What is wrong so far.</summary>
    public IReadOnlyList<FieldError> Errors => _errors;

    /// <summary>The names of the fields that begin so.</summary>
    public IEnumerable<string> NamesFrom(string beginning) => fields.Keys.Where(key => key.StartsWith(beginning, StringComparison.Ordinal)).Order(StringComparer.Ordinal);

    /// <summary>The field's text without blanks at its ends; empty when it is missing.</summary>
    public string Text(string id) => fields[id].ToString().Trim();

    /// <summary>Notes what is wrong with a field.</summary>
    public void Refuse(string id, string sentence) => _errors.Add(new FieldError(id, sentence));

    /// <summary>A name that must be there.</summary>
    public string Name(string id, string missing)
    {
        var text = Text(id);
        if (text.Length == 0) Refuse(id, missing);
        else if (text.Length > LongestName) Refuse(id, $"That is longer than {LongestName} characters. Type a shorter one.");
        return text;
    }

    /// <summary>A name that may be missing; null then.</summary>
    public string? NameIfAny(string id)
    {
        var text = Text(id);
        if (text.Length > LongestName) Refuse(id, $"That is longer than {LongestName} characters. Type a shorter one.");
        return text.Length == 0 ? null : text;
    }

    /// <summary>A day that must be there.</summary>
    public DateOnly? Day(string id, string missing)
    {
        if (Text(id).Length > 0) return DayIfAny(id);
        Refuse(id, missing);
        return null;
    }

    /// <summary>A day that may be missing.</summary>
    /// <param name="id">The field.</param>
    /// <param name="earliest">The first day that is taken; the year 2000 unless said otherwise.</param>
    public DateOnly? DayIfAny(string id, DateOnly? earliest = null)
    {
        var first = earliest ?? Earliest;
        if (Text(id).Length == 0) return null;
        if (Typed.Date(Text(id)) is { } day)
        {
            if (day >= first && day <= Latest) return day;
            Refuse(id, $"{day.Full()} is too far away. Type a day from {first.Year} to {Latest.Year}.");
            return null;
        }

        Refuse(id, $"“{Short(Text(id))}” is no date. Type it like 2026-03-03.");
        return null;
    }

    /// <summary>First and last day; both must be there, in their order, and at most <paramref name="mostDays"/> apart.</summary>
    public (DateOnly From, DateOnly To)? Days(string fromId, string toId, int mostDays, string tooLong)
    {
        var from = Day(fromId, "Type the first day.");
        var to = Day(toId, "Type the last day.");
        if (from is not { } first || to is not { } last) return null;
        if (last < first) Refuse(toId, $"{last.Full()} is before {first.Full()}. Type the last day.");
        else if (last.DayNumber - first.DayNumber > mostDays) Refuse(toId, tooLong);
        else return (first, last);
        return null;
    }

    /// <summary>A time of day that must be there.</summary>
    public TimeOnly? Time(string id, string missing)
    {
        if (Text(id).Length > 0) return TimeIfAny(id);
        Refuse(id, missing);
        return null;
    }

    /// <summary>A time of day that may be missing.</summary>
    public TimeOnly? TimeIfAny(string id)
    {
        if (Text(id).Length == 0) return null;
        if (Typed.Time(Text(id)) is { } time) return time;
        Refuse(id, $"“{Short(Text(id))}” is no time. Type it like 17:30.");
        return null;
    }

    /// <summary>A whole number within a range, which may be missing.</summary>
    public int? WholeIfAny(string id, int least, int most, string what)
    {
        if (Text(id).Length == 0) return null;
        if (Typed.Whole(Text(id)) is { } number && number >= least && number <= most) return number;
        Refuse(id, $"{what}: type a whole number from {least} to {most}, or nothing.");
        return null;
    }

    /// <summary>The id of something on the page; null when there is none, which only an old or foreign page sends.</summary>
    public Guid? Id(string id) => Guid.TryParse(Text(id), out var found) ? found : null;

    /// <summary>The club's page with what was typed and what is wrong.</summary>
    public IResult Again() => OnePage.Of<ClubPage>(new Dictionary<string, object?> { [nameof(ClubPage.Refused)] = Kept() });

    /// <summary>What was typed and what is wrong.</summary>
    public RefusedForm Kept() => new(fields.ToDictionary(f => f.Key, f => f.Value.ToString(), StringComparer.Ordinal), Errors);

    /// <summary>Back to the page: what the form spoke of is not there any more.</summary>
    public static IResult Gone(string part) => Redirects.SeeOther(
        ClubAddress.At(part), new FlashMessage("Nothing was changed.", "What that form spoke of is not in this club’s file any more.", NeedsALook: true));

    private static string Short(string text) => text.Length <= 40 ? text : text[..40] + "…";
}
