using Keikocho.Core.Calendar;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Club;

/// <summary>What the clock of one child asks and from where it counts: the rank's own figures, where an edition of the club says any.</summary>
/// <param name="Rule">Least lessons, weeks and months, and which lessons count.</param>
/// <param name="StartOn">Day of the first lesson or of the promotion.</param>
/// <param name="Start">Which of the two.</param>
/// <param name="LessonsFrom">First day whose lessons count, where they count over two ranks; null where they count from the start.</param>
/// <param name="Off">What an instructor took off; null for nothing.</param>
public sealed record ChildTime(ClockRule Rule, DateOnly StartOn, ClockStart Start, DateOnly? LessonsFrom, TimeOff? Off)
{
    /// <summary>First day with a lesson that may count.</summary>
    public DateOnly First => LessonsFrom ?? (Start == ClockStart.Promotion ? StartOn.AddDays(1) : StartOn);

    /// <summary>Lessons asked, after what was taken off.</summary>
    public int Lessons => TimeOff.Less(Rule.MinimumLessons, Off?.Percent ?? 0);

    /// <summary>Whether a lesson is long enough to count.</summary>
    public bool IsLongEnough(LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        return MinutesOf(lesson) >= Rule.ShortestLessonMinutes;
    }

    /// <summary>How long a lesson is.</summary>
    public static int MinutesOf(LessonRow lesson)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        return (int)(lesson.End - lesson.Start).TotalMinutes;
    }

    /// <summary>Reads it.</summary>
    /// <param name="book">The book.</param>
    /// <param name="programme">The programme.</param>
    /// <param name="enrolment">The child on its register.</param>
    /// <param name="edition">The edition that the child is tested by; null where none holds.</param>
    /// <param name="day">The day of the test; the day asked about where none is set.</param>
    /// <param name="today">The day whose settings hold.</param>
    public static ChildTime Of(ClubBook book, ProgrammeRow programme, EnrolmentRow enrolment, PublishedEdition? edition, DateOnly day, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(programme);
        ArgumentNullException.ThrowIfNull(enrolment);
        var person = enrolment.PersonId;
        var promoted = book.NewestAwardOf(person, programme.LadderId)?.On is { } on && enrolment.CountsFrom == on.AddDays(1);
        var start = promoted ? enrolment.CountsFrom.AddDays(-1) : enrolment.CountsFrom;
        var usual = ClubRules.Clock(book, programme, book.EndOf(person, programme, null, today), today);
        var which = promoted ? ClockStart.Promotion : ClockStart.FirstLesson;
        if (ClubRules.NextRank(book, programme, person, edition) is not { } next) return new ChildTime(usual, start, which, null, null);
        return new ChildTime(
            ClubRules.Of(next.Minima, ClubRules.AgeOf(book, person, next.Minima, day, today), usual),
            start,
            which,
            promoted && next.Minima.CountedOverTwoRanks ? OverTwoRanks(book, programme, enrolment) : null,
            OffOf(book, programme, person, next));
    }

    // From the day after the promotion before the last one; where there was none, from the first lesson. Where its day is not known,
    // nobody can say how many lessons lie after it: from the last promotion, as for any other rank.
    private static DateOnly OverTwoRanks(ClubBook book, ProgrammeRow programme, EnrolmentRow enrolment)
    {
        var newest = book.NewestAwardOf(enrolment.PersonId, programme.LadderId)!;
        var before = book.AwardsOf(enrolment.PersonId)
            .Where(a => a.LadderId == programme.LadderId && a.Id != newest.Id && book.Rank(a.RankId) is { Position: not 1 }).ToList();
        var joined = book.EnrolmentsOfPerson(enrolment.PersonId).Where(e => book.Programme(e.ProgrammeId)?.LadderId == programme.LadderId).Min(e => e.From);
        if (before.Count == 0) return joined < enrolment.CountsFrom ? joined : enrolment.CountsFrom;
        var from = before[^1].On is { } on && on < newest.On ? on.AddDays(1) : enrolment.CountsFrom;
        return from < joined ? joined : from;
    }

    /// <summary>What an instructor took off a child's least time for a rank. Only a rank that asks for time has any of it to take off.</summary>
    internal static TimeOff? OffOf(ClubBook book, ProgrammeRow programme, Guid person, LadderRank rank)
    {
        if (rank.Minima is { Lessons: 0, Weeks: 0, Months: 0, ForAges: null or { Count: 0 } }) return null;
        if (book.TimeOffOf(person, programme.LadderId, rank.Key) is not { } held) return null;
        var by = book.Person(held.ById) is { IsErased: false } adult ? adult.FullName : null;
        return new TimeOff(Math.Min(held.Percent, rank.Minima.MostReductionPercent), held.Why, held.Percent, by, held.On);
    }
}
