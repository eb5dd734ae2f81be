using Keikocho.App.Shared;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Safety;

namespace Keikocho.App.Students;

/// <summary>Stand-downs as forms write and read them.</summary>
public static class StandDownForms
{
    /// <summary>What may be forbidden, for a list to choose from.</summary>
    public static IReadOnlyList<(string Value, string Words)> Scopes { get; } =
    [
        ("no-falls", "No falls: is not thrown; throws, holds and words go on"),
        ("no-contact", "No contact with a partner"),
        ("off-the-mat", "Off the mat"),
        ("spare-the-neck", "Nothing that loads the neck"),
    ];

    /// <summary>The scope of a value; null for none.</summary>
    public static StandDownScope? Scope(string? value) => value switch
    {
        "no-falls" => StandDownScope.NoFalls,
        "no-contact" => StandDownScope.NoContact,
        "off-the-mat" => StandDownScope.OffTheMat,
        "spare-the-neck" => StandDownScope.SpareTheNeck,
        _ => null,
    };

    /// <summary>A day that may be missing, within a few years of today.</summary>
    public static DateOnly? Day(string? typed, string field, DateOnly today, List<FieldError> errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        if (string.IsNullOrWhiteSpace(typed)) return null;
        var text = typed.Trim();
        if (Typed.Date(text) is not { } day)
        {
            errors.Add(new FieldError(field, $"“{(text.Length <= 40 ? text : text[..40] + "…")}” is not a day of the calendar. Write year, month and day, such as 2026-03-24."));
            return null;
        }

        if (day > today.AddYears(-5) && day < today.AddYears(5)) return day;
        errors.Add(new FieldError(field, $"{day.Full()} is more than five years away. Check the year."));
        return null;
    }

    /// <summary>What came of it, in a sentence.</summary>
    public static FlashMessage Said(StandDownOutcome outcome, string stored) => outcome switch
    {
        StandDownOutcome.Stored => new FlashMessage("Stored.", stored),
        StandDownOutcome.AlreadyStored => new FlashMessage("Nothing was changed.", "It stands so already."),
        StandDownOutcome.Unknown => new FlashMessage("Nothing was changed.", "That stand-down does not stand any more. Look at the list.", NeedsALook: true),
        StandDownOutcome.NoAdult => new FlashMessage("Nothing was changed.", "Only an adult of 18 or over with a duty in the club lifts a stand-down.", NeedsALook: true),
        StandDownOutcome.KnockNotYet => new FlashMessage("Nothing was changed.", "A knock brought that stand-down, and something is missing before it is lifted. Look at the knock.", NeedsALook: true),
        StandDownOutcome.NotSaid => new FlashMessage("Nothing was changed.", "A day or the reason does not fit. Look at the list and try once more.", NeedsALook: true),
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "There is no such outcome."),
    };
}
