using Keikocho.App.Club;
using Keikocho.Core.Calendar;
using Keikocho.Core.Kernel;
using Keikocho.Store.Book;

namespace Keikocho.App.Students;

/// <summary>The club's settings of the sums about age and absence.</summary>
public static class StudentRules
{
    private const string LeavingAge = "ageOut.leavingAge";

    /// <summary>When what is seen again after an absence.</summary>
    public static ReturnRule Return(ClubBook book, DateOnly day)
    {
        var proposed = new ReturnRule();
        return new ReturnRule(
            ClubRules.Whole(book, "return.fallsAfterDays", day, proposed.FallsAfterDays),
            ClubRules.Whole(book, "return.moreAfterDays", day, proposed.MoreAfterDays));
    }

    /// <summary>Where 29 February falls in a common year.</summary>
    public static LeapBirthday Leap(ClubBook book, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(book);
        return book.Setting("ageOut.leapBirthday", day) == "1 March" ? LeapBirthday.FirstMarch : LeapBirthday.TwentyEighthFebruary;
    }

    /// <summary>How children leave for their age; null while the club has set no leaving age: not every club has one.</summary>
    public static AgeOutRule? AgeOut(ClubBook book, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(book);
        if (book.Setting(LeavingAge, day) is null) return null;
        var proposed = new AgeOutRule();
        return new AgeOutRule(
            ClubRules.Whole(book, LeavingAge, day, proposed.LeavingAge),
            book.Setting("ageOut.leaves", day) is { } leaves ? Enum.Parse<LeavingRule>(leaves, ignoreCase: true) : proposed.Leaves,
            Leap(book, day),
            ClubRules.Whole(book, "ageOut.schoolYearEndMonth", day, proposed.SchoolYearEndMonth),
            ClubRules.Whole(book, "ageOut.schoolYearEndDay", day, proposed.SchoolYearEndDay),
            ClubRules.Whole(book, "ageOut.tellTermsAhead", day, proposed.TellTermsAhead));
    }

    /// <summary>Age in whole years; null without a birth date.</summary>
    public static int? Age(ClubBook book, BookPerson person, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(person);
        return person.Born is { } born && born <= day ? Core.Kernel.Age.On(born, day, Leap(book, day)) : null;
    }
}
