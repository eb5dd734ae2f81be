using System.Globalization;
using Keikocho.App.Club;
using Keikocho.App.Evening;
using Keikocho.Store.Calendar;

namespace Keikocho.App.Sightings;

/// <summary>The lessons that something may be entered for.</summary>
public static class LessonChoice
{
    private const int Most = 24;

    /// <summary>The lesson that was asked for, when it is held and not to come; else the last evening, today's from the bow on.</summary>
    public static LessonRow? Of(OpenClub club, Guid? asked)
    {
        ArgumentNullException.ThrowIfNull(club);
        if (asked is { } id) return club.Book.Lesson(id) is { ClosureId: null } lesson && lesson.Date <= club.Today ? lesson : null;
        return club.Book.LessonsOn(club.Today).LastOrDefault(l => l.ClosureId is null && l.Start <= club.Clock.LocalTime) ?? EveningLesson.Around(club.Book, club.Today).Last;
    }

    /// <summary>The lessons of late, newest first, for a list to choose from; the chosen one is always in it.</summary>
    public static IReadOnlyList<(string Value, string Words)> List(OpenClub club, LessonRow? chosen, Guid? programme = null)
    {
        ArgumentNullException.ThrowIfNull(club);
        var book = club.Book;
        var several = programme is null && book.Programmes.Length > 1;
        var late = EveningLesson.Back(book, club.Today).SelectMany(day => book.LessonsOn(day).Reverse())
            .Where(l => l.ClosureId is null && (programme is null || l.ProgrammeId == programme)).Take(Most).ToList();
        if (chosen is not null && late.All(l => l.Id != chosen.Id)) late.Add(chosen);
        return [.. late.Select(l => (l.Id.ToString("D"), $"{l.Date.ToString("ddd d MMM yyyy", CultureInfo.InvariantCulture)}{(several ? $", {book.Programme(l.ProgrammeId)!.Name}" : "")}"))];
    }
}
