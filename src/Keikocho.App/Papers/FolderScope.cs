using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;

namespace Keikocho.App.Papers;

/// <summary>One register of a red folder.</summary>
/// <param name="Name">The programme, and its hour where the folder is for one evening.</param>
/// <param name="Programme">Whose.</param>
/// <param name="On">The day of the register.</param>
public sealed record FolderPartOf(string Name, ProgrammeRow Programme, DateOnly On);

/// <summary>What a red folder is for: one evening with all its lessons, or a whole group.</summary>
/// <param name="Words">In words, as it stands on the paper.</param>
/// <param name="Parts">Its registers.</param>
/// <param name="Halls">Where it is.</param>
public sealed record FolderScope(string Words, ImmutableArray<FolderPartOf> Parts, ImmutableArray<HallRow> Halls)
{
    private const int Evenings = 8;

    /// <summary>What may be chosen: the next evenings, then each group.</summary>
    public static IReadOnlyList<(string Value, string Words)> Offered(OpenClub club)
    {
        ArgumentNullException.ThrowIfNull(club);
        var book = club.Book;
        var evenings = EveningLesson.Ahead(book, club.Today).SelectMany(day => book.LessonsOn(day)).Where(l => l.ClosureId is null)
            .DistinctBy(l => (l.Date, book.HallOf(l)?.Id)).Take(Evenings)
            .Select(l => ($"evening-{l.Id:D}", $"{(l.Date == club.Today ? "Tonight: " : "")}{Of(club, l).Words}"));
        return [.. evenings, .. book.Programmes.Select(p => ($"group-{p.Id:D}", $"The whole group: {p.Name}"))];
    }

    /// <summary>Reads what was asked; the next evening, or else the first group, where nothing was said; null for what there is not.</summary>
    public static FolderScope? Read(OpenClub club, string? asked)
    {
        ArgumentNullException.ThrowIfNull(club);
        if (string.IsNullOrEmpty(asked)) asked = Offered(club).Select(o => o.Value).FirstOrDefault() ?? "";
        if (Id(asked, "evening-") is { } lesson) return club.Book.Lesson(lesson) is { } row ? Of(club, row) : null;
        return Id(asked, "group-") is { } group && club.Book.Programme(group) is { } programme ? Of(club, programme) : null;
    }

    private static FolderScope Of(OpenClub club, LessonRow lesson)
    {
        var book = club.Book;
        var lessons = EveningLesson.SameEvening(book, lesson).Where(l => l.ClosureId is null).DefaultIfEmpty(lesson).OrderBy(l => l.Start).ThenBy(l => l.Id).ToList();
        ImmutableArray<FolderPartOf> parts = [.. lessons.Select(l => new FolderPartOf($"{book.Programme(l.ProgrammeId)!.Name} at {l.Start.Plain()}", book.Programme(l.ProgrammeId)!, l.Date))];
        return new FolderScope(
            $"{lesson.Date.WithWeekday()}, {string.Join(", ", parts.Select(p => p.Name))}", parts, book.HallOf(lesson) is { } hall ? [hall] : book.Halls);
    }

    private static FolderScope Of(OpenClub club, ProgrammeRow programme)
    {
        var book = club.Book;
        // The halls in which the group is from now on; every hall where nothing is on the calendar.
        HallRow[] halls = [.. book.LessonsOf(programme.Id).Where(l => l.Date >= club.Today && l.ClosureId is null).Select(l => book.HallOf(l)).OfType<HallRow>().DistinctBy(h => h.Id)];
        return new FolderScope($"{programme.Name}, the whole group", [new FolderPartOf(programme.Name, programme, club.Today)], halls.Length > 0 ? [.. halls] : book.Halls);
    }

    private static Guid? Id(string asked, string kind) =>
        asked.StartsWith(kind, StringComparison.Ordinal) && Guid.TryParse(asked.AsSpan(kind.Length), out var id) ? id : null;
}
