namespace Keikocho.Paper.Knocks;

/// <summary>All that a knock slip shows: facts about one child, for whoever fetches it.</summary>
/// <param name="Club">Name of the club.</param>
/// <param name="Child">The child's name as the family knows it.</param>
/// <param name="PrintedOn">Today.</param>
/// <param name="On">The day of the knock.</param>
/// <param name="When">The lesson and when it was marked, in words.</param>
/// <param name="Activity">What was going on, in words.</param>
/// <param name="Seen">What was seen, a line each; empty where nobody has written it down: then there is room for a pen.</param>
/// <param name="Done">What was done, a line each.</param>
/// <param name="Signs">What to watch for.</param>
/// <param name="EmergencyNumber">The number to ring.</param>
/// <param name="EarliestFalls">The earliest day of falls and contact as it is known now.</param>
/// <param name="SymptomsFreeFrom">The first day without symptoms that it counts from; null where none is recorded: then it is the earliest that there can be.</param>
/// <param name="SymptomFreeDays">Days without symptoms that are asked.</param>
/// <param name="SpeakTo">Whom to ask.</param>
public sealed record KnockSlipContent(
    string Club,
    string Child,
    DateOnly PrintedOn,
    DateOnly On,
    string When,
    string Activity,
    IReadOnlyList<string> Seen,
    IReadOnlyList<string> Done,
    IReadOnlyList<string> Signs,
    string EmergencyNumber,
    DateOnly EarliestFalls,
    DateOnly? SymptomsFreeFrom,
    int SymptomFreeDays,
    string SpeakTo);
