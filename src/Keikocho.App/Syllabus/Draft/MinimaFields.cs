using Keikocho.App.Club;
using Keikocho.Core.Syllabus;

namespace Keikocho.App.Syllabus.Draft;

/// <summary>Least time and age as the fields of a rank's form. What the form does not show stays as it was.</summary>
internal static class MinimaFields
{
    public static Minima Read(SentForm sent, Minima was)
    {
        var others = was.ForAges ?? [];
        var lessons = sent.WholeIfAny("lessons", 0, 500, "Lessons") ?? 0;
        var weeks = sent.WholeIfAny("weeks", 0, 520, "Weeks") ?? 0;
        var months = sent.WholeIfAny("months", 0, 120, "Months") ?? 0;
        var age = sent.WholeIfAny("age", 3, 99, "Least age");
        var a = sent.WholeIfAny("ages-from", 0, 99, "From age");
        var b = sent.WholeIfAny("ages-to", 0, 99, "To age");
        var otherLessons = sent.WholeIfAny("ages-lessons", 0, 500, "Lessons");
        var otherWeeks = sent.WholeIfAny("ages-weeks", 0, 520, "Weeks");
        var said = (a ?? b ?? otherLessons ?? otherWeeks) is not null;
        if (said && a is null && b is null) sent.Refuse("ages-from", "Other figures need an age: type the youngest or the oldest, or leave them empty.");
        if (a > b) sent.Refuse("ages-to", $"{b} is younger than {a}. Type the oldest age.");
        if (said && otherLessons is null && otherWeeks is null) sent.Refuse("ages-lessons", "Type the lessons or the weeks of these ages, or leave the ages empty.");
        // The form has one line for other ages; a text may hold more, and they stay.
        var first = said ? new MinimaForAges(new AgeBand(a, b), otherLessons, otherWeeks, others.Count > 0 ? others[0].Months : null) : null;
        IReadOnlyList<MinimaForAges> all = [.. first is null ? [] : new[] { first }, .. others.Skip(1)];
        var read = was with
        {
            Lessons = lessons,
            Weeks = weeks,
            Months = months,
            Age = age,
            AgeBy = sent.Text("age-by") == nameof(AgeBasis.CalendarYear) ? AgeBasis.CalendarYear : AgeBasis.Birthday,
            CountedOverTwoRanks = sent.Text("over-two") == "on",
            LessonsADay = sent.WholeIfAny("a-day", 0, 10, "Lessons of one day") ?? 0,
            ForAges = all.Count == 0 ? null : all,
            ExaminerIsNotTheCoach = sent.Text("not-the-coach") == "on",
        };
        return read.ForAges is not null && was.ForAges is not null && read.ForAges.SequenceEqual(was.ForAges) ? read with { ForAges = was.ForAges } : read;
    }
}
