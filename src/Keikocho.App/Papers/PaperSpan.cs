using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;

namespace Keikocho.App.Papers;

/// <summary>Which days a blank register is for.</summary>
public static class PaperSpan
{
    private const int MostDays = 370;

    /// <summary>The whole month of a day.</summary>
    public static (DateOnly From, DateOnly To) MonthOf(DateOnly day)
    {
        var first = new DateOnly(day.Year, day.Month, 1);
        return (first, first.AddMonths(1).AddDays(-1));
    }

    /// <summary>Reads the span that was asked for: this month, this term, or two days. This term where nothing was said and there is one.</summary>
    public static ((DateOnly From, DateOnly To)? Span, FieldError? Error) Read(ClubBook book, DateOnly today, string? span, string? from, string? to)
    {
        ArgumentNullException.ThrowIfNull(book);
        var term = book.TermOn(today);
        switch (span)
        {
            case "month":
                return (MonthOf(today), null);
            case "term" when term is null:
                return (null, new FieldError("span", $"No term is on {today.Full()}. Choose this month, or two days."));
            case "term":
                return ((term.From, term.To), null);
            case null or "" when string.IsNullOrEmpty(from) && string.IsNullOrEmpty(to):
                return (term is null ? MonthOf(today) : (term.From, term.To), null);
        }

        if (Typed.Date(from) is not { } first) return (null, new FieldError("from", "Type the first day."));
        if (Typed.Date(to) is not { } last) return (null, new FieldError("to", "Type the last day."));
        if (last < first) return (null, new FieldError("to", $"{last.Full()} is before {first.Full()}. Type the last day."));
        if (last.DayNumber - first.DayNumber > MostDays) return (null, new FieldError("to", "That is longer than a year. Type the last day."));
        return ((first, last), null);
    }
}
