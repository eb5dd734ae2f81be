namespace Keikocho.Core.Safety;

/// <summary>A published protocol for the return after a knock to the head, as days and hours.</summary>
/// <param name="Key">Stored name.</param>
/// <param name="Name">As a club reads it, with its date.</param>
/// <param name="Source">Where it stands and how we know it.</param>
/// <param name="RestDays">Nothing but rest until this day; the day of the knock is day 0.</param>
/// <param name="SymptomFreeDays">Days without any symptom before training with a risk of contact; 0 where it names none.</param>
/// <param name="ContactDay">No contact before this day; 0 where it names none.</param>
/// <param name="ContestDay">No test or contest before this day; 0 where it names none.</param>
/// <param name="HoursPerStage">The least time at each stage.</param>
/// <param name="DoctorAfterDays">Symptoms still there on this day: a doctor; 0 where it names none.</param>
public sealed record KnockProtocol(
    string Key, string Name, string Source, int RestDays, int SymptomFreeDays, int ContactDay, int ContestDay, int HoursPerStage, int DoctorAfterDays);

/// <summary>The protocols that a club may choose from. None takes the place of the rule of its own national body.</summary>
public static class KnockProtocols
{
    /// <summary>No protocol.</summary>
    public const string None = "none";

    /// <summary>The proposed one.</summary>
    public const string Uk = "uk-2023";

    /// <summary>All of them, in the order to show them.</summary>
    public static IReadOnlyList<KnockProtocol> All { get; } =
    [
        new(Uk, "UK grassroots sport, 2023, updated November 2024: 14 days without symptoms, contest from day 21",
            "UK concussion guidelines for grassroots sport, 2023, updated November 2024 (read in summaries of sports bodies and charities)", 2, 14, 0, 21, 24, 28),
        new("berlin-2016", "Berlin consensus, 2016: six stages of at least 24 hours",
            "Consensus statement on concussion in sport, Berlin 2016, British Journal of Sports Medicine 2017 (read)", 2, 0, 0, 0, 24, 30),
        new("amsterdam-2022", "Amsterdam consensus, 2022: six steps, the last three after symptoms have gone",
            "Consensus statement on concussion in sport, Amsterdam 2022, return to sport (from memory; return to learning read)", 2, 0, 0, 0, 24, 0),
        new("cdc-heads-up", "CDC HEADS UP, United States: six steps of at least 24 hours after two to three days of rest",
            "CDC HEADS UP, six-step return to play (steps 1 to 4, the rule and the 24 hours read; 5 and 6 read in an older text)", 3, 0, 0, 0, 24, 0),
        new("aap", "American Academy of Pediatrics: 48 hours of rest, no more than one step a day",
            "American Academy of Pediatrics on sport-related concussion (read)", 2, 0, 0, 0, 24, 0),
        new("day-21", "A stricter national body: nothing with contact before day 21",
            "common practice of several bodies for under-19s, 21 to 23 days (from memory)", 2, 14, 21, 21, 24, 28),
        new("day-23", "A stricter national body: nothing with contact before day 23",
            "common practice of several bodies for under-19s, 21 to 23 days (from memory)", 2, 14, 23, 23, 24, 28),
    ];

    /// <summary>The keys to choose from; "none" last.</summary>
    public static IReadOnlyList<string> Keys { get; } = [.. All.Select(p => p.Key), None];

    /// <summary>The protocol of a key; null for "none".</summary>
    /// <exception cref="ArgumentException">There is no such protocol.</exception>
    public static KnockProtocol? Of(string key) => key == None ? null
        : All.FirstOrDefault(p => p.Key == key) ?? throw new ArgumentException($"There is no protocol \"{key}\"; choose {string.Join(", ", Keys)}.", nameof(key));
}
