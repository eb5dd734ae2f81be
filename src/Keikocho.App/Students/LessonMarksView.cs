using System.Collections.Immutable;
using Keikocho.App.Club;
using Keikocho.App.Shared.Parts;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Club;
using Keikocho.Store.Marks;
using Keikocho.Store.People;

namespace Keikocho.App.Students;

/// <summary>One mark as it was made.</summary>
/// <param name="When">Local day and time; when it was received, where that was later.</param>
/// <param name="Who">The acting adult, by full name.</param>
/// <param name="What">What it says.</param>
/// <param name="Where">This device, another, a file.</param>
/// <param name="Fate">What became of it.</param>
public sealed record MarkLine(string When, string Who, string What, string Where, string Fate);

/// <summary>Every mark of one child at one lesson, nothing left out; for an instructor.</summary>
/// <param name="Person">Who.</param>
/// <param name="Lesson">Which lesson.</param>
/// <param name="Line">Programme, day, hours.</param>
/// <param name="Stamp">The stamp as it stands.</param>
/// <param name="Words">The word as it stands.</param>
/// <param name="Closed">Name of the closure that takes the lesson out; null when it is held.</param>
/// <param name="Clash">Two devices disagree, in words; null otherwise.</param>
/// <param name="Reasons">Why the state is what it is; the last of them for a clash.</param>
/// <param name="Settings">The settings used.</param>
/// <param name="Marks">The marks, first made first.</param>
/// <param name="TakenBy">Everyone who marked at this lesson.</param>
/// <param name="IsToCome">The lesson lies ahead.</param>
/// <param name="State">The folded state.</param>
public sealed record LessonMarksView(
    BookPerson Person,
    LessonRow Lesson,
    string Line,
    StampKind Stamp,
    string Words,
    string? Closed,
    string? Clash,
    ImmutableArray<string> Reasons,
    ImmutableArray<UsedSetting> Settings,
    ImmutableArray<MarkLine> Marks,
    string TakenBy,
    bool IsToCome,
    AttendanceState State)
{
    /// <summary>Reads it; null when there is no such child or lesson.</summary>
    public static LessonMarksView? Of(OpenClub club, Guid personId, Guid lessonId)
    {
        ArgumentNullException.ThrowIfNull(club);
        var book = club.Book;
        if (book.Person(personId) is not { IsErased: false } person || book.Lesson(lessonId) is not { } lesson
            || book.EnrolmentsOfPerson(personId).All(e => e.ProgrammeId != lesson.ProgrammeId))
            return null;
        var rows = AttendanceReader.MarksOf(club.Db, lessonId, personId).Where(m => m.ItemId is null && FoldMarks.SpeaksOfPresence(m.Kind)).ToList();
        var kinds = TrailReader.KindsOf(club.Db, [.. rows.Select(m => m.DeviceId).Distinct()]);
        var folded = FoldAttendance.Explain([.. rows.Select(FoldMarks.AsMark)], FoldMarks.TimesOf(lesson), ClubRules.Attendance(book, club.Today));
        var says = new Saying(club, lesson, rows.ToDictionary(m => m.Id), kinds, folded.Trail);
        var (stamp, words) = TermCard.Words(new LessonState(lesson.Id, folded.State.Word, folded.State.Late, folded.State.Counts, folded.State.Arrived, folded.State.LeftAt));
        return new LessonMarksView(
            person,
            lesson,
            $"{book.Programme(lesson.ProgrammeId)!.Name}, {lesson.Date.WithWeekday()}, {lesson.Start.Plain()} to {lesson.End.Plain()}",
            stamp,
            words,
            book.Closure(lesson.ClosureId)?.Name,
            folded.Reasons.OfType<DevicesDisagree>().FirstOrDefault()?.Sentence,
            [.. folded.Reasons.Select(r => r.Sentence)],
            UsedSetting.Of(folded.Settings, AttendanceRules.Settings),
            [.. folded.Trail.Select(t => (Trace: t, Row: rows.First(m => m.Id == t.Mark.Id.Value)))
                .OrderBy(t => t.Row.ReceivedAt).ThenBy(t => t.Row.DeviceId).ThenBy(t => t.Row.Sequence).ThenBy(t => t.Row.Id)
                .Select(t => says.Line(t.Trace, t.Row))],
            TakenByWords(book, TrailReader.MarkedBy(club.Db, lessonId)),
            lesson.Date > club.Today,
            folded.State);
    }

    private static string TakenByWords(ClubBook book, IReadOnlyList<Guid> people)
    {
        var names = people.Select(id => book.Person(id)?.FullName).OfType<string>().Order(StringComparer.Ordinal).ToList();
        return names.Count switch
        {
            0 => "",
            1 => $"The register of this lesson was taken by {names[0]}.",
            _ => $"The register of this lesson was taken by {string.Join(", ", names.Take(names.Count - 1))} and {names[^1]}.",
        };
    }

    /// <summary>Puts single marks into words.</summary>
    private sealed class Saying(
        OpenClub club, LessonRow lesson, Dictionary<Guid, MarkRow> rows, Dictionary<Guid, DeviceKind> kinds, IReadOnlyList<MarkTrace> trail)
    {
        // Of the words that still speak on one device the last one is heard.
        private readonly HashSet<Guid> heard = [.. trail.Where(t => t.Fate == MarkFate.Speaks).GroupBy(t => t.Mark.Device)
            .Select(g => g.MaxBy(t => t.Mark.Sequence)!.Mark.Id.Value)];

        public MarkLine Line(MarkTrace trace, MarkRow row) => new(When(row), Who(row), What(row), Where(row), Fate(trace));

        private string When(MarkRow row)
        {
            var made = Moment(row.MadeAt);
            // A tablet without a network sends later; a wrong clock shows here and decides nothing.
            return (row.ReceivedAt - row.MadeAt).Duration() > TimeSpan.FromMinutes(2) ? $"{made}, received {Moment(row.ReceivedAt)}" : made;
        }

        private string Moment(DateTimeOffset instant)
        {
            var day = club.Clock.DayOf(instant);
            var time = club.Clock.TimeOf(instant).Plain();
            return day == lesson.Date ? time : $"{day.Full()}, {time}";
        }

        private string Who(MarkRow row) => row.ById is { } id ? club.Book.Person(id)?.FullName ?? "somebody not in this file" : "from a file";

        private string Where(MarkRow row) => row.DeviceId == club.Device
            ? "this device"
            : kinds.TryGetValue(row.DeviceId, out var kind)
                ? kind switch
                {
                    DeviceKind.Laptop => "another device",
                    DeviceKind.Tablet => "a tablet",
                    DeviceKind.Reading => "a file",
                    DeviceKind.CommandLine => "the command line",
                    _ => throw new InvalidOperationException($"There is no device of kind {kind}."),
                }
                : "another device";

        private static string What(MarkRow row) => row.Kind switch
        {
            MarkKind.Corrected => $"corrected to: {Word((MarkKind)(row.Code & MarkCode.CorrectedToMask), row)}",
            MarkKind.Cleared when row.Replaces is not null => "takes a mark back",
            var kind => Word(kind, row),
        };

        private static string Word(MarkKind kind, MarkRow row) => kind switch
        {
            MarkKind.Present when (row.Code & MarkCode.LateWithoutTime) != 0 => "came late, no time noted",
            MarkKind.Present => row.At is { } at ? $"present, came {at.Plain()}" : "present from the bow",
            MarkKind.Left => row.At is { } at ? $"left {at.Plain()}" : "left, no time noted",
            MarkKind.Excused => "absent, told us",
            MarkKind.Absent => "absent",
            MarkKind.Cleared => "nothing was to be marked",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "It says nothing of presence."),
        };

        private string Fate(MarkTrace trace) => trace.Fate switch
        {
            MarkFate.Speaks => heard.Contains(trace.Mark.Id.Value) ? "stands" : "kept; a later mark of the same device speaks",
            MarkFate.TakenBack => $"taken back{By(trace.By)}",
            MarkFate.Replaced => $"corrected{By(trace.By)}",
            MarkFate.NoWord => "done",
            _ => throw new ArgumentOutOfRangeException(nameof(trace), trace.Fate, "There is no such fate."),
        };

        private string By(MarkId? mark) => mark is { } id && rows.TryGetValue(id.Value, out var row) ? $" by {Who(row)}, {Moment(row.MadeAt)}" : "";
    }
}
