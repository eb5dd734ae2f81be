using System.Globalization;
using Keikocho.Core.Calendar;
using Keikocho.Core.Kernel;
using Keikocho.Core.Syllabus;

namespace Keikocho.Core.Readiness;

/// <summary>What the clock, the age and the papers say.</summary>
/// <param name="Reasons">Every rule with its figures.</param>
/// <param name="Minimum">Lessons asked.</param>
/// <param name="Needed">Lessons still needed.</param>
/// <param name="Against">What cannot be mended before the test.</param>
/// <param name="Late">The same in phrases.</param>
/// <param name="Papers">What can be mended without a lesson.</param>
/// <param name="Registration">How the registration stands; null where none is asked.</param>
/// <param name="Clock">The clock's own rule was used, because the rank has no figures.</param>
internal sealed record TimeAndPapers(
    IReadOnlyList<Reason> Reasons, int Minimum, int Needed, IReadOnlyList<Reason> Against, IReadOnlyList<string> Late, IReadOnlyList<Reason> Papers,
    RegistrationForTheTest? Registration, bool Clock)
{
    public static TimeAndPapers Of(ReadinessFrame frame)
    {
        var parts = frame.Parts;
        var minima = parts.Sheet.Minima;
        var papers = parts.Papers;
        List<Reason> reasons = [], against = [], mend = [];
        List<string> late = [];
        var own = minima.Lessons > 0 || minima.Weeks > 0 || minima.Months > 0;
        var given = Math.Min(papers.ReductionPercent, minima.MostReductionPercent);
        var minimum = own ? TimeOff.Less(minima.Lessons, given) : FromClock(parts.Clock, "clock.minimumLessons") ?? (parts.Clock.Attended + parts.Clock.Needed);
        var needed = own ? Math.Max(0, minimum - parts.Clock.Attended) : parts.Clock.Needed;
        var lessonsLeft = frame.LessonsAfter(frame.Blocks.MatUntil);
        var lessons = new LessonsForTheTest(parts.Clock.Attended, minimum, needed, lessonsLeft, frame.TestOn);
        reasons.Add(lessons);
        if (needed > lessonsLeft)
            against.Add(lessons);

        var clockWeeks = FromClock(parts.Clock, "clock.minimumWeeks") ?? 0;
        var start = parts.Clock.Reasons.OfType<CountedFrom>().FirstOrDefault()?.StartOn ?? parts.Clock.WeeksFullOn.AddDays(-7 * clockWeeks);
        var weeks = own ? TimeOff.Less(minima.Weeks, given) : clockWeeks;
        var weeksOn = own ? start.AddDays(7 * weeks) : parts.Clock.WeeksFullOn;
        if (weeks > 0 || weeksOn > frame.TestOn)
            Until(new WeeksAreFull(weeks, start, weeksOn, frame.TestOn), weeksOn, Words.Count(weeks, "week"));
        var months = own ? TimeOff.Less(minima.Months, given) : 0;
        if (months > 0)
            Until(new MonthsAreFull(months, start, start.AddMonths(months), frame.TestOn), start.AddMonths(months), Words.Count(months, "month"));
        if (papers.ReductionPercent > 0)
            reasons.Add(new TimeTakenOff(papers.ReductionPercent, given, papers.ReductionWhy!.Trim().TrimEnd('.'), papers.ReductionBy, papers.ReductionOn));

        AskAge();
        RegistrationForTheTest? registration = null;
        if (papers.RegistrationAsked)
        {
            registration = new RegistrationForTheTest(
                papers.RegisteredUntil, papers.RegisteredUntil?.AddDays(-parts.Rule.RegistrationLeadDays), parts.Rule.RegistrationLeadDays, frame.AsOf, frame.TestOn);
            reasons.Add(registration);
            if (!registration.Holds)
                Mend(new RenewTheRegistration(registration));
        }

        SayTheRest(minima, papers, parts.Clock, reasons);
        return new TimeAndPapers(reasons, minimum, needed, against, late, mend, registration, !own);

        void Until(Reason reason, DateOnly fullOn, string what)
        {
            reasons.Add(reason);
            if (fullOn <= frame.TestOn)
                return;
            against.Add(reason);
            late.Add($"{what} full on {ReadinessPhrases.Day(fullOn, frame.AsOf)}, after the test");
        }

        void AskAge()
        {
            if (minima.Age is not { } asked)
                return;
            int? age = null;
            DateOnly? on = null;
            if (papers.Born is { } born)
            {
                // A birthday on 29 February is on 1 March in a common year here: the later, because it is a least age.
                (age, on) = minima.AgeBy == AgeBasis.CalendarYear
                    ? (frame.TestOn.Year - born.Year, new DateOnly(born.Year + asked, 1, 1))
                    : (Age.On(born, frame.TestOn, LeapBirthday.FirstMarch), Age.Birthday(born, asked, LeapBirthday.FirstMarch));
            }

            var reason = new AgeForTheTest(asked, minima.AgeBy, age, on, frame.TestOn);
            reasons.Add(reason);
            if (age is null)
                Mend(reason);
            else if (age < asked)
            {
                against.Add(reason);
                late.Add($"{age.Value.ToString(CultureInfo.InvariantCulture)} years old at the test, {asked.ToString(CultureInfo.InvariantCulture)} are asked");
            }
        }

        // Papers take no lesson, but they take a day before the test.
        void Mend(Reason reason) => (frame.AsOf < frame.TestOn ? mend : against).Add(reason);
    }

    private static void SayTheRest(Minima minima, TestPapers papers, ClockAnswer clock, List<Reason> reasons)
    {
        if (minima.FastTrack is { } track && papers is { Born: { } born, StartedOn: { } started } && started >= born
            && Age.On(born, started, LeapBirthday.FirstMarch) is var then && then >= track.FromAge)
            reasons.Add(new FastTrackHolds(track, then, papers.TestsTaken));
        if (minima.CountedOverTwoRanks)
            reasons.Add(Of<CountedOverTwoRanks>(clock) ?? new RuleOfTheRank("Lessons count since the rank before the last one."));
        if (minima.ShortestLessonMinutes > 0)
            reasons.Add(Of<ShortestLesson>(clock) ?? new RuleOfTheRank($"Lessons shorter than {Words.Count(minima.ShortestLessonMinutes, "minute")} do not count."));
        if (minima.LessonsADay > 0)
            reasons.Add(Of<LimitADay>(clock) ?? new LimitADay(minima.LessonsADay));
        if (minima.ExaminerIsNotTheCoach)
            reasons.Add(new RuleOfTheRank("Whoever teaches the child does not examine that child."));
    }

    // With its figures, where the clock has them.
    private static Reason? Of<T>(ClockAnswer clock) where T : Reason => clock.Reasons.OfType<T>().FirstOrDefault();

    private static int? FromClock(ClockAnswer clock, string key)
    {
        foreach (var setting in clock.Settings)
        {
            if (setting.Key == key && int.TryParse(setting.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var value))
                return value;
        }

        return null;
    }
}
