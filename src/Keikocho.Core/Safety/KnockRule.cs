using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>
/// The club's rule for the return after a knock to the head. Where a protocol and the club's own figures differ, or two protocols hold, the
/// later date counts; nothing here can be set weaker than what is proposed.
/// </summary>
/// <param name="Protocol">The published protocol that holds.</param>
/// <param name="AlsoProtocol">A second one, such as that of the national body; "none" where one holds.</param>
/// <param name="SymptomFreeDays">Days without any symptom before falls and contact. 14 to 90.</param>
/// <param name="ContestDay">The first day of a test or contest, the day of the knock being day 0. 21 to 120.</param>
/// <param name="FallsWaitForContestDay">Falls and contact wait for the contest day too.</param>
/// <param name="HoursPerStage">The least time at each stage. 24 to 96.</param>
/// <param name="DoctorAfterDays">Symptoms still there on this day: a doctor. 1 to 28.</param>
public sealed record KnockRule(
    string Protocol = KnockProtocols.Uk,
    string AlsoProtocol = KnockProtocols.None,
    int SymptomFreeDays = 14,
    int ContestDay = 21,
    bool FallsWaitForContestDay = true,
    int HoursPerStage = 24,
    int DoctorAfterDays = 28)
{
    private const string UkSource = "UK concussion guidelines for grassroots sport, 2023, updated November 2024 (read in summaries); your national body’s own rule comes first";

    private static readonly ChoiceSetting Chosen = new(
        "knock.protocol", "The published protocol after a knock to the head", KnockProtocols.Uk, KnockProtocols.Keys, UkSource);

    private static readonly ChoiceSetting Second = new(
        "knock.alsoProtocol", "A second protocol that holds too; the later date counts", KnockProtocols.None, KnockProtocols.Keys, Setting.Ours);

    private static readonly WholeNumberSetting Free = new(
        "knock.symptomFreeDays", "Days without any symptom before falls and contact", 14, "days", 14, 90, UkSource);

    private static readonly WholeNumberSetting Contest = new(
        "knock.contestDay", "First day of a test or contest; the day of the knock is day 0", 21, "days", 21, 120, UkSource);

    private static readonly YesNoSetting Wait = new(
        "knock.fallsWaitForContestDay", "Falls and contact wait for that day too", true, "the club’s stricter rule; ours, no source");

    private static readonly WholeNumberSetting Hours = new(
        "knock.hoursPerStage", "The least time at each stage", 24, "hours", 24, 96, "all published protocols: 24 hours at least (read)");

    private static readonly WholeNumberSetting Doctor = new(
        "knock.doctorAfterDays", "Symptoms still there after so many days: see a doctor", 28, "days", 1, 28, UkSource);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Chosen, Second, Free, Contest, Wait, Hours, Doctor];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() =>
    [
        Chosen.Use(Protocol), Second.Use(AlsoProtocol), Free.Use(SymptomFreeDays), Contest.Use(ContestDay), Wait.Use(FallsWaitForContestDay),
        Hours.Use(HoursPerStage), Doctor.Use(DoctorAfterDays),
    ];

    /// <summary>The published protocols that hold: none, one or two.</summary>
    public IReadOnlyList<KnockProtocol> Holding() =>
        [.. new[] { KnockProtocols.Of(Protocol), KnockProtocols.Of(AlsoProtocol) }.OfType<KnockProtocol>().Distinct()];

    internal void Guard()
    {
        Free.Guard(SymptomFreeDays, nameof(SymptomFreeDays));
        Contest.Guard(ContestDay, nameof(ContestDay));
        Hours.Guard(HoursPerStage, nameof(HoursPerStage));
        Doctor.Guard(DoctorAfterDays, nameof(DoctorAfterDays));
        _ = Holding();
    }
}
