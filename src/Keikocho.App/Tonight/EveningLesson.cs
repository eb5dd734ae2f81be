using Keikocho.Store.Book;
using Keikocho.Store.Calendar;

namespace Keikocho.App.Tonight;

/// <summary>Which lesson the evening's pages show.</summary>
public static class EveningLesson
{
    /// <summary>
    /// The lesson that was asked for; else today's: the one that is on or comes next, or the last one after the bow out. Null when
    /// none was asked for and there is none today.
    /// </summary>
    public static LessonRow? Choose(ClubBook book, DateOnly today, TimeOnly now, Guid? asked)
    {
        ArgumentNullException.ThrowIfNull(book);
        if (asked is { } id) return book.Lesson(id);
        var held = book.LessonsOn(today).Where(l => l.ClosureId is null).ToList();
        return held.FirstOrDefault(l => l.End > now) ?? held.LastOrDefault();
    }

    /// <summary>The lessons of the same evening in the same hall, by start.</summary>
    public static IReadOnlyList<LessonRow> SameEvening(ClubBook book, LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(lesson);
        return book.LessonsOn(lesson.Date).Where(l => l.EveningId == lesson.EveningId).ToList();
    }

    /// <summary>"lesson 9 of 12": its place among the lessons of its term that are held; null outside a term or when it is closed.</summary>
    public static (int Number, int Of)? InTerm(ClubBook book, LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(lesson);
        if (book.TermOn(lesson.Date) is not { } term || lesson.ClosureId is not null) return null;
        var held = book.LessonsOf(lesson.ProgrammeId).Where(l => l.Date >= term.From && l.Date <= term.To && l.ClosureId is null).ToList();
        return (held.FindIndex(l => l.Id == lesson.Id) + 1, held.Count);
    }

    /// <summary>The last lesson before and the next after a day, of any programme.</summary>
    public static (LessonRow? Last, LessonRow? Next) Around(ClubBook book, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(book);
        var all = book.Programmes.SelectMany(p => book.LessonsOf(p.Id)).Where(l => l.ClosureId is null).ToList();
        return (
            all.Where(l => l.Date < today).OrderByDescending(l => l.Date).ThenByDescending(l => l.Start).ThenBy(l => l.Id).FirstOrDefault(),
            all.Where(l => l.Date > today).OrderBy(l => l.Date).ThenBy(l => l.Start).ThenBy(l => l.Id).FirstOrDefault());
    }
}
