using Keikocho.Store.Book;
using Keikocho.Store.Calendar;

namespace Keikocho.App.Evening;

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
        return (
            Back(book, today.AddDays(-1)).Select(day => Held(book, day).OrderByDescending(l => l.Start).ThenBy(l => l.Id).FirstOrDefault()).FirstOrDefault(l => l is not null),
            Ahead(book, today.AddDays(1)).Select(day => Held(book, day).FirstOrDefault()).FirstOrDefault(l => l is not null));
    }

    /// <summary>The days of the book from one on, back to its first; a club of many programmes has thousands of lessons, and few of them are near.</summary>
    public static IEnumerable<DateOnly> Back(ClubBook book, DateOnly from)
    {
        ArgumentNullException.ThrowIfNull(book);
        for (var day = from; day >= book.LessonsFrom; day = day.AddDays(-1)) yield return day;
    }

    /// <summary>The days of the book from one on, up to its last lesson.</summary>
    public static IEnumerable<DateOnly> Ahead(ClubBook book, DateOnly from)
    {
        ArgumentNullException.ThrowIfNull(book);
        var last = book.Programmes.Select(p => book.LessonsOf(p.Id)).Where(own => own.Length > 0).Select(own => own[^1].Date).DefaultIfEmpty(DateOnly.MinValue).Max();
        for (var day = from; day <= last; day = day.AddDays(1)) yield return day;
    }

    private static IEnumerable<LessonRow> Held(ClubBook book, DateOnly day) => book.LessonsOn(day).Where(l => l.ClosureId is null);
}
