using System.Globalization;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>Days, counts and items as they are said of one child; no "he" or "she" is ever needed.</summary>
internal static class ReadinessPhrases
{
    private const int MostDays = 4;
    private static readonly string[] Numbers = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

    /// <summary>"24 November"; with its year where that is far from <paramref name="near"/>.</summary>
    public static string Day(DateOnly day, DateOnly near) =>
        Math.Abs(day.DayNumber - near.DayNumber) <= 300 ? day.ToString("d MMMM", CultureInfo.InvariantCulture) : day.Full();

    /// <summary>"29 September and 13 October"; "10, 17 and 24 November, 1 December".</summary>
    public static string Days(IReadOnlyList<DateOnly> days, DateOnly near)
    {
        var months = new List<string>();
        var longest = 0;
        for (var i = 0; i < days.Count;)
        {
            var j = i + 1;
            while (j < days.Count && (days[j].Year, days[j].Month) == (days[i].Year, days[i].Month))
                j++;
            var last = Day(days[j - 1], near);
            longest = Math.Max(longest, j - i);
            months.Add(j - i == 1
                ? last
                : Words.List([.. days.Skip(i).Take(j - i - 1).Select(d => d.Day.ToString(CultureInfo.InvariantCulture)), last]));
            i = j;
        }

        return longest > 1 ? string.Join(", ", months) : Words.List(months);
    }

    /// <summary>Falls are seen at every lesson: the latest few say enough.</summary>
    public static IReadOnlyList<DateOnly> Latest(IReadOnlyList<DateOnly> days) => days.Count <= MostDays ? days : [.. days.TakeLast(MostDays)];

    /// <summary>"on 5 May 2026 and 7 May 2026"; of many "on 14 evenings, the latest on ...".</summary>
    public static string AllDays(IReadOnlyList<DateOnly> days)
    {
        var latest = Words.List([.. Latest(days).Select(d => d.Full())]);
        return days.Count <= MostDays ? $"on {latest}" : $"on {days.Count.ToString(CultureInfo.InvariantCulture)} evenings, the latest on {latest}";
    }

    /// <summary>"to the left", "to the right".</summary>
    public static string To(FallSide side) => side == FallSide.Left ? "to the left" : "to the right";

    /// <summary>"two evenings".</summary>
    public static string Evenings(int count) => $"{Number(count)} {(count == 1 ? "evening" : "evenings")}";

    /// <summary>"once", "twice", "3 times".</summary>
    public static string Times(int count) => count switch { 1 => "once", 2 => "twice", _ => $"{count.ToString(CultureInfo.InvariantCulture)} times" };

    /// <summary>"2 of the 4 lessons left", "all 4 lessons left", "both lessons left", "the 1 lesson left".</summary>
    public static string OfLeft(int needed, int left, string one) => (needed, left) switch
    {
        (1, 1) => $"the 1 {one} left",
        (2, 2) => $"both {one}s left",
        _ when needed == left => $"all {Words.Count(left, one)} left",
        _ => $"{needed.ToString(CultureInfo.InvariantCulture)} of the {Words.Count(left, one)} left",
    };

    /// <summary>Words and questions are answered, falls are clean, everything else is good.</summary>
    public static string Seen(ItemKind kind) => kind switch
    {
        ItemKind.Fall => "seen clean",
        ItemKind.Word or ItemKind.Question => "answered right",
        _ => "seen good",
    };

    /// <summary>What is still missing of an item, after its name: "good once, on 3 November: once more".</summary>
    public static string Missing(ItemKind kind, int missing, IReadOnlyList<DateOnly> goodOn, bool isStale, DateOnly near)
    {
        var word = kind switch { ItemKind.Fall => "clean", ItemKind.Word or ItemKind.Question => "right", _ => "good" };
        var more = missing == 1 ? "once more" : $"{Evenings(missing)} more";
        if (goodOn.Count == 0)
            return kind is ItemKind.Word or ItemKind.Question ? $"not yet answered: {Evenings(missing)}" : $"not yet {Seen(kind)}: {Evenings(missing)}";
        return isStale
            ? $"{word} last on {Day(goodOn[^1], near)}, too long before the test: {more}"
            : $"{word} {Times(goodOn.Count)}, on {Days(goodOn, near)}: {more}";
    }

    private static string Number(int count) => count < Numbers.Length ? Numbers[count] : count.ToString(CultureInfo.InvariantCulture);
}
