using System.Globalization;

namespace Keikocho.Core.Safety;

/// <summary>The club's rule out of its stored settings.</summary>
public static class KnockRuleOf
{
    /// <summary>The rule.</summary>
    /// <param name="setting">The text of a setting by its key; null where the club has not set it.</param>
    public static KnockRule Settings(Func<string, string?> setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        var proposed = new KnockRule();
        int Whole(string key, int usual) => setting(key) is { } text ? int.Parse(text, CultureInfo.InvariantCulture) : usual;
        return new KnockRule(
            setting("knock.protocol") ?? proposed.Protocol,
            setting("knock.alsoProtocol") ?? proposed.AlsoProtocol,
            Whole("knock.symptomFreeDays", proposed.SymptomFreeDays),
            Whole("knock.contestDay", proposed.ContestDay),
            setting("knock.fallsWaitForContestDay") is { } wait ? wait == "yes" : proposed.FallsWaitForContestDay,
            Whole("knock.hoursPerStage", proposed.HoursPerStage),
            Whole("knock.doctorAfterDays", proposed.DoctorAfterDays));
    }
}
