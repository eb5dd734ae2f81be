using System.Globalization;
using Keikocho.Core.Attendance;
using Keikocho.Core.Calendar;
using Keikocho.Core.Club;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Mat;
using Keikocho.Core.Partners;
using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.Club.Settings;

/// <summary>One sum with what a club may set in it.</summary>
/// <param name="Heading">What it answers, in plain words.</param>
/// <param name="Settings">Its settings with the proposed values.</param>
/// <param name="Together">Given a value by key: null, or one sentence on why the values do not go together.</param>
public sealed record SumSettings(string Heading, IReadOnlyList<Setting> Settings, Func<Func<string, string>, string?>? Together = null);

/// <summary>Every setting of every sum that this club's page shows, in the order of the page.</summary>
public static class ClubSettings
{
    /// <summary>The sums.</summary>
    public static IReadOnlyList<SumSettings> Sums { get; } =
    [
        new("Taking the register", AttendanceRules.Settings),
        new("Lessons before a test", ClockRule.Settings),
        new("Back after time away", ReturnRule.Settings, ReturnInOrder),
        new("Falls and who may be thrown", FallGateRule.Settings),
        new("Tonight’s cards", [.. CardRule.Settings, .. LookAtRule.Settings, .. WordsDueRule.Settings]),
        new("After a knock to the head", [.. KnockRule.Settings, WatchFor.EmergencyNumber]),
        new("Care notes and the red folder", RedFolderRule.Settings),
        new("Put forward for a promotion test", ReadinessRule.Settings),
        new("Coming with a rank from elsewhere", TransferRule.Settings),
        new("How often a child comes", PriorRule.Settings),
        new("Leaving the programme for age", AgeOutRule.Settings, SchoolYearEnds),
        new("Adults in the hall", AdultRules.Settings),
        new("The mat plan", MatRules.Settings),
        new("Knocks by activity", KnocksRule.Settings),
        new("Who is slipping away", SlippingRule.Settings),
        new("The leaders’ share", LeadersRule.Settings),
        new("Who works with whom", [.. ActivityLimits.Settings, .. PartnersRule.Settings]),
        new("Falls in one evening", FallsTonight.Settings),
        new("Sizes as they are typed", WeightRule.Settings),
    ];

    /// <summary>The setting of a key with its sum; null when there is none.</summary>
    public static (SumSettings Sum, Setting Setting)? Find(string key)
    {
        foreach (var sum in Sums)
        {
            if (sum.Settings.FirstOrDefault(s => s.Key == key) is { } setting)
                return (sum, setting);
        }

        return null;
    }

    private static string? ReturnInOrder(Func<string, string> value) =>
        Whole(value("return.moreAfterDays")) < Whole(value("return.fallsAfterDays"))
            ? $"The longer list comes after {value("return.moreAfterDays")} days, the falls only after {value("return.fallsAfterDays")}: the falls come first."
            : null;

    // 2026 is a common year: a school year that ends on 29 February would not end in most years.
    private static string? SchoolYearEnds(Func<string, string> value)
    {
        var month = Whole(value("ageOut.schoolYearEndMonth"));
        return Whole(value("ageOut.schoolYearEndDay")) > DateTime.DaysInMonth(2026, month)
            ? $"{CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month)} has no day {value("ageOut.schoolYearEndDay")} in most years."
            : null;
    }

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
