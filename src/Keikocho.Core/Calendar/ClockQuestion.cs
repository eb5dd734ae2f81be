using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Calendar;

/// <summary>What a child's clock starts at.</summary>
public enum ClockStart
{
    /// <summary>The child's first lesson, which counts itself.</summary>
    FirstLesson = 0,
    /// <summary>A promotion; a lesson on the same day does not count.</summary>
    Promotion = 1,
    /// <summary>The day of joining by a list that was read in, where no mark says which lesson was the first; a lesson on that day counts.</summary>
    Joined = 2,
}

/// <summary>The rule of one rank or of the first course. A club's own; the proposed figures are those of the sample first course.</summary>
/// <param name="MinimumLessons">Lessons that must have been attended. Proposed 14 (ours, no source), 0 to 500.</param>
/// <param name="MinimumWeeks">Weeks that must be full on the day of the test. Proposed 10 (ours, no source), 0 to 520.</param>
/// <param name="LessonsADay">At most so many lessons of one day count; 0 for no limit. Proposed 0, 0 to 10.</param>
/// <param name="MinimumMonths">Calendar months that must be full on the day of the test; a rank's own, not a setting of the club. 0 to 120.</param>
/// <param name="ShortestLessonMinutes">A shorter lesson does not count; a rank's own. 0 for all, 0 to 600.</param>
public sealed record ClockRule(
    int MinimumLessons = 14, int MinimumWeeks = 10, int LessonsADay = 0, int MinimumMonths = 0, int ShortestLessonMinutes = 0)
{
    private const int MostMonths = 120, MostMinutes = 600;

    private static readonly WholeNumberSetting Lessons = new(
        "clock.minimumLessons", "Lessons attended before a test", 14, "lessons", 0, 500, Setting.Ours);

    private static readonly WholeNumberSetting Weeks = new(
        "clock.minimumWeeks", "Weeks that are full on the day of the test", 10, "weeks", 0, 520, Setting.Ours);

    private static readonly WholeNumberSetting ADay = new(
        "clock.lessonsADay", "Lessons of one day that count, 0 for all", 0, "lessons", 0, 10, Setting.Ours);

    /// <summary>What a club may set, with the proposed values.</summary>
    public static IReadOnlyList<Setting> Settings { get; } = [Lessons, Weeks, ADay];

    /// <summary>The values in use.</summary>
    public IReadOnlyList<SettingUsed> Used() =>
        [Lessons.Use(MinimumLessons), Weeks.Use(MinimumWeeks), ADay.Use(LessonsADay)];

    internal void Guard()
    {
        Lessons.Guard(MinimumLessons, nameof(MinimumLessons));
        Weeks.Guard(MinimumWeeks, nameof(MinimumWeeks));
        ADay.Guard(LessonsADay, nameof(LessonsADay));
        if (MinimumMonths is < 0 or > MostMonths)
            throw new ArgumentException($"The least time is {MinimumMonths} months; give 0 to {MostMonths}.", nameof(MinimumMonths));
        if (ShortestLessonMinutes is < 0 or > MostMinutes)
            throw new ArgumentException($"The shortest lesson is {ShortestLessonMinutes} minutes; give 0 to {MostMinutes}.", nameof(ShortestLessonMinutes));
    }
}

/// <summary>A share of the least time that is taken off for one child.</summary>
/// <param name="Percent">The share that is given, 1 to 100: what was decided, and never more than the rank allows.</param>
/// <param name="Why">The reason.</param>
/// <param name="Decided">The share that was decided; null for the same.</param>
/// <param name="By">Who decided; null where not known.</param>
/// <param name="On">The day of the decision; null where not known.</param>
public sealed record TimeOff(int Percent, string Why, int? Decided = null, string? By = null, DateOnly? On = null)
{
    /// <summary>A figure less the share, rounded up: a part of a lesson is a lesson.</summary>
    public static int Less(int figure, int percent) => ((figure * (100 - percent)) + 99) / 100;

    internal void Guard()
    {
        if (Percent is < 0 or > 100 || Decided is { } decided && decided < Percent)
            throw new ArgumentException($"{Percent} % of the least time is taken off; give 0 to 100, and not more than was decided.", nameof(Percent));
        if (string.IsNullOrWhiteSpace(Why))
            throw new ArgumentException("Time is taken off without a reason; give one.", nameof(Why));
    }
}

/// <summary>One lesson of the child's programme on the calendar.</summary>
/// <param name="Date">Its day.</param>
/// <param name="State">Where the child stands at it; null for a lesson to come or without a word about this child.</param>
/// <param name="Closure">Name of the closure that took it out; null when it is or was held.</param>
/// <param name="RegisterMissing">A past lesson at which nobody at all was marked: closed, or forgotten? Until the club says, it is in neither count.</param>
/// <param name="Lesson">Its id, where the caller wants it back.</param>
/// <param name="Minutes">How long it is; null where that is not known, and then it counts.</param>
public sealed record ClockLesson(
    DateOnly Date, AttendanceState? State = null, string? Closure = null, bool RegisterMissing = false, LessonId? Lesson = null, int? Minutes = null);

/// <summary>The question: one child's clock on one evening.</summary>
/// <param name="AsOf">The evening just closed; its lessons count as held.</param>
/// <param name="StartOn">Day of the first lesson, of the promotion or of joining.</param>
/// <param name="Start">Which of the three.</param>
/// <param name="Rule">Minimum lessons and weeks.</param>
/// <param name="Lessons">All lessons of the child's programme, closed ones too, in any order.</param>
/// <param name="TestOn">The next test; null when none is set. Not before <paramref name="AsOf"/>.</param>
/// <param name="NextTestOn">The test after it; null when not set.</param>
/// <param name="LessonsFrom">
/// First day whose lessons count, where they count over two ranks: the day after the promotion before the last one, or the first lesson.
/// Not after the start; weeks and months are counted from the start all the same. Null counts lessons from the start too.
/// </param>
/// <param name="Off">A share of the least lessons, weeks and months that is taken off; null for none.</param>
public sealed record ClockSnapshot(
    DateOnly AsOf,
    DateOnly StartOn,
    ClockStart Start,
    ClockRule Rule,
    IReadOnlyList<ClockLesson> Lessons,
    DateOnly? TestOn = null,
    DateOnly? NextTestOn = null,
    DateOnly? LessonsFrom = null,
    TimeOff? Off = null);
