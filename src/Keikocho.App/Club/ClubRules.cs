using System.Globalization;
using Keikocho.Core.Attendance;
using Keikocho.Core.Calendar;
using Keikocho.Core.Evening;
using Keikocho.Core.Kernel;
using Keikocho.Core.Safety;
using Keikocho.Store.Book;
using Keikocho.Store.Calendar;

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

    /// <summary>Lessons and weeks that are asked: the programme's own first course at the beginners' end, else the club's setting.</summary>
    public static ClockRule Clock(ClubBook book, ProgrammeRow programme, MatEnd end, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(programme);
        var proposed = new ClockRule();
        var lessons = Whole(book, "clock.minimumLessons", day, proposed.MinimumLessons);
        var weeks = Whole(book, "clock.minimumWeeks", day, proposed.MinimumWeeks);
        if (end == MatEnd.Beginners)
        {
            lessons = programme.FirstCourseLessons ?? lessons;
            weeks = programme.FirstCourseWeeks ?? weeks;
        }

        return new ClockRule(lessons, weeks, Whole(book, "clock.lessonsADay", day, proposed.LessonsADay));
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
