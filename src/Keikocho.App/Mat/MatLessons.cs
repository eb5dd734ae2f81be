using Keikocho.App.Club;
using Keikocho.Store.Calendar;
using Keikocho.Store.Hall;

namespace Keikocho.App.Mat;

/// <summary>The lessons of the evening that a tablet has joined.</summary>
internal static class MatLessons
{
    /// <summary>By start; without those that were closed.</summary>
    public static List<LessonRow> Of(OpenClub club, JoinRow join) =>
        [.. club.Book.LessonsOn(join.Date).Where(l => l.ClosureId is null && club.Book.HallOf(l)?.Id == join.HallId)];
}
