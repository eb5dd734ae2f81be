using Keikocho.Core.Kernel;

namespace Keikocho.Store.People;

/// <summary>What somebody may sign off on a day. Whoever may not can mark all the same: that is a suggestion.</summary>
/// <param name="Sightings">What was seen of items, words and questions.</param>
/// <param name="Falls">Falls, which decide whether a child is thrown.</param>
public readonly record struct SignOff(bool Sightings, bool Falls)
{
    /// <summary>From this age on somebody is an adult.</summary>
    public const int AdultFrom = 18;

    /// <summary>
    /// What the duties of a day allow: an adult of 18 with the right to confirm falls confirms them; an adult who instructs, or assists
    /// with that right, signs off what was seen. A junior leader signs off nothing, however old.
    /// </summary>
    /// <param name="duties">The person's duties; those that do not hold on the day are left out.</param>
    /// <param name="born">Birth date; null where it is not held.</param>
    /// <param name="seenAdult">Where no birth date is held: an adult of the club says that this is one.</param>
    /// <param name="day">The day.</param>
    public static SignOff Of(IEnumerable<DutyRow> duties, DateOnly? born, bool seenAdult, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(duties);
        if (!IsAdult(born, seenAdult, day)) return default;
        var held = duties.Where(d => d.From <= day && (d.To is null || d.To >= day) && (d.Kind is DutyKind.HeadInstructor or DutyKind.Instructor or DutyKind.Assistant)).ToList();
        var falls = held.Any(d => d.MayConfirmFalls);
        return new SignOff(falls || held.Any(d => d.Kind is DutyKind.HeadInstructor or DutyKind.Instructor), falls);
    }

    /// <summary>Eighteen or over on the day; without a birth date, because an adult says so.</summary>
    public static bool IsAdult(DateOnly? born, bool seenAdult, DateOnly day) =>
        born is { } date ? date <= day && Age.On(date, day, LeapBirthday.FirstMarch) >= AdultFrom : seenAdult;
}
