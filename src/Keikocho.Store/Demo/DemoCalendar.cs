using System.Globalization;
using Keikocho.Store.Calendar;

namespace Keikocho.Store.Demo;

/// <summary>A weekly hour of the demo: a programme, how many days its weekday lies after today's, the hall, and the times in minutes of the day.</summary>
internal sealed record DemoHour(int Programme, int DaysAfterToday, int Hall, int Start, int End, int UkemiFrom, int UkemiTo, int HalfTime);

/// <summary>A term with its test, before it is a row.</summary>
internal sealed record DemoTerm(string Name, DateOnly From, DateOnly To, DateOnly Test);

/// <summary>Days without lessons, before they are a row.</summary>
internal sealed record DemoClosure(string Name, DateOnly From, DateOnly To, int? Hall, DateOnly EnteredOn, bool MarksKept);

/// <summary>A lesson with what the demo needs to know of it.</summary>
internal sealed record DemoLesson(int Number, LessonRow Row, DemoHour Hour, int Term, bool MarksKept)
{
    /// <summary>Its register was kept.</summary>
    public bool HasRegister(DateOnly today) => Row.Date < today && !Row.RegisterMissing && (Row.ClosureId is null || MarksKept);
}

/// <summary>
/// The demo's year is laid around today, not around a printed calendar: whatever the day, a term is on, most of it has been held, and its
/// test is near. Terms start 17, 17 and 18 weeks apart, so that three of them are a year.
/// </summary>
internal static class DemoCalendar
{
    private static readonly string[] Seasons = ["Spring", "Summer", "Autumn"];

    /// <summary>Terms, oldest first; the last contains <paramref name="today"/>.</summary>
    public static IReadOnlyList<DemoTerm> Terms(DateOnly today, int count)
    {
        // Twelve weeks back at least, so that a child can have been away for ten weeks and be back since two.
        var start = today.AddDays(-84);
        start = start.AddDays(-(((int)start.DayOfWeek + 6) % 7));
        // Nine to fifteen days ahead: a few lessons are left.
        var test = today.AddDays(9);
        test = test.AddDays(((int)DayOfWeek.Saturday - (int)test.DayOfWeek + 7) % 7);
        var middle = start.AddDays((test.DayNumber - start.DayNumber) / 2);
        var season = (middle.Month - 1) / 4;
        var year = middle.Year;
        var terms = new List<DemoTerm> { new(Name(season, year), start, test.AddDays(1), test) };
        for (var back = 1; back < count; back++)
        {
            start = start.AddDays(back % 3 == 0 ? -18 * 7 : -17 * 7);
            if (season == 0) year--;
            season = (season + 2) % 3;
            terms.Add(new DemoTerm(Name(season, year), start, start.AddDays(97), start.AddDays(96)));
        }

        terms.Reverse();
        return terms;
    }

    /// <summary>Half-term weeks, Christmas, one hall lost on one evening, and one evening that was called off and entered some days later.</summary>
    public static IReadOnlyList<DemoClosure> Closures(DateOnly today, IReadOnlyList<DemoTerm> terms)
    {
        var closures = new List<DemoClosure>();
        for (var t = 0; t < terms.Count; t++)
        {
            var term = terms[t];
            closures.Add(new DemoClosure("Half-term", term.From.AddDays(42), term.From.AddDays(48), null, term.From, false));
            var christmas = new DateOnly(term.From.Year, 12, 23);
            var over = christmas.AddDays(9);
            var earlier = t < terms.Count - 1;
            // In the present term only where it touches none of the evenings that the demo's children need; the demo is alive on any day.
            if (earlier ? christmas <= term.To && over >= term.From : christmas >= today.AddDays(-75) && over <= today.AddDays(-18))
                closures.Add(new DemoClosure("Christmas", christmas, over, null, term.From, false));
        }

        bool Open(DateOnly day) => closures.TrueForAll(c => day < c.From || day > c.To);
        var lost = today.AddDays(-18);
        while (!(IsEvening(today, lost, 3) && Open(lost))) lost = lost.AddDays(-1);
        closures.Add(new DemoClosure("School gym lost: exams", lost, lost, 1, lost.AddDays(-5), false));

        var calledOff = terms[^2].Test.AddDays(-20);
        while (!(IsEvening(today, calledOff, 0) && Open(calledOff))) calledOff = calledOff.AddDays(-1);
        closures.Add(new DemoClosure("Boiler failed, sent home after the register", calledOff, calledOff, 0, calledOff.AddDays(4), true));
        return closures;
    }

    /// <summary>Whether a day has the weekday that lies some days after today's.</summary>
    public static bool IsEvening(DateOnly today, DateOnly day, int daysAfterToday) => today.AddDays(daysAfterToday).DayOfWeek == day.DayOfWeek;

    private static string Name(int season, int year) => string.Create(CultureInfo.InvariantCulture, $"{Seasons[season]} {year}");
}
