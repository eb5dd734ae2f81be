using System.Globalization;
using Keikocho.Core.Kernel;

namespace Keikocho.Core.Safety;

/// <summary>
/// The earliest dates after a knock to the head. The later limit always counts; what is missing shuts; nothing lapses by itself; and
/// nobody is cleared by this sum.
/// </summary>
public static class HeadKnock
{
    // Stages before the one named, each with its least time: 1 everyday life, 2 light movement, 3 alone, 4 drills, 5 contact, 6 contest.
    private const int BeforeLight = 1;
    private const int BeforeDrills = 3;
    private const int BeforeContact = 4;
    private const int BeforeContest = 5;

    // Light movement never before this day, whatever a protocol says.
    private const int LeastRestDays = 2;

    private const int LastYear = 9000;

    /// <summary>Reckons them.</summary>
    /// <exception cref="ArgumentException">A day before the knock or after today, or advice or a lifting without a name.</exception>
    public static HeadKnockAnswer Reckon(HeadKnockSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        Guard(snapshot);
        var zero = snapshot.FurtherKnocks.Append(snapshot.On).Max();
        var again = snapshot.SymptomsOn.Where(d => d >= zero).Select(d => (DateOnly?)d).Max();
        var free = FreeFrom(snapshot, zero, again);
        var advice = snapshot.Advice.Where(a => a.Dated >= free)
            .OrderBy(a => a.Dated).ThenBy(a => a.Whose, StringComparer.Ordinal).ThenBy(a => a.RecordedBy, StringComparer.Ordinal).FirstOrDefault();
        var limits = Limits(snapshot.Rule, zero, free, advice);
        DateOnly? Earliest(KnockStep step) => limits.TryGetValue(step, out var own) ? own.Max(l => l.Day) : null;
        var contact = Earliest(KnockStep.FallsAndContact);
        var contest = Earliest(KnockStep.TestOrContest);
        KnockTest[] tests = [.. snapshot.Tests.Distinct().Order().Select(t => new KnockTest(t, advice is null || !(t >= contest)))];
        DateOnly? lesson = contact is { } from ? snapshot.Lessons.Where(l => l >= from).Select(l => (DateOnly?)l).Min() : null;
        KnockStepToday[] steps = [.. Enum.GetValues<KnockStep>().Select(s => Today(snapshot, s, Earliest(s), zero, free, advice))];
        return new HeadKnockAnswer(
            zero, free, advice, Earliest(KnockStep.LightMovement), Earliest(KnockStep.NoContactDrills), contact, contest, lesson, tests, steps,
            Missing(snapshot, zero, again, free, advice, contact, limits), Doctor(snapshot, zero, again, free), Reasons(snapshot, zero, again, free, advice, limits, lesson, tests), snapshot.Rule.Used());
    }

    // The latest that is recorded counts: a day said later never brings a date nearer. After a further knock it is a day after that one.
    private static DateOnly? FreeFrom(HeadKnockSnapshot snapshot, DateOnly zero, DateOnly? again)
    {
        var isFirst = snapshot.On == zero;
        return snapshot.FreeFrom.Where(d => (isFirst ? d >= zero : d > zero) && !(d <= again)).Select(d => (DateOnly?)d).Max();
    }

    private static Dictionary<KnockStep, List<KnockLimit>> Limits(KnockRule rule, DateOnly zero, DateOnly? free, KnockAdvice? advice)
    {
        var limits = new Dictionary<KnockStep, List<KnockLimit>>();
        if (free is not { } from) return limits;
        var holding = rule.Holding();
        var hours = holding.Select(p => p.HoursPerStage).Append(rule.HoursPerStage).Max();
        var rest = holding.Select(p => p.RestDays).Append(LeastRestDays).Max();
        var freeDays = holding.Select(p => p.SymptomFreeDays).Append(rule.SymptomFreeDays).Max();
        var contactDay = holding.Select(p => p.ContactDay).Append(0).Max();
        var contestDay = holding.SelectMany(p => new[] { p.ContestDay, p.ContactDay }).Append(rule.ContestDay).Max();
        KnockLimit Stage(int before) => new(from.AddDays(DaysOf(before, hours)), $"{Number(before)} {(before == 1 ? "stage" : "stages")} of {Number(hours)} hours from {from.Brief()}");
        KnockLimit Day(int day, string because = "") => new(zero.AddDays(day), $"day {Number(day)}{because}");

        limits[KnockStep.LightMovement] = [Day(rest, ", rest until then"), Stage(BeforeLight)];
        List<KnockLimit> contact = [new(from.AddDays(freeDays), $"{Number(freeDays)} days without symptoms from {from.Brief()}")];
        if (rule.FallsWaitForContestDay) contact.Add(Day(contestDay, ", which falls wait for too: the club’s stricter rule"));
        else if (contactDay > 0) contact.Add(Day(contactDay));
        contact.Add(Stage(BeforeContact));
        if (advice is not null)
        {
            KnockLimit told = new(advice.Dated, "the day of the advice");
            limits[KnockStep.NoContactDrills] = [Day(rest, ", rest until then"), Stage(BeforeDrills), told];
            contact.Add(told);
        }

        limits[KnockStep.FallsAndContact] = contact;
        limits[KnockStep.TestOrContest] =
            [.. contact.Where(l => l.Day != zero.AddDays(contestDay)), Day(contestDay), Stage(BeforeContest)];
        return limits;
    }

    private static int DaysOf(int stages, int hours) => ((stages * hours) + 23) / 24;

    private static KnockStepToday Today(HeadKnockSnapshot s, KnockStep step, DateOnly? earliest, DateOnly zero, DateOnly? free, KnockAdvice? advice)
    {
        var because = new List<string>();
        if (s.Today == zero) because.Add("it is the evening of the knock");
        if (free is null) because.Add("no first day without symptoms is recorded");
        if (advice is null && step != KnockStep.LightMovement) because.Add("no written advice that counts is recorded");
        if (earliest > s.Today) because.Add($"the earliest day is {earliest.Value.Full()}");
        // A lifting before the day came, or before what has happened since, opens nothing.
        var lifted = Counts(s.Lifted, s.Today, earliest) ?? (step is KnockStep.LightMovement or KnockStep.NoContactDrills ? Counts(s.Eased, s.Today, earliest) : null);
        if (lifted is null) because.Add("no named adult has lifted the stand-down since");
        return new KnockStepToday(
            step, earliest, because.Count > 0, because.Count > 0 ? new StepShut(s.Today, because) : new StepNotShut(lifted!, step == KnockStep.LightMovement ? null : advice));
    }

    private static KnockLifting? Counts(KnockLifting? lifting, DateOnly today, DateOnly? earliest) =>
        lifting is { } l && l.On <= today && l.On >= earliest ? l : null;

    private static List<Reason> Missing(
        HeadKnockSnapshot s, DateOnly zero, DateOnly? again, DateOnly? free, KnockAdvice? advice, DateOnly? contact, Dictionary<KnockStep, List<KnockLimit>> limits)
    {
        var missing = new List<Reason>();
        if (free is null) missing.Add(new NotFreeFromSymptoms(again, zero));
        if (advice is null) missing.Add(new NoAdvice());
        if (contact > s.Today) missing.Add(new EarliestDate(KnockStep.FallsAndContact, contact.Value, limits[KnockStep.FallsAndContact]));
        return missing;
    }

    private static List<Reason> Doctor(HeadKnockSnapshot s, DateOnly zero, DateOnly? again, DateOnly? free)
    {
        var lines = new List<Reason>();
        if (s.Today <= zero.AddDays(1)) lines.Add(new SeenWithinADay(zero));
        if (zero != s.On) lines.Add(new DoctorAfterFurtherKnock(zero));
        if (again is { } day) lines.Add(new DoctorAfterSymptomsAgain(day));
        var after = s.Rule.Holding().Select(p => p.DoctorAfterDays).Where(d => d > 0).Append(s.Rule.DoctorAfterDays).Min();
        if (free is null && s.Today >= zero.AddDays(after)) lines.Add(new StillSymptoms(s.Today.DayNumber - zero.DayNumber, after));
        return lines;
    }

    private static List<Reason> Reasons(
        HeadKnockSnapshot s, DateOnly zero, DateOnly? again, DateOnly? free, KnockAdvice? advice,
        Dictionary<KnockStep, List<KnockLimit>> limits, DateOnly? lesson, KnockTest[] tests)
    {
        var reasons = new List<Reason> { new KnockDayZero(zero, s.On), new SlipTheSameEvening() };
        if (again is { } day) reasons.Add(new SymptomsCameBack(day));
        reasons.Add(free is { } from ? new FreeFromSymptoms(from, zero) : new NotFreeFromSymptoms(again, zero));
        foreach (var step in Enum.GetValues<KnockStep>())
        {
            if (limits.TryGetValue(step, out var own)) reasons.Add(new EarliestDate(step, own.Max(l => l.Day), own));
            else reasons.Add(new NoEarliestDate(step, free is null ? "a first day without any symptom is recorded" : "written advice is recorded"));
        }

        if (lesson is { } first) reasons.Add(new FirstLessonWithFalls(first));
        reasons.AddRange(tests.Where(t => t.WordsOnly).Select(t => new TestWordsOnly(t.On, limits.TryGetValue(KnockStep.TestOrContest, out var own) ? own.Max(l => l.Day) : null)));
        reasons.AddRange(s.Advice.Where(a => !(a.Dated >= free)).OrderBy(a => a.Dated).ThenBy(a => a.Whose, StringComparer.Ordinal).Select(a => new AdviceVoid(a, free)));
        reasons.Add(advice is null ? new NoAdvice() : new AdviceCounts(advice));
        return reasons;
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static void Guard(HeadKnockSnapshot s)
    {
        ArgumentNullException.ThrowIfNull(s.Rule, "rule");
        s.Rule.Guard();
        ArgumentNullException.ThrowIfNull(s.FreeFrom, "freeFrom");
        ArgumentNullException.ThrowIfNull(s.SymptomsOn, "symptomsOn");
        ArgumentNullException.ThrowIfNull(s.FurtherKnocks, "furtherKnocks");
        ArgumentNullException.ThrowIfNull(s.Lessons, "lessons");
        ArgumentNullException.ThrowIfNull(s.Tests, "tests");
        NoGaps.In(s.Advice, "advice");
        if (s.Today.Year > LastYear) throw new ArgumentException($"{s.Today.Iso()} is too far away to reckon with; mend the year.", nameof(s));
        if (s.Today < s.On) throw new ArgumentException($"The knock of {s.On.Full()} is still to come on {s.Today.Full()}; mend a date.", nameof(s));
        Within(s.FreeFrom, "A first day without symptoms", s);
        Within(s.SymptomsOn, "A day with symptoms", s);
        Within(s.FurtherKnocks, "A further knock", s);
        Within(s.Advice.Select(a => a.Dated), "Advice", s);
        foreach (var advice in s.Advice)
        {
            if (string.IsNullOrWhiteSpace(advice.Whose) || string.IsNullOrWhiteSpace(advice.RecordedBy))
                throw new ArgumentException($"The advice of {advice.Dated.Full()} needs whose it is and who recorded it; name both.", nameof(s));
        }

        foreach (var lifting in new[] { s.Eased, s.Lifted }.OfType<KnockLifting>())
        {
            if (string.IsNullOrWhiteSpace(lifting.By)) throw new ArgumentException($"The lifting of {lifting.On.Full()} needs the name of an adult.", nameof(s));
        }
    }

    private static void Within(IEnumerable<DateOnly> days, string what, HeadKnockSnapshot s)
    {
        foreach (var day in days)
        {
            if (day < s.On || day > s.Today)
                throw new ArgumentException($"{what} on {day.Full()} is not between the knock of {s.On.Full()} and {s.Today.Full()}; mend a date.", nameof(s));
        }
    }
}
