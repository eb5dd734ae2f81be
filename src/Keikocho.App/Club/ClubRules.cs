using System.Globalization;
using Keikocho.Core.Evening;
using Keikocho.Store.Book;

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
