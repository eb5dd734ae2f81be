using Keikocho.Core.Kernel;

namespace Keikocho.Core.Calendar;

/// <summary>Judges laid lessons by asking of every day and every weekly lesson whether it is there exactly once.</summary>
public static class LayLessonsCheck
{
    /// <summary>What is wrong with <paramref name="laid"/>, a sentence each; empty when it is right.</summary>
    public static IReadOnlyList<string> Objections(
        DateOnly from, DateOnly to, IReadOnlyList<WeeklyLesson> weekly, IReadOnlyList<Closure> closures, IReadOnlyList<LaidLesson> laid)
    {
        ArgumentNullException.ThrowIfNull(weekly);
        ArgumentNullException.ThrowIfNull(closures);
        ArgumentNullException.ThrowIfNull(laid);
        var objections = new List<string>();
        var expected = 0;
        foreach (var lesson in weekly)
        {
            var day = from.AddDays(((int)lesson.Weekday - (int)from.DayOfWeek + 7) % 7);
            for (; day <= to; day = day.AddDays(7))
            {
                expected++;
                var there = laid.Where(l => l.Date == day && l.Programme == lesson.Programme && l.Times == lesson.Times).ToArray();
                if (there.Length != 1)
                    objections.Add($"The {lesson.Programme} lesson of {day.Full()} is there {there.Length} times.");
                var names = closures.Where(c => c.Covers(day, lesson.Programme)).Select(c => c.Name).ToArray();
                if (there.Any(l => l.Closure is null ? names.Length > 0 : !names.Contains(l.Closure)))
                    objections.Add($"The closure of {day.Full()} is wrong.");
            }
        }

        if (expected != laid.Count)
            objections.Add($"{expected} lessons, not {laid.Count}.");
        for (var i = 1; i < laid.Count; i++)
        {
            if ((laid[i].Date, laid[i].Times.Start).CompareTo((laid[i - 1].Date, laid[i - 1].Times.Start)) < 0)
                objections.Add($"The lesson of {laid[i].Date.Full()} is out of order.");
        }

        return objections;
    }
}
