using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Calendar;

/// <summary>A lesson that comes round every week.</summary>
/// <param name="Weekday">Its day.</param>
/// <param name="Programme">Key of its programme.</param>
/// <param name="Times">Its hours.</param>
public sealed record WeeklyLesson(DayOfWeek Weekday, string Programme, LessonTimes Times);

/// <summary>One dated lesson as it was laid.</summary>
/// <param name="Date">Its day.</param>
/// <param name="Programme">Key of its programme.</param>
/// <param name="Times">Its hours.</param>
/// <param name="Closure">Name of the closure that takes it out; null when it will be held.</param>
public sealed record LaidLesson(DateOnly Date, string Programme, LessonTimes Times, string? Closure);

/// <summary>Lays the lessons of a term from its weekly hours and closures.</summary>
public static class LayLessons
{
    /// <summary>
    /// Every lesson from <paramref name="from"/> to <paramref name="to"/>, both included, ordered by day, start, programme and end.
    /// Lessons that a closure takes out are there with its name, so that the calendar can show them.
    /// </summary>
    /// <remarks>Where closures overlap, the one that begins first gives the name; then by name.</remarks>
    /// <exception cref="ArgumentException">Days out of order, times out of order, or the same weekly lesson twice.</exception>
    public static IReadOnlyList<LaidLesson> Over(
        DateOnly from, DateOnly to, IReadOnlyList<WeeklyLesson> weekly, IReadOnlyList<Closure> closures)
    {
        ArgumentNullException.ThrowIfNull(weekly);
        ArgumentNullException.ThrowIfNull(closures);
        if (to < from)
            throw new ArgumentException($"The term ends after it starts: {from.Full()} to {to.Full()}.", nameof(to));
        foreach (var closure in closures)
        {
            if (closure.To < closure.From || string.IsNullOrWhiteSpace(closure.Name))
                throw new ArgumentException($"A closure has a name and ends after it starts: {closure.Name} {closure.From.Full()} to {closure.To.Full()}.", nameof(closures));
        }

        foreach (var lesson in weekly)
            lesson.Times.Guard();
        if (weekly.Distinct().Count() != weekly.Count)
            throw new ArgumentException("The same weekly lesson is there twice.", nameof(weekly));

        var named = closures.OrderBy(c => c.From).ThenBy(c => c.Name, StringComparer.Ordinal).ToArray();
        var lessons = new List<LaidLesson>();
        for (var day = from; day <= to; day = day.AddDays(1))
        {
            foreach (var lesson in weekly
                .Where(w => w.Weekday == day.DayOfWeek)
                .OrderBy(w => w.Times.Start).ThenBy(w => w.Programme, StringComparer.Ordinal).ThenBy(w => w.Times.End))
            {
                var closure = named.FirstOrDefault(c => c.Covers(day, lesson.Programme));
                lessons.Add(new LaidLesson(day, lesson.Programme, lesson.Times, closure?.Name));
            }

            if (day == DateOnly.MaxValue)
                break;
        }

        return lessons;
    }
}
