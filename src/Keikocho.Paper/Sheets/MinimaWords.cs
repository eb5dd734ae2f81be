using System.Globalization;
using Keikocho.Core.Syllabus;

namespace Keikocho.Paper.Sheets;

/// <summary>Least time and age for a rank, as sentences to a child.</summary>
public static class MinimaWords
{
    /// <summary>A sentence each; none where nothing is asked. Who examines and what the club may take off is the club's affair and stands on no sheet.</summary>
    /// <param name="minima">The figures.</param>
    /// <param name="firstCourse">The rank is given at the end of the first course: lessons count since the first one.</param>
    /// <param name="onTheWall">For the copy on the wall: figures for other ages too.</param>
    public static IReadOnlyList<string> Of(Minima minima, bool firstCourse, bool onTheWall)
    {
        ArgumentNullException.ThrowIfNull(minima);
        var sentences = new List<string>();
        var since = firstCourse ? "since your first lesson" : minima.CountedOverTwoRanks ? "since the belt before your last one" : "since your last belt";
        if (Time(minima.Lessons, minima.Weeks, minima.Months) is { } time)
            sentences.Add($"You need {time} {since}.");
        if (onTheWall)
        {
            foreach (var other in minima.ForAges ?? [])
            {
                if (Time(other.Lessons ?? minima.Lessons, other.Weeks ?? minima.Weeks, other.Months ?? minima.Months) is { } figures)
                    sentences.Add($"{Upper(Ages(other.Ages))}: {figures}.");
            }
        }

        if (minima.LessonsADay > 0)
            sentences.Add($"At most {Count(minima.LessonsADay, "lesson")} of one day {(minima.LessonsADay == 1 ? "counts" : "count")}.");
        if (minima.ShortestLessonMinutes > 0)
            sentences.Add($"A lesson counts from {Count(minima.ShortestLessonMinutes, "minute")} on.");
        if (minima.Age is { } age)
        {
            sentences.Add(minima.AgeBy == AgeBasis.CalendarYear
                ? string.Create(CultureInfo.InvariantCulture, $"You turn {age} in the year of the test, or are older.")
                : string.Create(CultureInfo.InvariantCulture, $"On the day of the test you are {age} or older."));
        }

        if (onTheWall && minima.FastTrack is { } fast)
            sentences.Add(string.Create(CultureInfo.InvariantCulture, $"Whoever starts at {fast.FromAge} or older may move up by as many as {Count(fast.MostRanks, "rank")} at {(fast.FirstTests == 1 ? "the first test" : $"each of the first {fast.FirstTests} tests")}."));
        return sentences;
    }

    /// <summary>"all ages", "from 8 years", "up to 7 years", "8 to 10 years".</summary>
    internal static string Ages(AgeBand band) => (band.From, band.To) switch
    {
        (null, null) => "all ages",
        ({ } from, null) => $"from {Count(from, "year")}",
        (null, { } to) => $"up to {Count(to, "year")}",
        ({ } from, { } to) => string.Create(CultureInfo.InvariantCulture, $"{from} to {to} years"),
    };

    private static string? Time(int lessons, int weeks, int months)
    {
        var parts = new List<string>();
        if (lessons > 0)
            parts.Add(Count(lessons, "lesson"));
        if (weeks > 0)
            parts.Add(Count(weeks, "full week"));
        if (months > 0)
            parts.Add(Count(months, "full month"));
        return parts.Count switch { 0 => null, 1 => parts[0], _ => string.Join(", ", parts.Take(parts.Count - 1)) + " and " + parts[^1] };
    }

    private static string Upper(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Count(int number, string one) => string.Create(CultureInfo.InvariantCulture, $"{number} {one}{(number == 1 ? "" : "s")}");
}
