using System.Globalization;
using Keikocho.Core.Attendance;
using Keikocho.Core.Calendar;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Partners;
using Keikocho.Core.Readiness;
using Keikocho.Core.Safety;
using Keikocho.Core.Syllabus;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;
using Keikocho.Store.Syllabus;

namespace Keikocho.App.Club;

/// <summary>The settings of the sums as this club has them on a day; the proposed value where nobody has set one.</summary>
public static class ClubRules
{
    /// <summary>How marks are folded.</summary>
    public static AttendanceRules Attendance(ClubBook book, DateOnly day)
    {
        var proposed = new AttendanceRules();
        return new AttendanceRules(
            Whole(book, "attendance.lateAfterMinutes", day, proposed.LateAfterMinutes),
            YesNo(book, "attendance.leavingEarlyCounts", day, proposed.LeavingEarlyCounts));
    }

    /// <summary>
    /// Lessons and weeks that are asked at an end: at the beginners' end those of the rank that ends the first course, where the club has an
    /// edition, else the programme's own first course; for everybody else the club's setting.
    /// </summary>
    public static ClockRule Clock(ClubBook book, ProgrammeRow programme, MatEnd end, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(programme);
        var proposed = new ClockRule();
        var lessons = Whole(book, "clock.minimumLessons", day, proposed.MinimumLessons);
        var weeks = Whole(book, "clock.minimumWeeks", day, proposed.MinimumWeeks);
        var aDay = Whole(book, "clock.lessonsADay", day, proposed.LessonsADay);
        if (end != MatEnd.Beginners) return new ClockRule(lessons, weeks, aDay);
        var usual = new ClockRule(programme.FirstCourseLessons ?? lessons, programme.FirstCourseWeeks ?? weeks, aDay);
        return book.EditionOn(programme.LadderId, day)?.Edition.Ranks.FirstOrDefault(r => r.FirstCourse) is { } first ? Of(first.Minima, null, usual) : usual;
    }

    /// <summary>The rank that a child is tested for on a day: the one above the rank that is worn; null at the top or without an edition.</summary>
    public static LadderRank? NextRank(ClubBook book, ProgrammeRow programme, Guid person, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(programme);
        return NextRank(book, programme, person, book.EditionOn(programme.LadderId, day));
    }

    /// <summary>The same by one edition.</summary>
    public static LadderRank? NextRank(ClubBook book, ProgrammeRow programme, Guid person, PublishedEdition? edition)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(programme);
        if (edition?.Edition is not { Ranks: { Count: > 1 } ranks }) return null;
        if (book.RankOf(person, programme.LadderId) is not { } worn) return ranks[1];
        for (var i = 0; i < ranks.Count; i++)
            if (ranks[i].Key == worn.Key) return i + 1 < ranks.Count ? ranks[i + 1] : null;
        // A belt that this edition does not have: where it stands among the belts that the club has now.
        return worn.Position > 0 && worn.Position < ranks.Count ? ranks[worn.Position] : null;
    }

    /// <summary>The rule of a rank for an age. A rank that says nothing of time leaves that to what is there.</summary>
    internal static ClockRule Of(Minima minima, int? age, ClockRule usual)
    {
        var counted = usual with
        {
            LessonsADay = minima.LessonsADay > 0 ? minima.LessonsADay : usual.LessonsADay,
            ShortestLessonMinutes = minima.ShortestLessonMinutes,
        };
        if (minima is { Lessons: 0, Weeks: 0, Months: 0, ForAges: null or { Count: 0 } }) return counted;
        var own = minima.ForAges?.FirstOrDefault(f => f.Ages.Holds(age));
        return counted with
        {
            MinimumLessons = own?.Lessons ?? minima.Lessons,
            MinimumWeeks = own?.Weeks ?? minima.Weeks,
            MinimumMonths = own?.Months ?? minima.Months,
        };
    }

    internal static int? AgeOf(ClubBook book, Guid person, Minima minima, DateOnly day, DateOnly today)
    {
        if (book.Person(person)?.Born is not { } born || born > day) return null;
        return minima.AgeBy == AgeBasis.CalendarYear
            ? day.Year - born.Year
            : Age.On(born, day, book.Setting("ageOut.leapBirthday", today) == "1 March" ? LeapBirthday.FirstMarch : LeapBirthday.TwentyEighthFebruary);
    }

    /// <summary>How the common rate of attendance is found.</summary>
    public static PriorRule Prior(ClubBook book, DateOnly day)
    {
        var proposed = new PriorRule();
        return new PriorRule(
            Whole(book, "attendance.leastLessons", day, proposed.LeastLessons),
            Whole(book, "attendance.leastChildren", day, proposed.LeastChildren),
            Whole(book, "attendance.proposedAttended", day, proposed.ProposedA),
            Whole(book, "attendance.proposedMissed", day, proposed.ProposedB),
            Whole(book, "attendance.mostStrength", day, proposed.MostStrength),
            Whole(book, "attendance.likelyPercent", day, proposed.LikelyPercent));
    }

    /// <summary>Ratios and how they are used.</summary>
    public static AdultRules Adults(ClubBook book, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(book);
        var proposed = new AdultRules();
        return new AdultRules(
            book.Setting("adults.method", day) is { } method ? Enum.Parse<RatioMethod>(method, ignoreCase: true) : proposed.Method,
            book.Setting("adults.bands", day) is { } bands ? BandsSetting.Read(bands) : null,
            Whole(book, "adults.unknownAgeCountsAs", day, proposed.UnknownAgeCountsAs),
            Whole(book, "adults.leastAdults", day, proposed.LeastAdults));
    }

    /// <summary>What opens a fall gate.</summary>
    public static FallGateRule FallGate(ClubBook book, DateOnly day)
    {
        var proposed = new FallGateRule();
        return new FallGateRule(
            Whole(book, "fallGate.cleanEvenings", day, proposed.CleanEvenings),
            Whole(book, "fallGate.freshDays", day, proposed.FreshDays),
            Whole(book, "fallGate.awayDays", day, proposed.AwayDays));
    }

    /// <summary>What is asked after a knock to the head.</summary>
    public static KnockRule Knock(ClubBook book, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(book);
        return KnockRuleOf.Settings(key => book.Setting(key, day));
    }

    /// <summary>How far apart in size two may be.</summary>
    public static ActivityLimits Limits(ClubBook book, DateOnly day)
    {
        var proposed = new ActivityLimits();
        return new ActivityLimits(
            Whole(book, "partners.limitTurnIns", day, proposed.TurnIns),
            Whole(book, "partners.limitThrowing", day, proposed.Throwing),
            Whole(book, "partners.limitHolds", day, proposed.Holds),
            Whole(book, "partners.limitFreePractice", day, proposed.FreePractice));
    }

    /// <summary>The other limits and the costs of pairs.</summary>
    public static PartnersRule Partners(ClubBook book, DateOnly day)
    {
        var proposed = new PartnersRule();
        return new PartnersRule(
            Whole(book, "partners.ageLimit", day, proposed.AgeLimit),
            Whole(book, "partners.ageLimitWithoutSize", day, proposed.AgeLimitWithoutSize),
            Whole(book, "partners.yearCost", day, proposed.YearCost),
            Whole(book, "partners.lastClassCost", day, proposed.LastClassCost),
            Whole(book, "partners.stepCost", day, proposed.StepCost),
            Whole(book, "partners.sizeMonths", day, proposed.SizeMonths));
    }

    /// <summary>When a typed size is asked about.</summary>
    public static WeightRule Weights(ClubBook book, DateOnly day)
    {
        var proposed = new WeightRule();
        return new WeightRule(Whole(book, "weight.askBeyond", day, proposed.AskBeyond), Whole(book, "weight.nameWithin", day, proposed.NameWithin));
    }

    /// <summary>What makes an item good, and the lead time of a renewal.</summary>
    public static ReadinessRule Readiness(ClubBook book, DateOnly day)
    {
        var proposed = new ReadinessRule();
        return new ReadinessRule(
            Whole(book, "readiness.techniqueEvenings", day, proposed.TechniqueEvenings),
            Whole(book, "readiness.wordEvenings", day, proposed.WordEvenings),
            Whole(book, "readiness.criticalFreshDays", day, proposed.CriticalFreshDays),
            Whole(book, "readiness.registrationLeadDays", day, proposed.RegistrationLeadDays));
    }

    /// <summary>What is asked of a child who comes with a rank.</summary>
    public static TransferRule Transfer(ClubBook book, DateOnly day)
    {
        var proposed = new TransferRule();
        return new TransferRule(
            Whole(book, "transfer.enoughPercent", day, proposed.EnoughPercent),
            Whole(book, "transfer.itemsALesson", day, proposed.ItemsALesson));
    }

    /// <summary>A whole number.</summary>
    public static int Whole(ClubBook book, string key, DateOnly day, int proposed)
    {
        ArgumentNullException.ThrowIfNull(book);
        return book.Setting(key, day) is { } text ? int.Parse(text, CultureInfo.InvariantCulture) : proposed;
    }

    /// <summary>Yes or no.</summary>
    public static bool YesNo(ClubBook book, string key, DateOnly day, bool proposed)
    {
        ArgumentNullException.ThrowIfNull(book);
        return book.Setting(key, day) is { } text ? text == "yes" : proposed;
    }
}
