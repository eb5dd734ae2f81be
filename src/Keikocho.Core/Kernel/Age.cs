namespace Keikocho.Core.Kernel;

/// <summary>When somebody born on 29 February has a birthday in a common year. Laws differ, so a club sets it.</summary>
public enum LeapBirthday
{
    /// <summary>28 February.</summary>
    TwentyEighthFebruary = 0,
    /// <summary>1 March.</summary>
    FirstMarch = 1,
}

/// <summary>Ages and birthdays.</summary>
public static class Age
{
    /// <summary>The birthday on which somebody becomes <paramref name="age"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Age below 0 or above 150.</exception>
    public static DateOnly Birthday(DateOnly birth, int age, LeapBirthday leap)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(age);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(age, 150);
        var year = birth.Year + age;
        if (birth is not { Month: 2, Day: 29 } || DateTime.IsLeapYear(year))
            return new DateOnly(year, birth.Month, birth.Day);
        return leap == LeapBirthday.FirstMarch ? new DateOnly(year, 3, 1) : new DateOnly(year, 2, 28);
    }

    /// <summary>Age in whole years on <paramref name="day"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The day is before the birth.</exception>
    public static int On(DateOnly birth, DateOnly day, LeapBirthday leap)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(day, birth);
        var age = day.Year - birth.Year;
        return Birthday(birth, age, leap) <= day ? age : age - 1;
    }
}
