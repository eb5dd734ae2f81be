using System.Collections.Immutable;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.People;

namespace Keikocho.App.Students;

/// <summary>One lesson on the stamp card.</summary>
/// <param name="LessonId">Which.</param>
/// <param name="Day">"8 Sep".</param>
/// <param name="Stamp">The stamp.</param>
/// <param name="Words">Its word.</param>
public sealed record CardLesson(Guid LessonId, string Day, StampKind Stamp, string Words);

/// <summary>The lessons of one term with their stamps.</summary>
/// <param name="Term">The term's name.</param>
/// <param name="Count">"7 of 8 lessons".</param>
/// <param name="Lessons">By date and start.</param>
public sealed record TermCard(string Term, string Count, ImmutableArray<CardLesson> Lessons)
{
    /// <summary>The term that a day lies in, else the last one before it, else the first to come; null without any.</summary>
    public static TermRow? TermFor(ClubBook book, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(book);
        return book.Terms.LastOrDefault(t => t.From <= today) ?? book.Terms.FirstOrDefault();
    }

    /// <summary>The card of one person. Lessons before the first day on the register are left out unless something was marked.</summary>
    public static TermCard? Of(
        ClubBook book, ProgrammeRow programme, IReadOnlyCollection<EnrolmentRow> own, IReadOnlyDictionary<Guid, LessonState> states,
        IReadOnlySet<DateOnly> withoutRegister, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(programme);
        ArgumentNullException.ThrowIfNull(states);
        if (TermFor(book, today) is not { } term) return null;
        var lessons = book.LessonsOf(programme.Id)
            .Where(l => l.Date >= term.From && l.Date <= term.To
                && (states.ContainsKey(l.Id) || own.Any(e => e.IsOn(l.Date))))
            .ToList();
        var past = lessons.Where(l => l.Date <= today && l.ClosureId is null && !withoutRegister.Contains(l.Date)
            && (l.Date < today || states.ContainsKey(l.Id))).ToList();
        var attended = past.Count(l => states.GetValueOrDefault(l.Id) is { Counts: true });
        return new TermCard(
            term.Name,
            $"{attended} of {past.Count} {(past.Count == 1 ? "lesson" : "lessons")}",
            [.. lessons.Select(l => Say(book, l, states.GetValueOrDefault(l.Id), withoutRegister.Contains(l.Date), today))]);
    }

    private static CardLesson Say(ClubBook book, LessonRow lesson, LessonState? state, bool withoutRegister, DateOnly today)
    {
        var day = lesson.Date.Brief();
        if (book.Closure(lesson.ClosureId) is { } closure) return new CardLesson(lesson.Id, day, StampKind.None, $"closed: {closure.Name}");
        if (state is { Word: not AttendanceWord.Untouched })
        {
            var (stamp, words) = Words(state);
            return new CardLesson(lesson.Id, day, stamp, words);
        }

        var nothing = lesson.Date > today ? "to come" : lesson.RegisterMissing || withoutRegister ? "no register" : lesson.Date == today ? "today, not marked" : "not marked";
        return new CardLesson(lesson.Id, day, StampKind.None, nothing);
    }

    /// <summary>Stamp and word of a state.</summary>
    public static (StampKind Stamp, string Words) Words(LessonState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state.Word switch
        {
            AttendanceWord.Present when state.Late => (StampKind.Late, state.Arrived is { } at ? $"came {at.Plain()}" : "came late"),
            AttendanceWord.Present => (StampKind.Present, "present"),
            AttendanceWord.Left => (StampKind.LeftEarly, state.LeftAt is { } at ? $"left {at.Plain()}" : "left"),
            AttendanceWord.Excused => (StampKind.Told, "absent, told us"),
            AttendanceWord.Absent => (StampKind.Absent, "absent"),
            AttendanceWord.Untouched => (StampKind.None, "not marked"),
            _ => throw new ArgumentOutOfRangeException(nameof(state), state.Word, "There is no such word."),
        };
    }
}
